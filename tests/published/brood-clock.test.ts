import { describe, expect, it } from "vitest";
import {
  CASTES,
  daysToEmerge,
  development,
  eggDate,
  emergeDate,
  type Caste,
  type Span,
  type Stage,
} from "../../src/core/clock.js";
import { serial } from "../functions/sheet.js";

/**
 * Days from laying in which a cell is seen as each, by the standard life table (Winston 1987; Jay
 * 1963; retold): worker 3/6/12, drone 3/7/14, queen 3/5.5/7.5.
 */
const TABLE: Record<Caste, Partial<Record<Stage, [number, number]>>> = {
  worker: { egg: [0, 3], larva: [3, 9], capped: [9, 21] },
  drone: { egg: [0, 3], larva: [3, 10], capped: [10, 24] },
  queen: { egg: [0, 3], larva: [3, 8.5], capped: [8.5, 16] },
};
const TOTAL: Record<Caste, number> = { worker: 21, drone: 24, queen: 16 };

const seenOn = (caste: Caste, day: number) =>
  Object.entries(TABLE[caste])
    .filter(([, [from, to]]) => from <= day && day <= to)
    .map(([stage]) => stage as Stage);

function expectInside({ earliest, latest }: Span, value: number): void {
  expect(value).toBeGreaterThanOrEqual(earliest! - 1e-9);
  expect(value).toBeLessThanOrEqual(latest + 1e-9);
}

describe.each(CASTES)("a %s, day by day", (caste) => {
  const laid = serial(2026, 3, 1);
  const days = Array.from({ length: TOTAL[caste] + 1 }, (_, day) => day);

  it("takes the days of the life table", () => {
    expect(development(caste).expected).toBe(TOTAL[caste]);
  });

  it.each(days)("whose egg was laid on day 0, seen on day %d, emerges on its day", (day) => {
    expect(seenOn(caste, day).length).toBeGreaterThan(0);
    for (const stage of seenOn(caste, day)) {
      expectInside(daysToEmerge(stage, caste), TOTAL[caste] - day);
      expectInside(emergeDate(laid + day, stage, caste), laid + TOTAL[caste]);
      expectInside(eggDate(laid + day, stage, caste), laid);
    }
  });

  it("emerges within half a stage of what is expected, wherever in its stage it is seen", () => {
    for (const day of days) {
      for (const stage of seenOn(caste, day)) {
        const [from, to] = TABLE[caste][stage]!;
        const off = daysToEmerge(stage, caste).expected - (TOTAL[caste] - day);
        expect(Math.abs(off)).toBeLessThanOrEqual((to - from) / 2);
      }
    }
  });
});

describe("the spread of workers that was measured", () => {
  // Bartlett, CDP2020 data (worked): emergence after 20.3 days, sd 0.6, n 78, Georgia.
  const [MEAN, SD] = [20.3, 0.6];

  it("lies inside earliest to latest of an egg laid today, up to two sd", () => {
    expectInside(development("worker"), MEAN - 2 * SD);
    expectInside(development("worker"), MEAN - SD);
    expectInside(development("worker"), MEAN + SD);
    expectInside(development("worker"), MEAN + 2 * SD);
  });

  it("sets the earliest; the latest stands two sd after the life table's 21", () => {
    expect(development("worker").earliest).toBeCloseTo(19.1, 9);
    expect(development("worker").latest).toBeCloseTo(22.2, 9);
  });

  it("lies inside whatever day the brood is seen on", () => {
    for (let day = 0; day <= 19; day++) {
      for (const stage of seenOn("worker", day)) {
        expectInside(daysToEmerge(stage, "worker"), MEAN - 2 * SD - day);
        expectInside(daysToEmerge(stage, "worker"), MEAN + 2 * SD - day);
      }
    }
  });

  it("puts the egg of a worker that emerges today 19.1 days back at the latest", () => {
    const today = serial(2026, 3, 20);
    expect(eggDate(today, "emerging", "worker").latest).toBe(today - 19);
  });
});

it("expects a queen 12 to 13 days after the graft, as 3/5.5/7.5 and a larva of at most a day make it", () => {
  // 16 - 3 = 13 down to 16 - 4 = 12 by the table; the larva's age is practice.
  const { expected } = daysToEmerge("grafted", "queen");
  expect(expected).toBeGreaterThanOrEqual(12);
  expect(expected).toBeLessThanOrEqual(13);
});
