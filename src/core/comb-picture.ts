import { beesOver, POINTS, type Bee, type Spot } from "./comb-bees.js";
import { broodOn, type Content, type Pattern } from "./comb-brood.js";
import { latticeOf, type Lattice } from "./comb-lattice.js";
import type { FrameSize } from "./comb.js";
import { randomFrom } from "./random.js";

/** One side of a comb: what each cell holds, and the bees over them. */
export interface CombPicture {
  readonly lattice: Lattice;
  /** Row by row from the upper left. */
  readonly contents: readonly Content[];
  readonly bees: readonly Bee[];
  /** How much of each cell is under bees, in quarters. */
  readonly covered: readonly number[];
  /** Percent of the cells that are under bees, or hold brood. */
  readonly cover: number;
}

/** The clump or the patch in its usual place, or anywhere, as to train the eye. */
export type Lie = "middle" | "anywhere";

/**
 * A comb with bees on so much of one side, thick at the middle of the clump and ragged at its edge.
 *
 * @param percent - of the cells, 0 to 100; met to a cell or two
 * @param seed - the same seed gives the same picture
 * @example combWithBees(50, 1).cover // 50
 */
export function combWithBees(
  percent: number,
  seed: number,
  lie: Lie = "middle",
  frame?: FrameSize,
): CombPicture {
  const [lattice, random] = [latticeOf(frame), randomFrom(seed)];
  const cells = lattice.columns * lattice.rows;
  const clumps = lie === "anywhere" && random() < 0.35 ? 2 : 1;
  const spots = Array.from({ length: clumps }, () => spotOf(lie, random));
  const points = cells * POINTS;
  const over = beesOver(lattice, Math.round((points * percent) / 100), spots, random);
  const hidden = over.covered.reduce((sum, quarters) => sum + quarters, 0);
  return {
    lattice,
    contents: new Array<Content>(cells).fill("empty"),
    ...over,
    cover: (100 * hidden) / points,
  };
}

/**
 * A comb with brood in so many of the cells of one side, and no bees on it.
 *
 * @param percent - of the cells that hold brood of any stage, 0 to 100
 */
export function combWithBrood(
  pattern: Pattern,
  percent: number,
  seed: number,
  lie: Lie = "middle",
  frame?: FrameSize,
): CombPicture {
  const [lattice, random] = [latticeOf(frame), randomFrom(seed)];
  const cells = lattice.columns * lattice.rows;
  const wanted = Math.round((cells * percent) / 100);
  const contents = broodOn(lattice, pattern, wanted, spotOf(lie, random), random);
  return {
    lattice,
    contents,
    bees: [],
    covered: new Array<number>(cells).fill(0),
    cover: (100 * wanted) / cells,
  };
}

function spotOf(lie: Lie, random: () => number): Spot {
  const much = lie === "middle" ? 0.08 : 0.8;
  return [0.5 + (random() - 0.5) * much, 0.53 + (random() - 0.5) * much];
}
