import type { Worksheet } from "@cj-tech-master/excelts";
import { isBlank } from "../functions/cells.js";
import { segmentsIn, type Segment } from "../functions/segments.js";
import type { Formula } from "./formulas.js";
import { plainValue } from "./values.js";

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

/** The blocks that a row may head; columns count as the sheet counts them. */
export function segmentsOf(
  sheet: Worksheet,
  row: number,
  filled: ReadonlySet<string>,
  computed: readonly string[],
): Segment[] {
  const cells = {
    width: sheet.findRow(row)?.cellCount ?? 0,
    textAt: (i: number) => textAt(sheet, row, i + 1),
    isFilled: (i: number) => filled.has(place(sheet, row, i + 1)),
  };
  return segmentsIn(cells, computed).map(({ left, headings }) => ({ left: left + 1, headings }));
}

export function textAt(sheet: Worksheet, row: number, column: number): string {
  const value = plainValue(sheet.findCell(row, column));
  return isBlank(value) || typeof value === "object" ? "" : String(value);
}
