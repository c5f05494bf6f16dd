import { CellError, type ErrorCode } from "./cells.js";
import { callSafely, type SheetFunction } from "./declare.js";
import { functions } from "./index.js";

/**
 * Excel on the web lets 5 MB through a call, and a cell travels as about 20 characters of JSON.
 * The desktop takes more, but a workbook must work in both.
 */
const MAX_CELLS = 250_000;

/** The errors that Excel lets a function put into a cell; of the others it makes nothing useful. */
const RETURNABLE: ReadonlySet<ErrorCode> = new Set([
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#NUM!",
  "#N/A",
]);

/** Tells Excel which code stands behind each id of functions.json; outside Excel there is nobody to tell. */
export function associateAll(list: readonly SheetFunction[] = functions): void {
  if (typeof CustomFunctions === "undefined") return;
  for (const fn of list) {
    CustomFunctions.associate(fn.id, (...passed: unknown[]) => answerExcel(fn, passed));
  }
}

function answerExcel(fn: SheetFunction, passed: readonly unknown[]): unknown[][] {
  // What Excel passes last is the invocation: never by position, for Excel caches functions.json
  // for a day and may call with fewer arguments than the code of today takes.
  const rows = callSafely(fn, passed.slice(0, -1).map(fromExcel), MAX_CELLS);
  const only = rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : null;
  if (only instanceof CellError) throw toExcel(only);
  return rows.map((row) => row.map((cell) => (cell instanceof CellError ? toExcel(cell) : cell)));
}

function fromExcel(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(fromExcel);
  return isExcelError(value) ? new CellError(value.code, value.message) : value;
}

/** By its shape: the class comes with the host's files, after this module. */
function isExcelError(value: unknown): value is { code: ErrorCode; message?: string } {
  return typeof value === "object" && value !== null && "code" in value;
}

function toExcel(error: CellError): CustomFunctions.Error {
  const returnable = RETURNABLE.has(error.code);
  const message = error.message || (returnable ? "" : `${error.code} stands in the cells given`);
  const code = (returnable ? error.code : "#VALUE!") as CustomFunctions.ErrorCode;
  return new CustomFunctions.Error(code, message);
}
