import { describe, expect, it } from "vitest";
import type { Content, Pattern } from "../../src/core/comb-brood.js";
import { combWithBrood, type CombPicture } from "../../src/core/comb-picture.js";

const SEEDS = [1, 2, 3];
/** Columns and rows of the cells that hold something, from 0 at the upper left to 1. */
function placesOf({ contents, lattice }: CombPicture, content: Content) {
  return [...contents.keys()]
    .filter((cell) => contents[cell] === content)
    .map((cell) => ({
      x: ((cell % lattice.columns) + 0.5) / lattice.columns,
      y: (Math.floor(cell / lattice.columns) + 0.5) / lattice.rows,
    }));
}
const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe("a comb with brood", () => {
  it.each([
    ["eggs", ["egg"]],
    ["young larvae", ["young larva"]],
    ["old larvae", ["old larva"]],
    ["solid", ["capped worker"]],
    ["spotty", ["capped worker"]],
    ["drone patch", ["capped drone", "capped worker"]],
    ["drone scattered", ["capped drone", "capped worker"]],
    ["clear centre", ["capped worker", "egg"]],
  ] as const)("%s: holds %j beside stores and empty cells", (pattern, brood) => {
    const held = new Set<Content>(combWithBrood(pattern, 40, 1).contents);
    for (const content of ["honey", "pollen", "empty"] as const) held.delete(content);
    expect([...held].sort()).toEqual([...brood]);
  });

  it("has as many drone cells and eggs as its pattern says", () => {
    // Half of 79 x 43 cells are 1,699: 8 % in a patch, a quarter scattered, 30 % eggs in the centre.
    const share = (pattern: Pattern, content: Content, seed: number) =>
      placesOf(combWithBrood(pattern, 50, seed), content).length / 1699;
    for (const seed of SEEDS) {
      expect(share("drone patch", "capped drone", seed)).toBeCloseTo(0.08, 3);
      expect(Math.abs(share("drone scattered", "capped drone", seed) - 0.25)).toBeLessThan(0.04);
      expect(share("clear centre", "egg", seed)).toBeCloseTo(0.3, 2);
    }
  });

  it("has its patch about the middle, broader than high", () => {
    for (const seed of SEEDS) {
      const picture = combWithBrood("solid", 30, seed);
      const brood = placesOf(picture, "capped worker");
      const [xs, ys] = [brood.map(({ x }) => x), brood.map(({ y }) => y)];
      expect(Math.abs(mean(xs) - 0.5)).toBeLessThan(0.06);
      expect(Math.abs(mean(ys) - 0.53)).toBeLessThan(0.06);
      const { width, height } = picture.lattice;
      const broad = (Math.max(...xs) - Math.min(...xs)) * width;
      const high = (Math.max(...ys) - Math.min(...ys)) * height;
      expect(broad / high).toBeGreaterThan(1.2);
      expect(broad / high).toBeLessThan(2);
    }
  });

  it("has no cell of brood outside its patch, where that is solid", () => {
    // Solid brood leaves 5 % to 20 % empty: all of 340 cells lie within what 425 fill, an ellipse
    // of 425 x 195 units: root of 425 x 195 x 1.5 / pi = 199 to the left and right, 15 % more where
    // the edge is uneven, of 1,185 in all.
    const { contents, lattice } = combWithBrood("solid", 10, 1);
    const xs = placesOf({ contents, lattice } as CombPicture, "capped worker").map(({ x }) => x);
    expect(xs).toHaveLength(340);
    expect((Math.max(...xs) - Math.min(...xs)) / 2).toBeLessThan((1.15 * 199) / 1185);
  });

  it("has empty cells among spotty brood, and no pollen there", () => {
    for (const seed of SEEDS) {
      const picture = combWithBrood("spotty", 40, seed);
      const brood = placesOf(picture, "capped worker");
      const [left, top] = [mean(brood.map(({ x }) => x)), mean(brood.map(({ y }) => y))];
      const within = (content: Content) =>
        placesOf(picture, content).filter(({ x, y }) => Math.hypot(x - left, (y - top) * 0.7) < 0.2)
          .length;
      expect(within("empty")).toBeGreaterThan(50);
      expect(within("pollen")).toBe(0);
    }
  });

  it("has honey in nearly all cells of its upper corners", () => {
    for (const seed of SEEDS) {
      const picture = combWithBrood("solid", 10, seed);
      const corners = (content: Content) =>
        placesOf(picture, content).filter(({ x, y }) => Math.abs(x - 0.5) > 0.3 && y < 0.3).length;
      const share = corners("honey") / (corners("honey") + corners("empty"));
      expect(share).toBeGreaterThan(0.9);
      expect(share).toBeLessThan(1);
    }
  });

  it("has its drone patch low on the left", () => {
    const drones = placesOf(combWithBrood("drone patch", 50, 1), "capped drone");
    expect(Math.max(...drones.map(({ x }) => x))).toBeLessThan(0.35);
    expect(Math.min(...drones.map(({ x }) => x))).toBeGreaterThan(0.05);
    expect(Math.min(...drones.map(({ y }) => y))).toBeGreaterThan(0.75);
  });

  it("has honey above, lower towards the sides, and pollen between it and the brood", () => {
    for (const seed of SEEDS) {
      const picture = combWithBrood("solid", 30, seed);
      const [honey, pollen, brood] = (["honey", "pollen", "capped worker"] as const).map(
        (content) => placesOf(picture, content),
      );
      expect(honey!.length).toBeGreaterThan(500);
      expect(mean(honey!.map(({ y }) => y))).toBeLessThan(0.25);
      for (const { x, y } of honey!) {
        expect(y).toBeLessThan(Math.abs(x - 0.5) < 0.1 ? 0.25 : 0.53);
      }
      const lowest = (from: number, to: number) =>
        Math.max(...honey!.filter(({ x }) => x >= from && x < to).map(({ y }) => y));
      expect(lowest(0, 0.1)).toBeGreaterThan(lowest(0.45, 0.55) + 0.15);
      expect(lowest(0.9, 1)).toBeGreaterThan(lowest(0.45, 0.55) + 0.15);
      expect(pollen!.length).toBeGreaterThan(100);
      // A band of a twentieth of the comb's width about the patch.
      const near = pollen!.filter((cell) =>
        brood!.some(({ x, y }) => Math.hypot(x - cell.x, (y - cell.y) * 0.47) < 0.08),
      );
      expect(near.length / pollen!.length).toBeGreaterThan(0.98);
      const above = (among: readonly { x: number; y: number }[]) =>
        mean(among.filter(({ x }) => Math.abs(x - 0.5) < 0.05).map(({ y }) => y));
      expect(above(honey!)).toBeLessThan(above(pollen!.filter(({ y }) => y < 0.5)));
    }
  });

  it("has its patch elsewhere where it may lie anywhere", () => {
    const seeds = Array.from({ length: 24 }, (_, i) => i + 1);
    const middles = seeds.map((seed) =>
      mean(
        placesOf(combWithBrood("solid", 5, seed, "anywhere"), "capped worker").map(({ x }) => x),
      ),
    );
    expect(Math.min(...middles)).toBeLessThan(0.3);
    expect(Math.max(...middles)).toBeGreaterThan(0.7);
  });
});
