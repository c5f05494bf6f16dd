import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isDateSerial } from "../../src/core/date-count.js";
import { monthOf } from "../../src/core/months.js";
import { print } from "../../src/core/estimate.js";
import { read } from "../../src/core/reading.js";
import { PLAIN_WRITING, type Writing } from "../../src/core/writing.js";
import { Refusal } from "../../src/core/refusal.js";

const writing = (change: Partial<Writing>): Writing => ({ ...PLAIN_WRITING, ...change });
const numbers = (
  text: string | number,
  kind: "count" | "percent" = "count",
  how = PLAIN_WRITING,
) => {
  const { low, middle, high } = read(text, kind, how);
  return [low, middle, high];
};
/** Serial numbers from the platform's calendar, not from the project's. */
const serial = (y: number, m: number, d: number) =>
  (Date.UTC(y, m - 1, d) - Date.UTC(1899, 11, 30)) / 864e5;

describe("a count as people write it", () => {
  it.each([
    ["7", [7, 7, 7]],
    [" 7 ", [7, 7, 7]],
    ["7.5", [7.5, 7.5, 7.5]],
    [".5", [0.5, 0.5, 0.5]],
    ["7-8", [7, 7.5, 8]],
    ["7-7", [7, 7, 7]],
    ["7 - 8", [7, 7.5, 8]],
    ["7–8", [7, 7.5, 8]],
    ["7—8", [7, 7.5, 8]],
    ["7−8", [7, 7.5, 8]],
    ["7‑8", [7, 7.5, 8]],
    ["7 to 8", [7, 7.5, 8]],
    ["7 or 8", [7, 7.5, 8]],
    ["8 or 7", [7, 7.5, 8]],
    ["7½", [7.5, 7.5, 7.5]],
    ["7 ½", [7.5, 7.5, 7.5]],
    ["7 1/2", [7.5, 7.5, 7.5]],
    ["7 and a half", [7.5, 7.5, 7.5]],
    ["6½-7", [6.5, 6.75, 7]],
    ["7 5/8", [7.625, 7.625, 7.625]],
    // So six and a half is written in the United States (common practice, no source).
    ["6-1/2", [6.5, 6.5, 6.5]],
    ["6-½", [6.5, 6.5, 6.5]],
    ["about 6-3/4", [6.25, 6.75, 7.25]],
    ["0-1/2", [0, 0.25, 0.5]],
    ["½", [0.5, 0.5, 0.5]],
    ["⅞", [0.875, 0.875, 0.875]],
    ["1/2", [0.5, 0.5, 0.5]],
    ["half", [0.5, 0.5, 0.5]],
    ["three quarters", [0.75, 0.75, 0.75]],
    ["one half", [0.5, 0.5, 0.5]],
    ["one quarter", [0.25, 0.25, 0.25]],
    ["one and a half", [1.5, 1.5, 1.5]],
    ["seven and three quarters", [7.75, 7.75, 7.75]],
    ["seven 1/2", [7.5, 7.5, 7.5]],
    ["seven", [7, 7, 7]],
    ["~6", [5.5, 6, 6.5]],
    ["about 5", [4.5, 5, 5.5]],
    ["approx. 5", [4.5, 5, 5.5]],
    ["5ish", [4.5, 5, 5.5]],
    ["5-ish", [4.5, 5, 5.5]],
    ["five-ish", [4.5, 5, 5.5]],
    ["5½-ish frames", [5, 5.5, 6]],
    ["5 or so", [4.5, 5, 5.5]],
    ["5 or so frames", [4.5, 5, 5.5]],
    ["5ish frames", [4.5, 5, 5.5]],
    ["about 5 frames", [4.5, 5, 5.5]],
    // Neither under nought nor over the most frames of a hive, 60.
    ["about 0.25", [0, 0.25, 0.5]],
    ["about 59.75", [59.5, 59.75, 60]],
    ["12+", [12, 12, null]],
    ["12+ frames", [12, 12, null]],
    ["12 plus", [12, 12, null]],
    ["≥ 12", [12, 12, null]],
    ["12 or more", [12, 12, null]],
    ["12 or more frames", [12, 12, null]],
    ["12 frames or more", [12, 12, null]],
    ["at least 12", [12, 12, null]],
    ["at least 12 frames", [12, 12, null]],
    ["7 frames to 8 frames", [7, 7.5, 8]],
    ["7 frames or 8", [7, 7.5, 8]],
    ["between 7 and 8", [7, 7.5, 8]],
    ["between 7 and a half and 8 frames", [7.5, 7.75, 8]],
    ["half a frame", [0.5, 0.5, 0.5]],
    ["half of a comb", [0.5, 0.5, 0.5]],
    ["three quarters of the frame", [0.75, 0.75, 0.75]],
    ["5 full", [5, 5, 5]],
    ["5 frames", [5, 5, 5]],
    ["5f", [5, 5, 5]],
    ["7\u00a0-\u00a08", [7, 7.5, 8]],
    ["７－８", [7, 7.5, 8]],
    ["٧-٨", [7, 7.5, 8]],
    ["७", [7, 7, 7]],
    ["𝟕", [7, 7, 7]],
    ["zero to one", [0, 0.5, 1]],
    ["none", [0, 0, 0]],
    ["None", [0, 0, 0]],
    ["no bees", [0, 0, 0]],
    ["-", [0, 0, 0]],
    ["—", [0, 0, 0]],
    ["0", [0, 0, 0]],
    ["dead", [0, 0, 0]],
    ["Dead-out", [0, 0, 0]],
    ["dead - out", [0, 0, 0]],
  ])("%j", (text, expected) => expect(numbers(text)).toEqual(expected));

  it("knows a dead-out from a hive with no bees seen", () => {
    // "DO" and "d/o" for a dead-out: common practice, no source
    for (const text of ["dead", "DO", "d/o", "D.O.", "d.o"])
      expect(read(text, "count"), text).toMatchObject({ middle: 0, dead: true });
    expect(read("none", "count").dead).toBe(false);
  });

  it("says that an open end is counted as written", () => {
    expect(read("12+", "count")).toEqual({
      low: 12,
      middle: 12,
      high: null,
      dead: false,
      note: "12 or more, counted as 12",
    });
  });

  it("has nothing more to say of about five", () => {
    expect(read("about 5", "count")).toMatchObject({ dead: false, note: "" });
  });

  it.each([
    "7--8",
    "sevn",
    "7-8-9",
    "7/8",
    "5/8",
    "8/6",
    "7 8",
    "-3",
    "-7-8",
    "1e3",
    "0x7",
    "61",
    "8-7",
    "about",
    "at least",
    "at most 5",
    "least 5",
    "7-",
    "7 to",
    "7 or",
    "or 8",
    "7 and",
    "7 and 8",
    "7 frames 8",
    "7 more",
    "7 so",
    "7 or 8 or 9",
    "7 or more 8",
    "7 or so 8",
    "at least 7-8",
    "at least 5 or so",
    "at least about 5",
    "7-8+",
    "12+ 3",
    "½ ½",
    "full",
    "two half frames",
    "half a",
    "half of",
    "7 a frame",
    "half a side",
    "half a box",
    "between 7",
    "between 7-8",
    "between 7 or 8",
    "between 8 and 7",
    "plus 7",
    "7 -ish 8",
    "5 half",
    "*",
    "7/",
    "7/x",
    "x/8",
  ])("refuses %j and quotes it", (text) => {
    expect(() => read(text, "count")).toThrow(Refusal);
    expect(() => read(text, "count")).toThrow(text);
  });

  it("asks for the smaller figure first where a range goes down to a part", () => {
    expect(() => read("6 to 1/2", "count")).toThrow("goes down");
    expect(() => read("6½-1/2", "count")).toThrow("goes down");
  });

  // As fractions these are none, or not written so: 3/16 is no part of a comb that is ever said.
  it.each(["7/8", "7 0/8", "7 3/16", "7 1.5/2", "7 .5/2", "7 1/2.5", "7 1/25", "seven 5/8"])(
    "asks what the stroke in %j means",
    (text) => {
      const [top, bottom] = text.split(" ").at(-1)!.split("/");
      expect(() => read(text, "count")).toThrow(
        `"${text}" could be a fraction, ${top} to ${bottom}, or two boxes: write ${top}-${bottom}, ` +
          "a decimal number, or give each box a column",
      );
    },
  );

  it.each(["7 8/8", "7 10/3", "7 1/1", "7 12/8", "10/10", "10/3"])(
    "does not take the stroke in %j for a range that goes down",
    (text) => {
      expect(() => read(text, "count")).toThrow(
        `"${text}" could be a fraction or two boxes: write a decimal number, or give each box a column`,
      );
    },
  );

  it("says how to write a range that goes down, and what was expected of what is not understood", () => {
    expect(() => read("8-7", "count")).toThrow(
      '"8-7" goes down: write the smaller figure first, 7-8',
    );
    for (const text of ["sevn", "full", "7/", "7/x", "x/8"]) {
      expect(() => read(text, "count")).toThrow(
        `"${text}" is not understood: a count such as 7, 7-8, 7½, about 7, 12+, half, none or dead was expected`,
      );
    }
    expect(() => read("61", "count")).toThrow('"61" is out of range: 0 to 60 frames were expected');
    expect(() => read(61, "count")).toThrow("61 is out of range: 0 to 60 frames were expected");
  });

  it("reads a text of sixty signs and no longer one", () => {
    expect(read("7".padStart(60), "count").middle).toBe(7);
    expect(() => read("7".padStart(61), "count")).toThrow("is not understood");
  });

  it.each([-1, 61, 1000, Infinity, NaN])("refuses the number %d", (n) =>
    expect(() => read(n, "count")).toThrow(Refusal),
  );

  it("never guesses the decimal sign", () => {
    expect(() => read("7,5", "count")).toThrow(
      '"7,5" has a ",", and the decimal sign is ".": set the decimal sign, or write it with "."',
    );
    expect(numbers("7,5", "count", writing({ decimal: "," }))).toEqual([7.5, 7.5, 7.5]);
    expect(() => read("7.5", "count", writing({ decimal: "," }))).toThrow(/decimal sign is ","/);
  });

  it("quotes only the beginning of a page pasted into a cell", () => {
    expect(() => read("7".repeat(32767), "count")).toThrow(/^"7{40}…" is not understood/);
  });
});

