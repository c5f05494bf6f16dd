import { broodOfBoxes, type Brood } from "../core/brood.js";
import type { FrameSize } from "../core/comb.js";
import type { Contract } from "../core/contract.js";
import { sum, type Estimate } from "../core/estimate.js";
import type { Hive } from "../core/grade.js";
import { framesOfBees, type BeeColumns } from "../core/strength.js";
import type { HiveCells } from "./hive-cells.js";

/** The columns of a sheet that say how a hive was found; null for what the sheet does not have. */
export interface LookColumns {
  readonly bees: HiveCells;
  readonly beesAre: BeeColumns;
  readonly brood: HiveCells | null;
  readonly cover: HiveCells | null;
  readonly queen: HiveCells | null;
  readonly stores: HiveCells | null;
  readonly inspected: HiveCells | null;
  /** The frame in each box, of the bees' columns and of the brood's. */
  readonly beeFrames: (contract: Contract) => readonly FrameSize[];
  readonly broodFrames: (contract: Contract) => readonly FrameSize[];
  /** A hive with an id was opened: a blank of its figures is none, not unjudged. */
  readonly blankIsNone: boolean;
}

/** Reads one row as a hive under a contract, by whose terms its figures are written. */
export function hiveAt(columns: LookColumns, i: number, contract: Contract): Hive {
  const year = columns.inspected?.year(i, contract) ?? null;
  const bees = columns.bees.estimates(i, "count", contract, year);
  const frames = framesOfBees(
    bees,
    columns.beesAre,
    contract.combRule,
    columns.beeFrames(contract),
    contract.frame,
  );
  return {
    frames,
    brood: broodAt(columns, i, contract, year),
    queen: columns.queen?.judged(i) ?? null,
    stores: figureAt(columns.stores, i, contract, year, columns.blankIsNone),
  };
}

/**
 * Brood of a row. With its cover both measures are known; without it the count is taken for what
 * the contract counts.
 */
function broodAt(
  { brood, cover, broodFrames, blankIsNone }: LookColumns,
  i: number,
  contract: Contract,
  year: number | null,
): Brood | null {
  if (brood === null || (!blankIsNone && brood.isEmpty(i))) return null;
  const boxes = brood.estimates(i, "count", contract, year);
  const total = sum(boxes);
  const sizes = broodFrames(contract);
  const covered = figureAt(cover, i, contract, null, false, "percent");
  if (total.middle === 0) return broodOfBoxes(boxes, sizes, total, contract.frame);
  if (cover !== null) return broodOfBoxes(boxes, sizes, covered, contract.frame);
  return contract.broodMeasure === "combs"
    ? { combs: total, fullFrames: null, cover: null }
    : { combs: null, fullFrames: total, cover: null };
}

function figureAt(
  column: HiveCells | null,
  i: number,
  contract: Contract,
  year: number | null,
  blankIsNone: boolean,
  kind: "count" | "percent" = "count",
): Estimate | null {
  if (column === null) return null;
  if (column.isEmpty(i)) return blankIsNone ? sum([]) : null;
  return column.width === 1
    ? column.estimate(i, 0, kind, contract, year)
    : sum(column.estimates(i, kind, contract, year));
}
