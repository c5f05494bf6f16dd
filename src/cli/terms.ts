import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { contractNames } from "../core/contract-reading.js";
import { Refusal } from "../core/refusal.js";
import { areaAt, areaOn, reference, valuesIn, type Area } from "../workbook/area.js";
import { Problem } from "../workbook/problem.js";
import { isTerm } from "../functions/sheet-end.js";
import { textAt } from "../workbook/segments.js";
import { resolve, tablesOf } from "../workbook/tables.js";

/** The block of terms by which hives are graded, a contract a column. */
export interface Terms {
  readonly area: Area;
  /** How a formula names it; null while the block has no name yet. */
  readonly name: string | null;
  readonly values: unknown[][];
  readonly contracts: readonly string[];
}

const NAME = "Terms";

/** The terms of a workbook: what is named Terms, else a table of that name, else a block headed so. */
export function findTerms(workbook: Workbook): Terms | null {
  const named = namedTerms(workbook);
  if (named) return named;
  const tables = tablesOf(workbook);
  const table = tables.find((t) => t.name.toLowerCase() === NAME.toLowerCase());
  if (table)
    return toTerms({ ...table, bottom: table.bottom - table.totals }, `${table.name}[#All]`);
  for (const sheet of workbook.worksheets) {
    const block = termsBlock(sheet);
    if (block) return toTerms(block, null);
  }
  return null;
}

function namedTerms(workbook: Workbook): Terms | null {
  const entries = workbook.definedNames.getAllEntries();
  const named = entries.filter(({ name }) => name.toLowerCase() === NAME.toLowerCase());
  const forAll = named.find(({ localSheetId }) => localSheetId === undefined);
  const entry = forAll ?? named[0];
  if (!entry) return null;
  const text = entry.ranges[0] ?? entry.formulaExpression ?? entry.rawText ?? "";
  const area = areaAt(workbook, text) ?? tableArea(workbook, text);
  // A name that only one sheet knows is none for formulas on another.
  if (area) return toTerms(area, forAll ? NAME : null);
  throw new Problem(
    `The name ${NAME} of this workbook stands for "${text}": let it name the block of terms, with its headings.`,
  );
}

/** `Contracts[#All]` */
function tableArea(workbook: Workbook, text: string): Area | null {
  const [name = "", brackets] = text.split(/(?=\[)/, 2);
  const table = tablesOf(workbook).find((t) => t.name.toLowerCase() === name.toLowerCase());
  if (!table || brackets === undefined) return null;
  return areaAt(workbook, resolve(table, text.slice(name.length), table.top));
}

function toTerms(area: Area, name: string | null): Terms {
  const values = valuesIn(area);
  try {
    return { area, name, values, contracts: contractNames(values) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Problem(`The terms in ${reference(area)} cannot be used: ${error.message}.`);
  }
}

/** A cell `Term` with contracts beside it and terms below, the first of the sheet. */
function termsBlock(sheet: Worksheet): Area | null {
  let found: Area | null = null;
  // Only cells that hold something are asked: between two far ones there may be milliards.
  sheet.eachRow((row, r) => {
    if (!found) row.eachCell((_, c) => (found ??= termsAt(sheet, r, c)));
  });
  return found;
}

/** The block of terms that begins in a cell, down to where two rows have no label. */
function termsAt(sheet: Worksheet, top: number, left: number): Area | null {
  if (!isTerm(textAt(sheet, top, left)) || textAt(sheet, top, left + 1) === "") return null;
  let right = left + 1;
  while (textAt(sheet, top, right + 1) !== "") right++;
  const filled = (row: number): boolean => textAt(sheet, row, left) !== "";
  let bottom = top;
  while (filled(bottom + 1) || filled(bottom + 2)) bottom++;
  return bottom > top ? { sheet, top, left, bottom, right } : null;
}

/** Gives a block of terms the name by which formulas speak of it. */
export function nameTerms(workbook: Workbook, terms: Terms): Terms {
  if (terms.name !== null) return terms;
  workbook.definedNames.add(reference(terms.area), NAME);
  return { ...terms, name: NAME };
}

/**
 * Copies the sheet on which the terms of another workbook stand, as it looks, its formulas as
 * values: what they refer to does not come along.
 */
export function copyTerms(workbook: Workbook, { area, values }: Terms): Terms {
  const from = area.sheet;
  const sheet = workbook.addWorksheet(freeName(workbook, from.name));
  const columns = from.columnCount;
  for (let c = 1; c <= columns; c++) {
    const { width } = from.getColumn(c);
    if (width !== undefined) sheet.getColumn(c).width = width;
  }
  from.eachRow((row, r) => {
    if (row.height !== undefined) sheet.getRow(r).height = row.height;
    row.eachCell((cell, c) => {
      const copy = sheet.getCell(r, c);
      copy.style = cell.style;
      if (!cell.isMerged || cell.master === cell)
        copy.value = cell.formula ? cell.result : cell.value;
    });
  });
  for (const merged of from.mergedRegions) {
    sheet.mergeCells(merged.top, merged.left, merged.bottom, merged.right);
  }
  const copied = areaOn(sheet, reference(area).split("!").at(-1) ?? "");
  return nameTerms(workbook, { ...toTerms(copied, null), values });
}

/** Whether two blocks say the same, whatever they look like. */
export function sameTerms(a: Terms, b: Terms): boolean {
  return JSON.stringify(a.values) === JSON.stringify(b.values);
}

function freeName(workbook: Workbook, wanted: string): string {
  const taken = (name: string): boolean =>
    workbook.worksheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted.slice(0, 26)} (${i})`;
    if (!taken(name)) return name;
  }
}
