import { absenceOf, type Absence } from "../core/absence.js";
import { isOneBox } from "../core/boxes.js";
import { refuseSeams, refuseTooMany } from "../core/combs-written.js";
import { areRanges, isDateSerial, type AskYear } from "../core/date-count.js";
import { exactly, type Estimate } from "../core/estimate.js";
import { asksWhetherSeen } from "../core/headings.js";
import type { Kind } from "../core/kinds.js";
import { plural } from "../core/plural.js";
import { read } from "../core/reading.js";
import { quote, Refusal } from "../core/refusal.js";
import { dayOfSerial } from "../core/serial.js";
import { normalise } from "../core/text.js";
import { yesOrNo } from "../core/yes-no.js";
import { PLAIN_WRITING, type Writing } from "../core/writing.js";
import { CellError, isBlank, isBlankOrZero, toCellError, type Cell } from "./cells.js";

const YES = new Set(
  "seen eggs laying present ok queenright qr right 1 q q+ marked clipped".split(" "),
);
/** A queen that bears a dot was seen: the colours by which years are marked. */
const DOT = /^(?:white|yellow|red|green|blue)(?: \d+)?$/;
const NO = new Set([
  "none",
  "queenless",
  "ql",
  "q-",
  "no queen",
  "not laying",
  "virgin",
  "missing",
  "dead",
  "drone layer",
  "dl",
  "laying worker",
  "laying workers",
  "lw",
]);
const NONE = exactly(0);
const FRACTIONS: Writing = { ...PLAIN_WRITING, percentsAs: "fraction" };
/** A year in full, or two digits behind a day and a month. */
const YEAR = /(?:^|\D)(20\d\d)(?:\D|$)|[^/. -][/. -]+[^/. -]+[/. -]+(\d\d)$/;
const UNJUDGED = new Set(["?", "q?", "not seen", "not looked", "cells", "queen cells", "qc"]);

/** What texts were read as, for as long as they are read in the same way. */
interface TextsRead {
  readonly kind: Kind | null;
  readonly writing: Writing | null;
  readonly texts: Map<string, Estimate>;
}

/** Columns of a sheet that has its own heading row: which, by what names, and the number of its first row. */
export interface OfSheet {
  readonly columns: readonly number[];
  readonly headings: readonly string[];
  readonly firstRow: number;
}

/**
 * Columns of a sheet, one hive a row, under the name by which messages speak of them. Every cell is
 * read where it is asked for, so that a bad row spoils that row alone.
 */
export class HiveCells {
  readonly rows: number;
  readonly width: number;
  private readonly areOneBox: readonly boolean[];
  private readonly absencesRead = new Map<string, Absence | null>();
  private readonly datesSeen = new Map<string, boolean>();
  private readonly fractionsSeen = new Map<number, boolean>();
  private textsRead: TextsRead = { kind: null, writing: null, texts: new Map() };

  /** @param block - the cells; of a sheet all of it, which is not copied, its heading row first */
  constructor(
    readonly name: string,
    private readonly block: readonly (readonly unknown[])[],
    private readonly sheet: OfSheet | null = null,
  ) {
    this.areOneBox = sheet === null ? [] : sheet.headings.map(isOneBox);
    this.rows = block.length - (sheet === null ? 0 : 1);
    this.width = sheet === null ? (block[0]?.length ?? 0) : sheet.columns.length;
  }

  /** Columns of a sheet that has its own headings, where one row is one hive and not one for all. */
  get isOfSheet(): boolean {
    return this.sheet !== null;
  }

  /** The cell as it stands, whatever it is. A single row serves every hive. */
  raw(i: number, k = 0): unknown {
    const row = this.rows === 1 ? 0 : i;
    if (this.sheet === null) return this.block[row]?.[k];
    return this.block[row + 1]?.[this.sheet.columns[k]!];
  }

  /** Nothing is written in the row, or nothing but the 0 that a blank cell may have become. */
  isEmpty(i: number): boolean {
    for (let k = 0; k < this.width; k++) if (!isBlankOrZero(this.raw(i, k))) return false;
    return true;
  }

  /** Nothing at all is written in the row, not even a 0. */
  isBlank(i: number): boolean {
    for (let k = 0; k < this.width; k++) if (!isBlank(this.raw(i, k))) return false;
    return true;
  }

  /** Why there is no count, where words say so and no cell of the row says a figure; else null. */
  absence(i: number): Absence | null {
    let found: Absence | null = null;
    for (let k = 0; k < this.width; k++) {
      const cell = this.raw(i, k);
      if (isBlankOrZero(cell)) continue;
      const said = typeof cell === "string" ? this.absenceRead(cell) : null;
      if (said === null) return null;
      if (found !== "gone") found = said;
    }
    return found;
  }

