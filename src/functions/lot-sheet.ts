import type { Contract } from "../core/contract.js";
import { lotOf, type Look, type Lot } from "../core/lot.js";
import { plural } from "../core/plural.js";
import { quote, Refusal } from "../core/refusal.js";
import { together } from "../core/together.js";
import { isBlank, toCellError } from "./cells.js";
import { dayAt } from "./dates.js";
import { Faults } from "./faults.js";
import { faultsAt, hiveAt, standingAt, type LookColumns } from "./look.js";
import { rowsOfLot } from "./lot-rows.js";
import { remarkOnContract } from "./lot-contract.js";
import { remarkOnSums } from "./sum-rows.js";
import { yardSheet, type YardSheet } from "./yard-sheet.js";

type Cells = readonly (readonly unknown[])[];

/**
 * The opened hives of one lot of a yard sheet, and what is to be said of rows that are no hives, or of
 * another contract that the hives name.
 *
 * @param lot - the lot's name in the sheet's lot column; null takes every row
 * @param size - hives in the lot, opened or not; null where all of them stand in the sheet
 */
export function lotOfSheet(
  yard: Cells,
  contract: Contract,
  lot: string | null,
  size: number | null,
): { lot: Lot; remark: string } {
  const found = find(yard, contract, lot);
  return {
    lot: lotOf(contract, readLooks(found), sizeOf(found, size)),
    remark: remarkOn(found),
  };
}

/** What a yard sheet says of one lot, before a contract counts it. */
export interface LotInSheet {
  readonly looks: readonly SheetLook[];
  /** Hives of the lot: as many as are said, where none are those that stand in the sheet. */
  readonly size: (said: number | null) => number;
  /** What is to be said of rows that are no hives, and of another contract that the hives name. */
  readonly remark: string;
}

export function lotInSheet(yard: Cells, contract: Contract, lot: string | null): LotInSheet {
  const found = find(yard, contract, lot);
  return {
    looks: [...readLooks(found)],
    size: (said) => sizeOf(found, said),
    remark: remarkOn(found),
  };
}

/** A sheet as a contract reads it, and in it the rows of one lot. */
interface Found {
  readonly yard: Cells;
  readonly contract: Contract;
  readonly lot: string | null;
  readonly sheet: YardSheet;
  readonly looks: LookColumns;
  readonly rows: readonly number[];
}

function find(yard: Cells, contract: Contract, lot: string | null): Found {
  const sheet = yardSheet(yard);
  const looks = sheet.looks(contract);
  return { yard, contract, lot, sheet, looks, rows: rowsOfLot(sheet, looks.bees, lot) };
}

function remarkOn({ sheet, rows, contract }: Found): string {
  return together(remarkOnContract(sheet, rows, contract), remarkOnSums(sheet));
}

/**
 * @param said - hives in the lot, opened or not; null for those that stand in the sheet
 * @throws Refusal where more stand in the sheet than are said
 */
function sizeOf(found: Found, said: number | null): number {
  // What is no number of hives is refused as such.
  if (said !== null && (said >= found.rows.length || !Number.isInteger(said))) return said;
  const listed = listedIn(found);
  if (said === null || said >= listed) return said ?? listed;
  throw new Refusal(
    `a lot of ${plural(said, "hive")} cannot have ${listed} in the sheet: give all of its hives, or write gone ` +
      "where one is no longer in it",
  );
}

/** Hives that stand in the sheet, opened or not, each once. */
function listedIn({ sheet, looks, rows }: Found): number {
  const ids = sheet.column("hive")!;
  const listed = new Set<string>();
  for (const i of rows) if (looks.bees.absence(i) !== "gone") listed.add(ids.text(i)!);
  return listed.size;
}

/** A look with the row of the sheet that it stands in, counted from 1 under the headings. */
export interface SheetLook extends Look {
  readonly row: number;
}

/**
 * The looks of one lot one by one, read as the contract writes and counts. Money hangs on them, so that
 * a row that cannot be read refuses the lot by its row instead of being passed over; all such rows are
 * told of at once.
 */
function* readLooks({ yard, contract, lot, sheet, looks, rows }: Found): Generator<SheetLook> {
  const ids = sheet.column("hive")!;
  const [pallets, dates] = [sheet.column("pallet"), sheet.column("date")];
  const faults = new Faults();
  let [found, zeros] = [0, 0];
  for (const i of rows) {
    try {
      if (standingAt(looks, i) !== "opened") continue;
      found++;
      if (looks.bees.isEmpty(i)) zeros++;
      const look = {
        id: ids.text(i)!,
        pallet: pallets?.text(i) ?? null,
        day: dayAt(dates, i, contract),
        hive: hiveAt(looks, i, contract),
        row: i + 1,
      };
      if (faults.isEmpty) yield look;
    } catch (error) {
      faults.add(i + 2, [toCellError(error, ""), ...faultsAt(looks, i, contract)]);
    }
  }
  faults.throwAny();
  if (lot !== null && found === 0) {
    throw new Refusal(`no opened hive stands in the lot ${quote(lot)}`);
  }
  checkZeros(zeros, found, yard);
}

/** Fewer dead-outs than this, each typed as 0, are believed. */
const MANY_ZEROS = 3;

/**
 * Some Excels hand a blank cell on as 0. Where no cell of the sheet came as a blank, many a 0 may be
 * a hive that nobody opened, and is not counted as empty in silence.
 */
function checkZeros(zeros: number, opened: number, yard: Cells): void {
  if (zeros < MANY_ZEROS || zeros * 4 < opened) return;
  if (yard.some((row) => row.some(isBlank))) return;
  throw new Refusal(
    `${zeros} of ${opened} hives have 0 bees, and their cells may be blank: write none or dead ` +
      "where there are no bees, and not opened where nobody looked",
  );
}
