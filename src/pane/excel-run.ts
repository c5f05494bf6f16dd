import { Refusal } from "../core/refusal.js";
import type { Place } from "./port.js";

/**
 * Excel on the web lets 5 MB through a call. A cell that is read travels four times (value, entry,
 * format, type), in about 100 characters where none is long.
 */
export const CALL_CELLS = 20_000;

/** An error of Office by its code: its own message is in the language of Office, and for developers. */
export interface OfficeError {
  readonly code: string;
  /** Says which object and which of its members failed: `PageLayout.paperSize`. */
  readonly debugInfo?: { readonly errorLocation?: string };
}

/** By its shape: the class comes with Microsoft's script. */
export function isOfficeError(error: unknown): error is OfficeError {
  return typeof error === "object" && error !== null && "code" in error;
}

/** A batch of Excel's. Where the user is typing in a cell, the desktop waits until he is done. */
export function run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  return Excel.run({ delayForCellEdit: true }, batch);
}

/**
 * Says in a sentence what Office said in a code.
 *
 * @param needed - what had to be there: "sheet Yard"
 */
export function whyOf(error: unknown, needed: readonly string[] = []): string {
  if (error instanceof Refusal) return error.message;
  if (!isOfficeError(error)) throw error;
  switch (error.code) {
    case "ItemNotFound":
      return `there is no ${[...new Set(needed)].join(", or no ")}`;
    case "InvalidOperationInCellEditMode":
      return "a cell is being typed into: press Enter or Esc, then try again";
    case "AccessDenied":
      return "the workbook, or this part of it, is protected or open for reading only";
    case "InvalidSelection":
      return "several ranges are chosen: choose one";
    case "ResponsePayloadSizeLimitExceeded":
    case "RequestPayloadSizeLimitExceeded":
      return "the cells hold more than Excel passes on at once";
    default:
      return `Excel did not do it (${error.code})`;
  }
}

/** Cuts a place by rows, so that no part holds more cells than a call may carry. */
export function slices(place: Place, cells = CALL_CELLS): readonly Place[] {
  const height = Math.max(1, Math.floor(cells / place.columns));
  const count = Math.ceil(place.rows / height);
  return Array.from({ length: count }, (_, n) => ({
    ...place,
    row: place.row + n * height,
    rows: Math.min(height, place.rows - n * height),
  }));
}

/** Groups what must be done so that each group fits into one call. */
export function grouped<T>(
  all: readonly T[],
  cells: (one: T) => number,
  most = CALL_CELLS,
): readonly T[][] {
  const groups: T[][] = [];
  let left = 0;
  for (const one of all) {
    const size = cells(one);
    if (size > left || groups.length === 0) {
      groups.push([]);
      left = most;
    }
    groups.at(-1)!.push(one);
    left -= size;
  }
  return groups;
}

export function rangeAt(context: Excel.RequestContext, place: Place): Excel.Range {
  return context.workbook.worksheets
    .getItem(place.sheet)
    .getRangeByIndexes(place.row, place.column, place.rows, place.columns);
}

/** Parts of Excel that came after those which the manifest asks for. */
export function has(set: "1.13" | "1.17"): boolean {
  return Office.context.requirements.isSetSupported("ExcelApi", set);
}
