import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ageOf,
  casteOf,
  CASTES,
  daysToEmerge,
  development,
  eggDate,
  emergeDate,
  stageOf,
  type Caste,
  type Stage,
} from "../../src/core/clock.js";
import { Refusal } from "../../src/core/refusal.js";

const STAGES: readonly Stage[] = [
  "egg",
  "larva",
  "ready to cap",
  "just capped",
  "capped",
  "emerging",
];
const stagesOf = (caste: Caste): readonly Stage[] =>
  caste === "queen" ? [...STAGES, "grafted"] : STAGES;
const broods = fc
  .constantFrom(...CASTES)
  .chain((caste) => fc.constantFrom(...stagesOf(caste)).map((stage) => ({ caste, stage })));
/** Days of 2000 to 2099. */
const dates = fc.integer({ min: 36526, max: 73050 });

describe("the word for a stage", () => {
  it.each([
    ["egg", "egg"],
    ["Eggs", "egg"],
    ["larva", "larva"],
    ["larvae", "larva"],
    ["open", "larva"],
    ["open brood", "larva"],
    [" Unsealed  brood ", "larva"],
    ["ready to cap", "ready to cap"],
    ["ready-to-cap", "ready to cap"],
    ["pre-cap", "ready to cap"],
    ["just capped", "just capped"],
    ["freshly sealed", "just capped"],
    ["capped", "capped"],
    ["capped brood", "capped"],
    ["sealed", "capped"],
    ["pupae", "capped"],
    ["emerging brood", "emerging"],
  ])("%j is read as %s", (text, stage) => {
    for (const caste of CASTES) expect(stageOf(text, caste)).toBe(stage);
  });

  it("is grafted of a queen alone", () => {
    expect(stageOf("grafted", "queen")).toBe("grafted");
    expect(() => stageOf("grafted", "worker")).toThrow('"grafted" is no stage of a worker');
    expect(() => stageOf("grafted", "drone")).toThrow(Refusal);
  });

  it.each(["hatching", "brood", "ready brood to cap", "egg, larva", "3", "constructor", ""])(
    "is not %j",
    (text) => {
      expect(() => stageOf(text, "drone")).toThrow(
        "is no stage of a drone: its stages are egg, larva, ready to cap, just capped, capped, emerging",
      );
    },
  );
});

describe("the word for a caste", () => {
  it.each([
    [null, "worker"],
    ["Workers", "worker"],
    ["worker brood", "worker"],
    ["drone", "drone"],
    ["queen cell", "queen"],
    ["queen cells", "queen"],
  ])("%j is read as %s", (text, caste) => expect(casteOf(text)).toBe(caste));

  it.each(["bee", "work", "work brooder", "dsrone", ""])("is not %j", (text) => {
    expect(() => casteOf(text)).toThrow('"worker", "drone" or "queen" was expected');
  });
});

describe("any brood", () => {
  it("has its ends around what is expected", () => {
    fc.assert(
      fc.property(broods, dates, ({ caste, stage }, date) => {
        const spans = [daysToEmerge(stage, caste), emergeDate(date, stage, caste)];
        for (const { earliest, expected, latest } of [...spans, eggDate(date, stage, caste)]) {
          expect(earliest ?? expected).toBeLessThanOrEqual(expected);
          expect(expected).toBeLessThanOrEqual(latest);
        }
      }),
    );
  });

  it("was laid its total development before it emerges", () => {
    fc.assert(
      fc.property(broods, dates, ({ caste, stage }, date) => {
        const days = emergeDate(date, stage, caste).expected - eggDate(date, stage, caste).expected;
        expect(days).toBe(development(caste).expected);
      }),
    );
  });

  it("has whole dates no further out than a day past the days", () => {
    fc.assert(
      fc.property(broods, dates, ({ caste, stage }, date) => {
        const days = daysToEmerge(stage, caste);
        const on = emergeDate(date, stage, caste);
        for (const end of ["earliest", "expected", "latest"] as const) {
          expect(Number.isInteger(on[end])).toBe(true);
          expect(Math.abs(on[end] - date - days[end])).toBeLessThan(1);
        }
        expect(on.earliest - date).toBeLessThanOrEqual(days.earliest);
        expect(on.latest - date).toBeGreaterThanOrEqual(days.latest);
      }),
    );
  });

  it("was not laid after the day it is seen, nor emerged before it", () => {
    fc.assert(
      fc.property(broods, dates, ({ caste, stage }, date) => {
        expect(eggDate(date, stage, caste).latest).toBeLessThanOrEqual(date);
        expect(emergeDate(date, stage, caste).earliest).toBeGreaterThanOrEqual(date);
      }),
    );
  });
});

describe("emerging brood", () => {
  it("shows only the least age, so that no date is the earliest egg's", () => {
    for (const caste of CASTES) {
      expect(ageOf("emerging", caste).oldest).toBeNull();
      expect(eggDate(46101, "emerging", caste).earliest).toBeNull();
      expect(eggDate(46101, "emerging", caste).expected).toBe(46101 - development(caste).expected);
      expect(daysToEmerge("emerging", caste)).toEqual({ earliest: 0, expected: 0, latest: 0 });
    }
  });
});
