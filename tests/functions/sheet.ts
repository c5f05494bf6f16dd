import { CellError, type ErrorCode } from "../../src/functions/cells.js";
import { call } from "../../src/functions/declare.js";
import { functions } from "../../src/functions/index.js";

const byId = new Map(functions.map((fn) => [fn.id, fn]));

/** What `=COMB.ID(...)` gives, as the cells come from the function. */
export function cellsOf(id: string, values: readonly unknown[], maxCells = 250_000): unknown[][] {
  return call(byId.get(id)!, values, maxCells);
}

/** The same with each error as its code and sentence, so that a test can hold it as a text. */
export function comb(id: string, ...values: unknown[]): unknown[][] {
  return cellsOf(id, values).map((row) => row.map(shown));
}

/** What stands in the only cell of the answer. */
export function one(id: string, ...values: unknown[]): unknown {
  const rows = comb(id, ...values);
  if (rows.length !== 1 || rows[0]!.length !== 1) throw new Error(`${id} gave more than one cell`);
  return rows[0]![0];
}

export function shown(cell: unknown): unknown {
  return cell instanceof CellError ? `${cell.code} ${cell.message}`.trim() : cell;
}

/** An error in a sheet's cell, as a host hands it over. */
export function errorCell(code: ErrorCode): CellError {
  return new CellError(code);
}

/** A Terms table of one contract. */
export function terms(...rows: readonly (readonly [string, unknown])[]): unknown[][] {
  return [["Term", "Cherry"], ...rows.map((row) => [...row])];
}

export function column(...cells: readonly unknown[]): unknown[][] {
  return cells.map((cell) => [cell]);
}

/** A day's number in the sheet, by the platform's calendar. */
export function serial(year: number, month: number, day: number): number {
  return (Date.UTC(year, month - 1, day) - Date.UTC(1899, 11, 30)) / 864e5;
}
