import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch, openFile, openPlayground, read } from "./browser.js";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  ({ page } = await openPlayground(browser));
});
afterAll(() => browser.close());

/** A sheet as it comes from a yard: a title, a blank row, odd headings, a count that became a day. */
async function messy(): Promise<Uint8Array> {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet("North yard");
  sheet.addRows([
    ["North yard, opened by the two of us"],
    [],
    ["Hive no.", "Bees top", "Bees bottom", "who"],
    ["N1", "3-4", 5, "A"],
    ["N2", 2, null, "A"],
    ["N3", 4, "half", "B"],
  ]);
  // 7-8 typed into a cell that took it for the 8th of July.
  sheet.getCell("C5").value = new Date(Date.UTC(2026, 6, 8));
  sheet.getCell("C5").numFmt = "d-mmm";
  const terms = workbook.addWorksheet("Terms");
  terms.addRows([
    ["Term", "Plum"],
    ["minimum frames", 5],
    ["grade 1 name", "Good"],
    ["grade 1 frames", 8],
  ]);
  workbook.definedNames.add("Terms!$A$1:$B$4", "Terms");
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

describe("Columns, in the playground", () => {
  it("puts a day back as the range it was, and takes that back", async () => {
    await openFile(page, "north.xlsx", await messy());
    const pane = page.locator("#pane");
    await pane.getByRole("tab", { name: "Columns" }).click();
    const cell = { sheet: "North yard", row: 4, column: 2, rows: 1, columns: 1 };
    // 46211 is 8 July 2026 in a sheet that counts from 1900.
    expect((await read(page, cell)).values).toEqual([[46211]]);
    await pane.getByRole("button", { name: "Put it back as text" }).click();
    await expect.poll(async () => (await read(page, cell)).values).toEqual([["7-8"]]);
    expect((await read(page, cell)).formats).toEqual([["@"]]);
    await pane.getByRole("button", { name: "Take back" }).click();
    await expect.poll(async () => (await read(page, cell)).values).toEqual([[46211]]);
  });

  it("writes the computed columns beside the sheet, and takes them away again", async () => {
    const pane = page.locator("#pane");
    await pane.getByRole("button", { name: "Write the columns" }).click();
    const beside = { sheet: "North yard", row: 2, column: 5, rows: 2, columns: 1 };
    // 3-4 and 5 combs are 8½ frames.
    await expect
      .poll(async () => (await read(page, beside)).values, { timeout: 20_000 })
      .toEqual([["Frames of bees"], [8.5]]);
    await pane.getByRole("button", { name: "Take back" }).click();
    await expect.poll(async () => (await read(page, beside)).values).toEqual([[""], [""]]);
  });
});
