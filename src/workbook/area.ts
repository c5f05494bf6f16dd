import {
  decodeRange,
  encodeCell,
  encodeRange,
  type Workbook,
  type Worksheet,
} from "@cj-tech-master/excelts";
import { Problem } from "./problem.js";
import { plainValue } from "./values.js";

/** What a block may have that is read as a whole: a whole column, or a sheet of a million hives. */
const MOST_CELLS = 20_000_000;

/** A block of a sheet; rows and columns count from 1. */
export interface Area {
  readonly sheet: Worksheet;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** `A3:H60`. */
export function addressOf(area: Omit<Area, "sheet">): string {
  return encodeRange(
    { r: area.top - 1, c: area.left - 1 },
    { r: area.bottom - 1, c: area.right - 1 },
  );
}

export function cellAddress(row: number, column: number): string {
  return encodeCell({ r: row - 1, c: column - 1 });
}

/** `'Yard'!$A$3:$H$60`: means the same in every cell. */
export function reference(area: Area): string {
  return `${quoted(area.sheet.name)}!${absolute(addressOf(area))}`;
}

export function absolute(address: string): string {
  return address.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}

function quoted(sheetName: string): string {
  return `'${sheetName.replace(/'/g, "''")}'`;
}

const REFERENCE = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/i;

/** The block that a text such as `'Yard'!$A$3:$H$60` names, or null where it names none. */
export function areaAt(workbook: Workbook, text: string): Area | null {
  const match = REFERENCE.exec(text);
  if (!match) return null;
  const name = (match[1]?.replace(/''/g, "'") ?? match[2] ?? "").toLowerCase();
  const sheet = workbook.worksheets.find((s) => s.name.toLowerCase() === name);
  return sheet ? areaOn(sheet, match[3] ?? "") : null;
}

export function areaOn(sheet: Worksheet, address: string): Area {
  return { sheet, ...spanOf(address) };
}

export function spanOf(address: string): Omit<Area, "sheet"> {
  const { s, e } = decodeRange(address.replace(/\$/g, ""));
  return { top: s.r + 1, left: s.c + 1, bottom: e.r + 1, right: e.c + 1 };
}

export function overlaps(a: Area, b: Area): boolean {
  return (
    a.sheet === b.sheet &&
    a.top <= b.bottom &&
    b.top <= a.bottom &&
    a.left <= b.right &&
    b.left <= a.right
  );
}

/** Whether a cell, counted as the sheet counts it, lies in an area of its sheet. */
export function isIn(
  { top, left, bottom, right }: Omit<Area, "sheet">,
  row: number,
  column: number,
): boolean {
  return top <= row && row <= bottom && left <= column && column <= right;
}

export function sizeOf({ top, left, bottom, right }: Omit<Area, "sheet">): number {
  return (bottom - top + 1) * (right - left + 1);
}

/** The values that stand in a block, as a function is given them. */
export function valuesIn(area: Area): unknown[][] {
  if (sizeOf(area) > MOST_CELLS) {
    throw new Problem(
      `The block ${reference(area)} has ${sizeOf(area).toLocaleString("en")} cells, and at most ` +
        `${MOST_CELLS.toLocaleString("en")} are read: name the rows that are filled.`,
    );
  }
  const rows: unknown[][] = [];
  for (let r = area.top; r <= area.bottom; r++) {
    const row: unknown[] = [];
    for (let c = area.left; c <= area.right; c++) row.push(plainValue(area.sheet.findCell(r, c)));
    rows.push(row);
  }
  return rows;
}
