import { firstOf } from "../core/listing.js";
import { quote } from "../core/refusal.js";
import { saysSum } from "../core/sums.js";
import { isBlankOrZero } from "./cells.js";
import type { YardSheet } from "./yard-sheet.js";

/**
 * How a row of sums or averages is labelled: in the hive's column or, where that is blank, in the
 * first cell of the row that is not. Null for any other row.
 *
 * @param hive - the hives' column in the row, -1 where the sheet has none
 */
export function labelOfSums(row: readonly unknown[], hive: number): string | null {
  const id = row[hive];
  const label = isBlankOrZero(id) ? row.find((cell) => !isBlankOrZero(cell)) : id;
  return typeof label === "string" && saysSum(label) ? label.trim() : null;
}

/** What is to be said of a sheet's rows of sums where hives are counted; empty where it has none. */
export function remarkOnSums(sheet: YardSheet): string {
  const labels = Array.from({ length: sheet.rows }, (_, i) => sheet.sums(i));
  const rows = labels.flatMap((label, i) =>
    label === null ? [] : [`row ${i + 2}, ${quote(label)}`],
  );
  return rows.length === 0 ? "" : `no hive: ${firstOf(rows)}`;
}