describe("a percent as people write it", () => {
  it.each([
    ["60%", [60, 60, 60]],
    ["60", [60, 60, 60]],
    ["60-70", [60, 65, 70]],
    ["60%-70%", [60, 65, 70]],
    ["about 60%", [55, 60, 65]],
    ["about 98", [96, 98, 100]],
    ["half", [50, 50, 50]],
    ["full", [100, 100, 100]],
    ["¾", [75, 75, 75]],
    ["none", [0, 0, 0]],
    ["0.5%", [0.5, 0.5, 0.5]],
    ["½ %", [0.5, 0.5, 0.5]],
    ["half percent", [0.5, 0.5, 0.5]],
    ["60-ish", [55, 60, 65]],
    ["half a comb", [50, 50, 50]],
    ["half of the frame", [50, 50, 50]],
    ["half full", [50, 50, 50]],
    ["¾ of a comb", [75, 75, 75]],
    ["1/2", [50, 50, 50]],
    ["7½ %", [7.5, 7.5, 7.5]],
    ["60 to 70 percent", [60, 65, 70]],
  ])("%j", (text, expected) => expect(numbers(text, "percent")).toEqual(expected));

  it("asks what a fraction means", () => {
    expect(() => read(0.6, "percent")).toThrow(
      "0.6 may be 60 % or 0.6 %: write 60, or say that percents are " + "written as fractions",
    );
    expect(() => read("0.6", "percent")).toThrow("may be 60 % or 0.6 %");
    expect(numbers(0.6, "percent", writing({ percentsAs: "fraction" }))).toEqual([60, 60, 60]);
  });

  it("asks nothing of nought and one", () => {
    for (const percent of [0, 1]) {
      expect(read(percent, "percent").middle).toBe(percent);
      expect(read(`${percent}`, "percent").middle).toBe(percent);
    }
  });

  it.each([101, "101%", "90-110", -5, "8-Jul"])("refuses %j", (cell) =>
    expect(() => read(cell, "percent")).toThrow(Refusal),
  );

  it("says the range of a fraction that is over the whole", () => {
    expect(() => read(1.2, "percent", writing({ percentsAs: "fraction" }))).toThrow(
      "1.2 is out of range: 0 to 100 percent were expected",
    );
  });
});

