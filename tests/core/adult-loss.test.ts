import { describe, expect, it } from "vitest";
import { adultLoss } from "../../src/core/adult-loss.js";
import { serial } from "../functions/sheet.js";

// Shares a day as docs/sources.md has them.
const [BUILD_UP, SUMMER, AUTUMN, WINTER] = [0.035, 0.055, 0.06, 0.005];

describe("the daily loss of adult bees", () => {
  it.each([
    [2, 28, WINTER],
    [3, 1, BUILD_UP],
    [5, 31, BUILD_UP],
    [6, 1, SUMMER],
    [8, 31, SUMMER],
    [9, 1, AUTUMN],
    [11, 30, AUTUMN],
    [12, 1, WINTER],
    [1, 15, WINTER],
  ])("of a hive without brood in month %d, on day %d, is %d", (month, day, share) =>
    expect(adultLoss(null, false)(serial(2026, month, day))).toBe(share),
  );

  it("is that of build-up in winter where brood is reared", () => {
    const rearing = adultLoss(null, true);
    expect([rearing(serial(2026, 1, 15)), rearing(serial(2026, 7, 1))]).toEqual([BUILD_UP, SUMMER]);
  });

  it("is the season's, or the user's own, whatever the day", () => {
    const january = serial(2026, 1, 15);
    const of = (season: Parameters<typeof adultLoss>[0]) => adultLoss(season, false)(january);
    expect((["build-up", "summer", "autumn", "winter"] as const).map(of)).toEqual([
      BUILD_UP,
      SUMMER,
      AUTUMN,
      WINTER,
    ]);
    expect(of(0.02)).toBe(0.02);
  });
});
