import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adultLoss } from "../../src/core/adult-loss.js";
import { cellsOfBrood } from "../../src/core/brood.js";
import { frameOf } from "../../src/core/comb.js";
import { emergence, ofAllStages, withLaying } from "../../src/core/emergence.js";
import { exactly } from "../../src/core/estimate.js";
import { averageForecast, cohort, forecast } from "../../src/core/forecast.js";
import { serialOfDay } from "../../src/core/serial.js";

const MARCH_28 = serialOfDay({ year: 2026, month: 3, day: 28 });
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const some = fc.integer({ min: 0, max: 60_000 });

describe("emergence", () => {
  it("is over by day 21 for workers and 24 for drones, by the life table", () => {
    // 3 + 6 + 12 and 3 + 7 + 14 days: Winston 1987, Jay 1963 (retold).
    expect(emergence([{ stage: "egg", cells: 300 }], "worker", 1)).toHaveLength(21);
    expect(emergence([{ stage: "egg", cells: 300 }], "drone", 1)).toHaveLength(24);
  });

  it("is alike on each day where eggs, open and capped stand 1 : 2 : 4", () => {
    // The steady ratio of ACT Beekeepers 2022 follows from the table's 3, 6 and 12 days.
    const steady = emergence(
      [
        { stage: "egg", cells: 100 },
        { stage: "larva", cells: 200 },
        { stage: "capped", cells: 400 },
      ],
      "worker",
      1,
    );
    for (const bees of steady) expect(bees).toBeCloseTo(100 / 3, 9);
  });

  it("of a fresh egg's laying comes within half a percent of the 0.851 that was counted", () => {
    // Fukuda & Sakagami 1968, doi 10.1007/BF02514731 (retold).
    const [last = 0] = withLaying(Array<number>(21).fill(0), 1000, 22).slice(21);
    expect(Math.abs(last / 1000 - 0.851)).toBeLessThan(0.005);
  });

  it.each([
    ["egg", 0.88],
    ["larva", 0.96],
    ["capped", 0.99],
  ] as const)("of %s leaves, from the middle of the stage, about %s", (stage, share) => {
    // Daily losses 0.03, 0.01, 0.001: Schmickl & Crailsheim 2007, p. 230 (retold, worked).
    const bees = sum(emergence([{ stage, cells: 1000 }], "worker"));
    expect(Math.abs(bees / 1000 - share)).toBeLessThan(0.012);
  });

  it("adds up to brood times what lives, whatever the stages", () => {
    fc.assert(
      fc.property(
        some,
        some,
        some,
        fc.integer({ min: 1, max: 100 }),
        (egg, open, capped, alive) => {
          const brood = [
            { stage: "egg", cells: egg },
            { stage: "larva", cells: open },
            { stage: "capped", cells: capped },
          ] as const;
          for (const caste of ["worker", "drone"] as const) {
            const bees = sum(emergence(brood, caste, alive / 100));
            expect(bees).toBeCloseTo(((egg + open + capped) * alive) / 100, 6);
          }
        },
      ),
    );
  });
});

describe("a frame of capped brood", () => {
  it.each([
    [80, 2.2],
    [100, 2.8],
  ])("%s %% filled, gives about %s frames of bees before adults die", (fill, frames) => {
    // Worked from 3,440 cells a side and 2,400 bees a frame (Sagili & Burgett 2011): 2.2 to 2.8.
    const deep = frameOf("deep");
    const cells = (cellsOfBrood(exactly(1), deep).middle * fill) / 100;
    const bees = sum(emergence([{ stage: "capped", cells }], "worker"));
    expect(Math.abs(bees / 2400 - frames)).toBeLessThan(0.1);
  });
});

describe("adults and time", () => {
  it("die at the rates of the field studies, by the months of the north", () => {
    // Worked on the control colonies of Schmolke et al. 2020; winter 1/190, Sumpter & Martin 2004.
    const on = (month: number, rears = true) =>
      adultLoss(null, rears)(serialOfDay({ year: 2026, month, day: 15 }));
    expect([3, 4, 5].map((month) => on(month))).toEqual([0.035, 0.035, 0.035]);
    expect([6, 7, 8].map((month) => on(month))).toEqual([0.055, 0.055, 0.055]);
    expect([9, 10, 11].map((month) => on(month))).toEqual([0.06, 0.06, 0.06]);
    expect(on(1, false)).toBeCloseTo(1 / 190, 3);
    expect(on(1)).toBe(0.035);
  });

  it("leave of a broodless cluster what the rate leaves", () => {
    // 0.965 ^ 20 = 0.4904
    const left = cohort({ bees: 10_000, emerging: [] }, MARCH_28, 20, () => 0.035);
    expect(left).toBeCloseTo(4904, 0);
  });
});

describe("a forecast", () => {
  const colony = (bees: number, brood: number) => ({
    bees,
    emerging: emergence(ofAllStages(brood), "worker"),
  });
  const loss = adultLoss(null, true);

  it("is never less for more bees or more brood, and lies in its band, which widens with time", () => {
    fc.assert(
      fc.property(some, some, some, fc.integer({ min: 0, max: 60 }), (bees, brood, more, days) => {
        const told = forecast(colony(bees, brood), MARCH_28, days, loss);
        expect(told.low).toBeLessThanOrEqual(told.middle);
        expect(told.middle).toBeLessThanOrEqual(told.high);
        const withBrood = forecast(colony(bees, brood + more), MARCH_28, days, loss);
        expect(withBrood.middle).toBeGreaterThanOrEqual(told.middle - 1e-6);
        const withBees = forecast(colony(bees + more, brood), MARCH_28, days, loss);
        expect(withBees.middle).toBeGreaterThanOrEqual(told.middle - 1e-6);
        if (bees === 0) return;
        const later = forecast(colony(bees, brood), MARCH_28, days + 1, loss);
        expect(later.high / later.middle).toBeGreaterThan(told.high / told.middle - 1e-9);
      }),
    );
  });

  it("of a lot keeps the part of its error that all hives share, however many they are", () => {
    // sd 0.24 of the logarithm from three weeks on (docs/forecast.md): 1.645 x 0.24 either way.
    const { low, middle, high } = averageForecast(Array<number>(1e6).fill(8), 21, 0);
    expect(Math.log(high / middle)).toBeCloseTo(1.645 * 0.24, 2);
    expect(Math.log(low / middle)).toBeCloseTo(-1.645 * 0.24, 2);
    const few = averageForecast([8, 8, 8, 8], 21, 0);
    expect(few.high).toBeGreaterThan(high);
  });

  it("of boxes that are full stays within them", () => {
    const told = forecast(colony(40_000, 60_000), MARCH_28, 14, loss, 46_000);
    expect(told.middle).toBe(46_000);
    expect(told.high).toBe(46_000);
  });
});
