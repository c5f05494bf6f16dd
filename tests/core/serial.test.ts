import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOfSerial, serialOfDay, showDay } from "../../src/core/serial.js";

/** Days from 30 December 1899 or 1 January 1904, as the platform's calendar counts them. */
const serial = (at: number, system: 1900 | 1904): number =>
  (at - (system === 1900 ? Date.UTC(1899, 11, 30) : Date.UTC(1904, 0, 1))) / 86_400_000;
const day = (year: number, month: number, day: number) => ({ year, month, day });

describe("a day's serial number", () => {
  it("is the platform's, to and fro, in both systems", () => {
    const days = fc.date({
      min: new Date("1904-01-01"),
      max: new Date("2500-12-31"),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(days, fc.constantFrom<(1900 | 1904)[]>(1900, 1904), (date, system) => {
        const midnight = Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate());
        const asked = day(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
        expect(serialOfDay(asked, system)).toBe(serial(midnight, system));
        expect(dayOfSerial(serial(midnight, system), system)).toEqual(asked);
        expect(dayOfSerial(serial(date.getTime(), system), system)).toEqual(asked);
      }),
    );
  });

  // The ends of years, and the leap days of 2000, which is one by the rule of 400, and of 2024.
  it.each([
    [2000, 1, 1],
    [2000, 2, 28],
    [2000, 2, 29],
    [2000, 3, 1],
    [2024, 2, 29],
    [2026, 2, 28],
    [2026, 3, 1],
    [2026, 12, 31],
    [2100, 2, 28],
    [2100, 3, 1],
    [2400, 2, 29],
  ])("%d-%d-%d", (year, month, ofMonth) => {
    const at = serial(Date.UTC(year, month - 1, ofMonth), 1900);
    expect(dayOfSerial(at)).toEqual(day(year, month, ofMonth));
    expect(serialOfDay(day(year, month, ofMonth))).toBe(at);
  });
});

it("names a day in an order that cannot be turned round", () => {
  expect(showDay(day(2026, 1, 8))).toBe("8 Jan 2026");
  expect(showDay(day(2026, 12, 31))).toBe("31 Dec 2026");
});
