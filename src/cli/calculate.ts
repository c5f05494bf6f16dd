import type { CellErrorValue, CellValue, Workbook } from "@cj-tech-master/excelts";
import { calculateFormulas, type WorkbookLike } from "@cj-tech-master/excelts/formula";
import { CellError, type Cell } from "../functions/cells.js";
import type { SheetFunction } from "../functions/declare.js";
import { reference, type Area } from "./area.js";
import { Constants } from "./constants.js";
import { register } from "./engine.js";
import { eachCellOf, emptySpill, formulasOf, type Formula } from "./formulas.js";
import { calculable, isAnchored, type Surroundings } from "./prepare.js";
import { tablesOf } from "./tables.js";
import { heldAsFormula, unsupported } from "./unsupported.js";

export type Rows = readonly (readonly unknown[])[];

/** What the engine has left in the cells, and what it told on the way. */
export interface Calculated {
  readonly formulas: readonly Formula[];
  /** What each array formula came to, by the formula's number. */
  readonly spread: ReadonlyMap<number, Rows>;
  /** Why those that cannot be calculated here cannot, by number. */
  readonly reasons: ReadonlyMap<number, string>;
  /** Puts back what a spill had filled, where the engine cannot calculate it, by formula. */
  readonly refill: ReadonlyMap<number, () => void>;
  /** The errors that our functions gave, with their sentences: by formula, then by place. */
  readonly errors: ReadonlyMap<number, ReadonlyMap<string, CellError>>;
}

/** A block that a formula fills can be read one pass later; longer chains than this nobody writes. */
const MOST_PASSES = 12;

/** Calculates every formula of the workbook, ours and Excel's; `tick` is called now and then. */
export function calculate(
  workbook: Workbook,
  functions: readonly SheetFunction[],
  tick: () => void,
): Calculated {
  const formulas = formulasOf(workbook);
  const numbers = new Map(
    formulas.map(({ cell }, i) => [key(cell.worksheet.name, cell.address), i]),
  );
  const errors = new Map<number, ReadonlyMap<string, CellError>>();
  const constants = new Constants(workbook, formulas);
  let spread = new Map<number, Rows>();
  let before = spread;
  register(workbook, functions, {
    called(number, rows) {
      errors.set(number, errorsIn(rows, errors.get(number)));
      tick();
    },
    spread: (number, rows) => spread.set(number, rows),
    block: (number) => constants.block(number),
  });
  const reasons = unsupported(formulas, workbook);
  const isKept = (number: number): boolean =>
    reasons.has(number) && formulas[number]!.held !== undefined;
  const around: Surroundings = {
    tables: tablesOf(workbook),
    ids: new Set(functions.map((fn) => fn.id)),
    constants,
    filledFrom(sheet, address) {
      const number = numbers.get(key(sheet, address));
      if (number === undefined) return "#REF!";
      const formula = formulas[number]!;
      return reference(isKept(number) ? formula.area : filledBy(formula, before.get(number)));
    },
  };
  const refill = new Map(
    formulas.map((formula, number) => [number, isKept(number) ? () => {} : emptySpill(formula)]),
  );
  for (let pass = 1; pass <= MOST_PASSES; pass++) {
    formulas.forEach((formula, number) => {
      if (pass > 1 && !isAnchored(formula)) return;
      place(formula, isKept(number) ? heldAsFormula(formula) : calculable(formula, number, around));
    });
    spread = new Map();
    calculateFormulas(workbook as WorkbookLike);
    for (const [number, rows] of spread) fillBlock(formulas[number], rows);
    const isAlone = formulas.length === 1;
    if (isAlone || isSame(spread, before)) break;
    before = spread;
  }
  return { formulas, spread, reasons, refill, errors };
}

const key = (sheet: string, address: string): string =>
  `${sheet
    .replace(/^'|'?!$/g, "")
    .replace(/''/g, "'")
    .toLowerCase()}!${address.replace(/\$/g, "").toUpperCase()}`;

/** Puts a formula into its cell, without the result of before, which the engine might fall back on. */
function place({ cell, saved }: Formula, text: string): void {
  const { sharedFormula: _, ...kept } = saved;
  cell.value = { ...kept, formula: text } as typeof cell.value;
  cell.result = undefined;
}

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
function fillBlock(formula: Formula | undefined, rows: Rows): void {
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

function toCellValue(value: unknown): CellValue {
  if (value instanceof CellError) return { error: value.code } as CellErrorValue;
  return (value ?? 0) as string | number | boolean;
}

/** An error that one of our functions hands on from another has its sentence from there. */
function errorsIn(
  rows: readonly (readonly Cell[])[],
  before: ReadonlyMap<string, CellError> | undefined,
): ReadonlyMap<string, CellError> {
  const errors = new Map<string, CellError>();
  rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (!(cell instanceof CellError)) return;
      const place = `${r},${c}`;
      errors.set(place, cell.message === "" ? (before?.get(place) ?? cell) : cell);
    }),
  );
  return errors;
}

function isSame(a: ReadonlyMap<number, Rows>, b: ReadonlyMap<number, Rows>): boolean {
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
