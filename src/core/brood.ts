import { CELL_DENSITIES, cellsOfSide, patchOf, type CellDensity } from "./cells.js";
import { plural } from "./plural.js";
import { Refusal } from "./refusal.js";
import { equivalent, sideArea, type FrameSize } from "./comb.js";
import { checkPairs, combine, exactly, scale, sum, type Estimate } from "./estimate.js";
import { sources } from "./sources.js";
import { atMost } from "./tolerance.js";

/**
 * Brood is asked for in two measures that differ: combs that hold any brood, or full-frame
 * equivalents. Five combs half covered are five of the first and two and a half of the second.
 */
export const BROOD_MEASURES = ["full frames", "combs"] as const;
export type BroodMeasure = (typeof BROOD_MEASURES)[number];

/** A hive's brood in both measures; null where the sheet does not say enough to work it out. */
export interface Brood {
  readonly fullFrames: Estimate | null;
  readonly combs: Estimate | null;
  /** Mean percent of each comb's area that holds brood, where judged. */
  readonly cover: Estimate | null;
}

/**
 * A hive's brood from the combs of each box that hold brood and how much of them it covers.
 *
 * @param boxes - combs with brood in each box
 * @param sizes - the frame in each box
 * @param covers - mean percent of both sides of those combs, 0 to 100, a box each; null where it was
 *   not judged
 * @param frame - the frame in which full-frame equivalents are counted
 * @returns both measures, full frames only where the cover of all brood is known; combs are counted
 *   whatever their size
 * @example
 * // 7 combs at 60 %: 4.2 full frames
 * broodOfBoxes([exactly(7)], [DEEP], [exactly(60)], DEEP).fullFrames?.middle // 4.2
 */
export function broodOfBoxes(
  boxes: readonly Estimate[],
  sizes: readonly FrameSize[],
  covers: readonly (Estimate | null)[],
  frame: FrameSize,
): Brood {
  const combs = sum(boxes);
  const held = boxes.map((box, k) => {
    const cover = covers[k] ?? (box.middle === 0 ? exactly(0) : null);
    return cover && combine(box, cover, (combs, percent) => (combs * percent) / 100);
  });
  if (!held.every((part) => part !== null)) return { fullFrames: null, combs, cover: null };
  const full = sum(held.map((part, k) => scale(part, equivalent(sizes[k]!, frame))));
  return { fullFrames: full, combs, cover: meanCover(sum(held), combs) };
}

/** How much of its combs brood covers: end by end, since the doubt about the combs is not its own. */
function meanCover(held: Estimate, combs: Estimate): Estimate {
  const percent = (full: number, count: number): number => (count === 0 ? 0 : (100 * full) / count);
  return { ...combine(held, combs, percent), note: held.note };
}

/**
 * A hive's brood from the percent of each of its combs.
 *
 * @param covers - percent of both sides of each comb, 0 to 100; a comb at 0 holds none
 */
export function broodOfCombs(
  covers: readonly Estimate[],
  sizes: readonly FrameSize[],
  frame: FrameSize,
): Brood {
  const holding = covers.filter((cover) => cover.middle > 0);
  const full = sum(covers.map((cover, k) => scale(cover, equivalent(sizes[k]!, frame) / 100)));
  const mean = holding.length === 0 ? exactly(0) : scale(sum(holding), 1 / holding.length);
  return { fullFrames: full, combs: exactly(holding.length), cover: mean };
}

/**
 * A hive's brood from its whole area on all sides; how many combs hold it is not known.
 *
 * @param cm2 - sum over both sides of every comb
 */
export function broodOfArea(cm2: Estimate, frame: FrameSize): Brood {
  return { fullFrames: scale(cm2, 1 / (2 * sideArea(frame))), combs: null, cover: null };
}

/**
 * A hive's brood from the length and width of its patches, as ellipses.
 *
 * @param sizes - length and width of each patch, two and two, in cm
 * @throws Refusal where they do not pair
 */
export function broodOfPatches(sizes: readonly Estimate[], frame: FrameSize): Brood {
  checkPairs(sizes, "length and width");
  const areas: Estimate[] = [];
  for (let k = 0; k < sizes.length; k += 2)
    areas.push(patchOf(sizes[k]!, sizes[k + 1]!, "ellipse"));
  return broodOfArea(sum(areas), frame);
}

/** A hive's brood from its worker cells; how many combs hold them is not known. */
export function broodOfCells(cells: Estimate, frame: FrameSize): Brood {
  const perFrame = 2 * cellsOfSide(frame, 100, CELL_DENSITIES.counted.worker);
  return { fullFrames: scale(cells, 1 / perFrame), combs: null, cover: null };
}

/** Cells of full-frame equivalents, both sides of every comb, at the density counted. */
export function cellsOfBrood(
  fullFrames: Estimate,
  frame: FrameSize,
  cells: keyof CellDensity = "worker",
): Estimate {
  return scale(fullFrames, 2 * cellsOfSide(frame, 100, CELL_DENSITIES.counted[cells]));
}

/**
 * Refuses more brood than there is comb for.
 *
 * @param cells - of brood in a hive
 * @param space - most frames that its boxes hold; null where nobody says, so that only a slip is seen
 * @example
 * // 9,000,000 cells are 1,314 deeps of worker brood: refused
 */
export function checkBrood(
  cells: number,
  frame: FrameSize,
  space: number | null,
  caste: keyof CellDensity = "worker",
): void {
  const most = space ?? sources.mostFrames.value;
  const frames = cells / cellsOfBrood(exactly(1), frame, caste).middle;
  if (atMost(frames, most)) return;
  const has = Math.round(10 * frames) / 10;
  throw new Refusal(
    `brood of ${plural(has, "full frame")} is more than fits in ${plural(most, "frame")} of comb`,
  );
}
