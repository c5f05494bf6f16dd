import type { Workbook } from "@cj-tech-master/excelts";
import { calculateFormulas, type WorkbookLike } from "@cj-tech-master/excelts/formula";
import { CellError, type Cell } from "../functions/cells.js";
import type { SheetFunction } from "../functions/declare.js";
import { reference } from "./area.js";
import { Constants } from "./constants.js";
import { register } from "./engine.js";
import { answered, putIn } from "./direct.js";
import { emptySpill, formulasOf, type Formula, type Result } from "./formulas.js";
import { calculable, isAnchored, type Surroundings } from "./prepare.js";
import { filledBy, fillBlock, isSame, toCellValue, type Rows } from "./spread.js";
import { tablesOf } from "./tables.js";
import { heldAsFormula, TOO_LARGE, unsupported } from "./unsupported.js";

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
  const tables = tablesOf(workbook);
  const around: Surroundings = {
    tables,
    ids: new Set(functions.map((fn) => fn.id)),
    constants,
    filledFrom(sheet, address) {
      const number = numbers.get(key(sheet, address));
      if (number === undefined) return "#REF!";
      const formula = formulas[number]!;
      const rows = before.get(number) ?? answers.get(number);
      return reference(isKept(number) ? formula.area : filledBy(formula, rows));
    },
  };
  const refill = new Map(
    formulas.map((formula, number) => [number, isKept(number) ? () => {} : emptySpill(formula)]),
  );
  const textFor = (formula: Formula, number: number): string => {
    if (isKept(number)) return heldAsFormula(formula);
    return reasons.get(number) === TOO_LARGE ? "#VALUE!" : calculable(formula, number, around);
  };
  const byId = new Map(functions.map((fn) => [fn.id, fn]));
  const answers = answered(formulas, { functions: byId, tables, constants }, reasons);
  for (const [number, rows] of answers) {
    errors.set(number, errorsIn(rows, undefined));
    putIn(formulas[number]!, rows);
    tick();
  }
  const left = formulas.length - answers.size;
  for (let pass = 1; left > 0 && pass <= MOST_PASSES; pass++) {
    formulas.forEach((formula, number) => {
      if (answers.has(number) || (pass > 1 && !isAnchored(formula))) return;
      place(formula, textFor(formula, number));
    });
    spread = new Map();
    calculateFormulas(workbook as WorkbookLike);
    for (const [number, rows] of spread) fillBlock(formulas[number], rows);
    if (left === 1 || isSame(spread, before)) break;
    before = spread;
  }
  for (const [number, rows] of answers) {
    place(formulas[number]!, formulas[number]!.text);
    formulas[number]!.cell.result = toCellValue(rows[0]?.[0] ?? 0) as Result;
  }
  return { formulas, spread: new Map([...spread, ...answers]), reasons, refill, errors };
}

/** A cell by its sheet, with or without the quotes of a reference, and its address. */
function key(sheet: string, address: string): string {
  const name = sheet.replace(/^'|'?!$/g, "").replace(/''/g, "'");
  return `${name}!${address.replace(/\$/g, "")}`.toLowerCase();
}

/** Puts a formula into its cell, without the result of before, which the engine might fall back on. */
function place({ cell, saved }: Formula, text: string): void {
  const { sharedFormula: _, ...kept } = saved;
  cell.value = { ...kept, formula: text } as typeof cell.value;
  cell.result = undefined;
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
