import type { BooleanNumber, ICellData, IRange, IStyleData, Nullable } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { namesIn, tablesIn, type GridName, type GridTable } from "./resources.js";

/** A cell of the grid: what a hand wrote, never what a formula came to. */
export interface GridCell {
  readonly formula: string | null;
  readonly value: string | number | boolean | null;
  readonly type: Nullable<ICellData["t"]>;
  readonly look: IStyleData;
}

export interface GridSheet {
  readonly id: string;
  readonly name: string;
  readonly isHidden: boolean;
  /** By `row,column`, from 0. */
  readonly cells: ReadonlyMap<string, GridCell>;
  /** Columns' widths in pixels. */
  readonly widths: ReadonlyMap<number, number>;
  /** From 0. */
  readonly hidden: { readonly rows: readonly number[]; readonly columns: readonly number[] };
  readonly merges: readonly string[];
  readonly tables: readonly GridTable[];
}

/** All of the grid's workbook that a file is to hold. */
export interface GridState {
  readonly sheets: readonly GridSheet[];
  readonly names: readonly GridName[];
  /** How many rows and columns the formula of a cell fills, by `sheet id!row,column`. */
  readonly filled: ReadonlyMap<string, { readonly rows: number; readonly columns: number }>;
}

export function stateOf(workbook: FWorkbook): GridState {
  const data = workbook.save();
  const model = workbook.getActiveSheet().getInject().get(FormulaDataModel);
  const tables = tablesIn(data);
  const sheets = data.sheetOrder.map((id): GridSheet => {
    const sheet = data.sheets[id]!;
    const cells = new Map<string, GridCell>();
    eachCell(sheet.cellData ?? {}, (row, column, cell) => {
      const isFormula = Boolean(cell.f || cell.si);
      const style = typeof cell.s === "string" ? data.styles[cell.s] : cell.s;
      cells.set(`${row},${column}`, {
        formula: isFormula ? model.getFormulaStringByCell(row, column, id, data.id)! : null,
        value: isFormula ? null : (cell.v ?? null),
        type: isFormula ? null : cell.t,
        look: style ?? {},
      });
    });
    const widths = Object.entries(sheet.columnData ?? {}).flatMap(([column, { w } = {}]) =>
      w === undefined ? [] : [[Number(column), w] as const],
    );
    return {
      id,
      name: sheet.name ?? id,
      isHidden: sheet.hidden === 1,
      cells,
      widths: new Map(widths),
      hidden: { rows: hiddenOf(sheet.rowData), columns: hiddenOf(sheet.columnData) },
      merges: (sheet.mergeData ?? []).map((m) =>
        [m.startRow, m.startColumn, m.endRow, m.endColumn].join(","),
      ),
      tables: tables.get(id) ?? [],
    };
  });
  return { sheets, names: namesIn(data), filled: filled(model, data.id) };
}

function filled(model: FormulaDataModel, unit: string): GridState["filled"] {
  const all = new Map<string, { rows: number; columns: number }>();
  for (const [sheet, rows] of Object.entries(model.getArrayFormulaRange()[unit] ?? {})) {
    for (const [row, columns] of Object.entries(rows ?? {})) {
      for (const [column, area] of Object.entries<IRange>(columns ?? {})) {
        const { startRow, endRow, startColumn, endColumn } = area;
        all.set(`${sheet}!${row},${column}`, {
          rows: endRow - startRow + 1,
          columns: endColumn - startColumn + 1,
        });
      }
    }
  }
  return all;
}

function hiddenOf(all: Readonly<Record<number, { hd?: BooleanNumber }>> = {}): number[] {
  return Object.entries(all).flatMap(([at, { hd } = {}]) => (hd === 1 ? [Number(at)] : []));
}

type CellMatrix = Record<number, Record<number, Nullable<ICellData>> | undefined>;

function eachCell(
  matrix: unknown,
  visit: (row: number, column: number, cell: ICellData) => void,
): void {
  for (const [row, cells] of Object.entries(matrix as CellMatrix)) {
    for (const [column, cell] of Object.entries(cells ?? {})) {
      if (cell) visit(Number(row), Number(column), cell);
    }
  }
}
