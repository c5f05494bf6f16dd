import { cellsOfSide } from "./cells.js";
import { DEEP } from "./comb.js";
import { CELL, middleOf, ROW, type Lattice } from "./comb-lattice.js";
import { sources } from "./sources.js";

/** A bee on the comb: its middle, half of its length as a step to the head, in units of the picture. */
export interface Bee {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  /** 0, 1 or 2: bees beside each other differ, so that one is drawn over the other. */
  readonly layer: number;
}

/** As drawn: half the length of a bee without its ends, and how far from that line it hides the comb. */
const HALF = 12;
export const REACH = 11;

/** Where a clump of bees lies, 0 to 1 from left to right and from top to bottom. */
export type Spot = readonly [x: number, y: number];

/** Cells are looked at in four points each, or gaps between bees would pass for covered. */
export const POINTS = 4;

/**
 * Bees on one side of a comb, as thick as on a comb well covered, until they hide so much of it.
 *
 * @param wanted - points to hide, POINTS a cell, all of them at the most
 * @param spots - the middles of the clumps
 * @returns the bees, and for each cell how many of its points are under one
 */
export function beesOver(
  lattice: Lattice,
  wanted: number,
  spots: readonly Spot[],
  random: () => number,
): { readonly bees: readonly Bee[]; readonly covered: readonly number[] } {
  const covered = new Uint8Array(lattice.columns * lattice.rows * POINTS);
  const bees: Bee[] = [];
  let left = wanted;
  const place = (bee: Bee) => {
    const hidden = pointsUnder(lattice, bee).filter((point) => covered[point] === 0);
    // The last bee is left out where the comb without it is nearer to what is wanted.
    if (hidden.length > 2 * left) return;
    for (const point of hidden) covered[point] = 1;
    left -= hidden.length;
    bees.push(bee);
  };
  for (const bee of inOrder(lattice, spots, random)) if (left > 0) place(bee);
  // Gaps between the bees, where nearly the whole comb is to be hidden.
  for (let point = 0; left > 0 && point < covered.length; point++) {
    if (covered[point] === 0) place(turned(pointAt(lattice, point), random() * 7, point % 3));
  }
  const perCell = Array.from({ length: covered.length / POINTS }, (_, cell) =>
    covered.slice(cell * POINTS, (cell + 1) * POINTS).reduce((sum, one) => sum + one, 0),
  );
  return { bees, covered: perCell };
}

function pointAt(lattice: Lattice, point: number): readonly [number, number] {
  const [x, y] = middleOf(lattice, Math.floor(point / POINTS));
  return [x + (point % 2 === 0 ? -CELL / 4 : CELL / 4), y + (point % 4 < 2 ? -ROW / 4 : ROW / 4)];
}

/** Every place for a bee, from the middles of the clumps outward; some stray. */
function inOrder(lattice: Lattice, spots: readonly Spot[], random: () => number): Bee[] {
  const { width, height } = lattice;
  const cellsPerBee = cellsOfSide(DEEP, 100) / (sources.beesWellCovered.value / 2);
  const perBee = cellsPerBee * CELL * ROW;
  const step = Math.sqrt((perBee * 2) / Math.sqrt(3));
  const waves = [2, 3, 5, 7].map((n) => [n, 0.22 / Math.sqrt(n), random() * 7] as const);
  const rows = Math.round(height / (perBee / step));
  const columns = Math.round(width / step);
  const jitter = () => (random() - 0.5) * 0.6 * step;
  const ranked: (readonly [number, Bee])[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const x = ((c + (r % 2 === 0 ? 0.25 : 0.75)) / columns) * width + jitter();
      const y = ((r + 0.5) / rows) * height + jitter();
      const layer = (((c - Math.floor(r / 2) - r) % 3) + 3) % 3;
      const bee = turned([x, y], random() * 7, layer);
      ranked.push([rank(bee, lattice, spots, waves, random), bee]);
    }
  }
  return ranked.sort(([one], [other]) => one - other).map(([, bee]) => bee);
}

function rank(
  { x, y }: Bee,
  { width, height }: Lattice,
  spots: readonly Spot[],
  waves: readonly (readonly [number, number, number])[],
  random: () => number,
): number {
  const far = spots.map(([left, top]) => {
    const [across, down] = [(x - left * width) / width, (1.4 * (y - top * height)) / width];
    const angle = Math.atan2(down, across);
    const ragged = waves.reduce((sum, [n, much, at]) => sum + much * Math.sin(n * angle + at), 1);
    return Math.hypot(across, down) / ragged;
  });
  const stray = random() < 0.05 ? random() : 1;
  return (Math.min(...far) + (random() - 0.5) * 0.12) * stray;
}

function turned([x, y]: readonly [number, number], angle: number, layer: number): Bee {
  const [dx, dy] = [HALF * Math.cos(angle), HALF * Math.sin(angle)].map(Math.round) as [
    number,
    number,
  ];
  return { x: Math.round(x), y: Math.round(y), dx, dy, layer };
}

/** The points of cells within reach of the bee's line. */
function pointsUnder(lattice: Lattice, { x, y, dx, dy }: Bee): number[] {
  const found: number[] = [];
  const far = HALF + REACH;
  const rows = span(y - far - ROW, y + far, ROW, lattice.rows);
  const columns = span(x - far - CELL, x + far + CELL, CELL, lattice.columns);
  for (const row of rows) {
    for (const column of columns) {
      for (let n = 0; n < POINTS; n++) {
        const point = (row * lattice.columns + column) * POINTS + n;
        const [px, py] = pointAt(lattice, point);
        const [ax, ay] = [px - x, py - y];
        const along = Math.max(-1, Math.min(1, (ax * dx + ay * dy) / (dx * dx + dy * dy)));
        if (Math.hypot(ax - along * dx, ay - along * dy) <= REACH) found.push(point);
      }
    }
  }
  return found;
}

/** The whole numbers from one length to another in steps, from 0 to under `count`. */
function span(from: number, to: number, step: number, count: number): number[] {
  const first = Math.max(0, Math.floor(from / step));
  const last = Math.min(count - 1, Math.floor(to / step));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}
