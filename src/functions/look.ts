import { saidInNote, type Absence } from "../core/absence.js";
import { broodOfBoxes, type Brood } from "../core/brood.js";
import type { FrameSize } from "../core/comb.js";
import type { Contract } from "../core/contract.js";
import { exactly, sum, type Estimate } from "../core/estimate.js";
import type { Hive } from "../core/grade.js";
import { framesOfBees, type BeeColumns } from "../core/strength.js";
import type { StoresUnit } from "../core/stores.js";
import type { AskYear } from "../core/date-count.js";
import type { Writing } from "../core/writing.js";
import { yesOrNo } from "../core/yes-no.js";
import { quote, Refusal } from "../core/refusal.js";
import { CellError, isBlankOrZero, toCellError } from "./cells.js";
import { refuseOneLookOfPairs } from "./both-looks.js";
import type { HiveCells } from "./hive-cells.js";
import { checkUnitsWritten } from "./stores-unit.js";
import { yearOfRow } from "./written.js";

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
  /** Where the sheet may say that a hive was not opened: a column of yes and no, or the dates. */
  readonly opened: HiveCells | null;
  readonly notes: HiveCells | null;
  /** Whether a date beside a row's blank bees says that this hive was looked at. */
  readonly isDateOwn: (i: number) => boolean;
  /** The frame in each box, of the bees' columns and of the brood's. */
  readonly beeFrames: (contract: Contract) => readonly FrameSize[];
  readonly broodFrames: (contract: Contract) => readonly FrameSize[];
  readonly storesUnit: (contract: Contract) => StoresUnit;
  /** Of an opened hive with an id a blank of brood or stores is none, not unjudged. */
  readonly blankIsNone: boolean;
}

/**
 * How the hive of a named row stands: opened, listed and not opened, or no longer in the lot. Bees
 * that are blank were not looked for, unless the row's note says that the hive is dead; a 0 is none.
 *
 * @throws Refusal where the bees say that it was opened and another column that it was not, or the
 *   other way round
 */
export function standingAt(columns: LookColumns, i: number): "opened" | Absence {
  const { bees, brood, queen, opened, inspected, notes } = columns;
  const absence = bees.absence(i);
  if (absence !== null) return absence;
  if (!bees.isBlank(i)) {
    if (opened === null || yesOrNo(opened.cell(i)) !== false) return "opened";
    if (bees.isEmpty(i)) return "not opened";
    return opened.named(i, 0, () => {
      throw new Refusal(
        `no, and ${quote(bees.name)} is not blank: write yes where the hive was opened, and no ` +
          "bees where nobody looked",
      );
    });
  }
  const judged =
    [brood, queen].find((column) => column !== null && !column.isUncounted(i)) ??
    (yesOrNo(opened?.raw(i)) === true && !isDeadByNote(columns, i) ? opened : null) ??
    (noteAt(columns, i) === "looked at" ? notes : null);
  if (!judged && isDeadByNote(columns, i)) return "opened";
  const isLeft = yesOrNo(opened?.raw(i)) === false;
  const looked = judged ?? (!isLeft && columns.isDateOwn(i) ? inspected : null);
  if (!looked) return "not opened";
  return bees.named(i, 0, () => {
    throw new Refusal(
      `blank, and ${quote(looked.name)} is not: write none where there are no bees, dead for a ` +
        "dead-out, or not opened",
    );
  });
}

function noteAt({ notes }: LookColumns, i: number): ReturnType<typeof saidInNote> {
  const note = notes?.raw(i);
  return typeof note === "string" ? saidInNote(note) : null;
}

/** Its note is all that is said of its bees. */
function isDeadByNote(columns: LookColumns, i: number): boolean {
  return columns.bees.isEmpty(i) && noteAt(columns, i) === "dead";
}

/** Reads one row as a hive under a contract, by whose terms its figures are written. */
export function hiveAt(columns: LookColumns, i: number, contract: Contract): Hive {
  const year = yearAt(columns, i, contract);
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
  year: AskYear,
): Estimate | null {
  const isAsked = !columns.bees.isOfSheet || contract.stores > 0;
  return readIf(isAsked, () => storesAt(columns, i, contract, year));
}

/** What is wrong with a row that cannot be read, each of its parts looked at by itself. */
export function faultsAt(columns: LookColumns, i: number, contract: Contract): CellError[] {
  const faults = new Map<string, CellError>();
  const look = (part: (year: AskYear) => unknown): void => {
    try {
      part(yearAt(columns, i, contract));
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

/** Of a sheet asked for only where a count became a date: nothing else hangs on it there. */
function yearAt({ bees, inspected }: LookColumns, i: number, contract: Contract): AskYear {
  const yearOf = yearOfRow(inspected, contract);
  return bees.isOfSheet ? () => yearOf(i)() : yearOf(i);
}

/** Frames of bees of a row, in the contract's frame. */
export function framesAt(columns: LookColumns, i: number, contract: Contract): Estimate {
  if (isDeadByNote(columns, i)) {
    return { ...exactly(0), dead: true, note: `dead by ${quote(columns.notes!.name)}` };
  }
  const year = yearAt(columns, i, contract);
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
  year: AskYear,
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
  year: AskYear,
): Estimate | null {
  if (stores === null) return null;
  if (stores.isEmpty(i)) return blankIsNone ? exactly(0) : null;
  const storesUnit = unitFor(contract);
  checkUnitsWritten(stores, i, storesUnit);
  return sum(stores.estimates(i, storesUnit === "frames" ? "count" : "amount", contract, year));
}
