import { sum } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import type { Writing } from "../core/writing.js";
import { checkRows, HiveCells } from "./hive-cells.js";

/**
 * Columns side by side, as the first for `eachHive`: a hive was opened where any of them is filled,
 * and any of them may be the single row that serves every hive.
 */
export function beside(columns: readonly (HiveCells | null)[]): HiveCells {
  const given = columns.filter((column) => column !== null);
  const [longest, ...others] = given.sort((one, other) => other.rows - one.rows);
  if (longest === undefined) throw new Refusal("no column is given");
  const all = [longest, ...others];
  checkRows(all);
  const cells = Array.from({ length: longest.rows }, (_, i) =>
    all.flatMap((column) => Array.from({ length: column.width }, (_, k) => column.raw(i, k))),
  );
  return new HiveCells(longest.name, cells);
}

/** Refuses a block where one column was asked, since all but its first column would pass unread. */
export function checkSingle(columns: readonly (HiveCells | null)[]): void {
  for (const column of columns) {
    if (column !== null && column.width > 1) {
      throw new Refusal(`${column.name} is ${column.width} columns wide: give one column`);
    }
  }
}

/** The middle of an amount, its boxes added; null where nothing is written, or only a 0. */
export function amountAt(column: HiveCells | null, i: number, writing: Writing): number | null {
  if (column === null || column.isEmpty(i)) return null;
  return sum(column.estimates(i, "amount", writing)).middle;
}
