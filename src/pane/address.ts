import { quote, Refusal } from "../core/refusal.js";
import type { Place } from "./port.js";

/** Rows and columns of a sheet of Excel. */
export const SHEET_ROWS = 1_048_576;
export const SHEET_COLUMNS = 16_384;

const PART = String.raw`\$?([A-Z]{1,3})?\$?([1-9]\d{0,6})?`;
const ADDRESS = new RegExp(`^(?:'((?:[^']|'')+)'|([^'!,]+))!${PART}(?::${PART})?$`, "i");

/** The letters of a column that counts from 0: `A`, `Z`, `AA`. */
export function columnName(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnName(Math.floor(column / 26) - 1) + last;
}

/** `B5`, from a row and a column that count from 0. */
export function cellName(row: number, column: number): string {
  return `${columnName(column)}${row + 1}`;
}

/** `A1:K61`, or `B5` for a single cell. */
export function rangeName({ row, column, rows, columns }: Omit<Place, "sheet">): string {
  const first = cellName(row, column);
  const last = cellName(row + rows - 1, column + columns - 1);
  return first === last ? first : `${first}:${last}`;
}

/** A sheet's name as a formula writes it: quoted unless it is one plain word. */
export function sheetName(name: string): string {
  const plain = /^[A-Za-z_]+$/.test(name) && !/^(?:r|c|rc|true|false)$/i.test(name);
  return plain ? name : `'${name.replaceAll("'", "''")}'`;
}

/**
 * A place as Excel writes it.
 *
 * @param from - the sheet of a formula that names the place: its own goes without the sheet's name
 * @example address({ sheet: "North yard", row: 4, column: 2, rows: 2, columns: 1 }) // 'North yard'!C5:C6
 */
export function address(place: Place, from: string | null = null): string {
  return sheetPart(place, from) + rangeName(place);
}

/** The same with signs of the dollar, which means the same in every cell and to a defined name. */
export function absolute(place: Place, from: string | null = null): string {
  return sheetPart(place, from) + rangeName(place).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}

function sheetPart({ sheet }: Place, from: string | null): string {
  return sheet === from ? "" : `${sheetName(sheet)}!`;
}

/** @returns null where the text is not one rectangle of one sheet: a formula, several areas, `#REF!` */
export function placeOf(text: string): Place | null {
  const [, inQuotes, plain, ...parts] = ADDRESS.exec(text.trim()) ?? [];
  const sheet = inQuotes?.replaceAll("''", "'") ?? plain;
  if (sheet === undefined) return null;
  const [c1, r1, c2 = c1, r2 = r1] = parts;
  if (c1 === undefined && r1 === undefined) return null;
  if ((c1 === undefined) !== (c2 === undefined) || (r1 === undefined) !== (r2 === undefined)) {
    return null;
  }
  if ((c1 === undefined || r1 === undefined) && !text.includes(":")) return null;
  const [left, right] = c1 === undefined ? [0, SHEET_COLUMNS - 1] : [columnAt(c1), columnAt(c2!)];
  const [top, bottom] = r1 === undefined ? [0, SHEET_ROWS - 1] : [Number(r1) - 1, Number(r2) - 1];
  return {
    sheet,
    row: Math.min(top, bottom),
    column: Math.min(left, right),
    rows: Math.abs(bottom - top) + 1,
    columns: Math.abs(right - left) + 1,
  };
}

/** The column that letters name, which counts from 0. */
function columnAt(letters: string): number {
  const number = (n: number, letter: string): number => n * 26 + letter.charCodeAt(0) - 64;
  return [...letters.toUpperCase()].reduce(number, 0) - 1;
}

/**
 * The cell that somebody types: `M1`, `$M$1`, `Yard!M1`, `'My yard'!M1`.
 *
 * @param sheet - where an address without a sheet lies
 * @throws Refusal that quotes what is no cell
 */
export function cellAt(text: string, sheet: string): Place {
  const place = placeOf(text.includes("!") ? text : `${sheetName(sheet)}!${text.trim()}`);
  if (place === null || place.rows * place.columns > 1 || !isOnSheet(place)) {
    throw new Refusal(`${quote(text)} is no cell: write one such as M1`);
  }
  return place;
}

/** One cell of a place, counted from its upper left. */
export function cellOf({ sheet, row, column }: Place, down: number, right: number): Place {
  return { sheet, row: row + down, column: column + right, rows: 1, columns: 1 };
}

/** The part of a place that lies within another, or null. */
export function within(place: Place, other: Place): Place | null {
  const row = Math.max(place.row, other.row);
  const column = Math.max(place.column, other.column);
  const rows = Math.min(place.row + place.rows, other.row + other.rows) - row;
  const columns = Math.min(place.column + place.columns, other.column + other.columns) - column;
  if (place.sheet !== other.sheet || rows <= 0 || columns <= 0) return null;
  return { sheet: place.sheet, row, column, rows, columns };
}

export function samePlace(a: Place | null, b: Place | null): boolean {
  return a !== null && b !== null ? address(a) === address(b) : a === b;
}

/** Whether a place lies on the sheet, which ends somewhere. */
export function isOnSheet({ row, column, rows, columns }: Place): boolean {
  return row + rows <= SHEET_ROWS && column + columns <= SHEET_COLUMNS;
}
