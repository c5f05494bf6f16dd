import { describe, expect, it } from "vitest";
import { DEEP, frameOf } from "../../src/core/comb.js";
import { between, exactly, type Estimate } from "../../src/core/estimate.js";
import { framesOfSeams } from "../../src/core/seams.js";
import { framesOfBees } from "../../src/core/strength.js";

const deeps = Array<typeof DEEP>(4).fill(DEEP);
const AT_LEAST_60: Estimate = {
  low: 60,
  middle: 60,
  high: null,
  dead: false,
  note: "60 or more, counted as 60",
};

describe("frames of bees of covered combs", () => {
  it("go through each rule by the low, the middle and the high of a comb", () => {
    // 60 to 80 %, middle 70: two thirds are reached by 70 and 80, three quarters by 80 alone.
    const cover = [between(60, 80)];
    const found = (rule: "two-thirds" | "three-quarters" | "sum of parts") => {
      const { low, middle, high } = framesOfBees(cover, "combs", rule, deeps, DEEP);
      return [low, middle, high];
    };
    expect(found("two-thirds")).toEqual([0, 1, 1]);
    expect(found("three-quarters")).toEqual([0.6, 0.7, 1]);
    expect(found("sum of parts")).toEqual([0.6, 0.7, 0.8]);
  });

  it("take an open end for the whole comb, which is the most it can be", () => {
    const one = framesOfBees([AT_LEAST_60], "combs", "sum of parts", deeps, DEEP);
    expect(one).toEqual({ ...AT_LEAST_60, low: 0.6, middle: 0.6, high: 1 });
    // (60 + 50) / 200 at least, and (100 + 50) / 200 at most, whichever side is the open one.
    for (const sides of [
      [AT_LEAST_60, exactly(50)],
      [exactly(50), AT_LEAST_60],
    ]) {
      const { low, high } = framesOfBees(sides, "sides", "sum of parts", deeps, DEEP);
      expect([low, high]).toEqual([0.55, 0.75]);
    }
  });

  it("say once what both sides say, and both where they say two things", () => {
    const noted = (note: string): Estimate => ({ ...exactly(80), note });
    const noteOf = (...sides: Estimate[]) =>
      framesOfBees(sides, "sides", "two-thirds", deeps, DEEP).note;
    expect(noteOf(noted("one"), noted("one"))).toBe("one");
    expect(noteOf(noted("one"), noted("other"))).toBe("one; other");
    expect(noteOf(noted(""), noted("other"))).toBe("other");
  });

  it("know a dead-out", () => {
    const dead: Estimate = { ...exactly(0), dead: true };
    expect(framesOfBees([dead], "combs", "two-thirds", deeps, DEEP).dead).toBe(true);
    expect(framesOfBees([exactly(0)], "combs", "two-thirds", deeps, DEEP).dead).toBe(false);
  });

  it.each(["sides", "seams"] as const)("need %s two and two", (are) => {
    const three = [exactly(80), exactly(80), exactly(80)];
    expect(() => framesOfBees(three, are, "two-thirds", deeps, DEEP)).toThrow(
      `${are} stand two and two: give an even number of columns, not 3`,
    );
  });

  it("take the frame of each pair's first column for the box", () => {
    // A cluster count of 8 and 6 is 7 mediums, of 4 and 2 it is 3 deeps. Foundation 5.5 and 8.625
    // inches high (sources.ts), and as wide: 7 x 5.5 / 8.625 + 3 = 7.4638.
    const sizes = [frameOf("medium"), frameOf("medium"), DEEP, DEEP];
    const seams = [8, 6, 4, 2].map(exactly);
    expect(framesOfBees(seams, "seams", "cluster count", sizes, DEEP).middle).toBeCloseTo(
      7.4638,
      4,
    );
  });
});

it("makes deep frames of seams by what the bees of one were found to cover in its month", () => {
  // 630, 600 and 912 cm2 a seam (Ohio State / EPA 2015) over both sides of 134 in2 at 6.4516 cm2,
  // 1,729.03 cm2: ten seams are 3.644, 3.470 and 5.275 frames.
  const ten = (month: "april" | "may" | "june") => framesOfSeams(exactly(10), month).middle;
  expect(ten("april")).toBeCloseTo(3.644, 3);
  expect(ten("may")).toBeCloseTo(3.47, 3);
  expect(ten("june")).toBeCloseTo(5.275, 3);
});
