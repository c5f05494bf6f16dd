import type { Absence } from "../core/absence.js";
import { broodOfBoxes, type Brood } from "../core/brood.js";
import type { FrameSize } from "../core/comb.js";
import type { Contract } from "../core/contract.js";
import { exactly, sum, type Estimate } from "../core/estimate.js";
import type { Hive } from "../core/grade.js";
import { framesOfBees, type BeeColumns } from "../core/strength.js";
import type { StoresUnit } from "../core/stores.js";
import type { Writing } from "../core/writing.js";
import { quote, Refusal } from "../core/refusal.js";
import { CellError, isBlankOrZero, toCellError } from "./cells.js";
import { refuseOneLookOfPairs } from "./both-looks.js";
import type { HiveCells } from "./hive-cells.js";
import { checkUnitsWritten } from "./stores-unit.js";

/** The columns of a sheet that say how a hive was found; null for what the sheet does not have. */
export interface LookColumns {
  readonly bees: HiveCells;
  readonly beesAre: BeeColumns;
  readonly brood: HiveCells | null;
  readonly cover: HiveCells | null;
  /** The brood's headings say that its combs hold brood, and not that they are full of it. */
  readonly broodIsCombs: boolean;
  readonly queen: HiveCells | null;
  readonly stores: HiveCells | null;
  readonly inspected: HiveCells | null;
  /** The frame in each box, of the bees' columns and of the brood's. */
  readonly beeFrames: (contract: Contract) => readonly FrameSize[];
  readonly broodFrames: (contract: Contract) => readonly FrameSize[];
  readonly storesUnit: (contract: Contract) => StoresUnit;
  /** Of an opened hive with an id a blank of brood or stores is none, not unjudged. */
  readonly blankIsNone: boolean;
}

/**
 * How the hive of a named row stands: opened, listed and not opened, or no longer in the lot. Bees
 * that are blank were not looked for; a 0 is none.
 *
 * @throws Refusal where the bees are blank and the hive was looked into all the same
 */
export function standingAt({ bees, brood, queen }: LookColumns, i: number): "opened" | Absence {
  const absence = bees.absence(i);
  if (absence !== null) return absence;
  if (!bees.isBlank(i)) return "opened";
  const judged = [brood, queen].find((column) => column !== null && !column.isUncounted(i));
  if (!judged) return "not opened";
  return bees.named(i, 0, () => {
    throw new Refusal(
      `blank, and ${quote(judged.name)} is not: write none where there are no bees, dead for a ` +
        "dead-out, or not opened",
    );
  });
}

/** Reads one row as a hive under a contract, by whose terms its figures are written. */
export function hiveAt(columns: LookColumns, i: number, contract: Contract): Hive {
  const year = columns.inspected?.year(i, contract) ?? null;
  const frames = framesAt(columns, i, contract);
  return {
    frames,
    brood: broodAt(columns, i, contract, year),
    queen: queenAt(columns, i, contract),
    stores: storesIfAsked(columns, i, contract, year),
  };
}

function queenAt({ bees, queen }: LookColumns, i: number, contract: Contract): boolean | null {
  return readIf(!bees.isOfSheet || contract.layingQueen, () => queen?.judged(i) ?? null);
}

function storesIfAsked(
  columns: LookColumns,
  i: number,
  contract: Contract,
  year: number | null,
): Estimate | null {
  const isAsked = !columns.bees.isOfSheet || contract.stores > 0;
  return readIf(isAsked, () => storesAt(columns, i, contract, year));
}

/** What is wrong with a row that cannot be read, each of its parts looked at by itself. */
export function faultsAt(columns: LookColumns, i: number, contract: Contract): CellError[] {
  const faults = new Map<string, CellError>();
  const look = (part: (year: number | null) => unknown): void => {
    try {
      part(columns.inspected?.year(i, contract) ?? null);
    } catch (caught) {
      const error = toCellError(caught, "");
      faults.set(error.message, error);
    }
  };
  look(() => framesAt(columns, i, contract));
  look((year) => broodAt(columns, i, contract, year));
  look(() => queenAt(columns, i, contract));
  look((year) => storesIfAsked(columns, i, contract, year));
  return [...faults.values()];
}

/**
 * What stands in the sheet, and no contract asks, keeps no hive from its grade: what of it cannot be
 * read is not judged.
 */
function readIf<T>(isAsked: boolean, read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (isAsked || !(error instanceof CellError || error instanceof Refusal)) throw error;
    return null;
  }
}

/** Frames of bees of a row, in the contract's frame. */
export function framesAt(columns: LookColumns, i: number, contract: Contract): Estimate {
  const year = columns.inspected?.year(i, contract) ?? null;
  const { bees, beesAre } = columns;
  const counts =
    beesAre === "boxes"
      ? bees.combs(i, contract, year)
      : bees.estimates(i, "count", contract, year);
  if (beesAre === "seams") refuseOneLookOfPairs(i, bees, counts);
  return framesOfBees(
    counts,
    beesAre,
    contract.combRule,
    columns.beeFrames(contract),
    contract.frame,
  );
}

/**
 * Brood of a row. With its cover both measures are known; without it the count is taken for what
 * the contract counts, except that combs which hold brood are not full frames of it.
 */
function broodAt(
  { brood, cover, broodIsCombs, broodFrames, blankIsNone }: LookColumns,
  i: number,
  contract: Contract,
  year: number | null,
): Brood | null {
  if (brood === null || (!blankIsNone && brood.isEmpty(i))) return null;
  const boxes = brood.combs(i, contract, year);
  const total = sum(boxes);
  const sizes = broodFrames(contract);
  if (cover !== null || total.middle === 0) {
    const covers = coversOf(cover, i, boxes.length, contract);
    return broodOfBoxes(boxes, sizes, covers, contract.frame);
  }
  return broodIsCombs || contract.broodMeasure === "combs"
    ? { combs: total, fullFrames: null, cover: null }
    : { combs: null, fullFrames: total, cover: null };
}

/**
 * The cover of the brood in each box: a column for each, or one for all. A blank is not judged, in
 * each of the forms that a blank arrives in.
 */
export function coversOf(
  cover: HiveCells | null,
  i: number,
  boxes: number,
  writing: Writing,
): (Estimate | null)[] {
  if (cover !== null && cover.width !== 1 && cover.width !== boxes) {
    throw new Refusal(
      `${cover.name} has ${cover.width} columns and the brood ${boxes}: give one, or one a box`,
    );
  }
  const covers: (Estimate | null)[] = [];
  for (let k = 0; k < boxes; k++) {
    const column = cover?.width === 1 ? 0 : k;
    const isJudged = cover !== null && !isBlankOrZero(cover.cell(i, column));
    covers.push(isJudged ? cover.cover(i, column, writing) : null);
  }
  return covers;
}

function storesAt(
  { stores, storesUnit: unitFor, blankIsNone }: LookColumns,
  i: number,
  contract: Contract,
  year: number | null,
): Estimate | null {
  if (stores === null) return null;
  if (stores.isEmpty(i)) return blankIsNone ? exactly(0) : null;
  const storesUnit = unitFor(contract);
  checkUnitsWritten(stores, i, storesUnit);
  return sum(stores.estimates(i, storesUnit === "frames" ? "count" : "amount", contract, year));
}
