import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import axeCore from "axe-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, Page } from "playwright-core";
import {
  becomes,
  choose,
  enter,
  launch,
  openPlayground,
  read,
  said,
  type,
  typeInto,
  type At,
  type Watch,
} from "./browser.js";

const cell = (sheet: string, row: number, column: number): At => ({
  sheet,
  row,
  column,
  rows: 1,
  columns: 1,
});

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

describe("the playground, opened from a disk", () => {
  let page: Page;
  let watch: Watch;
  beforeAll(async () => {
    ({ page, watch } = await openPlayground(browser));
  });

  it("opens with the demo calculated, in its own words", async () => {
    // S01: 4 and 5-6 combs of bees are 9½; Cherry's Standard begins at 8 (examples/yard.mjs).
    const { values } = await read(page, { ...cell("Yard", 1, 12), columns: 6 });
    expect(values).toEqual([[9.5, 22800, 2, 4, "Standard", 0.5]]);
    const lots = await read(page, { ...cell("Lots", 1, 0), rows: 3, columns: 2 });
    expect(lots.values).toEqual([
      ["Shed", 20],
      ["Foothill", 20],
      ["Coast", 20],
    ]);
  });

  it("grades anew what is typed into the sheet", async () => {
    await typeInto(page, "Yard", "F2", "1-2");
    // 4 and 1½ are 5½ frames: under Cherry's minimum of 6.
    await becomes(page, cell("Yard", 1, 12), (value) => value === 5.5);
    const { values, entries, formats } = await read(page, cell("Yard", 1, 5));
    expect([values, entries, formats]).toEqual([[["1-2"]], [["1-2"]], [["@"]]]);
    expect((await read(page, cell("Yard", 1, 16))).values).not.toEqual([["Standard"]]);
  });

  it("shows what a function is for, and what it takes, while it is typed", async () => {
    await choose(page, "Yard", "W3");
    await type(page, "=COMB.BEE_WEI");
    const grid = page.locator("#grid");
    await grid.getByText("COMB.BEE_WEIGHT", { exact: true }).first().waitFor();
    await page.waitForTimeout(500);
    await page.keyboard.type("GHT(3");
    await grid.getByText("per_pound").first().waitFor();
    await page.waitForTimeout(500);
    await page.keyboard.type(")");
    await enter(page);
    // Three pounds of 3,500 bees each.
    expect(await becomes(page, cell("Yard", 2, 22), (value) => value !== "")).toBe(10500);
  });

  it("says in a sentence what an error means", async () => {
    await typeInto(page, "Yard", "W4", '=COMB.BEES("lots")');
    await becomes(page, cell("Yard", 3, 22), (value) => JSON.stringify(value).includes("#VALUE!"));
    await page.keyboard.press("ArrowUp");
    expect(await said(page, /^W4: /)).toMatch(/^W4: amount: "lots" is not understood: a count/);
  });

  it("lets a threshold be changed by keyboard in the pane: the cells grade anew, and it is taken back", async () => {
    const pane = page.locator("#pane");
    // S02: 3-4 and 5 combs are 8½ frames: Standard from 8 on, and no longer from 9.
    const grade = cell("Yard", 2, 16);
    const [[before]] = (await read(page, grade)).values as [[unknown]];
    expect(before).toBe("Standard");
    await pane.getByText("Grades, best first").press("Enter");
    await pane.getByRole("textbox", { name: "Frames", exact: true }).nth(1).focus();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("9");
    await page.keyboard.press("Tab");
    await pane.getByRole("button", { name: /^Save/ }).press("Enter");
    await becomes(page, grade, (value) => value !== before);
    await pane.getByRole("button", { name: "Take back" }).press("Enter");
    await becomes(page, grade, (value) => value === before);
  });

  it("has beside it every page that its links lead to, and opens them apart from the sheet", async () => {
    const links = await page
      .locator("#pane a")
      .evaluateAll((all) =>
        all.map((a) => [(a as HTMLAnchorElement).href, (a as HTMLAnchorElement).target]),
      );
    expect(links.length).toBeGreaterThan(40);
    for (const [href, target] of links) {
      expect(existsSync(fileURLToPath(new URL(href!.replace(/#.*/, "")))), href).toBe(true);
      expect(target, href).toBe("_blank");
    }
  });

  it("has asked nobody for anything, cannot, and has run no script of another's", async () => {
    expect(await page.evaluate(() => "Office" in globalThis)).toBe(false);
    expect(watch.faults).toEqual([]);
    const fetched = page.evaluate(() =>
      fetch("https://example.org/").then(
        () => "fetched",
        () => "refused",
      ),
    );
    expect(await fetched).toBe("refused");
    expect(watch.faults.join()).toContain("Content Security Policy");
    expect(watch.outside).toEqual([]);
    await page.context().close();
  });
});

describe.each([
  [1280, "light"],
  [320, "light"],
  [320, "dark"],
] as const)("the pane beside the grid at %i px in %s", (width, colorScheme) => {
  it("has no view that axe finds fault with, or that is wider than the screen", async () => {
    const { page } = await openPlayground(browser, { width, colorScheme });
    if (width === 320) await page.getByRole("button", { name: "Show the pane" }).click();
    const tabs = page.locator("#pane").getByRole("tab");
    const faults: string[] = [];
    for (let tab = 0; tab < (await tabs.count()); tab++) {
      const name = await tabs.nth(tab).textContent();
      await tabs.nth(tab).click();
      await page.waitForTimeout(300);
      await page.evaluate(axeCore.source);
      const found = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as { axe: typeof axeCore };
        // The grid is another's, drawn on a canvas: its parts are not ours to judge.
        const { violations } = await axe.run({ exclude: [["#grid"]] });
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(" ")}`);
      });
      faults.push(...found.map((fault) => `${name}: ${fault}`));
      const wider = await page.evaluate(() => {
        const pane = document.getElementById("pane")!;
        return pane.scrollWidth - pane.clientWidth;
      });
      if (wider > 0) faults.push(`${name}: ${wider} px wider than the pane`);
    }
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
