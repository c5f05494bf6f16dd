import { spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { read as readXlsx, utils } from "@e965/xlsx";
import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { excelFile, sheetData } from "../cli/excel-file.js";
import { faultsOf } from "../cli/package-faults.js";
import { folder } from "../cli/folder.js";
import { launch, openFile, openPlayground, read, saveFile, typeInto } from "./browser.js";

const DEMO = new URL("../../examples/cherry-and-pear.xlsx", import.meta.url);

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  ({ page } = await openPlayground(browser));
});
afterAll(() => browser.close());

/** What another reader finds in a file's sheet. */
function rowsOf(bytes: Uint8Array, sheet: string): unknown[][] {
  const book = readXlsx(bytes);
  return utils.sheet_to_json(book.Sheets[sheet]!, { header: 1, raw: true, defval: "" });
}

describe("a file in the playground", () => {
  it("that the command line made shows its values, and is saved with what was typed", async () => {
    const test = await folder({ "yard.xlsx": await readFile(DEMO) });
    await test.run("grade", "yard.xlsx", "--out", "graded.xlsx");
    expect(await openFile(page, "graded.xlsx", await test.bytes("graded.xlsx"))).toContain(
      "Opened graded.xlsx",
    );
    const place = { sheet: "Yard", row: 0, column: 0, rows: 61, columns: 21 };
    const shown = (await read(page, place)).values;
    const held = rowsOf(await test.bytes("graded.xlsx"), "Yard");
    held.forEach((row, r) =>
      row.forEach((value, c) =>
        expect(shown[r]![c], `row ${r + 1}, column ${c + 1}`).toEqual(value),
      ),
    );
    // 30 points, of which 72 make an inch as 96 of a page's pixels do (CSS).
    const height = await page.evaluate(() =>
      globalThis.combTally!.session()!.grid.getSheetByName("Yard")!.getRowHeight(0),
    );
    expect(height).toBe(40);

    await typeInto(page, "Yard", "F2", "1-2");
    await typeInto(page, "Yard", "W2", "=COMB.BEES(E2:F2)");
    const { bytes, told } = await saveFile(page);
    expect(told).toContain("The saved file holds all that the opened one held");
    const saved = rowsOf(bytes, "Yard");
    // 4 and 1½ combs, 2,400 bees on each.
    expect([saved[1]![5], saved[1]![12], saved[1]![22]]).toEqual(["1-2", 5.5, 13200]);
    // Nobody touched the rows below.
    expect(saved[2]!.slice(0, 21)).toEqual(held[2]!.slice(0, 21));
    expect(await faultsOf(bytes)).toEqual([]);
    const { definedNames } = await bookOf(bytes);
    expect(definedNames.getRanges("Terms").ranges).toEqual(["Terms!$A$1:$D$33"]);
  });

  it("keeps what the grid does not know, and says what is lost where rows were moved", async () => {
    const workbook = new Workbook();
    const sheet = workbook.addWorksheet("Yard");
    sheet.addRows([
      ["Hive", "Bees"],
      ["S1", 7],
      ["S2", 8],
    ]);
    sheet.getCell("C2").value = { formula: "_xldudf_COMB_BEES(B2)" };
    sheet.getCell("B2").note = "looked twice";
    sheet.getCell("E1").value = "kept out of sight";
    sheet.getColumn(5).hidden = true;
    sheet.autoFilter = "A1:B3";
    sheet.views = [{ state: "frozen", xSplit: 1, ySplit: 1 }];
    sheet.pageSetup = { ...sheet.pageSetup, orientation: "landscape" };
    sheet.addConditionalFormatting({
      ref: "B2:B3",
      rules: [{ type: "cellIs", operator: "lessThan", formulae: ["6"], priority: 1, style: {} }],
    });
    await openFile(page, "notes.xlsx", new Uint8Array(await workbook.xlsx.writeBuffer()));
    await typeInto(page, "Yard", "B3", "9");
    const kept = await saveFile(page);
    expect(kept.told).toContain("The saved file holds all that the opened one held");
    const after = (await bookOf(kept.bytes)).getWorksheet("Yard")!;
    expect(after.getCell("B3").value).toBe(9);
    expect(after.getCell("C2").result).toBe(16800);
    expect(JSON.stringify(after.getCell("B2").note)).toContain("looked twice");
    expect(after.conditionalFormattings).toHaveLength(1);

    await page.evaluate(() => {
      globalThis.combTally!.session()!.grid.getSheetByName("Yard")!.insertRowsBefore(1, 1);
    });
    const moved = await saveFile(page);
    expect(moved.told).toContain('Rows or columns were put in, taken out or moved on "Yard"');
    expect(moved.told).toContain("conditional format");
    expect(moved.told).toContain("filters outside tables");
    const anew = (await bookOf(moved.bytes)).getWorksheet("Yard")!;
    expect([anew.getCell("A3").value, anew.getCell("B4").value]).toEqual(["S1", 9]);
    expect([anew.getColumn(5).hidden, anew.getColumn(4).hidden]).toEqual([true, false]);
    expect(anew.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 1 });
    expect(anew.pageSetup.orientation).toBe("landscape");
    expect(anew.getCell("C3").result).toBe(16800);
    expect(anew.getCell("C3").formula).toBe("_xldudf_COMB_BEES(B3)");
  });

  it("with a table keeps it a table whose headings Excel finds in its cells", async () => {
    const workbook = new Workbook();
    workbook.addWorksheet("Yard").addTable({
      name: "Hives",
      ref: "A1",
      headerRow: true,
      totalsRow: true,
      columns: [
        { name: "Hive", totalsRowLabel: "In all" },
        { name: "Bees", totalsRowFunction: "sum" },
      ],
      rows: [
        ["S1", 7],
        ["S2", 8],
      ],
    });
    workbook.getWorksheet("Yard")!.getCell("D2").value = { formula: "SUM(Hives[Bees])" };
    await openFile(page, "table.xlsx", new Uint8Array(await workbook.xlsx.writeBuffer()));
    await typeInto(page, "Yard", "B1", "Frames of bees");
    const { bytes } = await saveFile(page);
    expect(await faultsOf(bytes)).toEqual([]);
    const sheet = (await bookOf(bytes)).getWorksheet("Yard")!;
    const { totalsRow, columns } = sheet.getTables()[0]!.model;
    expect(columns.map(({ name }) => name)).toEqual(["Hive", "Frames of bees"]);
    expect(sheet.getCell("B3").value).toBe(8);
    expect(totalsRow).toBe(true);
    expect([columns[0]!.totalsRowLabel, columns[1]!.totalsRowFunction]).toEqual(["In all", "sum"]);
    // The library reads no result of a row of totals.
    expect(rowsOf(bytes, "Yard")[3]!.slice(0, 2)).toEqual(["In all", 15]);
  });

  it.skipIf(spawnSync("soffice", ["--version"]).status !== 0)(
    "that LibreOffice wrote opens, and grades",
    { timeout: 180_000 },
    async () => {
      const root = await mkdtemp(join(tmpdir(), "comb-tally-"));
      await writeFile(join(root, "yard.csv"), "Hive,Frames of bees\nS1,7-8\nS2,half\nS3,9\n");
      spawnSync("soffice", [
        `-env:UserInstallation=${pathToFileURL(join(root, "profile")).href}`,
        "--headless",
        "--convert-to",
        "xlsx",
        "--outdir",
        root,
        join(root, "yard.csv"),
      ]);
      const bytes = await readFile(join(root, "yard.xlsx"));
      await rm(root, { recursive: true });
      expect(await openFile(page, "yard.xlsx", bytes)).toContain("Opened yard.xlsx");
      await typeInto(page, "yard", "D2", "=COMB.FRAMES_OF_BEES(B2:B4)");
      const place = { sheet: "yard", row: 1, column: 3, rows: 3, columns: 1 };
      await expect
        .poll(async () => (await read(page, place)).values, { timeout: 20_000 })
        .toEqual([[7.5], [0.5], [9]]);
    },
  );

  it("that is dropped on the page opens; another dropped meanwhile is told to wait", async () => {
    const file = (hive: string) =>
      Buffer.from(excelFile({ sheets: { Dropped: sheetData({ A1: "Hive", A2: hive }) } })).toString(
        "base64",
      );
    const told = await page.evaluate(
      (files) => {
        for (const [name, base64] of files) {
          const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
          const dataTransfer = new DataTransfer();
          dataTransfer.items.add(new File([bytes], name));
          document
            .getElementById("grid")!
            .dispatchEvent(
              new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }),
            );
        }
        return document.getElementById("status")!.textContent;
      },
      [
        ["first.xlsx", file("S01")],
        ["second.xlsx", file("S02")],
      ] as const,
    );
    expect(told).toMatch(/then open second\.xlsx again/);
    const anyway = page.getByRole("button", { name: "Open anyway" });
    await anyway
      .or(page.getByText("first.xlsx", { exact: true }))
      .first()
      .waitFor();
    if (await anyway.isVisible()) await anyway.click();
    await page.getByText("first.xlsx", { exact: true }).waitFor();
    const place = { sheet: "Dropped", row: 0, column: 0, rows: 2, columns: 1 };
    expect((await read(page, place)).values).toEqual([["Hive"], ["S01"]]);
  });

  it.each([
    ["yard.csv", "Hive,Bees", /is no \.xlsx file/],
    ["yard.xlsx", "no zip at all", /is not a workbook, or is damaged/],
    [
      "half.xlsx",
      excelFile({ sheets: { Yard: sheetData({ A1: "Hive" }) } }).slice(0, 400),
      /is not a workbook, or is damaged/,
    ],
    [
      "bomb.xlsx",
      excelFile({
        sheets: { Yard: sheetData({ A1: "Hive" }) },
        parts: { "xl/media/image1.png": "0".repeat(12e6) },
      }),
      /would unpack to 12 MB/,
    ],
    [
      "macros.xlsx",
      excelFile({
        sheets: { Yard: sheetData({ A1: "Hive" }) },
        parts: { "xl/vbaProject.bin": "macro" },
      }),
      /holds macros/,
    ],
  ])("%s is refused in a sentence, and what is open stays", async (name, content, sentence) => {
    const before = await page.textContent("#file");
    const bytes = typeof content === "string" ? Buffer.from(content) : content;
    expect(await openFile(page, name, bytes)).toMatch(sentence);
    expect(await page.textContent("#file")).toBe(before);
  });

  it("of 200 MB is refused before it is read", async () => {
    const root = await mkdtemp(join(tmpdir(), "comb-tally-"));
    const path = join(root, "huge.xlsx");
    await writeFile(path, "");
    const { truncate } = await import("node:fs/promises");
    await truncate(path, 200e6);
    await page.locator("#status").evaluate((status) => (status.textContent = ""));
    await page.setInputFiles("#open", path);
    await expect
      .poll(() => page.textContent("#status"), { timeout: 20_000 })
      .toMatch(/^huge\.xlsx has 200 MB, and at most 100 MB are read/);
    await rm(root, { recursive: true });
  });
});

async function bookOf(bytes: Uint8Array): Promise<Workbook> {
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes);
  return workbook;
}