  private absenceRead(text: string): Absence | null {
    let said = this.absencesRead.get(text);
    if (said === undefined) this.absencesRead.set(text, (said = absenceOf(text)));
    return said;
  }

  /** Nothing was counted: the row is empty, or says why. */
  isUncounted(i: number): boolean {
    return this.isEmpty(i) || this.absence(i) !== null;
  }

  /** The cell, null where it is blank; an error that stands in the sheet is passed on. */
  cell(i: number, k = 0): unknown {
    const cell = this.raw(i, k);
    if (cell instanceof CellError) throw cell;
    return isBlank(cell) ? null : cell;
  }

  /** The figure of a cell, null where it is blank. */
  estimate(i: number, k: number, kind: Kind, writing: Writing, year?: AskYear): Estimate | null {
    const cell = this.cell(i, k);
    if (cell === null) return null;
    try {
      if (typeof cell === "string") return this.textRead(cell, kind, writing, year);
      if (typeof cell !== "number") {
        throw new Refusal(`${String(cell)} stands where a figure was expected`);
      }
      if (kind === "count" && isDateSerial(cell) && this.isDateColumn(k, writing)) {
        throw new Refusal(
          "most of this column is dates: give the column of figures, or, where ranges such as 7-8 " +
            "became dates, type them again as text",
        );
      }
      return read(cell, kind, writing, year);
    } catch (error) {
      throw toCellError(error, this.where(i, k));
    }
  }

  /** A yard sheet says the same few texts over and over: each is read once. */
  private textRead(text: string, kind: Kind, writing: Writing, year?: AskYear): Estimate {
    const { textsRead: known } = this;
    if (known.kind !== kind || known.writing !== writing) {
      this.textsRead = { kind, writing, texts: new Map() };
    }
    const { texts } = this.textsRead;
    const before = texts.get(text);
    if (before !== undefined) return before;
    let isOfItsRow = false;
    const estimate = read(text, kind, writing, () => {
      isOfItsRow = true;
      return year?.() ?? null;
    });
    if (!isOfItsRow) texts.set(text, estimate);
    return estimate;
  }

  /** Every figure of a row; a blank box beside a filled one holds none. */
  estimates(i: number, kind: Kind, writing: Writing, year?: AskYear): Estimate[] {
    const figures: Estimate[] = [];
    for (let k = 0; k < this.width; k++) {
      figures.push(this.estimate(i, k, kind, writing, year) ?? NONE);
    }
    return figures;
  }

  /** Counts of combs, a box a column: not of seams, and no more than a hive has. */
  combs(i: number, writing: Writing, year?: AskYear): Estimate[] {
    const figures = this.estimates(i, "count", writing, year);
    let k = 0;
    try {
      for (; k < figures.length; k++) {
        refuseSeams(this.raw(i, k));
        refuseTooMany(figures[k]!, this.areOneBox[k] ?? false);
      }
    } catch (error) {
      throw toCellError(error, this.where(i, k));
    }
    return figures;
  }

  /**
   * The percent of a comb that brood covers. A cell that a spreadsheet shows as 60 % holds 0.6: so does
   * each of a column of a sheet in which no number is over 1, since brood that covers under a hundredth
   * of a comb is no cover that is judged.
   */
  cover(i: number, k: number, writing: Writing): Estimate | null {
    const cell = this.raw(i, k);
    const isFraction = typeof cell === "number" && cell > 0 && cell <= 1 && this.areFractions(k);
    return this.estimate(i, k, "percent", isFraction ? FRACTIONS : writing);
  }

  private areFractions(k: number): boolean {
    if (this.sheet === null) return false;
    let known = this.fractionsSeen.get(k);
    if (known === undefined) {
      const numbers = Array.from({ length: this.rows }, (_, i) => this.raw(i, k)).filter(
        (cell) => typeof cell === "number",
      );
      const isPart = (cell: number): boolean => cell > 0 && cell < 1;
      known = numbers.some(isPart) && numbers.every((cell) => cell <= 1);
      this.fractionsSeen.set(k, known);
    }
    return known;
  }

  /** A laying queen: yes, no, or null where nobody judged it. */
  judged(i: number): boolean | null {
    const cell = this.cell(i);
    if (cell === null || cell === 0) return null;
    const word = normalise(String(cell));
    const plain = yesOrNo(cell);
    if (plain === true || YES.has(word) || DOT.test(word)) return true;
    // Under a heading that asks whether she was seen this says no more than that she was not.
    if ((plain === false || word === "none") && asksWhetherSeen(this.name)) return null;
    if (plain === false || NO.has(word)) return false;
    if (UNJUDGED.has(word)) return null;
    return this.named(i, 0, () => {
      throw new Refusal(`${quote(String(cell))} stands where yes or no was expected`);
    });
  }

