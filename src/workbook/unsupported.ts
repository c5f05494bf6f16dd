import { Workbook } from "@cj-tech-master/excelts";
import { sizeOf, spanOf } from "./area.js";
import { calculateFormulas, type WorkbookLike } from "@cj-tech-master/excelts/formula";
import { pieces } from "./formula-text.js";
import type { Formula } from "./formulas.js";
import { serialOf } from "./values.js";

/** The engine makes a value of each cell of a block, also of those that were never filled. */
const MOST_CELLS = 5_000_000;

export const TOO_LARGE = "it reads more cells than are calculated here";

/** Why each formula that cannot be calculated here cannot, by its number. */
export function unsupported(
  formulas: readonly Formula[],
  workbook: Workbook,
): ReadonlyMap<number, string> {
  const cut = formulas.map(({ text }) => pieces(text));
  const unknown = unknownAmong(new Set(cut.flatMap(functionsIn)), workbook);
  const reasons = new Map<number, string>();
  cut.forEach((parts, number) => {
    const name = functionsIn(parts).find((fn) => unknown.has(fn));
    if (name !== undefined) reasons.set(number, `${asTyped(name)} is not known here`);
    else if (readsOtherWorkbook(parts)) reasons.set(number, "it reads another workbook");
    else if (readsTooMuch(parts)) reasons.set(number, TOO_LARGE);
    else if (callsResult(parts)) reasons.set(number, "it writes a function and calls it in one");
  });
  return reasons;
}

/** A function's name without what only files put before it. */
function asTyped(name: string): string {
  const [, prefix, id] = /^_XLDUDF_([^_]+)_(.+)$/.exec(name) ?? [];
  return prefix ? `${prefix}.${id}` : name.replace(/^_XLFN\.(?:_XLWS\.)?/, "");
}

/** The two that are taken out of a formula before it is calculated. */
const REPLACED = new Set(["_XLFN.SINGLE", "_XLFN.ANCHORARRAY"]);

/** Names before a bracket; those that LET and LAMBDA make are no functions of Excel. */
function functionsIn(parts: readonly string[]): string[] {
  return parts.flatMap((part, i) => {
    const name = part.toUpperCase();
    const isCall = parts[i + 1] === "(" && /^[\p{L}_]/u.test(name) && !name.startsWith("_XLPM.");
    return isCall && !REPLACED.has(name) ? [name] : [];
  });
}

/** The engine has no list of its functions, but says of each whether it knows it. */
function unknownAmong(names: ReadonlySet<string>, workbook: Workbook): ReadonlySet<string> {
  const defined = new Set(workbook.definedNames.getAllNames().map((n) => n.name.toUpperCase()));
  const asked = [...names].filter((name) => !defined.has(name));
  const trial = new Workbook();
  const sheet = trial.addWorksheet("Trial");
  if (workbook.userFunctions) trial.userFunctions = workbook.userFunctions;
  asked.forEach((name, i) => (sheet.getCell(i + 1, 1).value = { formula: `${name}()` }));
  calculateFormulas(trial as WorkbookLike);
  return new Set(asked.filter((_, i) => isNameError(sheet.getCell(i + 1, 1).result)));
}

const isNameError = (value: unknown): boolean => JSON.stringify(value) === '{"error":"#NAME?"}';

/** `[1]Sheet!A1` or `'[1]My sheet'!A1`; `[2]!` before a function is damage, and tables have names. */
function readsOtherWorkbook(parts: readonly string[]): boolean {
  return parts.some((part, i) => {
    if (part.startsWith("'")) return /\[\d+\]/.test(part) && parts[i + 1] === "!";
    const named = /[\p{L}\p{N}_.]$/u.test(parts[i - 1] ?? "");
    return /^\[\d+\]$/.test(part) && !named && parts[i + 1] !== "!";
  });
}

/** `F1:XFD1048576`; of whole columns and rows the engine takes only what is filled. */
function readsTooMuch(parts: readonly string[]): boolean {
  return parts.some((part, i) => {
    if (part !== ":") return false;
    const address = `${parts[i - 1]}:${parts[i + 1]}`;
    return CELLS.test(address) && sizeOf(spanOf(address)) > MOST_CELLS;
  });
}

const CELLS = /^\$?[A-Z]{1,3}\$?\d{1,7}:\$?[A-Z]{1,3}\$?\d{1,7}$/i;

function callsResult(parts: readonly string[]): boolean {
  const tight = parts.filter((part) => part.trim() !== "");
  return tight.some((part, i) => part === ")" && tight[i + 1] === "(");
}

/** What the file held for a formula, written as a formula, so that others may go on from it. */
export function heldAsFormula({ cell, held }: Formula): string {
  if (held instanceof Date) return String(serialOf(held, cell));
  if (typeof held === "string") return `"${held.replace(/"/g, '""')}"`;
  return typeof held === "object" ? held.error : String(held).toUpperCase();
}
