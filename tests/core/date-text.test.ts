import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOfText, serialOfText, type DateOrder } from "../../src/core/date-text.js";

const MARCH_27 = { year: 2026, month: 3, day: 27 };
const day = (year: number, month: number, day: number) => ({ year, month, day });

describe("a date that stands as text", () => {
  it.each([
    "27.03.2026",
    "27.3.26",
    "27. 3. 2026",
    "2026-03-27",
    "2026/3/27",
    "3/27/2026",
    "27/03/26",
    "27-03-2026",
    "27 Mar 2026",
    "27-Mar-26",
    "27. März 2026",
    "27 mars 2026",
    "27 de marzo de 2026",
    "March 27, 2026",
    " ２７．０３．２０２６ ",
  ])("%s is 27 March 2026, whatever is said of the sheet", (text) => {
    for (const order of ["one way", "day first"] as const) {
      if (text === "3/27/2026" && order === "day first") continue;
      expect(dayOfText(text, order)).toEqual(MARCH_27);
    }
  });

  it("may be of any year from 2000 to 2099, and of a leap day", () => {
    expect(dayOfText("01.01.2000", "one way")).toEqual(day(2000, 1, 1));
    expect(dayOfText("31.12.2099", "one way")).toEqual(day(2099, 12, 31));
    expect(dayOfText("29.02.24", "one way")).toEqual(day(2024, 2, 29));
  });

  it("takes the day first with points also where months are said to come first", () => {
    expect(dayOfText("03.04.2026", "month first")).toEqual(day(2026, 4, 3));
  });

  it("is read by what is said of the sheet where it may be two days, and refused else", () => {
    expect(dayOfText("3/4/2026", "day first")).toEqual(day(2026, 4, 3));
    expect(dayOfText("3/4/2026", "month first")).toEqual(day(2026, 3, 4));
    expect(dayOfText("3/3/2026", "one way")).toEqual(day(2026, 3, 3));
    expect(() => dayOfText("3/4/2026", "one way")).toThrow(
      '"3/4/2026" may be two days: write 2026-04-03 or 2026-03-04, or say whether ' +
        "dates are written day first or month first",
    );
  });

  it.each([
    "31.02.2026",
    "29.02.2025",
    "0.1.2026",
    "13/13/2026",
    "27.03.",
    "27.03.1926",
    "27.03.1999",
    "27.03.2100",
    "00.03.2026",
    "32.01.2026",
    "27.00.2026",
    "27.13.2026",
    "27 Foo 2026",
    "Mar 2026",
  ])("%s is none", (text) => {
    expect(dayOfText(text, "one way")).toBeNull();
  });

  it("that the order of the sheet makes no day of is none, and not turned round", () => {
    expect(dayOfText("3/27/2026", "day first")).toBeNull();
    expect(dayOfText("27/3/2026", "month first")).toBeNull();
  });

  // Serials as the platform's calendar counts them: days from 30 December 1899, or 1 January 1904.
  it("is the serial that a spreadsheet has for that day, in both systems", () => {
    const days = (from: number) => (Date.UTC(2026, 2, 27) - from) / 86_400_000;
    const writing = (dateSystem: 1900 | 1904) => ({ dates: "one way" as DateOrder, dateSystem });
    expect(serialOfText("27.03.2026", writing(1900))).toBe(days(Date.UTC(1899, 11, 30)));
    expect(serialOfText("27.03.2026", writing(1904))).toBe(days(Date.UTC(1904, 0, 1)));
    expect(serialOfText("27.13.2026", writing(1900))).toBeNull();
  });

  it("comes back as it was written, in either order, as the platform writes it", () => {
    const any = fc.date({
      min: new Date("2000-01-01"),
      max: new Date("2099-12-31"),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(any, (date) => {
        const wanted = day(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
        const as = (locale: string) => date.toLocaleDateString(locale, { timeZone: "UTC" });
        expect(dayOfText(as("en-GB"), "day first")).toEqual(wanted);
        expect(dayOfText(as("en-US"), "month first")).toEqual(wanted);
        expect(dayOfText(as("de-DE"), "one way")).toEqual(wanted);
        expect(dayOfText(as("sv-SE"), "one way")).toEqual(wanted);
      }),
    );
  });
});
