import { describe, expect, it } from "vitest";
import { frameOf } from "../../src/core/comb.js";
import { between, exactly } from "../../src/core/estimate.js";
import {
  checkUnit,
  heft,
  honeyOfFrame,
  honeyOfFrames,
  storesInPounds,
} from "../../src/core/stores.js";

describe("honey in a full frame", () => {
  it("is 6 to 8 lb of a deep and 3.5 to 4 of a medium, as published (see SOURCES)", () => {
    expect(honeyOfFrame(frameOf("deep"))).toEqual({ least: 6, most: 8 });
    const { least, most } = honeyOfFrame(frameOf("medium"));
    expect(least).toBeCloseTo(3.5, 10);
    expect(most).toBeCloseTo(4, 10);
  });

  it("is half way between the two for a frame half way between them", () => {
    // 7.0625 in between 5.5 and 8.625: 3.5 to 6 and 4 to 8.
    const { least, most } = honeyOfFrame(frameOf("16.75 x 7.0625 in foundation"));
    expect(least).toBeCloseTo(4.75, 10);
    expect(most).toBeCloseTo(6, 10);
  });

  it("is as much a cm2 as the nearer of the two beyond them", () => {
    // A shallow is 4.875 of a medium's 5.5 in, a Dadant 1,125 of a deep's 864.5 cm2.
    expect(honeyOfFrame(frameOf("shallow")).least).toBeCloseTo((3.5 * 4.875) / 5.5, 10);
    expect(honeyOfFrame(frameOf("dadant")).most).toBeCloseTo((8 * 1125) / (134 * 6.4516), 10);
  });

  it("is counted end by end: 2 to 3 deeps are 12 to 24 lb, in the middle 2.5 of 7", () => {
    const deep = frameOf("deep");
    expect(honeyOfFrames(between(2, 3), deep)).toEqual({ ...between(12, 24), middle: 17.5 });
    expect(honeyOfFrames({ ...exactly(2), high: null }, deep)).toMatchObject({
      low: 12,
      high: null,
    });
  });

  it("grows with the comb on either side of the two, and between them", () => {
    const [shallow, medium, deep, dadant] = ["shallow", "medium", "deep", "Dadant"].map((name) =>
      honeyOfFrame(frameOf(name)),
    );
    for (const end of ["least", "most"] as const) {
      expect(shallow![end]).toBeLessThan(medium![end]);
      expect(medium![end]).toBeLessThan(deep![end]);
      expect(deep![end]).toBeLessThan(dadant![end]);
    }
  });
});

describe("what a hefted hive weighs more than its tare", () => {
  it("lies between the ends that lie farthest apart", () => {
    // 90 - 62 at least, 96 - 58 at most.
    expect(heft(between(90, 96), between(58, 62))).toEqual({ ...between(28, 38), middle: 33 });
    expect(heft(exactly(95), exactly(60))).toEqual(exactly(35));
  });

  it("is never under nothing, and open where a weight is", () => {
    expect(heft(between(58, 66), between(56, 62)).low).toBe(0);
    const open = { ...between(90, 96), high: null };
    expect(heft(open, between(58, 62))).toMatchObject({ low: 28, high: null });
    expect(heft(exactly(90), { ...between(58, 62), high: null })).toMatchObject({
      low: 0,
      high: 32,
    });
    expect(heft(exactly(60), exactly(60)).middle).toBe(0);
  });

  it("keeps what is to be known of both", () => {
    const noted = (note: string) => ({ ...exactly(60), note });
    expect(heft(noted("scale low"), noted("from memory")).note).toBe("scale low; from memory");
    expect(heft(noted("scale low"), noted("")).note).toBe("scale low");
    expect(heft(noted(""), noted("from memory")).note).toBe("from memory");
  });

  it("is refused where the hive weighs less than its tare", () => {
    expect(() => heft(exactly(50), exactly(60))).toThrow(
      "50 is less than the tare of 60: stores cannot be negative",
    );
  });
});

describe("stores as they are written", () => {
  it("are pounds: 1 kg is 2.20462 lb", () => {
    expect(storesInPounds(exactly(10), "lb", frameOf("deep"))).toEqual(exactly(10));
    expect(storesInPounds(exactly(10), "kg", frameOf("deep")).middle).toBeCloseTo(22.0462, 4);
    expect(storesInPounds(exactly(2), "frames", frameOf("deep"))).toEqual(between(12, 16));
  });

  it.each(["40 lb", "40 lbs", "40 pound", "40 pounds", "40 lb.", "40 LB "])(
    "%o is no weight in kg",
    (text) => {
      expect(() => checkUnit(text, "kg")).toThrow(/is in lb, and the unit given is kg/);
      expect(() => checkUnit(text, "lb")).not.toThrow();
    },
  );

  it.each(["40 kg", "40 kgs", "40 kilo", "40 kilos", "about 40 kg."])(
    "%o is no weight in pounds",
    (text) => {
      expect(() => checkUnit(text, "lb")).toThrow(/is in kg, and the unit given is lb/);
      expect(() => checkUnit(text, "kg")).not.toThrow();
    },
  );

  it.each([
    "40",
    "about 40",
    "40 half",
    "kg 40",
    "40 bulb",
    "40 poundage",
    "40 kilometres",
    "40 pkg",
  ])("%o names no unit", (text) => {
    expect(() => checkUnit(text, "lb")).not.toThrow();
    expect(() => checkUnit(text, "kg")).not.toThrow();
  });
});
