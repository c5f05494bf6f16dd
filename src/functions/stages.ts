import type { AskYear } from "../core/date-count.js";
import { broodOfBoxes, cellsOfBrood } from "../core/brood.js";
import type { FrameSize } from "../core/comb.js";
import { ofAllStages, type BroodInStage } from "../core/emergence.js";
import { scale, sum, type Estimate } from "../core/estimate.js";
import type { Kind } from "../core/kinds.js";
import { Refusal } from "../core/refusal.js";
import type { Writing } from "../core/writing.js";
import { isBlankOrZero } from "./cells.js";
import type { HiveCells } from "./hive-cells.js";
import { coversOf } from "./look.js";

/** What the columns of brood may hold, and how their figures are read. */
export const BROOD_UNITS = ["frames", "cells", "percent"] as const;
export type BroodUnit = (typeof BROOD_UNITS)[number];

export const UNIT_KINDS: Readonly<Record<BroodUnit, Kind>> = {
  frames: "count",
  cells: "amount",
  percent: "percent",
};

/** The columns of a sheet that say how much brood of each stage a hive has. */
export interface BroodColumns {
  /** Capped brood; all brood where neither open brood nor eggs have a column of their own. */
  readonly brood: HiveCells | null;
  /** Percent of the combs of `brood` that it covers. */
  readonly cover: HiveCells | null;
  readonly open: HiveCells | null;
  readonly eggs: HiveCells | null;
  readonly unit: BroodUnit;
  readonly frame: FrameSize;
  /** Percent of the brood's cells that hold brood. */
  readonly fill: number;
}

/**
 * Worker cells of a row in each stage. A blank stage beside a filled one holds none.
 *
 * @throws Refusal of kind `unknown` where no brood is written: none is written `none`
 */
export function cellsAt(
  columns: BroodColumns,
  i: number,
  writing: Writing,
  year: AskYear,
): BroodInStage[] {
  const { brood, cover, open, eggs } = columns;
  if ([brood, open, eggs].every((column) => column === null || column.isEmpty(i))) {
    throw new Refusal("brood is not judged: give it, or write none where there is none", "unknown");
  }
  const amount = (column: HiveCells | null): number =>
    column === null ? 0 : inCells(column, null, columns, i, writing, year);
  const all = brood === null ? 0 : inCells(brood, cover, columns, i, writing, year);
  if (open === null && eggs === null) return ofAllStages(all);
  return [
    { stage: "capped", cells: all },
    { stage: "larva", cells: amount(open) },
    { stage: "egg", cells: amount(eggs) },
  ];
}

function inCells(
  column: HiveCells,
  cover: HiveCells | null,
  { unit, frame, fill }: BroodColumns,
  i: number,
  writing: Writing,
  year: AskYear,
): number {
  if (column.isEmpty(i)) return 0;
  const figures = column.estimates(i, UNIT_KINDS[unit], writing, year);
  const filled = fill / 100;
  if (unit === "cells") return sum(figures).middle * filled;
  const frames = fullFrames(figures, column, cover, unit, frame, i, writing);
  return cellsOfBrood(frames, frame).middle * filled;
}

/** Full frames: counts of combs by their cover where it is given, else as they stand. */
function fullFrames(
  figures: readonly Estimate[],
  column: HiveCells,
  cover: HiveCells | null,
  unit: BroodUnit,
  frame: FrameSize,
  i: number,
  writing: Writing,
): Estimate {
  if (unit === "percent") return scale(sum(figures), 1 / 100);
  if (cover === null) return sum(figures);
  const sizes = figures.map(() => frame);
  const covers = coversOf(cover, i, figures.length, writing);
  const { fullFrames } = broodOfBoxes(figures, sizes, covers, frame);
  if (fullFrames !== null) return fullFrames;
  const blank = isBlankOrZero(cover.cell(i)) ? "is blank" : "is not known for each box";
  throw new Refusal(`${column.name} are combs, and their cover ${blank}`, "unknown");
}
