import { describe, expect, it } from "vitest";
import { filled, isThere, turned, typed, unexpected } from "../../src/pane/stands.js";
import { at } from "./port-contract.js";

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
