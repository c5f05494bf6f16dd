import { describe, expect, it } from "vitest";
import { PATTERNS, type Content } from "../../src/core/comb-brood.js";
import { drawComb } from "../../src/core/comb-drawing.js";
import { latticeOf, middleOf } from "../../src/core/comb-lattice.js";
import { combWithBees, combWithBrood, type CombPicture } from "../../src/core/comb-picture.js";
import { frameOf } from "../../src/core/comb.js";
import { randomFrom } from "../../src/core/random.js";
import { BEE_COLOURS, BROOD_COLOURS, DEEP_COMB, paintedShare } from "../raster.js";

const COVERS = [0, 1, 10, 25, 33, 50, 67, 75, 90, 99, 100];
const count = (picture: CombPicture, content: Content): number =>
  picture.contents.filter((c) => c === content).length;
const holdsBrood = (content: Content | undefined): boolean =>
  /^(egg|young larva|old larva|capped worker|capped drone)$/.test(content ?? "");

describe("the comb", () => {
  it("is a deep side of worker cells as they are counted", () => {
    // 3.96 cells a cm2 make a cell root(2 / (root 3 x 3.96)) = 0.540 cm wide and a row 0.468 cm high:
    // 16.75 in = 42.55 cm hold 78.8 of them, 8 in = 20.32 cm 43.4 rows.
    expect(latticeOf()).toEqual({ columns: 79, rows: 43, width: 79 * 15, height: 43 * 13 });
    // 134 in2 x 6.4516 cm2 x 3.96 = 3,424 cells.
    expect(Math.abs((79 * 43) / 3424 - 1)).toBeLessThan(0.01);
  });

  it("is as wide and less tall for a shallower frame, more tall for a deeper", () => {
    // Shallow 4.875 of 8.625 in: 43.4 x 0.565 = 24.5 rows. 14 x 12 in: 13.4375 x 11.5 in are 1.0697
    // of 16.75 x 8.625: 46.4 rows.
    expect(latticeOf(frameOf("shallow"))).toMatchObject({ columns: 79, rows: 25 });
    expect(latticeOf(frameOf("national 14x12"))).toMatchObject({ columns: 79, rows: 46 });
  });
});

it("has its rows half a cell beside each other, a quarter to the left and to the right", () => {
  // 15 units a cell, 13 a row: middles 7.5 less or more 3.75 across, 6.5 down.
  const lattice = latticeOf();
  expect(middleOf(lattice, 0)).toEqual([3.75, 6.5]);
  expect(middleOf(lattice, 78)).toEqual([78 * 15 + 3.75, 6.5]);
  expect(middleOf(lattice, 79)).toEqual([11.25, 19.5]);
  expect(middleOf(lattice, 2 * 79 + 1)).toEqual([18.75, 32.5]);
});

describe("a comb with bees", () => {
  it.each(COVERS)("has %i percent of its cells under bees, wherever these stand", (percent) => {
    for (const seed of [1, 2, 3]) {
      expect(combWithBees(percent, seed).cover).toBeCloseTo(percent, 0);
      expect(combWithBees(percent, seed, "anywhere").cover).toBeCloseTo(percent, 0);
    }
  });

  it.each(COVERS)("is drawn so: %i percent of the comb's pixels are bees", (percent) => {
    for (const lie of ["middle", "anywhere"] as const) {
      const picture = combWithBees(percent, 7, lie);
      const counted = paintedShare(drawComb(picture, "t"), BEE_COLOURS, DEEP_COMB);
      expect(Math.abs(counted - percent)).toBeLessThan(1);
    }
  });

  it("has about as many bees as such a part of a well-covered side, 1,200", () => {
    // 2,400 on both sides (Sagili & Burgett 2011).
    for (const percent of [25, 50, 75]) {
      const { bees } = combWithBees(percent, 4);
      expect(bees.length / (12 * percent)).toBeGreaterThan(0.85);
      expect(bees.length / (12 * percent)).toBeLessThan(1.15);
    }
  });

  it("is thick in the middle of the clump and ragged at its edge", () => {
    const { covered, lattice } = combWithBees(33, 5);
    const rowOf = (at: number) => covered.slice(at * lattice.columns, (at + 1) * lattice.columns);
    const middle = rowOf(Math.floor(lattice.rows / 2)).slice(35, 45);
    expect(middle.reduce((sum, quarters) => sum + quarters, 0)).toBeGreaterThan(0.8 * 40);
    const turns = rowOf(12).filter((quarters, i, row) => i > 0 && quarters > 0 !== row[i - 1]! > 0);
    expect(turns.length).toBeGreaterThan(2);
  });
});

