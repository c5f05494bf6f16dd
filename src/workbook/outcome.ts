import type { CellError } from "../functions/cells.js";
import { addressOf, cellAddress, type Area } from "./area.js";
import type { Calculated } from "./calculate.js";
import { eachCellOf, type Formula, type Result } from "./formulas.js";
import { asSaved } from "./rewrite.js";
import { filledBy } from "./spread.js";
import { serialOf } from "./values.js";

/** Something to be told about a cell. */
export interface Remark {
  readonly sheet: string;
  readonly address: string;
  readonly text: string;
}

export interface Outcome {
  /** How many formulas hold our functions, and how many only Excel's. */
  readonly ours: number;
  readonly native: number;
  readonly notCalculated: readonly Remark[];
  /** Formulas of Excel alone whose result is not what the file held. */
  readonly changed: readonly Remark[];
}

/** Puts every formula back as the file is to hold it, with its result, and sums up what happened. */
export function settle(calculated: Calculated): Outcome {
  const { formulas, spread, reasons, errors, refill } = calculated;
  const notCalculated: Remark[] = [];
  const changed: Remark[] = [];
  formulas.forEach((formula, number) => {
    const { cell, held } = formula;
    const remark = (text: string, address = cell.address): Remark => ({
      sheet: cell.worksheet.name,
      address,
      text,
    });
    const gaveUp = reasons.get(number) ?? whyNot(formula);
    if (gaveUp && held !== undefined) {
      putBack(formula, formula.area, held);
      refill.get(number)?.();
      notCalculated.push(remark(`${gaveUp}; kept as it was, ${show(held)}`));
      return;
    }
    const filled = filledBy(formula, isSpillError(cell.result) ? undefined : spread.get(number));
    const result = cell.result ?? 0;
    putBack(formula, filled, result);
    if (gaveUp) notCalculated.push(remark(gaveUp));
    else if (isSpillError(result))
      notCalculated.push(remark("#SPILL!: the cells it fills must be empty"));
    else if (isOtherwise(formula, result)) changed.push(remark(`${show(held)} → ${show(result)}`));
    for (const [place, error] of told(formula, errors.get(number))) {
      const [r, c] = place.split(",").map(Number) as [number, number];
      notCalculated.push(
        remark(`${error.code} ${error.message}`, cellAddress(cell.row + r, cell.col + c)),
      );
    }
  });
  const ours = formulas.filter((formula) => formula.ours).length;
  return { ours, native: formulas.length - ours, notCalculated, changed };
}

/** Why a formula that seemed possible could not be calculated, or null where it could. */
function whyNot({ cell, held }: Formula): string | null {
  const code = errorCode(cell.result);
  if (code === errorCode(held)) return null;
  if (code === "#NAME?") return "a name in it is not known here";
  return code === "#CALC!" ? "it cannot be calculated here" : null;
}

/** The errors of our functions that a user must see, one a row; what nobody has judged is none. */
function told(
  { cell, ours, area }: Formula,
  errors: ReadonlyMap<string, CellError> | undefined,
): [place: string, error: CellError][] {
  if (!ours || !errors) return [];
  const rows = new Map<number, [string, CellError]>();
  for (const [place, error] of errors) {
    const [r, c] = place.split(",").map(Number) as [number, number];
    const shown =
      r + c === 0 ? cell.result : area.sheet.findCell(cell.row + r, cell.col + c)?.value;
    if (error.code === "#N/A" || errorCode(shown) !== error.code || rows.has(r)) continue;
    rows.set(r, [place, error]);
  }
  return [...rows.values()];
}

function putBack({ cell, saved, ours, fills }: Formula, filled: Area, result: Result): void {
  const text = ours && saved.formula ? asSaved(saved.formula) : saved.formula;
  cell.value = {
    ...saved,
    ...(text && { formula: text }),
    ...(fills === "spill" && { ref: addressOf(filled) }),
  } as typeof cell.value;
  cell.result = result;
  // An empty cell that is spilled shows as 0, as it does when a single formula reads it.
  if (fills === "spill") eachCellOf(filled, (r, c) => (filled.sheet.getCell(r, c).value ??= 0));
}

/** Whether Excel would see another value: not a number's last digits, nor a date kept as a number. */
function isOtherwise({ cell, text, ours, held }: Formula, result: Result): boolean {
  if (ours || held === undefined || /\b(?:NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY)\(/i.test(text))
    return false;
  const before = held instanceof Date ? serialOf(held, cell) : held;
  if (typeof before === "number" && typeof result === "number") {
    return Math.abs(before - result) > 1e-9 * Math.max(1, Math.abs(before));
  }
  return errorCode(before) !== errorCode(result) || (!errorCode(before) && before !== result);
}

function errorCode(value: unknown): string | null {
  return typeof value === "object" && value !== null && "error" in value
    ? String(value.error)
    : null;
}

const isSpillError = (value: unknown): boolean => errorCode(value) === "#SPILL!";

function show(value: Result): string {
  return errorCode(value) ?? (typeof value === "string" ? short(`"${value}"`) : String(value));
}

const short = (text: string): string => (text.length > 50 ? `${text.slice(0, 50)}…` : text);
