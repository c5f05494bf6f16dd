import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  absolute,
  cellAt,
  cellName,
  columnName,
  overlap,
  rangeName,
  reference,
  sheetName,
} from "../../src/pane/address.js";

const place = (row: number, column: number, rows = 1, columns = 1, sheet = "Yard") => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

// Excel's own: column 26 is Z, 27 AA, 702 ZZ, 703 AAA, and the last one, 16,384, XFD.
it.each([
  [0, "A"],
  [25, "Z"],
  [26, "AA"],
  [701, "ZZ"],
  [702, "AAA"],
  [16383, "XFD"],
])("names column %i %s", (column, name) => {
  expect(columnName(column)).toBe(name);
});

it("names a range by its corners and a single cell alone", () => {
  expect(rangeName(place(0, 0, 61, 11))).toBe("A1:K61");
  expect(rangeName(place(4, 1))).toBe("B5");
});

// Excel quotes a sheet's name with spaces, signs or digits in it, and doubles an apostrophe.
it.each([
  ["Yard", "Yard"],
  ["My yard", "'My yard'"],
  ["Bees'26", "'Bees''26'"],
  ["A1", "'A1'"],
  ["R", "'R'"],
  ["2026", "'2026'"],
  ["Bienenstände", "'Bienenstände'"],
])("writes the sheet %s as %s", (name, written) => {
  expect(sheetName(name)).toBe(written);
});

it("names the sheet where the formula stands on another", () => {
  expect(reference(place(0, 0, 61, 11), "Yard")).toBe("A1:K61");
  expect(reference(place(0, 0, 61, 11, "My yard"), "Lots")).toBe("'My yard'!A1:K61");
  expect(absolute(place(0, 0, 31, 4, "My A1"), "Yard")).toBe("'My A1'!$A$1:$D$31");
});

describe("a cell that is typed", () => {
  it.each([
    ["M1", place(0, 12)],
    [" $m$1 ", place(0, 12)],
    ["Lots!B5", place(4, 1, 1, 1, "Lots")],
    ["'Bees''26'!XFD1048576", place(1048575, 16383, 1, 1, "Bees'26")],
  ])("%s is found", (text, expected) => {
    expect(cellAt(text, "Yard")).toEqual(expected);
  });

  it.each(["", "M", "1", "M0", "A1:B2", "XFE1", "A1048577", "M 1"])("%j is refused", (text) => {
    expect(() => cellAt(text, "Yard")).toThrow(/is no cell: write one such as M1/);
  });

  it("is read back as it is named, wherever it lies and whatever its sheet is called", () => {
    const [rows, columns] = [fc.nat(1048575), fc.nat(16383)];
    fc.assert(
      fc.property(rows, columns, fc.string({ minLength: 1 }), (row, column, sheet) => {
        const cell = place(row, column, 1, 1, sheet);
        expect(cellAt(`${sheetName(sheet)}!${cellName(row, column)}`, "Yard")).toEqual(cell);
      }),
    );
  });
});

it("knows places that share a cell", () => {
  expect(overlap(place(0, 0, 2, 2), place(1, 1))).toBe(true);
  expect(overlap(place(0, 0, 2, 2), place(2, 0))).toBe(false);
  expect(overlap(place(0, 0), place(0, 0, 1, 1, "Lots"))).toBe(false);
});
