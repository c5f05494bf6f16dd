import { rangeName, SHEET_COLUMNS, SHEET_ROWS, sheetName } from "./address.js";
import type { Place } from "./port.js";

const PART = String.raw`\$?([A-Z]{1,3})?\$?(\d{1,7})?`;
const ADDRESS = new RegExp(`^(?:'((?:[^']|'')+)'|([^'!,]+))!${PART}(?::${PART})?$`, "i");

/**
 * A place as Excel writes it.
 *
 * @example address({ sheet: "North yard", row: 4, column: 2, rows: 2, columns: 1 }) // 'North yard'!C5:C6
 */
export function address(place: Place): string {
  return `${sheetName(place.sheet)}!${rangeName(place)}`;
}

/** The same with `$`, as a defined name refers to it. */
export function absolute(place: Place): string {
  const whole = address(place);
  const at = whole.lastIndexOf("!") + 1;
  return whole.slice(0, at) + whole.slice(at).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}

/** One cell of a place, counted from its upper left. */
export function cellOf(place: Place, row: number, column: number): Place {
  return {
    sheet: place.sheet,
    row: place.row + row,
    column: place.column + column,
    rows: 1,
    columns: 1,
  };
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
  const [left, right] = c1 === undefined ? [0, SHEET_COLUMNS - 1] : [number(c1), number(c2!)];
  const [top, bottom] = r1 === undefined ? [0, SHEET_ROWS - 1] : [Number(r1) - 1, Number(r2) - 1];
  return {
    sheet,
    row: Math.min(top, bottom),
    column: Math.min(left, right),
    rows: Math.abs(bottom - top) + 1,
    columns: Math.abs(right - left) + 1,
  };
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

function number(text: string): number {
  return [...text.toUpperCase()].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}
