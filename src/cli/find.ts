import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { headsYard, matchHeadings } from "../core/headings.js";
import { quote, Refusal } from "../core/refusal.js";
import { yardColumns, type Again } from "../core/yard-columns.js";
import { lastRowOf, type Under } from "../functions/sheet-end.js";
import { yardSheet as readYardSheet } from "../functions/yard-sheet.js";
import {
  absolute,
  addressOf,
  cellAddress,
  overlaps,
  valuesIn,
  type Area,
} from "../workbook/area.js";
import { CalculatedCells } from "../workbook/calculated-cells.js";
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
  /** Columns that would count again what other columns count. */
  readonly again: readonly Again[];
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

/**
 * What is amiss with the row that comes nearest to the headings of a yard sheet, where none is one;
 * empty where no row has a heading for the hive and one that may be for its bees.
 */
export function nearestMiss(workbook: Workbook): string {
  for (const sheet of workbook.worksheets) {
    for (let row = 1; row <= Math.min(ROWS_SEARCHED, sheet.rowCount); row++) {
      for (const { headings } of segmentsOf(sheet, row, new Set(), [])) {
        const { roles, doubts } = matchHeadings(headings);
        const named = [...roles, ...doubts.map(({ role }) => role)];
        if (headsYard(named)) {
          return ` Row ${row} of sheet ${quote(sheet.name)} comes near: ${faultOf(headings)}.`;
        }
      }
    }
  }
  return "";
}

function faultOf(headings: readonly string[]): string {
  try {
    readYardSheet([headings]);
    return "no hive stands under it";
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
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
  const isCalculated = headings.map((_, k) =>
    calculated.touch({ ...area, top: area.top + 1, left: area.left + k, right: area.left + k }),
  );
  const { roles, again } = yardColumns(valuesIn(area), isCalculated);
  const contracts = roles.indexOf("contract");
  const rows = Array.from({ length: area.bottom - area.top }, (_, i) => area.top + 1 + i);
  const hasContracts =
    contracts >= 0 &&
    rows.some((row) => textAt(area.sheet, row, area.left + contracts).trim() !== "");
  return { area, reference, hasContracts, again };
}

/**
 * The cells of a yard sheet as they are graded: a column that counts again is left out, and a lot in
 * a cell that is merged over rows stands in each of them.
 */
export function cellsOf({ area, again }: YardSheet): unknown[][] {
  const [headings = [], ...rows] = valuesIn(area);
  const lot = matchHeadings(headings.map(String)).roles.indexOf("lot");
  if (lot >= 0) rows.forEach((row, i) => (row[lot] ??= mergedOver(area, i + 1, lot)));
  const isAgain = (k: number): boolean => again.some(({ column }) => column === k);
  return [headings.map((heading, k) => (isAgain(k) ? "" : heading)), ...rows];
}

function mergedOver({ sheet, top, left }: Area, row: number, column: number): unknown {
  const cell = sheet.findCell(top + row, left + column);
  return cell?.isMerged ? plainValue(cell.master) : null;
}

/** A sentence on each column that is left out so that nothing is counted twice. */
export function notAdded({ area, again }: YardSheet): string[] {
  return again.map(({ column, role, known }) => {
    const heading = quote(textAt(area.sheet, area.top, area.left + column));
    const why = { "their sum": "is the sum of", calculated: "is worked out beside" }[known];
    return `${heading} ${why} the other columns of ${role}, and is not added to them`;
  });
}

function isYard(headings: readonly string[]): boolean {
  return headsYard(matchHeadings(headings).roles);
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
