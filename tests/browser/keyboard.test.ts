import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { becomes, enter, launch, openPlayground, read, type, type At } from "./browser.js";

const W2: At = { sheet: "Yard", row: 1, column: 22, rows: 1, columns: 1 };

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  ({ page } = await openPlayground(browser));
  await page.waitForFunction(() => document.activeElement?.closest("#grid"));
});
afterAll(() => browser.close());

/** The part of the page in which the keys are. */
const part = () =>
  page.evaluate(() => {
    const at = document.activeElement?.closest("body > section, body > .pane");
    return at?.getAttribute("aria-label") ?? at?.id ?? "none";
  });

/** What has the keys, by its own name. */
const focused = () =>
  page.evaluate(() => {
    const { id, textContent } = document.activeElement!;
    return id || textContent;
  });

const press = (key: string) => page.keyboard.press(key);

describe("the playground, by keyboard alone", () => {
  it("goes round its parts by F6, and the other way round by Shift+F6", async () => {
    await press("F6");
    expect([await part(), await focused()]).toEqual(["pane", "tab-contract"]);
    await press("F6");
    expect([await part(), await focused()]).toEqual(["Workbook", "open"]);
    await press("F6");
    expect(await part()).toBe("Spreadsheet");
    await press("Shift+F6");
    expect([await part(), await focused()]).toEqual(["Workbook", "open"]);
    await press("Shift+F6");
    expect([await part(), await focused()]).toEqual(["pane", "tab-contract"]);
  });

  it("comes back to where one was in the bar and in the pane, and to the cells in the grid", async () => {
    await press("Tab");
    const inPane = await focused();
    expect(inPane).toBe("contract");
    await press("F6");
    await press("Tab");
    expect(await focused()).toBe("save");
    await press("F6");
    await page.evaluate(() => {
      const { grid } = globalThis.combTally!.session()!;
      grid.getSheetByName("Yard")!.getRange("W2").activate();
    });
    await type(page, "12");
    await enter(page);
    await becomes(page, W2, (value) => value === 12);
    await press("F6");
    expect(await focused()).toBe(inPane);
    await press("F6");
    expect(await focused()).toBe("save");
  });

  it("leaves a cell that is being written without losing what stands in it", async () => {
    await press("F6");
    await press("ArrowUp");
    await type(page, "34");
    await press("F6");
    expect(await part()).toBe("pane");
    await press("Shift+F6");
    await press("Enter");
    await becomes(page, W2, (value) => value === 34);
  });

  it("goes by Tab from the bar into the grid, and from the pane's last field to the bar", async () => {
    await page.locator("#demo").focus();
    await press("Tab");
    expect(await part()).toBe("Spreadsheet");
    await page.locator("#pane summary:visible").last().focus();
    await press("Tab");
    expect([await part(), await focused()]).toEqual(["Workbook", "open"]);
  });

  it("leaves the keys to a question until it is answered", async () => {
    await page.locator("#save").press("Enter");
    await page.locator("#ask[open]").waitFor();
    await press("F6");
    expect(await page.evaluate(() => document.activeElement!.closest("dialog")?.id)).toBe("ask");
    await press("Escape");
    await page.locator("#ask[open]").waitFor({ state: "detached" });
    await press("F6");
    await expect.poll(part).toBe("Spreadsheet");
  });

  it("on a narrow screen passes over the part that is not shown", async () => {
    await page.setViewportSize({ width: 390, height: 800 });
    await page.locator("#side").press("Enter");
    await press("F6");
    expect(await part()).toBe("pane");
    await press("F6");
    expect([await part(), await focused()]).toEqual(["Workbook", "side"]);
    expect((await read(page, W2)).values).toEqual([[34]]);
  });
});
