import { monthOf } from "./months.js";
import { quote, Refusal } from "./refusal.js";
import { dayOfSerial, serialOfDay, type Day } from "./serial.js";
import { normalise } from "./text.js";
import type { Writing } from "./writing.js";

/** Which of day and month comes first in a date that is text; `one way` where neither is said. */
export type DateOrder = "one way" | "day first" | "month first";

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([-/.]) ?(\d{1,2})\2 ?(\d{4}|\d{2})\.?$/;
const DAY_NAMED = /^(\d{1,2})[-./ ]*(?:de )?(\p{L}+\.?)[-./, ]*(?:de )?(\d{4}|\d{2})$/u;
const MONTH_NAMED = /^(\p{L}+\.?)[-./ ]*(\d{1,2})[-./, ]+(\d{4}|\d{2})$/u;

/**
 * Reads a date that stands as text, as a saved file or a sheet from elsewhere holds it. With points
 * the day comes first, and a year of four digits in front is followed by its month; else day and
 * month are told apart by what is said of the sheet, or where one of them can be no month.
 *
 * @param text - `27.03.2026`, `3/27/26`, `2026-03-27`, `27 Mar 2026`, `27. März 2026`
 * @param order - which comes first
 * @returns the day, of 2000 to 2099; null where the text is no date
 * @throws Refusal where it may be either of two days
 * @example dayOfText("27.03.2026", "one way") // { year: 2026, month: 3, day: 27 }
 */
export function dayOfText(text: string, order: DateOrder): Day | null {
  const plain = normalise(text);
  const [, year, , month, day] = YEAR_FIRST.exec(plain) ?? [];
  if (year !== undefined) return dayOf(year, month!, day!);
  const [, first, sign, second, last] = YEAR_LAST.exec(plain) ?? [];
  if (first !== undefined) return ordered(text, [first, second!, last!], sign === ".", order);
  const [, ownDay, name, ownYear] = DAY_NAMED.exec(plain) ?? [];
  if (name !== undefined) return dayOf(ownYear!, monthOf(name), ownDay!);
  const [, word, dayOfWord, yearOfWord] = MONTH_NAMED.exec(plain) ?? [];
  return word === undefined ? null : dayOf(yearOfWord!, monthOf(word), dayOfWord!);
}

function ordered(
  text: string,
  [one, other, year]: readonly [string, string, string],
  hasPoints: boolean,
  order: DateOrder,
): Day | null {
  const dayFirst = dayOf(year, other, one);
  const monthFirst = dayOf(year, one, other);
  if (hasPoints || order === "day first") return dayFirst;
  if (order === "month first") return monthFirst;
  if (dayFirst === null || monthFirst === null || one === other) return dayFirst ?? monthFirst;
  throw new Refusal(
    `${quote(text)} may be two days: write ${iso(dayFirst)} or ${iso(monthFirst)}, ` +
      `or say whether dates are written day first or month first`,
  );
}

/** The same as a spreadsheet would number it; null where the text is no date. */
export function serialOfText(
  text: string,
  { dates, dateSystem }: Pick<Writing, "dates" | "dateSystem">,
): number | null {
  const day = dayOfText(text, dates);
  return day === null ? null : serialOfDay(day, dateSystem);
}

/** Null where the calendar has no such day. */
function dayOf(year: string, month: string | number | null, day: string): Day | null {
  const full = Number(year) + (year.length === 2 ? 2000 : 0);
  const asked = { year: full, month: Number(month ?? 0), day: Number(day) };
  if (full < 2000 || full > 2099) return null;
  // What the calendar does not have is counted on into another month.
  return dayOfSerial(serialOfDay(asked)).month === asked.month ? asked : null;
}

function iso({ year, month, day }: Day): string {
  return [year, month, day].map((part) => String(part).padStart(2, "0")).join("-");
}
