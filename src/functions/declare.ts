import { Refusal } from "../core/refusal.js";
import { CellError, toCellError, type Cell } from "./cells.js";

/** One parameter of a sheet function: how a host passes it, and how what was passed is read. */
export interface Parameter<T> {
  readonly name: string;
  readonly optional: boolean;
  /** A range (`unknown[][]`), or the value of one cell. */
  readonly matrix: boolean;
  readonly read: (value: unknown) => T;
}

/** A function as every host sees it: cells in, a full rectangle of cells out. */
export interface SheetFunction {
  readonly id: string;
  readonly parameters: readonly Omit<Parameter<unknown>, "read">[];
  readonly evaluate: (...values: never[]) => unknown[][];
  /** Spills a table that is read without the sheet beside it. */
  readonly table?: true;
  /** Headings of the table's columns that hold days, as the workbook numbers them. */
  readonly dates?: readonly string[];
}

export type Values<P extends readonly Parameter<unknown>[]> = {
  [K in keyof P]: P[K] extends Parameter<infer T> ? T : never;
};

/** The same parameter, null where the caller leaves it out. */
export function optional<T>(parameter: Parameter<T>): Parameter<T | null> {
  return {
    ...parameter,
    optional: true,
    read: (value) => (value === null || value === undefined ? null : parameter.read(value)),
  };
}

/** The same parameter, which the caller may neither leave out nor leave blank. */
export function needed<T>(parameter: Parameter<T | null>): Parameter<T> {
  return {
    ...parameter,
    optional: false,
    read: (value) => {
      const found = parameter.read(value);
      if (found === null) throw new Refusal("blank, and the function needs it");
      return found;
    },
  };
}

/**
 * Reads every argument as its parameter declares, runs the body, and checks what comes out:
 * the one way from cells to cells. What the body refuses becomes one error cell with its sentence.
 */
export function answer<P extends readonly Parameter<unknown>[]>(
  parameters: readonly [...P],
  values: readonly unknown[],
  body: (...args: Values<P>) => Cell[][],
): Cell[][] {
  try {
    const args = parameters.map((parameter, i) => readArgument(parameter, values[i]));
    return checked(body(...(args as Values<P>)));
  } catch (error) {
    return [[toCellError(error, "")]];
  }
}

function readArgument(parameter: Parameter<unknown>, value: unknown): unknown {
  try {
    return parameter.read(value);
  } catch (error) {
    throw toCellError(error, parameter.name);
  }
}

/** A cell that is no finite number, text, yes/no or error of ours would show as 0: never let one out. */
function checked(rows: Cell[][]): Cell[][] {
  for (const row of rows) {
    for (let k = 0; k < row.length; k++) {
      const cell = row[k];
      if (typeof cell === "number" ? !Number.isFinite(cell) : cell === null || cell === undefined) {
        row[k] = new CellError("#VALUE!", "these cells gave no number: please tell us");
      }
    }
  }
  return rows;
}

/**
 * Calls a function as a host does: counts the cells first, so that a whole column given by
 * mistake is refused in a sentence instead of freezing the sheet.
 */
export function call(fn: SheetFunction, values: readonly unknown[], maxCells: number): Cell[][] {
  const cellsIn = values.reduce<number>((sum, value) => sum + countCells(value), 0);
  if (cellsIn > maxCells) return tooLarge(cellsIn, maxCells);
  const missing = fn.parameters.find((p, i) => !p.optional && (values[i] ?? null) === null);
  if (missing)
    return [[new CellError("#VALUE!", `${missing.name}: left out, and ${fn.id} needs it`)]];
  const rows = (fn.evaluate as (...values: unknown[]) => Cell[][])(...values);
  const cellsOut = countCells(rows);
  return cellsIn + cellsOut > maxCells ? tooLarge(cellsIn + cellsOut, maxCells) : rows;
}

/** The same for a host: a fault of ours is told in the cell and ends nothing. */
export function callSafely(
  fn: SheetFunction,
  values: readonly unknown[],
  maxCells: number,
): Cell[][] {
  try {
    return call(fn, values, maxCells);
  } catch (fault) {
    const message = fault instanceof Error ? fault.message : String(fault);
    return [[new CellError("#VALUE!", `a fault in Comb Tally: ${message}`)]];
  }
}

function countCells(value: unknown): number {
  if (!Array.isArray(value)) return 1;
  let cells = 0;
  for (const row of value as unknown[]) cells += Array.isArray(row) ? row.length : 1;
  return cells;
}

function tooLarge(cells: number, maxCells: number): Cell[][] {
  const message =
    `${cells.toLocaleString("en")} cells in one call; at most ${maxCells.toLocaleString("en")} fit: ` +
    `give the rows that are filled (B2:B400) instead of whole columns`;
  return [[new CellError("#VALUE!", message)]];
}

/** A block of cells whatever was passed: a range, one value, a ragged or an empty array. */
export function toBlock(value: unknown): unknown[][] {
  if (!Array.isArray(value)) return [[value]];
  if (value.length === 0) return [[null]];
  let width = 1;
  let ragged = false;
  for (const row of value as unknown[]) {
    const length = Array.isArray(row) ? row.length : 1;
    ragged ||= !Array.isArray(row) || length !== (value[0] as unknown[]).length || length === 0;
    if (length > width) width = length;
  }
  if (!ragged) return value as unknown[][];
  return (value as unknown[]).map((row) => {
    const cells: unknown[] = Array.isArray(row) ? row : [row];
    return Array.from({ length: width }, (_, k) => cells[k] ?? null);
  });
}