describe("eighths of a side as people write them", () => {
  const eighths = (text: string) => {
    const { low, middle, high } = read(text, "eighths");
    return [low, middle, high];
  };
  it.each([
    ["3", [3, 3, 3]],
    ["3/8", [3, 3, 3]],
    ["3/8-4/8", [3, 3.5, 4]],
    ["3-4/8", [3, 3.5, 4]],
    ["about 3/8", [2.5, 3, 3.5]],
    ["3-", null],
    ["3/", null],
    ["3/8-", null],
    ["2½", [2.5, 2.5, 2.5]],
    ["2 1/2", [2.5, 2.5, 2.5]],
    ["2½/8", null],
    ["3 eighths", [3, 3, 3]],
    ["8/8", [8, 8, 8]],
    ["9/8", null],
    ["3/4", null],
    ["3-8", [3, 5.5, 8]],
    ["x/8", null],
    // Half a side, or half an eighth.
    ["half", null],
    ["½", null],
  ])("%j", (text, expected) => {
    if (expected === null) expect(() => eighths(text)).toThrow(Refusal);
    else expect(eighths(text)).toEqual(expected);
  });
});

describe("an amount as people write it", () => {
  it("is a number or a range, and never about one", () => {
    expect(read("19200", "amount").middle).toBe(19200);
    expect(read(serial(2026, 7, 8), "amount").middle).toBe(serial(2026, 7, 8));
    expect(read("10-12 lb", "amount")).toMatchObject({ low: 10, middle: 11, high: 12 });
    for (const text of ["about 19200", "19200 or so", "19200ish", "full", "8-Jul"]) {
      expect(() => read(text, "amount")).toThrow(
        `"${text}" is not understood: an amount such as 12, 12.5, 10-12 or none was expected`,
      );
    }
  });
});

