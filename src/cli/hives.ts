import { CellError, type Cell } from "../functions/cells.js";
import { computedColumns, type Grading } from "./columns.js";

/** A hive as it is printed, under one grading. */
export interface Line {
  readonly hive: string;
  readonly lot: string;
  readonly contract: string;
  /** Frames of bees, bees, brood in full frames and in combs. */
  readonly figures: readonly string[];
  readonly grade: string;
  readonly note: string;
}

const COLUMNS = "hive, lot, contract, frames, bees, brood full, brood combs, grade, note";

/** The hives of a yard sheet under one grading; a row without hive and without note is none. */
export function linesOf(yard: unknown[][], grading: Grading): Line[] {
  const [, ...rows] = computedColumns(yard, grading, COLUMNS);
  return rows
    .map((row) => row.map((cell, k) => show(cell, k === BEES)))
    .map(([hive, lot, contract, frames, bees, full, combs, grade, note]) => ({
      hive: cut(hive!),
      lot: cut(lot!),
      contract: cut(grading.contract ?? contract!),
      figures: [frames!, bees!, full!, combs!],
      grade: grade!,
      note: note!,
    }))
    .filter(({ hive, note }) => hive !== "" || note !== "");
}

const BEES = 4;

/** What stands for a grade that hangs on something nobody has judged, and for what cannot be read. */
const NOT_KNOWN = "not known";
const UNREADABLE = "?";

function show(cell: Cell, whole: boolean): string {
  if (cell instanceof CellError) return cell.code === "#N/A" ? NOT_KNOWN : UNREADABLE;
  if (typeof cell !== "number") return String(cell);
  return whole ? Math.round(cell).toLocaleString("en") : cell.toFixed(1).replace(/\.0$/, "");
}

const cut = (text: string): string => (text.length > 14 ? `${text.slice(0, 13)}…` : text);