  /** A text such as a contract's name, null where it is blank. */
  text(i: number): string | null {
    const cell = this.cell(i);
    return cell === null || cell === 0 ? null : String(cell).trim();
  }

  /** The year of a date, or the year itself; null where it is blank. */
  year(i: number, writing: Writing): number | null {
    const cell = this.cell(i);
    if (cell === null || cell === 0) return null;
    if (typeof cell === "number") {
      if (isDateSerial(cell)) return dayOfSerial(cell, writing.dateSystem).year;
      if (Number.isInteger(cell) && cell >= 2000 && cell < 2100) return cell;
    }
    const [, long, short] = YEAR.exec(String(cell)) ?? [];
    if (typeof cell === "string" && (long ?? short))
      return long ? Number(long) : 2000 + Number(short);
    return this.named(i, 0, () => {
      throw new Refusal(`${quote(String(cell))} stands where a date or a year was expected`);
    });
  }

  /** Adds the argument and the row to what is refused. */
  named<T>(i: number, k: number, body: () => T): T {
    try {
      return body();
    } catch (error) {
      throw toCellError(error, this.where(i, k));
    }
  }

  private where(i: number, k: number): string {
    if (this.sheet !== null) return `"${this.sheet.headings[k]}", row ${i + this.sheet.firstRow}`;
    const column = this.width > 1 ? `, column ${k + 1}` : "";
    const row = this.rows > 1 ? `, row ${i + 1}` : "";
    return `${this.name}${row}${column}`;
  }

  /**
   * A column of four figures or more that are mostly dates was never a column of counts, unless it is
   * headed as one and each of its dates may have been a range.
   */
  private isDateColumn(k: number, writing: Writing): boolean {
    const key = `${k} ${writing.dateSystem}`;
    const known = this.datesSeen.get(key);
    if (known !== undefined) return known;
    let filled = 0;
    const dates: number[] = [];
    for (let i = 0; i < this.rows; i++) {
      const cell = this.raw(i, k);
      if (!isBlankOrZero(cell)) filled++;
      if (typeof cell === "number" && isDateSerial(cell)) dates.push(cell);
    }
    const isDates = filled >= 4 && dates.length * 2 > filled;
    const isHeaded = this.sheet !== null && areRanges(dates, writing.dateSystem);
    this.datesSeen.set(key, isDates && !isHeaded);
    return isDates && !isHeaded;
  }
}

/**
 * One row out for each hive in: what `body` gives, blanks for a hive that was not opened, and for a
 * row that is refused its error in every cell, so that no sum passes over it.
 *
 * @param columns - the first decides which hives were opened; others have as many rows, or one
 */
export function eachHive<T extends number | string | boolean | CellError>(
  columns: readonly (HiveCells | null)[],
  width: number,
  body: (i: number) => T[],
): (T | string | CellError)[][] {
  const first = columns[0]!;
  checkRows(columns);
  return Array.from({ length: first.rows }, (_, i) => {
    if (first.isUncounted(i)) return Array<string>(width).fill("");
    try {
      return body(i);
    } catch (error) {
      return Array<CellError>(width).fill(toCellError(error, first.rows > 1 ? `row ${i + 1}` : ""));
    }
  });
}

/** Refuses columns that do not go together: the same rows as the first, or one row for all. */
export function checkRows([first, ...others]: readonly (HiveCells | null)[]): void {
  for (const other of others) {
    if (other && first && other.rows !== 1) checkSameRows(first, other);
  }
}

/** Refuses a column that has not a row for each of the first. */
export function checkSameRows(first: HiveCells, other: HiveCells): void {
  if (other.rows === first.rows) return;
  throw new Refusal(
    `${other.name} has ${plural(other.rows, "row")} and ${first.name} has ${first.rows}: give the same rows of both`,
  );
}

/**
 * One cell out for each cell in, for a block that is no hive's row but figures beside each other:
 * blanks stay blank, and a cell that is refused has its error alone.
 */
export function eachCell(cells: HiveCells, body: (i: number, k: number) => Cell): Cell[][] {
  return Array.from({ length: cells.rows }, (_, i) =>
    Array.from({ length: cells.width }, (_, k) => {
      if (isBlankOrZero(cells.raw(i, k))) return "";
      try {
        return cells.named(i, k, () => body(i, k));
      } catch (error) {
        return toCellError(error, "");
      }
    }),
  );
}
