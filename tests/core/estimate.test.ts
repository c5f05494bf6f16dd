import { describe, expect, it } from "vitest";
import {
  between,
  bothNotes,
  combine,
  exactly,
  map,
  print,
  rounded,
  scale,
  sum,
  type Estimate,
} from "../../src/core/estimate.js";

const DEAD: Estimate = { ...exactly(0), dead: true };
const OPEN: Estimate = { low: 12, middle: 12, high: null, dead: false, note: "12 or more" };

describe("the sum of a hive's boxes", () => {
  it("adds lows to the low, middles to the middle and highs to the high", () => {
    // 7-8, 4 and 1-2: 7 + 4 + 1 = 12, 7.5 + 4 + 1.5 = 13, 8 + 4 + 2 = 14.
    expect(sum([between(7, 8), exactly(4), between(1, 2)])).toEqual({
      low: 12,
      middle: 13,
      high: 14,
      dead: false,
      note: "",
    });
  });

  it("has no upper end where one of its boxes has none, whichever", () => {
    expect(sum([OPEN, exactly(2)])).toMatchObject({ low: 14, middle: 14, high: null });
    expect(sum([exactly(2), OPEN, exactly(1)])).toMatchObject({ low: 15, middle: 15, high: null });
  });

  it("is dead where a box is and no other has bees", () => {
    expect(sum([DEAD, exactly(0)]).dead).toBe(true);
    expect(sum([exactly(0), DEAD]).dead).toBe(true);
    expect(sum([DEAD, exactly(3)]).dead).toBe(false);
    expect(sum([exactly(0), exactly(0)]).dead).toBe(false);
  });

  it("keeps what is to be known of each box", () => {
    const noted = (note: string): Estimate => ({ ...exactly(1), note });
    expect(sum([noted("one"), exactly(1), noted("two")]).note).toBe("one; two");
    expect(sum([noted("alone")]).note).toBe("alone");
    expect(bothNotes("", "second")).toBe("second");
    expect(bothNotes("first", "")).toBe("first");
    expect(bothNotes("the same", "the same")).toBe("the same");
  });

  it("of no box is nothing", () => {
    expect(sum([])).toEqual(exactly(0));
  });
});

describe("an estimate made of two", () => {
  const times = (a: number, b: number): number => a * b;

  it("has its ends from their ends, and none above where either has none", () => {
    // 2 x 3, 3 x 4, 4 x 5.
    const made = combine(between(2, 4), between(3, 5), times);
    expect(made).toMatchObject({ low: 6, middle: 12, high: 20 });
    expect(combine(OPEN, exactly(2), times)).toMatchObject({ low: 24, high: null });
    expect(combine(exactly(2), OPEN, times)).toMatchObject({ low: 24, high: null });
  });

  it("is dead as the first is, and says what is to be known of both", () => {
    expect(combine(DEAD, exactly(2), times).dead).toBe(true);
    expect(combine(exactly(2), DEAD, times).dead).toBe(false);
    expect(combine(between(1, 2, "seen"), between(1, 2, "read"), times).note).toBe("seen; read");
  });
});

describe("an estimate in another unit", () => {
  it("has each of its ends converted, its note kept, and no upper end where it had none", () => {
    // 12 x 2.5 = 30.
    expect(scale(OPEN, 2.5)).toEqual({ ...OPEN, low: 30, middle: 30, high: null });
    expect(map(between(4, 6, "seen"), (value) => value + 1)).toEqual(between(5, 7, "seen"));
  });
});

describe("an estimate as it would be said", () => {
  it.each<[Estimate, string]>([
    [exactly(7.5), "7.5"],
    [between(7, 8), "7-8"],
    [between(6.5, 7), "6.5-7"],
    [OPEN, "12+"],
    [DEAD, "dead"],
    [exactly(0), "0"],
    [exactly(0.1), "0.1"],
    // A ten-millionth, which JavaScript writes 1e-7.
    [exactly(1e-7), "0.0000001"],
    [between(1e-7, 7), "0.0000001-7"],
  ])("%o is %s", (estimate, text) => {
    expect(print(estimate)).toBe(text);
  });

  it("has a decimal comma and the sign of its unit where they are asked for", () => {
    expect(print(between(6.5, 7.5), ",")).toBe("6,5-7,5");
    expect(print(exactly(60), ".", "%")).toBe("60%");
    expect(print(between(62.5, 70), ",", "%")).toBe("62,5-70%");
    expect(print(DEAD, ",", "%")).toBe("dead");
  });
});

it("rounds a figure to two places for a sentence", () => {
  expect(rounded(7.996)).toBe(8);
  expect(rounded(7.994)).toBe(7.99);
  expect(rounded(-0.126)).toBe(-0.13);
});
