import { describe, expect, it } from "vitest";
import { broodOfBoxes, broodOfCells, broodOfCombs, checkBrood } from "../../src/core/brood.js";
import { beganByAmounts } from "../../src/core/brood-start.js";
import { DEEP, frameOf } from "../../src/core/comb.js";
import { between, exactly } from "../../src/core/estimate.js";

describe("a hive's brood", () => {
  it("is combs by their cover, end by end: 6 to 8 combs at 50 to 60 %", () => {
    const { fullFrames, combs, cover } = broodOfBoxes(
      [between(6, 8)],
      [DEEP],
      [between(50, 60)],
      DEEP,
    );
    // 6 at 50, 7 at 55, 8 at 60 %.
    expect(fullFrames).toMatchObject({ low: 3, middle: 3.85, high: 4.8 });
    expect(combs).toEqual(between(6, 8));
    expect(cover?.low).toBeCloseTo(50, 10);
    expect(cover?.middle).toBeCloseTo(55, 10);
    expect(cover?.high).toBeCloseTo(60, 10);
  });

  it("is open where a count or a cover is", () => {
    const open = { ...exactly(8), high: null };
    expect(broodOfBoxes([open], [DEEP], [exactly(60)], DEEP).fullFrames?.high).toBeNull();
    expect(broodOfBoxes([open], [DEEP], [exactly(60)], DEEP).cover?.high).toBeNull();
    expect(broodOfBoxes([exactly(8)], [DEEP], [open], DEEP).fullFrames?.high).toBeNull();
    expect(broodOfBoxes([exactly(8)], [DEEP], [open], DEEP).cover?.high).toBeNull();
  });

  it("keeps what is to be known of counts and covers", () => {
    const noted = (value: number, note: string) => ({ ...exactly(value), note });
    const of = (count: string, cover: string) =>
      broodOfBoxes([noted(4, count)], [DEEP], [noted(50, cover)], DEEP).fullFrames?.note;
    expect(of("read back", "by eye")).toBe("read back; by eye");
    expect(of("", "by eye")).toBe("by eye");
    expect(of("read back", "")).toBe("read back");
  });

  it("is not known in full frames where one box's cover is not, but of an empty box", () => {
    const two = (second: number) =>
      broodOfBoxes([exactly(4), exactly(second)], [DEEP, DEEP], [exactly(50), null], DEEP);
    expect(two(2)).toEqual({ fullFrames: null, combs: exactly(6), cover: null });
    expect(two(0).fullFrames?.middle).toBe(2);
    // No comb of brood has no cover either.
    expect(broodOfBoxes([exactly(0)], [DEEP], [null], DEEP).cover?.middle).toBe(0);
  });

  it("is counted comb by comb: those that hold some, and how much of them", () => {
    const { fullFrames, combs, cover } = broodOfCombs(
      [exactly(80), exactly(0), exactly(40)],
      [DEEP, DEEP, DEEP],
      DEEP,
    );
    expect(fullFrames?.middle).toBeCloseTo(1.2, 10);
    expect(combs?.middle).toBe(2);
    expect(cover?.middle).toBe(60);
    expect(broodOfCombs([exactly(0)], [DEEP], DEEP).cover?.middle).toBe(0);
  });

  it("may be as much as its boxes hold, and no more", () => {
    const deep = 1 / broodOfCells(exactly(1), DEEP).fullFrames!.middle;
    expect(() => checkBrood(10 * deep, DEEP, 10)).not.toThrow();
    expect(() => checkBrood(10.06 * deep, DEEP, 10)).toThrow(
      "brood of 10.1 full frames is more than fits in 10 frames of comb",
    );
    expect(() => checkBrood(10 * deep, frameOf("medium"), 10)).toThrow(
      /more than fits in 10 frames/,
    );
  });
});

describe("how long rearing has gone on by the amounts", () => {
  const amounts = (eggs: number | null, open: number | null, capped: number | null) => ({
    eggs,
    open,
    capped,
  });

  it("refuses brood that is older than the oldest that was said", () => {
    for (const stage of ["egg", "larva", "ready to cap"] as const) {
      expect(() => beganByAmounts(stage, amounts(null, null, 5))).toThrow(
        `there is capped brood, and the oldest stage is said to be ${stage}`,
      );
    }
    expect(() => beganByAmounts("egg", amounts(4, 5, null))).toThrow(
      "there is open brood, and the oldest stage is said to be eggs",
    );
    expect(beganByAmounts("egg", amounts(4, null, null))).toBeNull();
    expect(beganByAmounts("emerging", amounts(1, 2, 4))).toBeNull();
  });

  it("is part of the stage by its share of what steady laying gives: eggs 3 days, open 6", () => {
    // As much open as eggs: half of 1 : 2, two thirds of 1 : 1.5; 3 + 6 x 0.5 and 3 + 6 x 0.667.
    const began = beganByAmounts("larva", amounts(1000, 1000, null))!;
    expect(began.least).toBeCloseTo(6, 10);
    expect(began.most).toBeCloseTo(7, 10);
  });

  it("is at least the whole stage where it is full", () => {
    expect(beganByAmounts("larva", amounts(1000, 2000, null))).toEqual({ least: 9, most: null });
    expect(beganByAmounts("larva", amounts(1000, 9000, null))).toEqual({ least: 9, most: null });
    // Full by the field's 1 : 1.5, and three quarters by 1 : 2.
    expect(beganByAmounts("larva", amounts(1000, 1500, null))).toEqual({ least: 7.5, most: null });
  });

  it("is not told where the stage before was not judged, or has none", () => {
    expect(beganByAmounts("larva", amounts(null, 1000, null))).toBeNull();
    expect(beganByAmounts("larva", amounts(0, 1000, null))).toBeNull();
    expect(beganByAmounts("larva", amounts(1000, null, null))).toBeNull();
    expect(beganByAmounts("capped", amounts(1000, 0, 2000))).toBeNull();
  });
});
