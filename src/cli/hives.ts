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
    .map((row) => row.map((cell, k) => show(cell, k)))
    .map(([hive, lot, contract, frames, bees, full, combs, grade, note]) => ({
      hive: hive!,
      lot: lot!,
      contract: grading.contract ?? contract!,
      figures: [frames!, bees!, full!, combs!],
      grade: grade!,
      note: note!,
    }))
    .filter(({ hive, note }) => hive !== "" || note !== "");
}

const WHOLE = new Intl.NumberFormat("en", { maximumFractionDigits: 0 });
const BEES = 4;
const GRADE = 7;

/** A grade that hangs on what nobody has judged is not known; a row that cannot be read has none. */
function show(cell: Cell, column: number): string {
  if (cell instanceof CellError) {
    if (column !== GRADE) return "?";
    return cell.code === "#N/A" ? "not known" : "unreadable";
  }
  if (typeof cell !== "number") return String(cell);
  return column === BEES ? WHOLE.format(Math.round(cell)) : cell.toFixed(1).replace(/\.0$/, "");
}
