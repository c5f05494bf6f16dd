import {
  CellValueType,
  LocaleType,
  type ICellData,
  type IRange,
  type IWorkbookData,
  type IWorksheetData,
} from "@univerjs/core";
import type { Cell, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { CellError } from "../functions/cells.js";
import { typed } from "../pane/stands.js";
import { areaOn, isIn } from "../workbook/area.js";
import { eachCellOf, formulasOf, type Formula } from "../workbook/formulas.js";
import { tablesOf, type SheetTable } from "../workbook/tables.js";
import { plainValue } from "../workbook/values.js";
import { asTyped } from "./grid-formula.js";
import { lookOf } from "./look.js";
import { NAMES, namesResource, sheetId, TABLES, tablesResource } from "./resources.js";

/** Rows and columns to go on writing in, beyond what a sheet holds. */
const MORE_ROWS = 100;
const MORE_COLUMNS = 12;

/** A workbook as the grid takes it; a formula's own cells are its result, and stay out. */
export function toGrid(workbook: Workbook, name: string): IWorkbookData {
  const formulas = formulasOf(workbook);
  const tables = tablesOf(workbook);
  const sheets = workbook.worksheets.map((sheet, index) => {
    const own = formulas.filter(({ cell }) => cell.worksheet === sheet);
    const around = tables.filter((table) => table.sheet === sheet);
    return { ...sheetData(sheet, own, around), id: sheetId(index) };
  });
  return {
    id: name,
    name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: [
      { name: NAMES, data: namesResource(workbook) },
      { name: TABLES, data: tablesResource(workbook, tables) },
    ],
  };
}

function sheetData(
  sheet: Worksheet,
  formulas: readonly Formula[],
  tables: readonly SheetTable[],
): Partial<IWorksheetData> {
  const texts = new Map(formulas.map((f) => [f.cell, asTyped(f.text, tableAt(tables, f.cell))]));
  const results = new Set<string>();
  for (const { cell, area } of formulas) {
    eachCellOf(area, (r, c) => {
      if (r !== cell.row || c !== cell.col) results.add(`${r},${c}`);
    });
  }
  const cellData: Record<number, Record<number, ICellData>> = {};
  sheet.eachRow((row) =>
    row.eachCell((cell) => {
      const data: ICellData = results.has(`${cell.row},${cell.col}`)
        ? {}
        : cellOf(cell, texts.get(cell));
      const look = lookOf(cell);
      if (Object.keys(look).length > 0) data.s = look;
      if (Object.keys(data).length > 0) (cellData[cell.row - 1] ??= {})[cell.col - 1] = data;
    }),
  );
  const frozen = (sheet.views ?? []).find((view) => view.state === "frozen") as
    { xSplit?: number; ySplit?: number } | undefined;
  const [across, down] = [frozen?.xSplit ?? 0, frozen?.ySplit ?? 0];
  return {
    name: sheet.name,
    hidden: sheet.state === "visible" ? 0 : 1,
    cellData,
    rowCount: sheet.rowCount + MORE_ROWS,
    columnCount: Math.max(sheet.columnCount + MORE_COLUMNS, 20),
    mergeData: merges(sheet),
    rowData: rowData(sheet),
    columnData: Object.fromEntries(
      Array.from({ length: sheet.columnCount }, (_, i) => [i, sheet.getColumn(i + 1)] as const)
        .filter(([, { width, hidden }]) => width !== undefined || hidden)
        .map(([i, { width, hidden }]) => [
          i,
          { ...(width && { w: pixels(width) }), ...(hidden && { hd: 1 as const }) },
        ]),
    ),
    ...(across + down > 0 && {
      freeze: { xSplit: across, ySplit: down, startRow: down || -1, startColumn: across || -1 },
    }),
  };
}

/** A row's height in a file counts points; a row without one is as high as what it holds. */
function rowData(sheet: Worksheet): NonNullable<IWorksheetData["rowData"]> {
  const rows: Record<number, { h?: number; hd?: 1 }> = {};
  sheet.eachRow({ includeEmpty: false }, ({ number, height, hidden }) => {
    if (height === undefined && !hidden) return;
    rows[number - 1] = {
      ...(height && { h: Math.round((height * 4) / 3) }),
      ...(hidden && { hd: 1 }),
    };
  });
  return rows;
}

/** A column's width in a file counts characters. */
export const pixels = (width: number): number => Math.round(width * 7 + 5);
export const characters = (width: number): number => (width - 5) / 7;

function cellOf(cell: Cell, formula: string | undefined): ICellData {
  const value = valueData(plainValue(cell), cell.numFmt === "@");
  // What the file held for a formula stands there until it is calculated.
  return formula === undefined ? value : { ...value, f: formula };
}

function valueData(value: unknown, isText: boolean): ICellData {
  if (value === null || value === undefined) return {};
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (value instanceof CellError) return { v: value.code, t: CellValueType.STRING };
  const text = String(value);
  // Else the grid makes a date of 7-8 as soon as the cell is touched, and an error of "#N/A".
  const mayTurn = isText || /\d/.test(text) || typed(text, "General") !== text;
  return { v: text, t: mayTurn ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

function merges(sheet: Worksheet): IRange[] {
  return (sheet.model.mergeCells ?? []).map((address) => {
    const { top, left, bottom, right } = areaOn(sheet, address);
    return { startRow: top - 1, startColumn: left - 1, endRow: bottom - 1, endColumn: right - 1 };
  });
}

function tableAt(tables: readonly SheetTable[], { row, col }: Cell): string | null {
  return tables.find((table) => isIn(table, row, col))?.name ?? null;
}
