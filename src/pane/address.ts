import { quote, Refusal } from "../core/refusal.js";
import type { Place } from "./port.js";

/** Rows and columns of a sheet of Excel. */
export const SHEET_ROWS = 1_048_576;
export const SHEET_COLUMNS = 16_384;

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

/** How a formula on the sheet `from` names a place: with the sheet's name where it is another. */
export function reference(place: Place, from: string): string {
  const range = rangeName(place);
  return place.sheet === from ? range : `${sheetName(place.sheet)}!${range}`;
}

/** The same with signs of the dollar, which means the same in every cell. */
export function absolute(place: Place, from: string): string {
  return reference(place, from).replace(/([A-Z]+)(\d+)(?=$|:)/g, "$$$1$$$2");
}

const ADDRESS = /^(?:(?:'((?:[^']|'')+)'|([^'!]+))!)?\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i;

/**
 * The cell that somebody types: `M1`, `$M$1`, `Yard!M1`, `'My yard'!M1`.
 *
 * @param sheet - where an address without a sheet lies
 * @throws Refusal that quotes what is no cell
 */
export function cellAt(text: string, sheet: string): Place {
  const match = ADDRESS.exec(text.trim());
  const [, quoted, plain, letters = "", digits = ""] = match ?? [];
  const column = [...letters.toUpperCase()].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0) - 1;
  const row = Number(digits) - 1;
  if (match === null || column >= SHEET_COLUMNS || row >= SHEET_ROWS) {
    throw new Refusal(`${quote(text)} is no cell: write one such as M1`);
  }
  const named = quoted?.replaceAll("''", "'") ?? plain ?? sheet;
  return { sheet: named, row, column, rows: 1, columns: 1 };
}

/** Whether two places have a cell in common. */
export function overlap(a: Place, b: Place): boolean {
  return (
    a.sheet === b.sheet &&
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows &&
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns
  );
}

/** Whether a place lies on the sheet, which ends somewhere. */
export function isOnSheet({ row, column, rows, columns }: Place): boolean {
  return row + rows <= SHEET_ROWS && column + columns <= SHEET_COLUMNS;
}
