import type { Worksheet } from "@cj-tech-master/excelts";
import { isBlank } from "../functions/cells.js";
import { isTerm } from "../functions/sheet-end.js";
import type { Formula } from "./formulas.js";
import { plainValue } from "./values.js";

/** Columns of one row that stand together, as the heading row of a block might. */
export interface Segment {
  readonly left: number;
  readonly headings: readonly string[];
}

/** Cells that formulas fill, as `sheet!row,column`: what is computed is no part of a sheet as written. */
export function filledCells(formulas: readonly Formula[]): ReadonlySet<string> {
  const cells = new Set<string>();
  for (const { area, fills } of formulas) {
    if (fills === "one") continue;
    for (let c = area.left; c <= area.right; c++) cells.add(place(area.sheet, area.top, c));
  }
  return cells;
}

export const place = (sheet: Worksheet, row: number, column: number): string =>
  `${sheet.id}!${row},${column}`;

/**
 * Cuts a row where two columns are empty, where a computed block begins, and before a heading
 * `Term`: a sheet may hold its terms, or the columns computed before, beside the hives. One empty
 * column may stand within a yard sheet.
 */
export function segmentsOf(
  sheet: Worksheet,
  row: number,
  filled: ReadonlySet<string>,
  computed: readonly string[],
): Segment[] {
  const segments: Segment[] = [];
  let left = 0;
  let headings: string[] = [];
  let gap = 0;
  const close = (): void => {
    if (headings.length > 0) segments.push({ left, headings });
    headings = [];
  };
  const width = sheet.findRow(row)?.cellCount ?? 0;
  const texts = Array.from({ length: width }, (_, i) => textAt(sheet, row, i + 1));
  texts.forEach((text, i) => {
    const blank = text === "" || filled.has(place(sheet, row, i + 1));
    gap = blank ? gap + 1 : 0;
    const begins = isTerm(text) || isComputed(texts, i, computed);
    if (begins || gap === 2 || (gap === 1 && isTerm(headings[0] ?? ""))) close();
    if (blank) return;
    if (headings.length === 0) left = i + 1;
    while (headings.length < i + 1 - left) headings.push("");
    headings.push(text);
  });
  close();
  return segments;
}

/** Columns that were computed before, and kept as values, begin so. */
function isComputed(texts: readonly string[], i: number, computed: readonly string[]): boolean {
  return computed.length > 1 && computed.every((text, k) => texts[i + k] === text);
}

export function textAt(sheet: Worksheet, row: number, column: number): string {
  const value = plainValue(sheet.findCell(row, column));
  return isBlank(value) || typeof value === "object" ? "" : String(value);
}
