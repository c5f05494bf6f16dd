import { Refusal } from "../core/refusal.js";

export type ErrorCode =
  | "#NULL!"
  | "#DIV/0!"
  | "#VALUE!"
  | "#REF!"
  | "#NAME?"
  | "#NUM!"
  | "#N/A"
  | "#BUSY!"
  | "#SPILL!"
  | "#CALC!";

/** An error in a cell, as every host of the functions shows it; `message` may be empty. */
export class CellError extends Error {
  constructor(
    readonly code: ErrorCode,
    message = "",
  ) {
    super(message);
    this.name = "CellError";
  }
}

/** What a function puts into a cell. A cell left empty is the text `""`: null would show as 0. */
export type Cell = number | string | boolean | CellError;

/** Excel hands a blank cell over as "", null or, on the desktop, as 0: the 0 is judged by the caller. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** Blank, or the number 0 that a blank cell may have become on its way. */
export function isBlankOrZero(cell: unknown): boolean {
  return cell === 0 || isBlank(cell);
}

/** A mistake is `#VALUE!`, what nobody has judged yet is `#N/A`; both carry their sentence. */
export function toCellError(error: unknown, where: string): CellError {
  if (error instanceof CellError) return error;
  if (!(error instanceof Refusal)) throw error;
  const message = where === "" ? error.message : `${where}: ${error.message}`;
  return new CellError(error.kind === "unknown" ? "#N/A" : "#VALUE!", message);
}
