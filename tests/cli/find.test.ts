import { Workbook, type Worksheet } from "@cj-tech-master/excelts";
import { describe, expect, it } from "vitest";
import { addressOf } from "../../src/workbook/area.js";
import { computedHeadings } from "../../src/cli/columns.js";
import { findYardSheets, nearestMiss } from "../../src/cli/find.js";
import { findTerms } from "../../src/cli/terms.js";
import { fill, TERMS, YARD } from "./yard.js";

function sheetWith(
  ...blocks: [rows: readonly (readonly unknown[])[], row: number, column: number][]
): Worksheet {
  const sheet = new Workbook().addWorksheet("Yard");
  for (const [rows, row, column] of blocks) fill(sheet, rows, row, column);
  return sheet;
}

const found = (sheet: Worksheet): string[] =>
  findYardSheets(sheet.workbook, computedHeadings()).map(({ area }) => addressOf(area));

describe("a yard sheet", () => {
  it("is found under a title, away from the corner", () => {
    expect(found(sheetWith([[["Spring 2026"]], 1, 1], [YARD, 4, 3]))).toEqual(["C4:G8"]);
  });

  it("may have an empty column within, and rows without a hive between", () => {
    const yard = [
      ["Hive", "", "Bees"],
      ["1", "", 7],
      ["", "", ""],
      ["2", "", 8],
    ];
    expect(found(sheetWith([yard, 1, 1]))).toEqual(["A1:C4"]);
  });

  it("ends before terms, before another sheet, and before columns computed earlier", () => {
    expect(found(sheetWith([YARD, 1, 1], [TERMS, 1, 7]))).toEqual(["A1:E5"]);
    expect(found(sheetWith([YARD, 1, 1], [YARD, 8, 1]))).toEqual(["A1:E5", "A8:E12"]);
    expect(found(sheetWith([YARD, 1, 1], [YARD, 1, 8]))).toEqual(["A1:E5", "H1:L5"]);
    expect(found(sheetWith([YARD, 1, 1], [[computedHeadings()], 1, 7]))).toEqual(["A1:E5"]);
  });

  it("stands beside terms on its left", () => {
    expect(found(sheetWith([TERMS, 1, 1], [YARD, 1, 5]))).toEqual(["E1:I5"]);
  });

  it("ends before the cells that a formula fills", () => {
    const sheet = sheetWith([YARD, 1, 1]);
    sheet.getCell("G1").value = {
      formula: "COMB.SOURCES()",
      shareType: "array",
      ref: "G1:H3",
      isDynamicArray: true,
      result: "Bees",
    };
    sheet.getCell("H1").value = "Frames of bees";
    expect(found(sheet)).toEqual(["A1:E5"]);
  });

  it("in a table is the table without its totals", () => {
    const sheet = sheetWith();
    const [headings, ...rows] = YARD;
    sheet.addTable({
      name: "Hives",
      ref: "B2",
      headerRow: true,
      totalsRow: true,
      columns: headings!.map((h) => ({ name: String(h) })),
      rows,
    });
    expect(found(sheet)).toEqual(["B2:F6"]);
  });

  it("is no sheet of hives without counts, and none without hives", () => {
    expect(
      found(
        sheetWith([
          [
            ["Hive", "Queen"],
            ["1", "y"],
          ],
          1,
          1,
        ]),
      ),
    ).toEqual([]);
    expect(found(sheetWith([YARD.slice(0, 1), 1, 1]))).toEqual([]);
    expect(found(sheetWith([YARD, 30, 1]))).toEqual([]);
  });
});

describe("the row that comes nearest to a yard sheet's headings", () => {
  const missed = (...rows: string[][]) => nearestMiss(sheetWith([rows, 1, 1]).workbook);

  it("is named with the headings that may be meant", () => {
    expect(
      missed(["Spring 2026"], ["", "Bees", ""], ["Hive", "Top", "Bottom"], ["1", "4", "5"]),
    ).toBe(
      ' Row 3 of sheet "Yard" comes near: the first row needs a heading such as "Frames of bees"; is it ' +
        '"Top" or "Bottom"? Then name it plainly, a box such as "Bees top box".',
    );
    expect(missed(["Hives in all", "Bees"])).toMatch(/such as "Hive"; is it "Hives in all"\?/);
    expect(missed(["Hive", "Bees"])).toBe(
      ' Row 1 of sheet "Yard" comes near: no hive stands under it.',
    );
  });

  it("is none where hives or bees are not headed at all", () => {
    for (const row of [
      ["Hive", "Queen"],
      ["Bees", "Brood"],
      ["Term", "Cherry"],
    ])
      expect(missed(row)).toBe("");
  });
});

describe("the terms", () => {
  const at = (workbook: Workbook): string | undefined => {
    const terms = findTerms(workbook);
    return terms ? `${terms.name} ${addressOf(terms.area)} ${terms.contracts.join()}` : undefined;
  };

  it("are what is named so", () => {
    const sheet = sheetWith([TERMS, 1, 1], [TERMS.map((row) => row.slice(0, 2)), 1, 8]);
    sheet.workbook.definedNames.add("'Yard'!$H$1:$I$7", "terms");
    expect(at(sheet.workbook)).toBe("Terms H1:I7 Cherry");
  });

  it("are else a table of that name", () => {
    const sheet = sheetWith([TERMS, 1, 8]);
    const [headings, ...rows] = TERMS;
    sheet.addTable({
      name: "Terms",
      ref: "A1",
      headerRow: true,
      columns: headings!.map((h) => ({ name: String(h) })),
      rows,
    });
    expect(at(sheet.workbook)).toBe("Terms[#All] A1:C7 Cherry,Pear");
  });

  it("are else a block headed Term, also with a row left out", () => {
    const rows = [...TERMS.slice(0, 3), [""], ...TERMS.slice(3), [""], [""], ["Term of office"]];
    expect(at(sheetWith([[["Terms of use"]], 1, 1], [rows, 3, 2]).workbook)).toBe(
      "null B3:D10 Cherry,Pear",
    );
  });

  it("that cannot be read are refused", () => {
    const sheet = sheetWith([TERMS, 1, 1]);
    sheet.workbook.definedNames.add("'Yard'!$A$2:$C$7", "Terms");
    expect(() => findTerms(sheet.workbook)).toThrow(
      "The terms in 'Yard'!$A$2:$C$7 cannot be used: the first cell must be the heading \"Term\"",
    );
  });

  it("may not be there", () => {
    expect(at(sheetWith([YARD, 1, 1]).workbook)).toBeUndefined();
  });
});
