import type { Cell, CellValue, Table, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { cellAddress } from "../workbook/area.js";
import { eachCellOf, formulasOf } from "../workbook/formulas.js";
import { toSheetTable } from "../workbook/tables.js";
import { asInFile } from "./grid-formula.js";
import type { GridCell, GridSheet, GridState } from "./grid-state.js";
import { applyLook } from "./look.js";
import type { GridTable } from "./resources.js";
import { characters } from "./to-grid.js";

/** What was done in the grid since a file was opened. */
export interface Edits {
  readonly before: GridState;
  readonly after: GridState;
  /** Sheets, by their ids, whose rows or columns were put elsewhere. */
  readonly moved: ReadonlySet<string>;
}

/**
 * Brings what was done in the grid into the workbook of the file that it came from. Cells that were
 * not touched stay the file's own. A sheet whose rows or columns moved is written anew: what the
 * file fastened to its cells would now be at the wrong ones.
 *
 * @param workbook - as it was opened from the file
 */
export function bringBack(workbook: Workbook, { before, after, moved }: Edits): void {
  const worksheets = new Map(before.sheets.map(({ id }, i) => [id, workbook.worksheets[i]!]));
  for (const [id, worksheet] of worksheets) {
    if (!after.sheets.some((sheet) => sheet.id === id)) workbook.removeWorksheet(worksheet.id);
  }
  after.sheets.forEach((sheet, order) => {
    const was = moved.has(sheet.id) ? undefined : before.sheets.find(({ id }) => id === sheet.id);
    const worksheet = was ? worksheets.get(sheet.id)! : anew(workbook, worksheets, sheet);
    if (worksheet.name !== sheet.name) worksheet.name = sheet.name;
    worksheet.orderNo = order;
    bringSheet(worksheet, was ?? { ...EMPTY, id: sheet.id }, sheet, after.filled);
  });
  bringNames(workbook, before, after);
}

const EMPTY = {
  name: "",
  isHidden: false,
  cells: new Map<string, GridCell>(),
  widths: new Map<number, number>(),
  hidden: { rows: [], columns: [] },
  merges: [],
  tables: [],
};

function anew(
  workbook: Workbook,
  worksheets: ReadonlyMap<string, Worksheet>,
  { id, name, isHidden, hidden }: GridSheet,
): Worksheet {
  const old = worksheets.get(id);
  if (old) workbook.removeWorksheet(old.id);
  const worksheet = workbook.addWorksheet(name, { state: isHidden ? "hidden" : "visible" });
  if (old) {
    // What is the sheet's and no cell's fits it wherever its cells stand.
    const { views, headerFooter, properties } = old;
    const pageSetup = { ...old.pageSetup };
    delete pageSetup.printArea;
    delete pageSetup.printTitlesRow;
    delete pageSetup.printTitlesColumn;
    Object.assign(worksheet, { views, headerFooter, properties, pageSetup });
  }
  for (const row of hidden.rows) worksheet.getRow(row + 1).hidden = true;
  for (const column of hidden.columns) worksheet.getColumn(column + 1).hidden = true;
  return worksheet;
}

function bringSheet(
  worksheet: Worksheet,
  before: GridSheet,
  after: GridSheet,
  filled: GridState["filled"],
): void {
  const changed = [...new Set([...before.cells.keys(), ...after.cells.keys()])].filter(
    (key) => !sameContent(before.cells.get(key), after.cells.get(key)),
  );
  shrinkSpills(worksheet, changed);
  for (const key of changed) {
    const cell = cellAt(worksheet, key);
    cell.value = contentOf(after.cells.get(key), filled.get(`${after.id}!${key}`), cell);
  }
  for (const key of new Set([...before.cells.keys(), ...after.cells.keys()])) {
    const [was, is] = [before.cells.get(key)?.look ?? {}, after.cells.get(key)?.look ?? {}];
    if (was !== is) applyLook(cellAt(worksheet, key), was, is);
  }
  for (const [column, width] of after.widths) {
    if (before.widths.get(column) === width) continue;
    worksheet.getColumn(column + 1).width = characters(width);
  }
  for (const merge of before.merges.filter((m) => !after.merges.includes(m))) {
    worksheet.unMergeCells(...mergeOf(merge));
  }
  for (const merge of after.merges.filter((m) => !before.merges.includes(m))) {
    worksheet.mergeCells(...mergeOf(merge));
  }
  bringTables(worksheet, before, after, filled);
}

function mergeOf(merge: string): [number, number, number, number] {
  return merge.split(",").map((n) => Number(n) + 1) as [number, number, number, number];
}

function cellAt(worksheet: Worksheet, key: string): Cell {
  const [row, column] = key.split(",").map(Number) as [number, number];
  return worksheet.getCell(row + 1, column + 1);
}

/** What a formula of the file had filled is no longer its own where a hand has written since. */
function shrinkSpills(worksheet: Worksheet, changed: readonly string[]): void {
  const touched = new Set(changed.map((key) => cellAt(worksheet, key).address));
  for (const { cell, area, saved, fills } of formulasOf(worksheet.workbook)) {
    if (fills !== "spill" || cell.worksheet !== worksheet) continue;
    let isTouched = false;
    eachCellOf(area, (r, c) => (isTouched ||= touched.has(cellAddress(r, c))));
    if (!isTouched) continue;
    eachCellOf(area, (r, c) => {
      if (r !== cell.row || c !== cell.col) worksheet.getCell(r, c).value = null;
    });
    cell.value = { ...saved, ref: cell.address } as CellValue;
  }
}

function sameContent(a: GridCell | undefined, b: GridCell | undefined): boolean {
  return (a?.formula ?? null) === (b?.formula ?? null) && same(a?.value, b?.value);
}

function same(a: unknown, b: unknown): boolean {
  const blank = (value: unknown) => value === undefined || value === null || value === "";
  return (blank(a) && blank(b)) || (a === b && typeof a === typeof b);
}

function contentOf(
  given: GridCell | undefined,
  fills: { readonly rows: number; readonly columns: number } | undefined,
  cell: Cell,
): CellValue {
  if (!given) return null;
  if (given.formula !== null) {
    const formula = asInFile(given.formula);
    const isSpill = fills !== undefined && fills.rows * fills.columns > 1;
    return isSpill
      ? ({ formula, ref: cell.address, shareType: "array", isDynamicArray: true } as CellValue)
      : ({ formula } as CellValue);
  }
  if (given.value === null || given.value === "") return null;
  if (given.type === 3) return given.value === 1 || given.value === true || given.value === "1";
  if (given.type === 2) return Number(given.value);
  return given.value;
}

/** A file's table must say of itself what its headings say, or Excel offers to repair it. */
function bringTables(
  worksheet: Worksheet,
  before: GridSheet,
  after: GridSheet,
  filled: GridState["filled"],
): void {
  for (const table of before.tables) {
    if (!after.tables.some(({ name }) => name === table.name)) worksheet.removeTable(table.name);
  }
  for (const table of after.tables) {
    const was = before.tables.find(({ name }) => name === table.name);
    if (was && sameRange(was, table) && sameHeadings(worksheet, table)) continue;
    const former = worksheet.getTables().find((other) => toSheetTable(other).name === table.name);
    const { startRow, startColumn, endRow, endColumn } = table.range;
    const hasTotals = former !== undefined && hasTotalsUnder(former, table);
    const headings = headingsOf(worksheet, table);
    if (was) worksheet.removeTable(table.name);
    worksheet.addTable({
      name: table.name,
      ref: cellAddress(startRow + 1, startColumn + 1),
      headerRow: true,
      totalsRow: hasTotals,
      ...(former?.model.style && { style: former.model.style }),
      columns: headings.map((name, i) => {
        const { totalsRowLabel, totalsRowFunction } = former?.model.columns[i] ?? {};
        const totals = {
          ...(totalsRowLabel && { totalsRowLabel }),
          ...(totalsRowFunction && { totalsRowFunction }),
        };
        return { name, filterButton: true, ...(hasTotals && totals) };
      }),
      rows: Array.from({ length: Math.max(endRow - startRow, 1) }, () => headings.map(() => null)),
    });
    // The library writes a table's rows over the cells: they are put back.
    for (let row = startRow; row <= endRow + (hasTotals ? 1 : 0); row++) {
      for (let column = startColumn; column <= endColumn; column++) {
        const key = `${row},${column}`;
        const cell = cellAt(worksheet, key);
        // A total whose heading changed is the library's formula, by the new name.
        const isUntouched = sameContent(before.cells.get(key), after.cells.get(key));
        if (row > endRow && cell.formula && isUntouched) continue;
        if (row === startRow) cell.value = headings[column - startColumn]!;
        else cell.value = contentOf(after.cells.get(key), filled.get(`${after.id}!${key}`), cell);
      }
    }
  }
}

/** Whether the file's row of totals still stands under a table's rows, column for column. */
function hasTotalsUnder(former: Table, { range }: GridTable): boolean {
  const { totals, left, right, bottom } = toSheetTable(former);
  return (
    totals === 1 &&
    bottom === range.endRow + 2 &&
    left === range.startColumn + 1 &&
    right === range.endColumn + 1
  );
}

function headingsOf(worksheet: Worksheet, { range }: GridTable): string[] {
  const used = new Set<string>();
  const width = range.endColumn - range.startColumn + 1;
  return Array.from({ length: width }, (_, i) => {
    const text = worksheet.getCell(range.startRow + 1, range.startColumn + 1 + i).text.trim();
    let name = text || `Column${i + 1}`;
    for (let n = 2; used.has(name.toLowerCase()); n++) name = `${text}${n}`;
    used.add(name.toLowerCase());
    return name;
  });
}

function sameHeadings(worksheet: Worksheet, table: GridTable): boolean {
  const known = worksheet
    .getTables()
    .map(toSheetTable)
    .find(({ name }) => name === table.name);
  const headings = headingsOf(worksheet, table);
  return known?.columns.every((column, i) => column.trim() === headings[i]) ?? false;
}

function sameRange(a: GridTable, b: GridTable): boolean {
  return JSON.stringify(a.range) === JSON.stringify(b.range);
}

function bringNames({ definedNames }: Workbook, before: GridState, after: GridState): void {
  const key = ({ name, localSheetId }: { name: string; localSheetId?: string }) =>
    `${name.toLowerCase()} ${localSheetId ?? ""}`;
  const was = new Map(before.names.map((name) => [key(name), name]));
  const is = new Map(after.names.map((name) => [key(name), name]));
  for (const [k, name] of was) {
    if (is.get(k)?.formulaOrRefString === name.formulaOrRefString) continue;
    definedNames.model = definedNames.model.filter(
      (entry) => entry.name.toLowerCase() !== name.name.toLowerCase(),
    );
  }
  for (const [k, name] of is) {
    if (was.get(k)?.formulaOrRefString === name.formulaOrRefString) continue;
    definedNames.model = [
      ...definedNames.model,
      { name: name.name, ranges: [], rawText: asInFile(name.formulaOrRefString) },
    ];
  }
}
