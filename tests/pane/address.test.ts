import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  absolute,
  address,
  cellAt,
  cellName,
  columnName,
  placeOf,
  rangeName,
  sheetName,
  within,
} from "../../src/pane/address.js";
import type { Place } from "../../src/pane/port.js";
import { at } from "./port-contract.js";

const anyPlace: fc.Arbitrary<Place> = fc
  .record({
    sheet: fc.string({ unit: "grapheme", minLength: 1, maxLength: 31 }),
    row: fc.integer({ min: 0, max: 1_048_575 }),
    column: fc.integer({ min: 0, max: 16_383 }),
    height: fc.integer({ min: 1, max: 1_048_576 }),
    width: fc.integer({ min: 1, max: 16_384 }),
  })
  .map(({ sheet, row, column, height, width }) => ({
    sheet,
    row,
    column,
    rows: Math.min(height, 1_048_576 - row),
    columns: Math.min(width, 16_384 - column),
  }));

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
  expect(rangeName(at("Yard", 0, 0, 61, 11))).toBe("A1:K61");
  expect(rangeName(at("Yard", 4, 1, 1, 1))).toBe("B5");
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
  expect(address(at("Yard", 0, 0, 61, 11), "Yard")).toBe("A1:K61");
  expect(address(at("My yard", 0, 0, 61, 11), "Lots")).toBe("'My yard'!A1:K61");
  expect(absolute(at("My A1", 0, 0, 31, 4), "Yard")).toBe("'My A1'!$A$1:$D$31");
});

describe("a cell that is typed", () => {
  it.each([
    ["M1", at("Yard", 0, 12, 1, 1)],
    [" $m$1 ", at("Yard", 0, 12, 1, 1)],
    ["Lots!B5", at("Lots", 4, 1, 1, 1)],
    ["'Bees''26'!XFD1048576", at("Bees'26", 1048575, 16383, 1, 1)],
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
        const cell = at(sheet, row, column, 1, 1);
        expect(cellAt(`${sheetName(sheet)}!${cellName(row, column)}`, "Yard")).toEqual(cell);
      }),
    );
  });
});

describe("an address", () => {
  // Excel's last cell is XFD1048576 (Excel specifications and limits).
  it.each([
    [at("Yard", 0, 0, 1, 1), "Yard!A1"],
    [at("Yard", 4, 2, 2, 1), "Yard!C5:C6"],
    [at("Yard", 1_048_575, 16_383, 1, 1), "Yard!XFD1048576"],
    [at("Yard", 0, 25, 1, 2), "Yard!Z1:AA1"],
    [at("North yard", 0, 701, 1, 2), "'North yard'!ZZ1:AAA1"],
    [at("Bob's", 0, 0, 1, 1), "'Bob''s'!A1"],
    [at("S1", 0, 0, 1, 1), "'S1'!A1"],
    [at("R1C1", 0, 0, 1, 1), "'R1C1'!A1"],
    [at("2026", 0, 0, 1, 1), "'2026'!A1"],
    [at("Früh", 0, 0, 1, 1), "'Früh'!A1"],
  ])("of %j is %s", (where, text) => {
    expect(address(where)).toBe(text);
    expect(placeOf(text)).toEqual(where);
  });

  it("is read back as the place it was made from, also with dollar signs", () => {
    fc.assert(
      fc.property(anyPlace, (where) => {
        expect(placeOf(address(where))).toEqual(where);
        expect(placeOf(absolute(where))).toEqual(where);
      }),
    );
  });

  it("of whole columns or rows reaches to the end of the sheet", () => {
    expect(placeOf("Yard!$B:$C")).toEqual(at("Yard", 0, 1, 1_048_576, 2));
    expect(placeOf("Yard!2:3")).toEqual(at("Yard", 1, 0, 2, 16_384));
  });

  it.each([
    "Yard!A1:B2,Yard!C3",
    "#REF!",
    "A1",
    "Hives[#All]",
    "OFFSET(Yard!A1,1,1)",
    "Yard!A",
    "0.19",
  ])("is not %s", (text) => {
    expect(placeOf(text)).toBeNull();
  });

  it("has what two places share within both", () => {
    fc.assert(
      fc.property(anyPlace, anyPlace, (a, other) => {
        const b = { ...other, sheet: a.sheet };
        const both = within(a, b);
        expect(within(b, a)).toEqual(both);
        if (both === null) return;
        expect(within(both, a)).toEqual(both);
        expect(within(both, b)).toEqual(both);
      }),
    );
    expect(within(at("Yard", 0, 0, 2, 2), at("Terms", 0, 0, 2, 2))).toBeNull();
    expect(within(at("Yard", 0, 0, 2, 2), at("Yard", 2, 0, 2, 2))).toBeNull();
  });
});
