import { matchHeadings, type Role } from "../core/headings.js";
import { read } from "../core/reading.js";
import { Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { PLAIN_WRITING } from "../core/writing.js";
import { isBlankOrZero } from "./cells.js";

/** What stands under a heading row, whosesoever it is; row 0 holds the headings. */
export interface Under {
  /** The last row with anything in it. */
  readonly last: number;
  readonly cell: (row: number, column: number) => unknown;
  readonly isCalculated: (row: number, column: number) => boolean;
}

const COUNTS: ReadonlySet<Role> = new Set(["bees", "seams above", "seams below"]);

/**
 * The last row of a yard sheet: of a hive with an id, or with a count that somebody wrote and did not
 * say of which hive. What is calculated under the hives without a word is a sum. Another heading row,
 * or a block of terms, is the end.
 *
 * @returns 0 where there is no row under the headings
 */
export function lastRowOf(
  headings: readonly string[],
  { last, cell, isCalculated }: Under,
): number {
  const { roles } = matchHeadings(headings);
  const hive = roles.indexOf("hive");
  const counts = roles.flatMap((role, k) => (role !== null && COUNTS.has(role) ? [k] : []));
  const name = normalise(headings[hive] ?? "");
  let end = 0;
  for (let row = 1; row <= last; row++) {
    const id = textOf(cell(row, hive)).trim();
    if (id !== "" && (normalise(id) === name || isTerm(id))) break;
    const isStray = (): boolean =>
      counts.some((k) => isCount(cell(row, k)) && !isCalculated(row, k));
    if (id !== "" || isStray()) end = row;
  }
  return end;
}

/** The heading of a block of terms. */
export function isTerm(text: string): boolean {
  return ["term", "terms"].includes(normalise(text));
}

function textOf(cell: unknown): string {
  return cell === null || cell === undefined || typeof cell === "object" ? "" : String(cell);
}

/** A figure, whichever sign its decimals have; a remark under the hives is none. */
function isCount(cell: unknown): boolean {
  if (typeof cell === "number") return !isBlankOrZero(cell);
  if (typeof cell !== "string" || cell.trim() === "") return false;
  return ([".", ","] as const).some((decimal) => {
    try {
      read(cell, "count", { ...PLAIN_WRITING, decimal });
      return true;
    } catch (error) {
      if (error instanceof Refusal) return false;
      throw error;
    }
  });
}
