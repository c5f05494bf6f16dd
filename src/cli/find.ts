import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { matchHeadings } from "../core/headings.js";
import { lastRowOf, type Under } from "../functions/sheet-end.js";
import {
  absolute,
  addressOf,
  cellAddress,
  overlaps,
  valuesIn,
  type Area,
} from "../workbook/area.js";
import { CalculatedCells } from "../workbook/calculated-cells.js";
import { doubledColumns } from "../workbook/doubled.js";
import { formulasOf } from "../workbook/formulas.js";
import { Problem } from "../workbook/problem.js";
import { filledCells, segmentsOf, textAt } from "../workbook/segments.js";
import { tableReference, tablesOf, type SheetTable } from "../workbook/tables.js";
import { plainValue } from "../workbook/values.js";

/** A sheet of hives: its block with the heading row. */
export interface YardSheet {
  readonly area: Area;
  /** How a formula on the same sheet names it. */
  readonly reference: string;
  /** Whether its rows say under which contract each hive goes out. */
  readonly hasContracts: boolean;
  /** Headings of columns that would count again what other columns count, by their place. */
  readonly doubled: ReadonlyMap<number, string>;
}

const ROWS_SEARCHED = 20;

/** What formulas make of a workbook: not all that looks like a yard sheet was written by hand. */
interface Made {
  /** Cells that a formula which fills several takes on its first row. */
  readonly filled: ReadonlySet<string>;
  readonly calculated: CalculatedCells;
  /** Headings of the columns that we compute. */
  readonly computed: readonly string[];
}

/** Finds every block of the workbook that is headed as a yard sheet, in tables and outside them. */
export function findYardSheets(workbook: Workbook, computed: readonly string[]): YardSheet[] {
  const formulas = formulasOf(workbook);
  const calculated = new CalculatedCells(formulas);
  const made = { filled: filledCells(formulas), calculated, computed };
  const tables = tablesOf(workbook);
  const inTables = tables.flatMap((table) => yardTable(table, made) ?? []);
  const outside = workbook.worksheets.flatMap((sheet) =>
    yardBlocks(sheet, made).filter(({ area }) => !tables.some((table) => overlaps(table, area))),
  );
  return [...inTables, ...outside].filter(({ area }) => area.bottom > area.top);
}

function yardTable(table: SheetTable, made: Made): YardSheet | null {
  if (!table.headings || !isYard(table.columns)) return null;
  const area = { ...table, bottom: table.bottom - table.totals };
  refuseEndless(area);
  return yardSheet(area, tableReference(table), table.columns, made);
}

function yardBlocks(sheet: Worksheet, made: Made): YardSheet[] {
  const found: YardSheet[] = [];
  for (let row = 1; row <= Math.min(ROWS_SEARCHED, sheet.rowCount); row++) {
    for (const { left, headings } of segmentsOf(sheet, row, made.filled, made.computed)) {
      if (!isYard(headings)) continue;
      const bottom = lastRow(sheet, row, left, headings, made.calculated);
      const area = { sheet, top: row, left, bottom, right: left + headings.length - 1 };
      if (found.some((other) => overlaps(other.area, area))) continue;
      refuseEndless(area);
      found.push(yardSheet(area, absolute(addressOf(area)), headings, made));
    }
  }
  return found;
}

/** A word in the sheet's last row makes a million rows of it, which no memory holds when graded. */
function refuseEndless({ sheet, top, left, bottom }: Area): void {
  if (bottom - top <= MOST_HIVES) return;
  throw new Problem(
    `The yard sheet of "${sheet.name}" would go on to row ${bottom.toLocaleString("en")}, and at most ` +
      `${MOST_HIVES.toLocaleString("en")} rows are graded. Is something written far below the hives, ` +
      `near ${cellAddress(bottom, left)}? Take it out, or part the sheet.`,
  );
}

const MOST_HIVES = 200_000;

function yardSheet(
  area: Area,
  reference: string,
  headings: readonly string[],
  { calculated }: Made,
): YardSheet {
  const { roles } = matchHeadings(headings);
  const contracts = roles.indexOf("contract");
  const rows = Array.from({ length: area.bottom - area.top }, (_, i) => area.top + 1 + i);
  const hasContracts =
    contracts >= 0 &&
    rows.some((row) => textAt(area.sheet, row, area.left + contracts).trim() !== "");
  const doubled = doubledColumns(area, roles, calculated).map((k) => [k, headings[k]!] as const);
  return { area, reference, hasContracts, doubled: new Map(doubled) };
}

/**
 * The cells of a yard sheet as they are graded: a column that counts again is left out, and a lot in
 * a cell that is merged over rows stands in each of them.
 */
export function cellsOf({ area, doubled }: YardSheet): unknown[][] {
  const [headings = [], ...rows] = valuesIn(area);
  const lot = matchHeadings(headings.map(String)).roles.indexOf("lot");
  if (lot >= 0) rows.forEach((row, i) => (row[lot] ??= mergedOver(area, i + 1, lot)));
  return [headings.map((heading, k) => (doubled.has(k) ? "" : heading)), ...rows];
}

function mergedOver({ sheet, top, left }: Area, row: number, column: number): unknown {
  const cell = sheet.findCell(top + row, left + column);
  return cell?.isMerged ? plainValue(cell.master) : null;
}

function isYard(headings: readonly string[]): boolean {
  const { roles } = matchHeadings(headings);
  return roles.includes("hive") && (roles.includes("bees") || roles.includes("seams above"));
}

/** The last row of a block's hives, in the rows of its sheet. */
function lastRow(
  sheet: Worksheet,
  top: number,
  left: number,
  headings: readonly string[],
  calculated: CalculatedCells,
): number {
  const under: Under = {
    last: sheet.rowCount - top,
    cell: (row, column) => plainValue(sheet.findCell(top + row, left + column)),
    isCalculated: (row, column) => {
      const [at, beside] = [top + row, left + column];
      return calculated.touch({ sheet, top: at, bottom: at, left: beside, right: beside });
    },
  };
  return top + lastRowOf(headings, under);
}
