import { lookOf, namesBox, placeOf } from "./boxes.js";
import { isDateSerial } from "./date-count.js";
import { BY_BOX, matchHeadings, type BesideOthers, type Doubt, type Role } from "./headings.js";
import { read } from "./reading.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { TOLERANCE } from "./tolerance.js";
import { PLAIN_WRITING } from "./writing.js";
import { yesOrNo } from "./yes-no.js";

/** The columns of a yard sheet. */
export interface YardColumns {
  readonly headings: readonly string[];
  /** The role of each column, null for one that is not counted. */
  readonly roles: readonly (Role | null)[];
  readonly doubts: readonly Doubt[];
  /** Columns that count again what the other columns of their role count, and how that is known. */
  readonly again: readonly Again[];
  /** Columns headed as a date, such as `Opened`, that say yes or no of each hive and hold no role. */
  readonly opened: readonly number[];
}

export interface Again {
  readonly column: number;
  readonly role: Role;
  readonly known: "their sum" | "calculated";
}

type Cells = readonly (readonly unknown[])[];

const ROWS_OF_A_TOTAL = sources.rowsOfATotal.value;
const ROWS_OF_A_DOUBT = sources.rowsOfADoubt.value;

/**
 * Finds the columns of a yard sheet by its headings and, of columns that would be added up, by what
 * stands under them: a box is added to boxes, and neither a total nor a second look is a box.
 *
 * @param sheet - the cells with the heading row first
 * @param isCalculated - of each column whether a formula fills it; left out where nobody knows
 */
export function yardColumns(sheet: Cells, isCalculated: readonly boolean[] = []): YardColumns {
  const headings = (sheet[0] ?? []).map(headingOf);
  const opened = headings.flatMap((heading, k) =>
    matchHeadings([heading]).roles[0] === "date" && saysYesOrNo(sheet, k) ? [k] : [],
  );
  const match = matchHeadings(headings.map((heading, k) => (opened.includes(k) ? "" : heading)));
  const roles = [...match.roles];
  const doubts = [...match.doubts];
  const again: Again[] = [];
  for (const role of BY_BOX) {
    const columns = roles.flatMap((r, k) => (r === role ? [k] : []));
    if (columns.length < 2) continue;
    const names = (ks: readonly number[]): string[] => ks.map((k) => headings[k]!);
    const boxes = columns.filter((k) => namesBox(headings[k]!, names(columns)));
    const isWritten = columns.some((k) => !isCalculated[k]);
    const left = columns.filter((k) => {
      if (boxes.includes(k)) return true;
      const isTotal = boxes.length > 1 && isSum(compared(sheet, k, boxes), ROWS_OF_A_TOTAL);
      const known = isTotal ? "their sum" : isCalculated[k] && isWritten ? "calculated" : null;
      if (known !== null) again.push({ column: k, role, known });
      return known === null;
    });
    for (const k of columns) if (!left.includes(k)) roles[k] = null;
    if (left.length < 2) continue;
    for (const k of left) {
      const others = left.filter((other) => other !== k);
      const amiss = besideOthers(sheet, headings, k, others, boxes);
      if (amiss === null) continue;
      doubts.push({ role, heading: headings[k]!, beside: { ...amiss, headings: names(others) } });
      roles[k] = null;
    }
  }
  return { headings, roles, doubts, again, opened };
}

/** Whether all that stands under a heading is yes or no. */
function saysYesOrNo(sheet: Cells, k: number): boolean {
  let isSaid = false;
  for (let i = 1; i < sheet.length; i++) {
    const cell = sheet[i]![k];
    // Some hosts hand a blank on as 0.
    if (isBlank(cell) || cell === 0) continue;
    if (yesOrNo(cell) === null) return false;
    isSaid = true;
  }
  return isSaid;
}

function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** A heading as it is matched: a text, and blank where an error or nothing stands. */
function headingOf(cell: unknown): string {
  return typeof cell === "object" ? "" : String(cell ?? "");
}

function besideOthers(
  sheet: Cells,
  headings: readonly string[],
  k: number,
  others: readonly number[],
  boxes: readonly number[],
): Pick<BesideOthers, "why" | "row"> | null {
  const heading = headings[k]!;
  if (!boxes.includes(k)) {
    const { rows, differs } = compared(sheet, k, boxes);
    const isNearly = boxes.length > 1 && rows >= ROWS_OF_A_TOTAL;
    return { why: "names no box", row: isNearly ? differs : null };
  }
  const place = placeOf(heading);
  const isSecondLook = others.some((other) => {
    const isSameBox = place !== "" && place === placeOf(headings[other]!);
    return isSameBox || lookOf(heading) !== lookOf(headings[other]!);
  });
  if (isSecondLook) return { why: "another look", row: null };
  const isTotal = others.length > 1 && isSum(compared(sheet, k, others), ROWS_OF_A_DOUBT);
  return isTotal ? { why: "their sum", row: null } : null;
}

interface Compared {
  /** Rows that hold the sum of the others before the first that does not. */
  readonly rows: number;
  /** The first row that holds another figure, as the sheet numbers it from its headings. */
  readonly differs: number | null;
}

function isSum({ rows, differs }: Compared, least: number): boolean {
  return differs === null && rows >= least;
}

/** A cell that is none, blank or cannot be read says nothing of whether its column is a sum. */
function compared(sheet: Cells, k: number, others: readonly number[]): Compared {
  const known = new Map<unknown, Count>();
  const countOf = (cell: unknown): Count => {
    if (!known.has(cell)) known.set(cell, countIn(cell));
    return known.get(cell)!;
  };
  let rows = 0;
  for (let i = 1; i < sheet.length; i++) {
    const total = countOf(sheet[i]![k]);
    if (total === null || total === "blank" || total === 0) continue;
    const counts = others.map((other) => countOf(sheet[i]![other]));
    if (counts.includes(null)) continue;
    const sum = counts.reduce<number>((all, count) => all + (count === "blank" ? 0 : count!), 0);
    if (Math.abs(total - sum) > TOLERANCE) return { rows, differs: i + 1 };
    rows++;
  }
  return { rows, differs: null };
}

type Count = number | "blank" | null;

/** The middle of a count, null where it cannot be read: how it is written is not known here. */
function countIn(cell: unknown): Count {
  if (isBlank(cell)) return "blank";
  if (typeof cell === "number" && !isDateSerial(cell)) return cell;
  if (typeof cell !== "number" && typeof cell !== "string") return null;
  for (const decimal of [".", ","] as const) {
    try {
      return read(cell, "count", { ...PLAIN_WRITING, decimal }).middle;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  }
  return null;
}
