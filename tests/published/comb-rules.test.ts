import { describe, expect, it } from "vitest";
import { one } from "../functions/sheet.js";

// The three rules stand in contracts (common practice, no source); the sums are by hand.
const combs = (rule: string, ...covers: number[]) => one("FRAMES_OF_BEES", [covers], "combs", rule);
const sides = (rule: string, ...covers: number[]) => one("FRAMES_OF_BEES", [covers], "sides", rule);

describe("two-thirds covered", () => {
  it("counts a comb whole from two thirds on, and not at all below", () => {
    // 100, 80 and 67 reach 66.67; 66 and 50 do not: 3.
    expect(combs("two-thirds", 100, 80, 67, 66, 50)).toBe(3);
  });

  it("is the rule where none is named", () => {
    expect(one("FRAMES_OF_BEES", [[100, 80, 67, 66, 50]], "combs")).toBe(3);
  });

  it("takes the mean of a comb's two sides", () => {
    // (100 + 40) / 2 = 70, whole; (90 + 40) / 2 = 65, none: 1.
    expect(sides("two-thirds", 100, 40, 90, 40)).toBe(1);
  });
});

describe("three-quarters on both sides", () => {
  it("counts a comb whole where both sides reach it and pools the lesser ones", () => {
    // 90/80 whole; 60/60 is 0.60; 100/70 is 0.85 for its one short side; 75/75 whole:
    // 1 + 0.60 + 0.85 + 1 = 3.45.
    expect(sides("three-quarters", 90, 80, 60, 60, 100, 70, 75, 75)).toBeCloseTo(3.45, 12);
  });

  it("pools combs that are judged as one", () => {
    // 80 whole; 74 and 26 pooled make 0.74 + 0.26 = 1: 2.
    expect(combs("three-quarters", 80, 74, 26)).toBeCloseTo(2, 12);
  });
});

describe("the sum of covered parts", () => {
  it("adds what is covered", () => {
    // 1 + 0.80 + 0.67 + 0.50 + 0.25 = 3.22.
    expect(combs("sum of parts", 100, 80, 67, 50, 25)).toBeCloseTo(3.22, 12);
  });

  it("adds sides as halves", () => {
    // (100 + 50) / 200 + (30 + 0) / 200 = 0.75 + 0.15 = 0.90.
    expect(sides("sum of parts", 100, 50, 30, 0)).toBeCloseTo(0.9, 12);
  });
});

describe("a cluster count", () => {
  it("is the mean of the seams seen from above and from below, box by box", () => {
    // From memory. (8 + 6) / 2 + (4 + 1) / 2 = 7 + 2.5 = 9.5.
    expect(one("FRAMES_OF_BEES", [[8, 6, 4, 1]], "seams")).toBe(9.5);
  });

  it("cannot be made of covered combs", () => {
    expect(combs("cluster count", 100)).toMatch(/^#VALUE! .*cluster count.*seams/);
  });
});

it("gives the same combs three different strengths by three rules, so the contract must say which", () => {
  // 80, 70, 60, 50: two-thirds 2; three-quarters 1 + 0.7 + 0.6 + 0.5 = 2.8; sum 2.6.
  expect(combs("two-thirds", 80, 70, 60, 50)).toBe(2);
  expect(combs("three-quarters", 80, 70, 60, 50)).toBeCloseTo(2.8, 12);
  expect(combs("sum of parts", 80, 70, 60, 50)).toBeCloseTo(2.6, 12);
});
