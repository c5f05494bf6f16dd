import { monthOf } from "./months.js";
import { between, type Estimate } from "./estimate.js";
import type { Writing } from "./writing.js";
import { Refusal } from "./refusal.js";
import { dayOfSerial, type Day, showDay } from "./serial.js";
import { sources } from "./sources.js";
import type { Token } from "./text.js";

const FIRST_SERIAL = 36526; // 1 January 2000
const LAST_SERIAL = 73050; // 31 December 2099
const YEAR_LAST = /^(?<one>\d{1,2})([/.-])(?<other>\d{1,2})\2(?<year>20\d\d)$/;
const YEAR_FIRST = /^(?<year>20\d\d)([/.-])(?<one>\d{1,2})\2(?<other>\d{1,2})$/;

/** The year in which a count was typed, null where unknown: asked for where the count became a date. */
export type AskYear = () => number | null;

/** Whether a number in a count column can only be a date: a day of 2000 to 2099. */
export function isDateSerial(value: number): boolean {
  return value >= FIRST_SERIAL && value < LAST_SERIAL + 1;
}

/**
 * Reads back a count that the spreadsheet turned into a date as it was typed: `7-8` is kept as 8
 * July or 7 August, `12-13` as December 2013. Read back only where one reading is possible.
 *
 * @param serial - a day of 2000 to 2099 as the workbook numbers it
 * @returns the range in frames, with a note that says what the cell holds
 * @throws Refusal that says what the cell holds and how to type it
 * @example countOfSerial(46211, PLAIN_WRITING, () => 2026) // 8 July 2026: low 7, middle 7.5, high 8
 */
export function countOfSerial(
  serial: number,
  writing: Pick<Writing, "wholeFrames" | "dateSystem">,
  inspected: AskYear,
): Estimate {
  const day = dayOfSerial(serial, writing.dateSystem);
  if (!Number.isInteger(serial))
    throw new Refusal(`the cell holds a date with an hour, ${showDay(day)}: type the count`);
  return countOfDay(day, writing.wholeFrames, inspected());
}

/**
 * Whether dates that stand under a heading of counts may all have been ranges: each reads back as one,
 * and they are not of one month, as the days are on which a yard is opened.
 */
export function areRanges(serials: readonly number[], dateSystem: Writing["dateSystem"]): boolean {
  const months = new Set<number>();
  for (const serial of serials) {
    try {
      countOfSerial(serial, { wholeFrames: true, dateSystem }, () => null);
    } catch (error) {
      if (error instanceof Refusal) return false;
      throw error;
    }
    months.add(dayOfSerial(serial, dateSystem).month);
  }
  return months.size > 1;
}

/**
 * The count of a date in a saved file, which holds it as it was shown: `8-Jul`, `8. Juli`, `Dec-13`,
 * `08-juil.`, `7/8/2026`. Null where the text is no date.
 *
 * @param shown - the text as it stands in the cell, for messages
 */
export function countOfDateText(
  text: string,
  words: readonly Token[],
  shown: string,
  wholeFrames: boolean,
  inspected: AskYear,
): Estimate | null {
  const full = fullDate(text);
  if (full)
    return rangeOf(
      full.one,
      full.other,
      shown,
      full.year === (inspected() ?? full.year),
      wholeFrames,
    );
  const parts = words.filter((w) => !["-", ".", "/", ",", "de"].includes(w.text));
  const [first, second, third, ...more] = parts;
  if (!first || !second || more.length > 0 || (third && third.kind !== "number")) return null;
  const dayFirst = first.kind === "number";
  const month = monthOf(dayFirst ? second.text : first.text);
  const other = Number(dayFirst ? first.text : second.text);
  if (month === null || !Number.isInteger(other)) return null;
  const year = third && Number(third.text) % 100;
  const sameYear = year === undefined || year === (inspected() ?? year) % 100;
  return rangeOf(month, other, shown, sameYear, wholeFrames);
}

/** `7/8/2026`, `08.07.2026` or `2026-07-08`: which of the two is the month does not matter here. */
function fullDate(text: string): { one: number; other: number; year: number } | null {
  const parts = (YEAR_LAST.exec(text) ?? YEAR_FIRST.exec(text))?.groups;
  if (!parts) return null;
  const [one, other, year] = [Number(parts.one), Number(parts.other), Number(parts.year)];
  return Math.min(one, other) > 12 ? null : { one, other, year };
}

function countOfDay(day: Day, wholeFrames: boolean, inspected: number | null): Estimate {
  const shown = showDay(day);
  // 12-13 is no day of the year where days come first: kept as the first of December 2013.
  const monthAndYear = day.day === 1 && day.year % 100 > 12 && day.year !== inspected;
  if (monthAndYear && narrow(day.month, day.year % 100)) {
    return rangeOf(day.month, day.year % 100, shown, true, wholeFrames);
  }
  const sameYear = inspected === null || day.year === inspected;
  return rangeOf(day.month, day.day, shown, sameYear, wholeFrames);
}

/** A frame count that is also a common fraction was perhaps typed as one: 1/2, 1/3, 2/3, 1/4, 3/4. */
const ALSO_A_FRACTION = new Set(["1-2", "1-3", "2-3", "1-4", "3-4"]);

function rangeOf(
  one: number,
  other: number,
  shown: string,
  sameYear: boolean,
  wholeFrames: boolean,
): Estimate {
  const low = Math.min(one, other);
  const high = Math.max(one, other);
  const pair = `${low}-${high}`;
  const holds = `the cell holds a date, ${shown}`;
  if (!sameYear) {
    throw new Refusal(`${holds}, of another year than the inspection: type the count as text`);
  }
  if (low < 1 || !narrow(low, high)) {
    throw new Refusal(`${holds}: type the count as text, for example '7-8`);
  }
  if (ALSO_A_FRACTION.has(pair) && !wholeFrames) {
    throw new Refusal(
      `${holds}: was it ${pair} or the fraction ${low}/${high}? Type '${pair} as text, or a decimal number, ` +
        `or say that counts are in whole frames`,
    );
  }
  return between(low, high, `${holds}: read back as ${pair}`);
}

function narrow(low: number, high: number): boolean {
  return low < high && high - low <= sources.widestDateRange.value;
}
