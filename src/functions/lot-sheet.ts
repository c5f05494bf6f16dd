import type { Contract } from "../core/contract.js";
import { lotOf, type Look, type Lot } from "../core/lot.js";
import { toCellError } from "./cells.js";
import { dayAt } from "./dates.js";
import { Faults } from "./faults.js";
import { faultsAt, hiveAt } from "./look.js";
import { rowsOfLot } from "./lot-rows.js";
import { yardSheet } from "./yard-sheet.js";

/**
 * The opened hives of one lot of a yard sheet.
 *
 * @param lot - the lot's name in the sheet's lot column; null takes every row
 * @param size - hives in the lot, opened or not; null where every hive was opened
 */
export function lotOfSheet(
  yard: unknown[][],
  contract: Contract,
  lot: string | null,
  size: number | null,
): Lot {
  return lotOf(contract, readLooks(yard, contract, lot), size);
}

/** A look with the row of the sheet that it stands in, counted from 1 under the headings. */
export interface SheetLook extends Look {
  readonly row: number;
}

/**
 * The looks of one lot, read as the contract writes and counts. Money hangs on them, so that a row
 * that cannot be read refuses the lot by its row instead of being passed over; all such rows are told
 * of at once.
 */
export function looksOfSheet(
  yard: unknown[][],
  contract: Contract,
  lot: string | null,
): SheetLook[] {
  return [...readLooks(yard, contract, lot)];
}

/** The same one by one, for who need not keep them. */
function* readLooks(
  yard: unknown[][],
  contract: Contract,
  lot: string | null,
): Generator<SheetLook, void> {
  const sheet = yardSheet(yard);
  const looks = sheet.looks(contract);
  const ids = sheet.column("hive")!;
  const [pallets, dates] = [sheet.column("pallet"), sheet.column("date")];
  const faults = new Faults();
  for (const i of rowsOfLot(sheet, looks.bees, lot)) {
    try {
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
}
