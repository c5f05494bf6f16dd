import { dayOfSerial, showDay, type DateSystem } from "../core/serial.js";
import { CellError, isBlank } from "../functions/cells.js";

/** A number with the user's decimal sign, thousands apart by the other one. */
export function localised(
  value: number,
  sign: "." | ",",
  options: Intl.NumberFormatOptions,
): string {
  return value.toLocaleString(sign === "," ? "de" : "en", options);
}

/** A number as people read it: thousands apart and whole, less with few places. */
export function shownNumber(value: number, sign: "." | ",", most = 2): string {
  const places = Math.abs(value) < 1000 ? most : 0;
  return localised(value, sign, { maximumFractionDigits: places });
}

/** `22 Mar 2026`, from a day as workbooks number it. */
export function shownDay(serial: number, system?: DateSystem): string {
  return showDay(dayOfSerial(serial, system));
}

/** What a hive, a lot or a pallet is called: a number too is a name there. */
export function shownName(value: unknown): string {
  if (value instanceof CellError) return value.code;
  return isBlank(value) ? "" : String(value);
}

/** A cell as the sheet shows it, near enough to be known again. */
export function shownCell(
  value: unknown,
  sign: "." | ",",
  format = "General",
  system?: DateSystem,
): string {
  if (value instanceof CellError) return value.code;
  if (typeof value === "number")
    return isDay(format) ? shownDay(value, system) : shownNumber(value, sign);
  return isBlank(value) ? "" : String(value);
}

/** A number format that shows a day: one with d or y outside of quoted text and brackets. */
function isDay(format: string): boolean {
  return /[dy]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, "").replace(/general/i, ""));
}

/** A chance in percent; one that is all but sure is not said to be sure. */
export function shownChance(chance: number): string {
  const percent = Math.round(100 * chance);
  if (percent === 100 && chance < 1) return "over 99";
  return percent === 0 && chance > 0 ? "under 1" : String(percent);
}
