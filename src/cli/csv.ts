import type { Workbook } from "@cj-tech-master/excelts";
import { detectDelimiter, formatCsv, parseCsv } from "@cj-tech-master/excelts/csv";
import { CellError, type Cell } from "../functions/cells.js";
import type { Area } from "../workbook/area.js";
import { Problem } from "../workbook/problem.js";
import { newWorkbook } from "../workbook/save.js";

/** A text file of cells, with every line as it stands in the file. */
export interface CsvFile {
  readonly lines: readonly CsvLine[];
  readonly delimiter: string;
  /** Whether the copy begins with the mark by which Excel knows UTF-8. */
  readonly marked: boolean;
}

interface CsvLine {
  readonly fields: readonly string[];
  readonly raw: string;
  /** The line break, which may be missing from the last line. */
  readonly end: string;
}

const MARK = "\ufeff";

export function readCsv(bytes: Uint8Array, name: string): CsvFile {
  const { text, marked } = decode(bytes);
  // The library's own guess counts the empty end of a file as a line with one cell.
  const delimiter = detectDelimiter(text, '"', [",", ";", "\t"], undefined, true);
  const { rows, errors } = parseCsv(text, {
    delimiter,
    info: true,
    raw: true,
    skipEmptyLines: false,
  });
  if (errors?.some(({ code }) => code === "MissingQuotes")) {
    throw new Problem(
      `${name}: the quote opened in line ${rows.at(-1)!.info.line} is never closed.`,
    );
  }
  const lines = rows.map(({ record, info }, i) => {
    const raw = info.raw ?? "";
    const next = rows[i + 1]?.info.offset ?? text.length;
    return { fields: record, raw, end: text.slice(info.offset + raw.length, next) };
  });
  return { lines, delimiter, marked };
}

/** UTF-8, or what older Excel writes: UTF-16 with a mark, or the code page of western Windows. */
function decode(bytes: Uint8Array): { text: string; marked: boolean } {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) {
    return { text: new TextDecoder("utf-16le").decode(bytes), marked: true };
  }
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    return text.startsWith(MARK) ? { text: text.slice(1), marked: true } : { text, marked: false };
  } catch {
    return { text: new TextDecoder("windows-1252").decode(bytes), marked: true };
  }
}

/** The cells as a sheet: a plain number is a number, all else the text that was written. */
export function toWorkbook({ lines }: CsvFile, name: string): Workbook {
  const workbook = newWorkbook();
  const sheet = workbook.addWorksheet(
    name
      .replace(/[[\]:*?/\\]/g, " ")
      .slice(0, 31)
      .trim() || "Yard",
  );
  lines.forEach(({ fields }, r) =>
    fields.forEach((field, c) => {
      if (field === "") return;
      const cell = sheet.getCell(r + 1, c + 1);
      const isNumber = PLAIN_NUMBER.test(field.trim());
      cell.value = isNumber ? Number(field) : field;
      // Else Excel takes 7-8 for a date as soon as somebody edits the cell.
      if (!isNumber) cell.numFmt = "@";
    }),
  );
  return workbook;
}

/** Without leading noughts, which belong to an id, and no longer than a number is exact. */
const PLAIN_NUMBER = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;

/** The file with computed columns behind its own, whose lines stay as they are. */
export function withColumns(
  csv: CsvFile,
  area: Area,
  columns: readonly (readonly Cell[])[],
): Uint8Array {
  const { lines, delimiter, marked } = csv;
  const width = lines.reduce((most, { fields }) => Math.max(most, fields.length), 0);
  const text = lines.map(({ fields, raw, end }, i) => {
    const row = columns[i + 1 - area.top];
    if (!row || (raw === "" && row.every((cell) => cell === ""))) return raw + end;
    return raw + delimiter.repeat(width - fields.length + 1) + written(row, delimiter) + end;
  });
  return new TextEncoder().encode((marked ? MARK : "") + text.join(""));
}

/** What a spreadsheet that opens the file would calculate: a grade may be named so in the terms. */
const FORMULA = /^[=+\-@\t\r]/;

/** Where cells are parted by semicolons, the decimal sign is the comma. */
function written(row: readonly Cell[], delimiter: string): string {
  const cells = row.map((cell) => {
    if (cell instanceof CellError) return cell.code;
    if (typeof cell === "number") return +cell.toPrecision(12);
    return FORMULA.test(String(cell)) ? `'${String(cell)}` : cell;
  });
  const decimalSeparator = delimiter === ";" ? "," : ".";
  return formatCsv([cells], {
    delimiter,
    decimalSeparator,
    headers: false,
    trailingNewline: false,
  });
}
