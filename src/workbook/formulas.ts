import {
  ValueType,
  type Cell,
  type CellFormulaValue,
  type CellValue,
  type Workbook,
} from "@cj-tech-master/excelts";
import { areaOn, type Area } from "./area.js";
import { slide } from "./formula-text.js";
import { callsOurs } from "./rewrite.js";

export type Result = CellFormulaValue["result"];

/** How the library keeps a formula, its result apart. */
export interface Saved {
  readonly formula?: string;
  readonly sharedFormula?: string;
  readonly shareType?: string;
  readonly ref?: string;
  readonly isDynamicArray?: boolean;
}

/** A formula of the workbook, before anything is calculated. */
export interface Formula {
  readonly cell: Cell;
  readonly saved: Saved;
  /** The formula as this cell reads it, also where the file stores it with its neighbours'. */
  readonly text: string;
  /** Whether one of our functions stands in it. */
  readonly ours: boolean;
  /** What the file held as its result. */
  readonly held: Result;
  /** `spill`: fills as many cells as it needs. `block`: an old array formula, fills those it was given. */
  readonly fills: "one" | "spill" | "block";
  /** The cells that it filled when the file was saved. */
  readonly area: Area;
}

export function formulasOf(workbook: Workbook): Formula[] {
  const formulas: Formula[] = [];
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.type === ValueType.Formula && cell.formula) formulas.push(toFormula(cell));
      }),
    );
  }
  return formulas;
}

function toFormula(cell: Cell): Formula {
  const { result, ...saved } = cell.value as Saved & { result?: Result };
  const text = saved.formula ?? spelledOut(cell, saved.sharedFormula ?? "");
  const isArray = saved.shareType === "array";
  return {
    cell,
    saved,
    text,
    ours: callsOurs(text),
    held: result,
    fills: saved.isDynamicArray ? "spill" : isArray ? "block" : "one",
    area: areaOn(cell.worksheet, (isArray && saved.ref) || cell.address),
  };
}

function spelledOut(cell: Cell, master: string): string {
  const first = cell.worksheet.getCell(master);
  return slide(first.formula ?? "", cell.row - first.row, cell.col - first.col);
}

/**
 * Empties the cells that a spilled formula had filled: the file holds them as values, and the
 * engine takes values in the way of a spill for the user's own. Returns how to fill them again.
 */
export function emptySpill({ cell, fills, area }: Formula): () => void {
  const held: [Cell, CellValue][] = [];
  if (fills === "spill") {
    eachCellOf(area, (r, c) => {
      const filled = area.sheet.findCell(r, c);
      if (!filled || filled === cell) return;
      if (filled.type === ValueType.Null || filled.type === ValueType.Formula) return;
      held.push([filled, filled.value]);
      filled.value = null;
    });
  }
  return () => held.forEach(([filled, value]) => (filled.value = value));
}

export function eachCellOf(area: Area, visit: (row: number, column: number) => void): void {
  for (let r = area.top; r <= area.bottom; r++) {
    for (let c = area.left; c <= area.right; c++) visit(r, c);
  }
}
