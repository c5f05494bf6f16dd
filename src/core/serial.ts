/** A day of the proleptic Gregorian calendar; month 1 to 12, day 1 to 31. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Workbooks count days from 1900 (most) or from 1904 (some made on old Macs), 1,462 days apart. */
export type DateSystem = 1900 | 1904;

const DAYS_1904 = 1462;
/** Days from 1 March of the year 0 to 30 December 1899, the day that a 1900 workbook numbers 0. */
const EPOCH = 693899;

/**
 * The day that a spreadsheet's serial number stands for.
 *
 * Integer arithmetic on years that begin in March, so that the leap day is a year's last and no
 * time zone can move the answer.
 *
 * @param serial - whole days, 1900 system: at least 61 (Excel counts a 29 February 1900 that never was)
 * @example dayOfSerial(46211) // { year: 2026, month: 7, day: 8 }
 */
export function dayOfSerial(serial: number, system: DateSystem = 1900): Day {
  const days = Math.floor(serial) + EPOCH + (system === 1904 ? DAYS_1904 : 0);
  const era = Math.floor(days / 146097);
  const dayOfEra = days - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36524) -
      Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/**
 * The serial number of a day.
 * @example serialOfDay({ year: 2026, month: 7, day: 8 }) // 46211
 */
export function serialOfDay({ year, month, day }: Day, system: DateSystem = 1900): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra =
    yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - EPOCH - (system === 1904 ? DAYS_1904 : 0);
}

const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** A day as messages name it: `8 Jul 2026`, which no order of day and month can turn round. */
export function showDay({ year, month, day }: Day): string {
  return `${day} ${MONTHS[month - 1]} ${year}`;
}
