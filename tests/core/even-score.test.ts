import { describe, expect, it } from "vitest";
import {
  boundOf,
  isBetter,
  reaches,
  scoreOf,
  stateOf,
  type Destination,
  type HiveGroup,
} from "../../src/core/even-score.js";

const pallets = (...frames: number[]): HiveGroup[] => frames.map((f) => ({ hives: 4, frames: f }));
const drops = (...least: number[]): Destination[] => least.map((l) => ({ units: 1, least: l }));

describe("how good a placing is", () => {
  it("is what places miss of their least, over their hives, and from weakest to strongest", () => {
    // 40 and 24 frames by 4 hives are 10 and 6; 6 of 8 asked misses 2 frames on 4 hives.
    const places = drops(9, 8);
    expect(scoreOf(places, stateOf(pallets(40, 24), places, [0, 1]))).toEqual({
      missed: 8,
      range: 4,
    });
  });

  it("leaves out a place that has no hives", () => {
    const places = drops(0, 12, 0);
    expect(scoreOf(places, stateOf(pallets(40, 24), places, [0, 2]))).toEqual({
      missed: 0,
      range: 4,
    });
  });

  it("joins the pallets of a place", () => {
    expect(stateOf(pallets(40, 24, 30), drops(0, 0), [1, 0, 1])).toEqual({
      hives: [4, 8],
      frames: [24, 70],
    });
  });

  it("is better by what is missed, whatever the range, and then by the range", () => {
    expect(isBetter({ missed: 1, range: 5 }, { missed: 2, range: 0 })).toBe(true);
    expect(isBetter({ missed: 2, range: 0 }, { missed: 1, range: 5 })).toBe(false);
    expect(isBetter({ missed: 1, range: 4 }, { missed: 1, range: 5 })).toBe(true);
    expect(isBetter({ missed: 1, range: 5 }, { missed: 1, range: 5 })).toBe(false);
    expect(isBetter({ missed: 1, range: 6 }, { missed: 1, range: 5 })).toBe(false);
  });

  it("is not better, nor short of a bound, by what rounding alone makes", () => {
    const [one, other] = [
      { missed: 1, range: 5 },
      { missed: 1 + 1e-12, range: 5 + 1e-12 },
    ];
    expect(isBetter(one, other)).toBe(false);
    expect(reaches(other, one)).toBe(true);
    expect(reaches({ missed: 1, range: 5.1 }, one)).toBe(false);
    expect(reaches({ missed: 1.1, range: 5 }, one)).toBe(false);
  });
});

describe("what no placing can be under", () => {
  it("is nothing where one level can be had", () => {
    expect(boundOf(pallets(40, 24), drops(0, 0), [1, 1])).toEqual({
      missed: 0,
      range: 0,
      targets: [8, 8],
    });
  });

  it("is from what one place asks to what is left for the others", () => {
    // 10 x 4 of 64 frames are asked, 24 are left for 4 hives.
    const { missed, range, targets } = boundOf(pallets(40, 24), drops(10, 0), [1, 1]);
    expect(missed).toBe(0);
    expect(range).toBeCloseTo(4, 8);
    expect(range).toBeLessThan(4);
    expect(targets).toEqual([10, 6]);
    expect(boundOf(pallets(40, 24), drops(0, 10), [1, 1]).targets).toEqual([6, 10]);
  });

  it("is what the strongest pallets lack, and then claims no range", () => {
    // 11 x 4 = 44 of the one with 40; 10 and 9 ask 76 of 40 and 32.
    expect(boundOf(pallets(24, 40), drops(0, 11), [1, 1])).toEqual({
      missed: 4,
      range: 0,
      targets: [8, 11],
    });
    expect(boundOf(pallets(24, 40, 32), drops(9, 0, 10), [1, 1, 1]).missed).toBe(4);
  });

  it("asks nothing for a place that gets no pallet", () => {
    expect(boundOf(pallets(40, 24), drops(0, 12, 0), [1, 0, 1])).toMatchObject({
      missed: 0,
      range: 0,
    });
  });

  it("claims nothing where pallets differ in hives", () => {
    const units = [
      { hives: 4, frames: 40 },
      { hives: 2, frames: 8 },
    ];
    expect(boundOf(units, drops(12, 0), [1, 1])).toEqual({
      missed: 0,
      range: 0,
      targets: [12, 8],
    });
    // Also where one of them has as many as all have on average: 64 frames on 2, 4 and 6 hives.
    const three = [2, 4, 6].map((hives) => ({ hives, frames: 64 / 3 }));
    expect(boundOf(three, drops(12, 0, 0), [1, 1, 1])).toMatchObject({ missed: 0, range: 0 });
  });

  it("counts each place for as many pallets as it gets", () => {
    // Three pallets of 4 hives: 9 x 8 of 88 frames are asked, 16 are left for 4 hives.
    const places = [
      { units: 2, least: 9 },
      { units: 1, least: 0 },
    ];
    const { missed, range, targets } = boundOf(pallets(40, 32, 16), places, [2, 1]);
    expect(missed).toBe(0);
    expect(range).toBeCloseTo(5, 8);
    expect(targets).toEqual([9, 4]);
  });
});