describe("a comb with brood", () => {
  it.each(PATTERNS)("%s: is drawn as it is said, to 1 percent of the comb", (pattern) => {
    for (const percent of [0, 10, 40, 100]) {
      const picture = combWithBrood(pattern, percent, 3, "anywhere");
      const held = picture.contents.filter(holdsBrood).length;
      expect(picture.cover).toBeCloseTo((100 * held) / (79 * 43), 9);
      expect(Math.abs(picture.cover - percent)).toBeLessThan(0.02);
      const counted = paintedShare(drawComb(picture, "t"), BROOD_COLOURS, DEEP_COMB);
      expect(Math.abs(counted - percent)).toBeLessThan(1);
    }
  });

  it.each([
    // Solid brood has 5 to 20 % of empty cells, spotty 20 % and more (from memory, as in sources.ts).
    ["solid", 5, 20],
    ["spotty", 20, 45],
    ["drone scattered", 20, 45],
  ] as const)("%s: has %i to %i percent of empty cells in the patch", (pattern, least, most) => {
    const { contents, lattice } = combWithBrood(pattern, 40, 2);
    let [empty, all] = [0, 0];
    for (let row = 0; row < lattice.rows; row++) {
      const cells = contents.slice(row * lattice.columns, (row + 1) * lattice.columns);
      const held = cells.map(holdsBrood);
      const patch = cells.slice(held.indexOf(true), held.lastIndexOf(true) + 1);
      all += patch.length;
      empty += patch.filter((cell) => !holdsBrood(cell)).length;
    }
    expect((100 * empty) / all).toBeGreaterThan(least);
    expect((100 * empty) / all).toBeLessThan(most);
  });

  it("has its drone patch together and up to 10 percent, and its scattered drones apart", () => {
    const together = (picture: CombPicture): number => {
      const drones = [...picture.contents.keys()].filter(
        (i) => picture.contents[i] === "capped drone",
      );
      const beside = drones.filter(
        (i) =>
          picture.contents[i - 1] === "capped drone" && picture.contents[i + 1] === "capped drone",
      );
      return beside.length / drones.length;
    };
    const patch = combWithBrood("drone patch", 50, 2);
    const scattered = combWithBrood("drone scattered", 50, 2);
    expect(count(patch, "capped drone") / (0.5 * 79 * 43)).toBeLessThanOrEqual(0.1);
    expect(count(patch, "capped drone")).toBeGreaterThan(50);
    expect(together(patch)).toBeGreaterThan(0.8);
    expect(together(scattered)).toBeLessThan(0.2);
  });

  it("has eggs in the clear centre and capped brood around it", () => {
    const { contents, lattice } = combWithBrood("clear centre", 50, 2);
    const middle = contents.slice(23 * lattice.columns + 35, 23 * lattice.columns + 45);
    expect(middle.filter((cell) => cell === "egg").length).toBeGreaterThan(7);
    expect(middle).not.toContain("capped worker");
    const eggs = contents.filter((cell) => cell === "egg").length;
    const capped = contents.filter((cell) => cell === "capped worker").length;
    expect(capped).toBeGreaterThan(eggs);
  });
});

it("draws the same picture for the same seed, and another for another", () => {
  const drawn = (seed: number) => drawComb(combWithBees(40, seed, "anywhere"), "t");
  expect(drawn(11)).toBe(drawn(11));
  expect(drawn(11)).not.toBe(drawn(12));
  const brood = (seed: number) => drawComb(combWithBrood("spotty", 40, seed), "t");
  expect(brood(11)).toBe(brood(11));
  expect(brood(11)).not.toBe(brood(12));
});

it("has random numbers that are mulberry32's", () => {
  // The generator's first for the seed 1, from memory.
  expect(randomFrom(1)()).toBe(0.6270739405881613);
});
