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
  return lotOf(contract, readLooks(yard, contract, lot), size);
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
  const [lots, pallets, dates] = [
    sheet.column("lot"),
    sheet.column("pallet"),
    sheet.column("date"),
  ];
  if (lot !== null && lots === null) {
    throw new Refusal(`lot ${quote(lot)} is asked for, and the sheet has no lot column`);
  }
  const wanted = lot === null ? null : normalise(lot);
  let found = 0;
  for (let i = 0; i < sheet.rows; i++) {
    if (wanted !== null && normalise(lots!.text(i) ?? "") !== wanted) continue;
    if (ids.isEmpty(i)) {
      if (!looks.bees.isEmpty(i)) throw new Refusal(`row ${i + 2} has counts and no hive id`);
      continue;
    }
    found++;
    yield {
      id: ids.text(i)!,
      pallet: pallets?.text(i) ?? null,
      day: dayAt(dates, i, contract),
      hive: hiveAt(looks, i, contract),
      row: i + 1,
    };
  }
  if (lot !== null && found === 0) {
    throw new Refusal(`no opened hive stands in the lot ${quote(lot)}`);
  }
}
