import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launch } from "./browser.js";

const PAGE = new URL("../../dist/addin/pane.html", import.meta.url).href;

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await browser.newPage();
  // Of Microsoft's there is nothing here: the page alone is looked at.
  await page.route(/^https?:/, (route) => route.abort());
  await page.addInitScript(() => {
    globalThis.heard = [];
    addEventListener("securitypolicyviolation", ({ effectiveDirective }) =>
      globalThis.heard.push(effectiveDirective),
    );
  });
  await page.goto(PAGE);
});
afterAll(() => browser.close());

it("lets the page's own scripts run", async () => {
  await page.getByText("Excel is not around it").waitFor();
  expect(await page.evaluate(() => globalThis.heard)).toEqual([]);
});

it.each([
  ["object-src", '<object data="https://example.org/x"></object>'],
  ["object-src", '<embed src="https://example.org/x">'],
  ["base-uri", '<base href="https://example.org/">'],
  ["form-action", '<form action="https://example.org/"><button>Send</button></form>'],
])("refuses by %s what is put into the page as %s", async (directive, html) => {
  await page.evaluate((text) => {
    globalThis.heard = [];
    document.body.insertAdjacentHTML("beforeend", text);
    document.querySelector<HTMLButtonElement>("form button")?.click();
  }, html);
  await expect.poll(() => page.evaluate(() => globalThis.heard)).toEqual([directive]);
  expect(page.url()).toBe(PAGE);
});