describe("a figure that cannot be, or is none", () => {
  it.each([
    [
      "percent",
      "101",
      "0 to 100 percent",
      "a percent such as 60, 60%, 55-65, about 60, half or none",
    ],
    ["eighths", "9", "0 to 8 eighths of a side", "eighths of a side such as 3, 3-4, 2½ or none"],
    ["amount", "10000001", "0 to 10000000 in all", "an amount such as 12, 12.5, 10-12 or none"],
  ] as const)("is told what a figure of its sort is: %s", (kind, over, range, expected) => {
    expect(() => read(over, kind)).toThrow(`"${over}" is out of range: ${range} were expected`);
    expect(() => read("?", kind)).toThrow(`"?" is not understood: ${expected} was expected`);
  });
});

describe("a count that the spreadsheet turned into a date", () => {
  it.each([
    ["8 July, month first", serial(2026, 7, 8)],
    ["7 August, day first", serial(2026, 8, 7)],
  ])("reads 7-8 back from %s", (_, cell) => {
    expect(numbers(cell)).toEqual([7, 7.5, 8]);
    expect(read(cell, "count").note).toMatch(/^the cell holds a date, .* 2026: read back as 7-8$/);
  });

  it("reads 12-13 back from December 2013", () => {
    expect(numbers(serial(2013, 12, 1))).toEqual([12, 12.5, 13]);
    expect(read(serial(2013, 12, 1), "count", PLAIN_WRITING, 2026).middle).toBe(12.5);
    expect(read(serial(2013, 12, 1), "count", PLAIN_WRITING, 2026).note).toBe(
      "the cell holds a date, 1 Dec 2013: read back as 12-13",
    );
  });

  // In 2013 both 12-13 and 1-12 were kept so. 11-12 is a day of the year wherever one comes first, so
  // November 2012 is a date of 2012, and so is whatever is not a first of a month.
  it.each([
    [serial(2013, 12, 1), 2013, "1 Dec 2013: type the count as text, for example '7-8"],
    [serial(2012, 11, 1), 2026, "1 Nov 2012, of another year than the inspection"],
    [serial(2010, 8, 1), 2026, "1 Aug 2010, of another year than the inspection"],
    [serial(2013, 12, 2), 2026, "2 Dec 2013, of another year than the inspection"],
  ])("takes serial %d, inspected in %d, for no month and year", (cell, inspected, said) => {
    const refused = () => read(cell, "count", PLAIN_WRITING, inspected);
    expect(refused).toThrow(`the cell holds a date, ${said}`);
  });

  it("reads a range of five frames back, and none that is wider", () => {
    expect(numbers(serial(2026, 7, 12))).toEqual([7, 9.5, 12]);
    expect(numbers(serial(2017, 12, 1))).toEqual([12, 14.5, 17]);
    expect(() => numbers(serial(2026, 6, 12))).toThrow("12 Jun 2026: type the count as text");
  });

  it("takes the days of 2000 to 2099 for dates, and no number beside them", () => {
    const whether = (n: number) => [isDateSerial(n - 1), isDateSerial(n)];
    expect(whether(serial(2000, 1, 1))).toEqual([false, true]);
    expect(whether(serial(2100, 1, 1))).toEqual([true, false]);
    expect(isDateSerial(serial(2099, 12, 31) + 0.75)).toBe(true);
  });

  it("says how to type what may have been a fraction", () => {
    expect(() => read(serial(2026, 2, 1), "count")).toThrow(
      "the cell holds a date, 1 Feb 2026: was it 1-2 or the fraction 1/2? Type '1-2 as text, " +
        "or a decimal number, or say that counts are in whole frames",
    );
  });

  it.each([
    [1, 2],
    [2, 1],
    [1, 3],
    [1, 4],
    [2, 3],
    [3, 4],
    [4, 3],
  ])("asks whether month %d day %d was a fraction, unless counts are whole frames", (m, d) => {
    const cell = serial(2026, m, d);
    expect(() => read(cell, "count")).toThrow(/fraction/);
    expect(numbers(cell, "count", writing({ wholeFrames: true }))).toEqual([
      Math.min(m, d),
      (m + d) / 2,
      Math.max(m, d),
    ]);
  });

  it("refuses a date of another year than the inspection's", () => {
    expect(() => read(serial(2022, 7, 7), "count", PLAIN_WRITING, 2026)).toThrow(/year/);
    // 7-9 typed into a 1904 workbook in 2026, seen as a 1900 one: four years and a day early.
    expect(() => read(serial(2026, 7, 9) - 1462, "count", PLAIN_WRITING, 2026)).toThrow(/year/);
    expect(numbers(serial(2026, 7, 9) - 1462, "count", writing({ dateSystem: 1904 }))).toEqual([
      7, 8, 9,
    ]);
  });

  it.each([serial(2026, 7, 7), serial(2026, 3, 28), serial(2026, 2, 11), serial(2026, 7, 8) + 0.5])(
    "refuses serial %d, which no count becomes",
    (cell) => expect(() => read(cell, "count")).toThrow(/date|time/),
  );

  it.each([
    ["8-Jul", [7, 7.5, 8]],
    ["7-Aug", [7, 7.5, 8]],
    ["08-Jul", [7, 7.5, 8]],
    ["Jul-08", [7, 7.5, 8]],
    ["8. Juli", [7, 7.5, 8]],
    ["08-juil.", [7, 7.5, 8]],
    ["8-août", null],
    ["7-août", [7, 7.5, 8]],
    ["8 de jul", [7, 7.5, 8]],
    ["Dez 13", [12, 12.5, 13]],
    ["Dec-13", [12, 12.5, 13]],
    ["7/8/2026", [7, 7.5, 8]],
    ["08.07.2026", [7, 7.5, 8]],
    ["2026-07-08", [7, 7.5, 8]],
    ["12/13/2026", [12, 12.5, 13]],
    ["8/jul", [7, 7.5, 8]],
    ["July 8, 2026", [7, 7.5, 8]],
    ["0-Mar", null],
    ["Mar-00", null],
    ["8-Jul 2026 14:30", null],
    ["8-Jul box", null],
    ["7/8/20260", null],
    ["20260/7/8", null],
    ["7/8/1926", null],
    ["7-8/2026", null],
    ["13/14/2026", null],
    ["2-Jan", null],
    ["28-Mar", null],
    ["8-Jux", null],
  ])("as a saved file holds it: %j", (text, expected) => {
    if (expected === null) expect(() => read(text, "count")).toThrow(Refusal);
    else expect(numbers(text)).toEqual(expected);
  });

  it.each(["8-Jul-26", "8 Jul 2026", "7/8/2026", "2026-07-08"])(
    "reads %j back for an inspection of its year, or of a year unknown, and for no other",
    (text) => {
      expect(numbers(text)).toEqual([7, 7.5, 8]);
      expect(read(text, "count", PLAIN_WRITING, 2026).middle).toBe(7.5);
      expect(() => read(text, "count", PLAIN_WRITING, 2022)).toThrow(
        `the cell holds a date, "${text}", of another year than the inspection: ` +
          "type the count as text",
      );
    },
  );

  it.each(["8-Jul", "8. Juli", "Jul-08", "８－Ｊｕｌ", "08-JUIL."])(
    "shows %s as it stands",
    (text) =>
      expect(read(text, "count").note).toBe(`the cell holds a date, "${text}": read back as 7-8`),
  );

  it.each([
    ["28-Mar-26", ": type the count as text, for example '7-8"],
    ["2-Jan", ": was it 1-2 or the fraction 1/2?"],
  ])("shows %s as it stands where it cannot be read back", (text, says) =>
    expect(() => read(text, "count")).toThrow(`the cell holds a date, "${text}"${says}`),
  );

  it("asks for no year of a date that shows none", () => {
    expect(read("8-Jul", "count", PLAIN_WRITING, 2026).middle).toBe(7.5);
  });

  it("knows each language's months, short and long (Unicode CLDR, through Intl)", () => {
    const languages =
      "en-US en-GB de-DE de-AT fr-FR fr-CA es-ES es-MX it-IT pt-BR nl-NL pl-PL sv-SE da-DK nb-NO fi-FI cs-CZ hu-HU ro-RO tr-TR ru-RU el-GR sl-SI";
    for (const language of languages.split(" ")) {
      for (const month of ["short", "long"] as const) {
        const format = new Intl.DateTimeFormat(language, { month, timeZone: "UTC" });
        for (let m = 1; m <= 12; m++) {
          const name = format.format(Date.UTC(2026, m - 1, 1)).toLowerCase();
          expect([language, name, monthOf(name)]).toEqual([language, name, m]);
        }
      }
    }
  });
});

describe("any reading", () => {
  const quarter = fc.integer({ min: 0, max: 80 }).map((n) => n / 4);
  it("printed and read again is itself", () => {
    fc.assert(
      fc.property(quarter, quarter, fc.constantFrom(".", ","), (a, b, decimal) => {
        const text = a < b ? `${a}-${b}` : `${b}`;
        const how = writing({ decimal: decimal as "." });
        const first = read(decimal === "," ? text.replaceAll(".", ",") : text, "count", how);
        expect(read(print(first, how.decimal), "count", how)).toEqual(first);
      }),
    );
  });
  it("is ordered, and is refused only by a Refusal", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: "binary" }), fc.double()), (cell) => {
        try {
          const { low, middle, high } = read(cell, "count");
          expect(low <= middle && middle <= (high ?? Infinity)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
        }
      }),
    );
  });
});
