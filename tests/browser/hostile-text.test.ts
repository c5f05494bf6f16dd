import { readFile } from "node:fs/promises";
import { read as readXlsx, utils } from "@e965/xlsx";
import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { COMMON } from "../pane/hostile/texts.js";
import { choose, launch, openFile, openPlayground, read, saveFile, type Watch } from "./browser.js";

const HOSTILE = [
  ...COMMON,
  "+A1",
  "-A1",
  "'=A1",
  "#N/A",
  // As long as a cell may be.
  "<b>=1+".repeat(6000).slice(0, 32_767),
];
/** Those that Excel takes for the name of a sheet: without some signs, and up to 31. */
const SHEETS = HOSTILE.filter((text) => /^[^\\/?*[\]:']{1,31}$/.test(text));
const TAG = "<img src=x onerror=alert(1)>";
const NAME = `${TAG.replaceAll("=", "=1+1=")}.xlsx`;
const MARCH_28 = 46109;
/** The grid shows a text as long as a cell may be, but it cannot be chosen for typing. */
const noteOf = (text: string) => (text.length > 1000 ? "" : text);
/** Faults of the grid: it looks what is typed up among yes and no, and takes words of every object. */
const UNTAKEN = ["constructor", "__proto__"];
/** A machine that does other things too draws each cell anew in a second or two. */
const PATIENCE = { timeout: 300_000 };

async function file(): Promise<Uint8Array> {
  const workbook = new Workbook();
  const yard = workbook.addWorksheet(TAG);
  yard.addRow(["Hive", "Lot", "Date", "Frames of bees", "Brood combs", "Brood %", "Notes", "=1+1"]);
  for (const text of HOSTILE) yard.addRow([text, TAG, MARCH_28, 8, 4, 50, noteOf(text), ""]);
  const terms = workbook.addWorksheet("Terms");
  terms.addRows([
    ["Term", "=1+1", ...HOSTILE.filter((text) => text !== "=1+1")],
    ["minimum frames", ...HOSTILE.map(() => 6)],
    ["grade 1 name", ...HOSTILE],
    ["grade 1 frames", ...HOSTILE.map(() => 6)],
    ["currency", ...HOSTILE],
  ]);
  for (const name of SHEETS.filter((text) => text !== TAG))
    workbook.addWorksheet(name).addRow([name]);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/** What another reader finds: each sheet's texts, and the formulas. */
function readBack(bytes: Uint8Array) {
  const book = readXlsx(bytes);
  const sheets = book.SheetNames.map((name): [string, unknown[][]] => [
    name,
    utils.sheet_to_json(book.Sheets[name]!, { header: 1, raw: true, defval: "" }),
  ]);
  const formulas = Object.values(book.Sheets).flatMap((sheet) =>
    Object.values(sheet).flatMap((cell: { f?: string }) => cell?.f ?? []),
  );
  return { sheets, formulas };
}

let browser: Browser;
let page: Page;
let watch: Watch;
const dialogs: string[] = [];
let bytes: Uint8Array;

beforeAll(async () => {
  browser = await launch();
  bytes = await file();
  ({ page, watch } = await openPlayground(browser));
  page.on("dialog", (dialog) => {
    dialogs.push(dialog.message());
    void dialog.dismiss();
  });
});
afterAll(() => browser.close());

/** Elements and attributes that the page has nowhere but in a text that it took for HTML. */
const strangers = () =>
  page.evaluate(() => [
    ...[...document.querySelectorAll("img[src=x], [onerror], b, main script")].map(
      ({ outerHTML }) => outerHTML,
    ),
    ...Object.keys(Object.prototype),
  ]);

it("opens a file of such texts, and says its name as it is", async () => {
  expect(readBack(bytes).formulas).toEqual([]);
  expect(await openFile(page, NAME, bytes)).toBe(
    `Opened ${NAME}. Ready. Nothing you type leaves this page.`,
  );
  expect(await page.textContent("#file")).toBe(NAME);
});

it("shows each in its cell, as the text that it is", async () => {
  const hives = await read(page, {
    sheet: TAG,
    row: 1,
    column: 0,
    rows: HOSTILE.length,
    columns: 1,
  });
  expect(hives.values.flat()).toEqual(HOSTILE);
  for (const name of SHEETS) {
    const { values } = await read(page, { sheet: name, row: 0, column: 0, rows: 1, columns: 1 });
    expect(values).toEqual([[name === TAG ? "Hive" : name]]);
  }
  expect(await strangers()).toEqual([]);
});

it("shows them in every view of the pane", async () => {
  const pane = page.locator("#pane");
  const contracts = await pane.locator("#contract option").allTextContents();
  expect(contracts).toEqual(["=1+1", ...HOSTILE.filter((text) => text !== "=1+1")]);
  for (const tab of await pane.getByRole("tab").all()) await tab.click();
  expect(await pane.locator("#what-if-lot option").allTextContents()).toEqual([TAG]);
  expect(await pane.locator("#statement-lot option").first().textContent()).toBe(TAG);
  expect((await pane.locator("#eye-from option").allTextContents()).join()).toContain(TAG);
  expect(await strangers()).toEqual([]);
});

it(
  "keeps a text a text where its cell is opened for typing and left as it was",
  PATIENCE,
  async () => {
    for (const [k, text] of HOSTILE.entries()) {
      if (noteOf(text) === "" || UNTAKEN.includes(text)) continue;
      await choose(page, TAG, `G${k + 2}`);
      await page.keyboard.press("F2");
      await page.waitForTimeout(100);
      await page.keyboard.press("Enter");
    }
    const notes = await read(page, {
      sheet: TAG,
      row: 1,
      column: 6,
      rows: HOSTILE.length,
      columns: 1,
    });
    expect(notes.values.flat()).toEqual(HOSTILE.map(noteOf));
  },
);

it("saves them as they are, with no formula made", PATIENCE, async () => {
  await page.evaluate((sheet) => {
    const { grid } = globalThis.combTally!.session()!;
    grid.getSheetByName(sheet)!.getRange("D2").setValue({ v: 9, t: 2 });
  }, TAG);
  const saved = await saveFile(page);
  expect(saved.told).not.toContain("could not be calculated");
  const [before, after] = [readBack(bytes), readBack(saved.bytes)];
  const expected = structuredClone(before);
  expected.sheets.find(([name]) => name === TAG)![1][1]![3] = 9;
  expect(after).toEqual(expected);
});

it("makes a statement on such a lot, in which each stands as a text", async () => {
  const pane = page.locator("#pane");
  await pane.getByRole("tab", { name: "Statement" }).click();
  await pane.getByLabel("Beekeeper", { exact: true }).fill("=1+1");
  await pane.getByLabel("Grower", { exact: true }).fill(TAG);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    pane.getByRole("button", { name: "Make the statement" }).click(),
  ]);
  const { sheets, formulas } = readBack(await readFile(await download.path()));
  expect(formulas).toEqual([]);
  const texts = sheets.flatMap(([, rows]) => rows.flat().map(String));
  for (const text of HOSTILE) expect(texts).toContain(text);
  // By its names: the contract's among them, and of the lot in the title.
  expect(texts.filter((text) => text === "=1+1").length).toBeGreaterThan(1);
  expect(texts.some((text) => text !== TAG && text.includes(TAG))).toBe(true);
});

it("has asked nobody for anything, run nothing, and made no element of a text", async () => {
  expect(await strangers()).toEqual([]);
  expect([dialogs, watch.faults, watch.outside]).toEqual([[], [], []]);
  await page.context().close();
});
