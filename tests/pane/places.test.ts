import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { absolute, address, placeOf, within } from "../../src/pane/places.js";
import type { Place } from "../../src/pane/port.js";
import { filled, isThere, turned, typed, unexpected } from "../../src/pane/stands.js";
import { at } from "./port-contract.js";

const place: fc.Arbitrary<Place> = fc
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
      fc.property(place, (where) => {
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
      fc.property(place, place, (a, other) => {
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

describe("a text", () => {
  // What Excel takes for a number, a date, an hour, an amount, a formula, a truth value; from memory.
  it.each(
    "7-8|7/8|1 1/2|50%|1e5|8-Jul|Jul 8|8 juli 2026|5:30|5 PM|$5|5 €|kr 5|-3|+3|=A1|@x|'x|TRUE|false|#N/A|(5)".split(
      "|",
    ),
  )("that would turn is typed with an apostrophe: %s", (text) => {
    expect(typed(text, "General")).toBe(`'${text}`);
    expect(typed(text, "@")).toBe(text);
  });

  it.each(["Hive", "S01", "grade 1 name", "8 or more", "two-thirds", "", "not opened"])(
    "that would not is typed as it is: %s",
    (text) => {
      expect(typed(text, "General")).toBe(text);
    },
  );
});

describe("what stands", () => {
  const where = at("Yard", 4, 2, 2, 2);

  it("is told by its first cell that is not as expected", () => {
    const now = [
      [1, "a"],
      ["", true],
    ];
    expect(unexpected(where, now, now)).toBeNull();
    expect(
      unexpected(where, now, [
        [1, "a"],
        ["x", true],
      ]),
    ).toBe(`Yard!C6 holds nothing where "x" stood when it was read`);
    expect(
      unexpected(where, now, [
        ["1", "a"],
        ["", true],
      ]),
    ).toMatch(/^Yard!C5/);
    expect(filled(where, now)).toBe(`Yard!C5 holds "1" and must be blank`);
  });

  it("may be a formula spelt otherwise, but no other number, text or blank", () => {
    const cell = at("Yard", 4, 2, 1, 1);
    expect(turned(cell, [["=SUM(A1)"]], [["=sum( a1)"]])).toBeNull();
    expect(turned(cell, [["7-8"]], [["'7-8"]])).toBeNull();
    // Excel keeps 15 digits of a number (Excel specifications and limits).
    expect(turned(cell, [[10.4166666666667]], [[10.416666666666666]])).toBeNull();
    expect(isThere(10.4166666666667, "", 10.416666666666666)).toBe(true);
    for (const [now, put] of [
      [46_211, "7-8"],
      ["", 9],
      ["", "=A1"],
      [9, ""],
      [0, false],
      [10.416666666666, 10.416666666666666],
    ] as const) {
      expect(turned(cell, [[now]], [[put]])).toMatch(/^Yard!C5 would hold/);
    }
  });
});
