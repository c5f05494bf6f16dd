import { quote } from "../core/refusal.js";
import { STANDARDS } from "../core/standards.js";
import { CellError, type Cell } from "../functions/cells.js";
import { call } from "../functions/declare.js";
import { unfitName } from "../functions/formula-text.js";
import { yardColumns } from "../functions/yard.js";
import { addressOf, cellAddress, overlaps, type Area } from "../workbook/area.js";
import { MAX_CELLS } from "../workbook/engine.js";
import { cellsOf, type YardSheet } from "./find.js";
import { eachCellOf } from "../workbook/formulas.js";
import { Problem } from "../workbook/problem.js";
import { asSaved } from "../workbook/rewrite.js";
import { textAt } from "../workbook/segments.js";
import { tablesOf } from "../workbook/tables.js";

/** By what a yard sheet is graded: a contract of the terms, or a published standard. */
export interface Grading {
  readonly terms: unknown[][] | null;
  /** How a formula names the terms; empty for a standard. */
  readonly termsName: string;
  /** Null where each row of the sheet names its own. */
  readonly contract: string | null;
}

/** The computed columns of a yard sheet, their headings first; refused where there are none. */
export function computedColumns(
  yard: unknown[][],
  { terms, contract }: Grading,
  columns: string | null = null,
): Cell[][] {
  const text = (value: string | null): unknown => (value === null ? null : [[value]]);
  const rows = call(yardColumns, [yard, terms, text(contract), text(columns)], MAX_CELLS);
  const only = rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : null;
  if (only instanceof CellError) throw new Problem(only.message);
  return rows;
}

/** What stands over the computed columns, whatever the contract: asked of a sheet without hives. */
export function computedHeadings(): string[] {
  const grading = { terms: null, termsName: "", contract: STANDARDS[0]!.name };
  return computedColumns([["Hive", "Bees"]], grading)[0]!.map(String);
}

/** Puts one formula beside a yard sheet, which fills the computed columns. */
export function addColumns(sheet: YardSheet, grading: Grading): Area {
  const { area: yard, reference } = sheet;
  refuseDoubled(sheet);
  const headings = computedColumns(
    cellsOf({ ...sheet, area: { ...yard, bottom: yard.top } }),
    grading,
  )[0]!;
  const left = yard.right + 2;
  const area: Area = {
    sheet: yard.sheet,
    top: yard.top,
    left,
    bottom: yard.bottom,
    right: left + headings.length - 1,
  };
  refuseFilled(area);
  eachCellOf(area, (r, c) => {
    const cell = area.sheet.getCell(r, c);
    if (cell.numFmt) cell.numFmt = "General";
  });
  for (let c = left; c <= area.right; c++) area.sheet.getColumn(c).width ??= WIDTH;
  area.sheet.getCell(area.top, left).value = {
    formula: asSaved(`COMB.YARD_COLUMNS(${argumentsOf(reference, grading)})`),
    shareType: "array",
    ref: addressOf(area),
    isDynamicArray: true,
  };
  return area;
}

/** Characters that the longest of the headings takes. */
const WIDTH = 17;

function argumentsOf(reference: string, { termsName, contract }: Grading): string {
  if (contract === null) return `${reference},${termsName}`;
  const unfit = unfitName(contract);
  if (unfit !== null) throw new Problem(`${unfit[0]!.toUpperCase()}${unfit.slice(1)}.`);
  return `${reference},${termsName},"${contract.replace(/"/g, '""')}"`;
}

/** A formula of ours reads cells, and does not see which of them another formula filled. */
function refuseDoubled({ area, again }: YardSheet): void {
  const calculated = again.find(({ known }) => known === "calculated");
  if (calculated === undefined) return;
  const heading = textAt(area.sheet, area.top, area.left + calculated.column);
  throw new Problem(
    `The column ${quote(heading)} of sheet "${area.sheet.name}" is worked out from other columns ` +
      "that are counted too, so it would be counted twice. Give it another heading, such as Sum.",
  );
}

function refuseFilled(area: Area): void {
  const { sheet } = area;
  let filled = "";
  eachCellOf(area, (r, c) => {
    const cell = sheet.findCell(r, c);
    if (cell && (cell.isMerged || (cell.value ?? "") !== "")) filled ||= cellAddress(r, c);
  });
  const table = tablesOf(sheet.workbook).find((t) => overlaps(t, area));
  const what = filled
    ? `cell ${filled} is filled`
    : table
      ? `the table ${table.name} is there`
      : "";
  if (what === "") return;
  throw new Problem(
    `The computed columns of sheet "${sheet.name}" would stand in ${addressOf(area)}, but ${what}. ` +
      `Nothing of yours is written over: make room there, or put the formula where you want it.`,
  );
}
