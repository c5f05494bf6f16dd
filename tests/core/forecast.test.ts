import { describe, expect, it } from "vitest";
import {
  averageForecast,
  cohort,
  forecast,
  hiveError,
  sharedError,
  withinError,
} from "../../src/core/forecast.js";

describe("what brood and deaths alone leave", () => {
  it("loses of those there are, and from the next day on of those that emerge", () => {
    const colony = { bees: 1000, emerging: [100] };
    // 1000 x 0.9 + 100; (900 + 100) x 0.9.
    expect(cohort(colony, 46_110, 1, () => 0.1)).toBeCloseTo(1000, 9);
    expect(cohort(colony, 46_110, 2, () => 0.1)).toBeCloseTo(900, 9);
    expect(cohort(colony, 46_110, 0, () => 0.1)).toBe(1000);
  });

  it("asks the loss of the day that it takes it for", () => {
    const onlyOn = (day: number) => (date: number) => (date === day ? 0.5 : 0);
    const colony = { bees: 1000, emerging: [] };
    expect(cohort(colony, 46_110, 2, onlyOn(46_110))).toBe(1000);
    expect(cohort(colony, 46_110, 2, onlyOn(46_112))).toBe(500);
    expect(cohort(colony, 46_110, 2, onlyOn(46_113))).toBe(1000);
  });
});

describe("a hive's forecast", () => {
  it("goes half of the way, as a power of the ratio", () => {
    // 1000 x 0.8 x 0.8 = 640 are left, root of 0.64 is 0.8.
    const { middle } = forecast({ bees: 1000, emerging: [] }, 46_110, 2, () => 0.2);
    expect(middle).toBeCloseTo(800, 9);
  });

  it("raises no bees without bees", () => {
    const none = forecast({ bees: 0, emerging: [100] }, 46_110, 2, () => 0.2);
    expect(none).toEqual({ middle: 0, low: 0, high: 0 });
  });

  it("has on the day itself the band of what two observers differ by, 15 %", () => {
    // exp(-1.76 x 0.15) = 0.76797, exp(1.21 x 0.15) = 1.19902.
    const today = forecast({ bees: 1000, emerging: [] }, 46_110, 0, () => 0.2);
    expect(today.low).toBeCloseTo(767.97, 1);
    expect(today.high).toBeCloseTo(1199.02, 1);
  });

  it("ends where the boxes are full", () => {
    const full = forecast({ bees: 10_000, emerging: [] }, 46_110, 0, () => 0, 5000);
    expect(full).toEqual({ middle: 5000, low: 5000, high: 5000 });
  });
});

it("errs by 0.35 a hive and 0.24 in common from three weeks on, and more past 32 days", () => {
  // Half of three weeks: root of (0.15² + half of 0.35² - 0.15²) = root of 0.0725, 0.24 x root of a half.
  // 64 days: root of (0.15² + 2 x 0.1) = root of 0.2225, 0.24 x root 2.
  for (const [days, within, shared] of [
    [0, 0.15, 0],
    [10.5, 0.26926, 0.16971],
    [21, 0.35, 0.24],
    [32, 0.35, 0.24],
    [64, 0.4717, 0.33941],
  ] as const) {
    expect(withinError(days)).toBeCloseTo(within, 5);
    expect(sharedError(days)).toBeCloseTo(shared, 5);
    expect(hiveError(days)).toBeCloseTo(Math.hypot(within, shared), 5);
  }
});

describe("the average of a lot", () => {
  it("errs by what the hives share, by a part of their own, and by what was not opened", () => {
    // 0.24² + 0.35² / 2 + (0.9 / 9)² = 0.12885, root 0.35896; x 1.64485 = 0.59044, e to it 1.8048.
    const { middle, low, high, error } = averageForecast([8, 10], 21, 0.9);
    expect(middle).toBe(9);
    expect(error).toBeCloseTo(0.35896, 5);
    expect(low).toBeCloseTo(9 / 1.8048, 3);
    expect(high).toBeCloseTo(9 * 1.8048, 3);
  });

  it("is none of hives without bees", () => {
    expect(averageForecast([0, 0], 21, 0)).toEqual({ middle: 0, low: 0, high: 0, error: 0 });
  });
});
