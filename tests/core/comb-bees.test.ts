import { describe, expect, it } from "vitest";
import type { Bee } from "../../src/core/comb-bees.js";
import { combWithBees } from "../../src/core/comb-picture.js";

const SEEDS = [1, 2, 3, 4, 5, 6];
const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: readonly number[]) =>
  Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));

/** Whether a bee, 11 units to either side of its length, lies over a point. */
function isOver({ x, y, dx, dy }: Bee, [px, py]: readonly [number, number]): boolean {
  const [ax, ay] = [px - (x - dx), py - (y - dy)];
  const along = (ax * 2 * dx + ay * 2 * dy) / (4 * (dx * dx + dy * dy));
  const at = Math.min(1, Math.max(0, along));
  return Math.hypot(ax - at * 2 * dx, ay - at * 2 * dy) <= 11;
}

describe("bees on a comb", () => {
  it.each(["middle", "anywhere"] as const)("hide of each cell what lies under them: %s", (lie) => {
    // Cells are 15 units wide and their rows 13 high, every second half a cell later; each is looked
    // at in the four middles of its quarters.
    const { bees, covered, lattice } = combWithBees(35, 3, lie);
    for (let cell = 0; cell < covered.length; cell++) {
      const row = Math.floor(cell / lattice.columns);
      const [x, y] = [(cell % lattice.columns) * 15 + (row % 2 === 0 ? 0 : 7.5), row * 13];
      const quarters = ([0, 7.5] as const).flatMap((right) =>
        ([3.25, 9.75] as const).map((down) => [x + right, y + down] as const),
      );
      const hidden = quarters.filter((point) => bees.some((bee) => isOver(bee, point)));
      expect(covered[cell]).toBe(hidden.length);
    }
  });

  it("hide as much as was asked, but for half a bee", () => {
    // A bee hides at most 24 x 22 + pi x 121 = 908 units of 195 a cell, 4.7 cells.
    for (const percent of [1, 10, 33, 75, 99]) {
      for (const seed of [1, 2]) {
        const { cover, lattice } = combWithBees(percent, seed);
        const cells = (Math.abs(cover - percent) * lattice.columns * lattice.rows) / 100;
        expect(cells).toBeLessThan(4.7 / 2);
      }
    }
    expect(combWithBees(100, 1).cover).toBe(100);
    expect(combWithBees(0, 1).bees).toEqual([]);
  });

  it("are of one length, in every direction, and on the comb", () => {
    const { bees, lattice } = combWithBees(100, 1);
    for (const { x, y, dx, dy } of bees) {
      expect(Math.abs(Math.hypot(dx, dy) - 12)).toBeLessThan(0.75);
      expect(Math.abs(x / lattice.width - 0.5)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(y / lattice.height - 0.5)).toBeLessThanOrEqual(0.5);
    }
    for (const [right, down] of [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ] as const) {
      const heading = bees.filter(({ dx, dy }) => dx * right > 0 && dy * down > 0);
      expect(heading.length / bees.length).toBeGreaterThan(0.15);
    }
  });

  it("lie over and under each other: the nearest to a bee is hardly ever in its layer", () => {
    const { bees } = combWithBees(20, 2);
    const apart = bees.filter((bee) => {
      const far = (other: Bee) => Math.hypot(other.x - bee.x, other.y - bee.y);
      const others = bees.filter((other) => other !== bee);
      return others.reduce((a, b) => (far(b) < far(a) ? b : a)).layer !== bee.layer;
    });
    expect(apart.length / bees.length).toBeGreaterThan(0.85);
    expect(new Set(bees.map((bee) => bee.layer))).toEqual(new Set([0, 1, 2]));
  });

  it("lie in a clump about the middle, broader than high, and a few stray", () => {
    const clumps = SEEDS.map((seed) => combWithBees(20, seed));
    for (const { bees, lattice } of clumps) {
      const [xs, ys] = [bees.map((bee) => bee.x), bees.map((bee) => bee.y)];
      expect(Math.abs(mean(xs) / lattice.width - 0.5)).toBeLessThan(0.08);
      expect(Math.abs(mean(ys) / lattice.height - 0.5)).toBeLessThan(0.12);
      const strays = xs.filter((x) => Math.abs(x / lattice.width - 0.5) > 0.3);
      expect(strays.length).toBeGreaterThan(0);
      expect(strays.length / xs.length).toBeLessThan(0.15);
    }
    const shape = clumps.map(
      ({ bees }) => spread(bees.map((bee) => bee.x)) / spread(bees.map((bee) => bee.y)),
    );
    expect(mean(shape)).toBeGreaterThan(1.2);
    expect(mean(shape)).toBeLessThan(2.2);
  });

  it("lie anywhere else where that is asked, to the left and right, high and low", () => {
    const seeds = Array.from({ length: 24 }, (_, i) => i + 1);
    const middles = seeds.map((seed) => {
      const { bees, lattice } = combWithBees(5, seed, "anywhere");
      return [
        mean(bees.map((bee) => bee.x)) / lattice.width,
        mean(bees.map((bee) => bee.y)) / lattice.height,
      ] as const;
    });
    for (const side of [0, 1] as const) {
      expect(Math.min(...middles.map((at) => at[side]))).toBeLessThan(0.35);
      expect(Math.max(...middles.map((at) => at[side]))).toBeGreaterThan(0.65);
    }
  });
});
