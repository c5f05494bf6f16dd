import { describe, expect, it } from "vitest";
import type { Contract, Grade } from "../../src/core/contract.js";
import { checkContract, Contradiction } from "../../src/core/contract-check.js";
import { standardContract } from "../../src/core/standards.js";

/** 8 frames on average, 6 at least, nothing else. */
const PLAIN = standardContract("Almond Board of California");
const grade = (name: string, frames: number, brood = 0, fee = 0): Grade => ({
  name,
  frames,
  brood,
  fee,
});

function fault(terms: Partial<Contract>): [string, ...string[]] | null {
  try {
    checkContract({ ...PLAIN, ...terms });
    return null;
  } catch (error) {
    if (!(error instanceof Contradiction)) throw error;
    return [error.message, ...error.terms];
  }
}

describe("a contract whose terms contradict each other is refused, the terms named", () => {
  it.each<[Partial<Contract>, string, ...string[]]>([
    [
      { minimumFrames: 9 },
      "minimum frames 9 is over average frames 8",
      "minimum frames",
      "average frames",
    ],
    [
      { mostFrames: 7 },
      "most frames a hive is 7, and the contract asks 8",
      "most frames a hive",
      "average frames",
    ],
    [
      { averageFrames: 0, mostFrames: 5 },
      "most frames a hive is 5, and the contract asks 6",
      "most frames a hive",
      "minimum frames",
    ],
    [
      { averageFrames: 6, mostFrames: 5 },
      "most frames a hive is 5, and the contract asks 6",
      "most frames a hive",
      "average frames",
    ],
    [
      { averageFrames: 0, bonus: 2 },
      "bonus a frame goes by average frames, which are not given",
      "bonus a frame",
      "average frames",
    ],
    [
      { averageFrames: 0, proRata: true },
      "pro rata goes by average frames, which are not given",
      "pro rata",
      "average frames",
    ],
    [
      { bonusCeiling: 20 },
      "bonus ceiling stands without a bonus a frame",
      "bonus ceiling",
      "bonus a frame",
    ],
    [
      { broodCombCover: 50, broodMeasure: "full frames" },
      'brood comb covered is only read where brood is counted as "combs"',
      "brood comb covered",
      "brood counted as",
    ],
    [
      { baseFee: 60, grades: [grade("Best", 10), grade("Good", 8, 0, 40)] },
      "base fee and the grades' own fees stand side by side: give one of them",
      "base fee",
      "grade 2 fee",
    ],
    [
      { inspectFromHour: 15, inspectToHour: 15 },
      "inspect from hour 15 is not before inspect to hour 15",
      "inspect from hour",
      "inspect to hour",
    ],
    [
      { grades: [grade("Best", 10), grade("Dead-out", 8)] },
      'grade 2 is named "Dead-out", which means none: rename it',
      "grade 2 name",
    ],
    [
      { grades: [grade("No Grade", 10)] },
      'grade 1 is named "No Grade", which means none: rename it',
      "grade 1 name",
    ],
    [
      { grades: [grade("Best", 10), grade("Good", 8), grade("BEST", 6)] },
      'two grades are named "BEST"',
      "grade 1 name",
      "grade 3 name",
    ],
    [
      { grades: [grade("Good", 8), grade("Best", 10)] },
      'grade 2 "Best" does not ask less than grade 1 "Good": put the best grade first',
      "grade 2 frames",
      "grade 1 frames",
    ],
    [
      { grades: [grade("Best", 10, 2), grade("Good", 8, 3)] },
      'grade 2 "Good" does not ask less than grade 1 "Best": put the best grade first',
      "grade 2 brood",
      "grade 1 brood",
    ],
    [
      { grades: [grade("Best", 8, 2), grade("Same", 8, 2)] },
      'grade 2 "Same" does not ask less than grade 1 "Best": put the best grade first',
      "grade 2 frames",
      "grade 1 frames",
    ],
    [
      { grades: [grade("Best", 5)] },
      'minimum frames 6 is over the 5 that the best grade, "Best", asks',
      "minimum frames",
      "grade 1 frames",
    ],
  ])("%o", (terms, ...expected) => {
    expect(fault(terms)).toEqual(expected);
  });

  it.each<Partial<Contract>>([
    {},
    { minimumFrames: 8 },
    { averageFrames: 0, minimumFrames: 9 },
    { mostFrames: 8 },
    { bonus: 2, bonusCeiling: 20 },
    { proRata: true },
    { broodCombCover: 50, broodMeasure: "combs" },
    { baseFee: 60, grades: [grade("Best", 10)] },
    { inspectFromHour: 10, inspectToHour: 11 },
    { grades: [grade("Best", 8, 3), grade("Good", 8, 2)] },
    { grades: [grade("Best", 10, 2), grade("Good", 8, 2)] },
    { grades: [grade("Best", 6)] },
    // Graded by its brood alone.
    { grades: [grade("Brood", 0, 3)] },
  ])("and one whose terms go together is not: %o", (terms) => {
    expect(fault(terms)).toBeNull();
  });
});
