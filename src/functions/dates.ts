import { isDateSerial } from "../core/date-count.js";
import { serialOfText } from "../core/date-text.js";
import { quote, Refusal } from "../core/refusal.js";
import { PLAIN_WRITING, type Writing } from "../core/writing.js";
import { isBlankOrZero } from "./cells.js";
import type { HiveCells } from "./hive-cells.js";

type DateWriting = Pick<Writing, "dates" | "dateSystem">;

/**
 * A cell that must hold a date, as the sheet numbers days.
 *
 * @throws Refusal where it holds none, or a text that may be two days
 */
export function dateOf(cell: unknown, writing: DateWriting = PLAIN_WRITING): number {
  if (typeof cell === "number" && isDateSerial(cell)) return Math.floor(cell);
  const read = typeof cell === "string" ? serialOfText(cell, writing) : null;
  if (read !== null) return read;
  throw new Refusal(`${quote(String(cell))} stands where a date of 2000 to 2099 was expected`);
}

/** A date of a row; null where it is blank. */
export function dateAt(
  dates: HiveCells,
  i: number,
  writing: DateWriting = PLAIN_WRITING,
): number | null {
  const cell = dates.cell(i);
  if (cell === null || cell === 0) return null;
  return dates.named(i, 0, () => dateOf(cell, writing));
}

/**
 * The day of a row's look as the sheet numbers it; null where it does not say, or in a text that may
 * be two days or none: what needs the day says so.
 */
export function dayAt(dates: HiveCells | null, i: number, writing: DateWriting): number | null {
  const cell = dates?.cell(i);
  if (typeof cell === "number" && !isBlankOrZero(cell)) return Math.floor(cell);
  if (typeof cell !== "string") return null;
  try {
    return serialOfText(cell, writing);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
