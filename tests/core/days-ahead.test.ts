import { describe, expect, it } from "vitest";
import { daysAhead, lotStart } from "../../src/core/days-ahead.js";

const hive = (seen: number, least: number, most: number | null) => ({
  seen,
  began: { least, most },
});

describe("when a lot began to rear", () => {
  it("is the mean of its hives, with Student's margin of how they differ", () => {
    const start = lotStart([hive(101, 1, 11), hive(102, 0, 12), hive(103, 0, 7)], 95);
    // Latest on days 100, 102, 103: mean 101.667; earliest on 90, 90, 96: mean 92.
    expect(start.latest).toBeCloseTo(101.6667, 4);
    expect(start.earliest).toBeCloseTo(92, 10);
    expect(start.pastClock).toBe(0);
    // Squares 2.778 + 0.111 + 1.778 = 4.667; se = sqrt(4.667 / 2 / 3) = 0.8819; any table of t gives
    // 4.303 for 95 % both sides and 2 degrees of freedom.
    expect(start.margin).toBeCloseTo(0.8819 * 4.3027, 2);
  });

  it("has a margin from two hives on: t is 12.706 for one degree of freedom", () => {
    // Days 100 and 110: sd 7.071, se 5.
    expect(lotStart([hive(100, 0, 3), hive(110, 0, 3)], 95).margin).toBeCloseTo(5 * 12.706, 2);
    expect(lotStart([hive(100, 0, 3)], 95).margin).toBeNull();
  });

  it("is open to the past where a hive is past the clock", () => {
    const start = lotStart([hive(100, 19, null), hive(100, 9, 22)], 95);
    expect([start.earliest, start.pastClock]).toEqual([null, 1]);
  });
});

describe("how many days one lot began before another", () => {
  const lot = (earliest: number | null, latest: number, margin: number | null) => ({
    earliest,
    latest,
    margin,
    pastClock: earliest === null ? 1 : 0,
  });

  it("takes both margins as of independent errors: 3 and 4 make 5", () => {
    // 100 - 85 - 5 at least, 108 - 80 + 5 at most.
    expect(daysAhead(lot(80, 85, 3), lot(100, 108, 4))).toEqual({ low: 10, high: 33 });
  });

  it("takes a single hive's margin as none", () => {
    expect(daysAhead(lot(80, 85, null), lot(100, 108, 4))).toEqual({ low: 11, high: 32 });
    expect(daysAhead(lot(80, 85, 4), lot(100, 108, null))).toEqual({ low: 11, high: 32 });
  });

  it("has only an end where one is past the clock, and none where both are", () => {
    expect(daysAhead(lot(null, 85, null), lot(100, 108, null))).toEqual({ low: 15, high: null });
    expect(daysAhead(lot(80, 85, null), lot(null, 108, null))).toEqual({ low: null, high: 28 });
    expect(daysAhead(lot(null, 85, null), lot(null, 108, null))).toEqual({ low: null, high: null });
  });
});
