import { describe, expect, it } from "vitest";
import { comb, one, terms } from "./sheet.js";

const MARCH_28 = 46109;

describe("a forecast beyond the brood of today", () => {
  // Worker brood takes 21 days (standard life table, Winston 1987): what is laid tomorrow is a bee
  // on the 22nd day.
  const on = (days: number, laying: unknown) =>
    one("FORECAST", 8, MARCH_28, MARCH_28 + days, 4, ...[null, null, null, null, null], laying);

  it("is not known where nobody says how the laying goes on", () => {
    expect(on(21, null)).toBeTypeOf("number");
    expect(on(22, null)).toMatch(/^#N\/A .*22 days ahead bees come of eggs that are not laid yet/);
    expect(on(22, 0)).toMatch(/^#N\/A /);
  });

  it("is told with a laying, and with none", () => {
    expect(on(40, 1200)).toBeGreaterThan(on(40, "none") as number);
    expect(on(40, "none")).toBeTypeOf("number");
    expect(on(10, "none")).toBe(on(10, null));
    expect(on(40, "some")).toMatch(/^#VALUE! .*"today", "none" or eggs a day/);
  });

  it("ends with the brood day by day, and goes on with a laying", () => {
    const days = (laying: unknown) =>
      comb("FORECAST_DAYS", 8, MARCH_28, null, 4, ...[null, null, null, null, null], laying);
    expect(days(null)).toHaveLength(1 + 22);
    expect(days("today")).toHaveLength(1 + 31);
  });

  it("spoils of a lot's dates only its own", () => {
    const yard = [
      ["Hive", "Date", "Bees", "Brood", "Brood %"],
      ["A1", MARCH_28, 8, 4, 60],
      ["A2", MARCH_28, 9, 5, 60],
    ];
    const dates = [[MARCH_28 + 10, MARCH_28 + 30]];
    const [, near, far] = comb("LOT_FORECAST", yard, dates, null, terms(["average frames", 8]));
    expect(near![2]).toBeTypeOf("number");
    expect(far!.slice(0, 3)).toEqual([MARCH_28 + 30, far![2], far![2]]);
    expect(far![2]).toMatch(/^#N\/A /);
    expect(far![8]).toContain("eggs that are not laid yet");
  });
});
