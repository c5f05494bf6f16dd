import { describe, expect, it } from "vitest";
import { difference } from "../../src/core/compare.js";

describe("the difference of two lots", () => {
  it("has no interval where a lot is one hive, or no hive differs from its lot", () => {
    const open = (middle: number) => ({ middle, low: null, high: null });
    expect(difference([10], [8, 9], 95)).toEqual(open(1.5));
    expect(difference([10, 12], [8], 95)).toEqual(open(3));
    expect(difference([10, 10], [8, 8], 95)).toEqual(open(2));
  });

  it("has one where one lot's hives differ: its own degrees of freedom", () => {
    // 10 and 12: variance 2, of their mean 1; t of one degree 12.706.
    const found = difference([10, 12], [8, 8], 95);
    expect(found).toEqual({
      middle: 3,
      low: expect.closeTo(3 - 12.706, 3),
      high: expect.closeTo(3 + 12.706, 3),
    });
    expect(difference([8, 8], [10, 12], 95).middle).toBe(-3);
  });

  it("has one where both differ as much", () => {
    // Two means of variance 1: 4 / (1 + 1) = 2 degrees of freedom, t 4.3027 times the root of 2.
    const { low, high } = difference([10, 12], [8, 10], 95);
    expect([low, high]).toEqual([expect.closeTo(2 - 6.085, 3), expect.closeTo(2 + 6.085, 3)]);
  });

  it("is none of lots without hives", () => {
    for (const lots of [
      [[], [8]],
      [[8], []],
    ] as const) {
      expect(() => difference(lots[0], lots[1], 95)).toThrow("a lot without opened hives");
    }
  });
});
