import type { CellErrorValue, CellValue } from "@cj-tech-master/excelts";
import { CellError } from "../functions/cells.js";
import type { Area } from "./area.js";
import { eachCellOf, type Formula } from "./formulas.js";

/** What an array formula came to. */
export type Rows = readonly (readonly unknown[])[];

/** The cells that a formula fills once calculated. */
export function filledBy({ fills, area }: Formula, rows: Rows | undefined): Area {
  if (fills !== "spill") return area;
  const [height, width] = [rows?.length ?? 1, rows?.[0]?.length ?? 1];
  return { ...area, bottom: area.top + height - 1, right: area.left + width - 1 };
}

/**
 * An old array formula fills its cells: the engine leaves them as the file had them. One row or
 * column is repeated, as in Excel, and what the formula does not reach is `#N/A`.
 */
export function fillBlock(formula: Formula | undefined, rows: Rows): void {
  if (formula?.fills !== "block") return;
  const { cell, area } = formula;
  const at = (list: readonly unknown[], i: number): unknown =>
    list.length === 1 ? list[0] : list[i];
  eachCellOf(area, (r, c) => {
    if (r === cell.row && c === cell.col) return;
    const row = at(rows, r - area.top) as readonly unknown[] | undefined;
    const value = row && at(row, c - area.left);
    area.sheet.getCell(r, c).value = toCellValue(
      value === undefined ? new CellError("#N/A") : value,
    );
  });
}

export function toCellValue(value: unknown): CellValue {
  if (value instanceof CellError) return { error: value.code } as CellErrorValue;
  return (value ?? 0) as string | number | boolean;
}

/** Whether the array formulas of two passes came to the same. */
export function isSame(a: ReadonlyMap<number, Rows>, b: ReadonlyMap<number, Rows>): boolean {
  if (a.size !== b.size) return false;
  return [...a].every(([number, rows]) => sameRows(rows, b.get(number) ?? []));
}

function sameRows(a: Rows, b: Rows): boolean {
  return (
    a.length === b.length &&
    a.every(
      (row, r) =>
        row.every((cell, c) => text(cell) === text(b[r]?.[c])) && row.length === b[r]?.length,
    )
  );
}

const text = (cell: unknown): unknown => (cell instanceof CellError ? cell.code : cell);
