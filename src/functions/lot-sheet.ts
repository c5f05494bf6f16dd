import type { Contract } from "../core/contract.js";
import { lotOf, type Look, type Lot } from "../core/lot.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { dayAt } from "./dates.js";
import { hiveAt } from "./look.js";
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
  const looks = looksOfSheet(yard, contract, lot);
  return lotOf(contract, looks, size);
}

/** A look with the row of the sheet that it stands in, counted from 1 under the headings. */
export interface SheetLook extends Look {
  readonly row: number;
}

/**
 * The looks of one lot, read as the contract writes and counts. Money hangs on them, so that a row
 * that cannot be read refuses the lot by its row instead of being passed over.
 */
export function looksOfSheet(
  yard: unknown[][],
  contract: Contract,
  lot: string | null,
): SheetLook[] {
  const sheet = yardSheet(yard);
  const looks = sheet.looks(contract);
  const ids = sheet.column("hive")!;
  const lots = sheet.column("lot");
  if (lot !== null && lots === null) {
    throw new Refusal(`lot ${quote(lot)} is asked for, and the sheet has no lot column`);
  }
  const found: SheetLook[] = [];
  for (let i = 0; i < sheet.rows; i++) {
    if (lot !== null && normalise(lots!.text(i) ?? "") !== normalise(lot)) continue;
    if (ids.isEmpty(i)) {
      if (!looks.bees.isEmpty(i)) throw new Refusal(`row ${i + 2} has counts and no hive id`);
      continue;
    }
    found.push({
      id: ids.text(i)!,
      pallet: sheet.column("pallet")?.text(i) ?? null,
      day: dayAt(sheet.column("date"), i, contract),
      hive: hiveAt(looks, i, contract),
      row: i + 1,
    });
  }
  if (lot !== null && found.length === 0) {
    throw new Refusal(`no opened hive stands in the lot ${quote(lot)}`);
  }
  return found;
}
