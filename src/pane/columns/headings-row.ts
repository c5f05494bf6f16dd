import { headsYard, matchHeadings, type Role } from "../../core/headings.js";
import { isBlank } from "../../functions/cells.js";
import { isTerm, lastRowOf } from "../../functions/sheet-end.js";
import { overlap } from "../address.js";
import type { Block, Place, Region } from "../port.js";
import { holdsFormula } from "../stands.js";

/** How far down a sheet its heading row is looked for. */
export const ROWS_SEARCHED = 20;

/** A place that may hold a yard sheet, from its heading row down to the end of its region. */
export interface Candidate {
  readonly region: Region;
  readonly place: Place;
  /** It has the headings that every function needs. */
  readonly complete: boolean;
}

/** Consecutive headings of one row. */
interface Segment {
  readonly row: number;
  readonly left: number;
  readonly headings: readonly string[];
}

/** A heading as it is matched: a text, and blank where an error or nothing stands. */
export function headingOf(cell: unknown): string {
  return isBlank(cell) || typeof cell === "object" ? "" : String(cell);
}

/** A candidate with the number of its headings that say what they hold. */
type Headed = Candidate & { readonly roles: number };

/**
 * Where yard sheets stand, the likeliest first: tables and names by their first row, sheets by the
 * first row that is headed as one. Of several over the same cells the first that is complete stands
 * for all of them.
 *
 * @param heads - the first rows of each region, in the same order
 */
export function candidatesIn(regions: readonly Region[], heads: readonly Block[]): Candidate[] {
  const found = regions.flatMap((region, i) => candidateIn(region, heads[i]!) ?? []);
  const byHeadings = (a: Headed, b: Headed): number => b.roles - a.roles;
  const complete = found.filter((candidate) => candidate.complete);
  const others = found.filter((candidate) => !candidate.complete).sort(byHeadings);
  const apart: Headed[] = [];
  for (const candidate of [...complete, ...others]) {
    if (!apart.some(({ place }) => overlap(place, candidate.place))) apart.push(candidate);
  }
  return apart.sort((a, b) => Number(b.complete) - Number(a.complete) || byHeadings(a, b));
}

function candidateIn(region: Region, head: Block): Headed | null {
  const best = bestSegment(region, head);
  if (best === null) return null;
  const roles = rolesOf(best.headings);
  const known = roles.filter((role) => role !== null).length;
  // A name may be given to any cells: only headings make a yard sheet of them.
  if (region.kind === "name" && known === 0) return null;
  const { sheet, row, column, rows } = region.place;
  const place = {
    sheet,
    row: row + best.row,
    column: column + best.left,
    rows: rows - best.row,
    columns: best.headings.length,
  };
  return { region, place, complete: headsYard(roles), roles: known };
}

/** The rows of a sheet with its headings: they end with its last hive. */
export function rowsOfHives(block: Block): number {
  const { values, entries } = block;
  const headings = values[0]!.map(headingOf);
  if (!rolesOf(headings).includes("hive")) {
    return values.map((row) => row.some((cell) => !isBlank(cell))).lastIndexOf(true) + 1;
  }
  const cell = (row: number, column: number): unknown => values[row]![column];
  const isSpilled = (row: number, column: number): boolean =>
    entries[row]![column] === "" && !isBlank(cell(row, column));
  return (
    1 +
    lastRowOf(headings, {
      last: values.length - 1,
      cell,
      isCalculated: (row, column) => isSpilled(row, column) || holdsFormula(block, row, column),
    })
  );
}

function rolesOf(headings: readonly string[]): readonly (Role | null)[] {
  return matchHeadings(headings).roles;
}

function bestSegment({ kind }: Region, head: Block): Segment | null {
  const first = head.values[0]!.map(headingOf);
  if (isTerm(first[0] ?? "")) return null;
  if (kind !== "sheet") return { row: 0, left: 0, headings: first };
  const segments = head.values.flatMap((_, row) => segmentsOf(head, row));
  const whole = segments.find(({ headings }) => headsYard(rolesOf(headings)));
  if (whole) return whole;
  // Whoever heads his columns in words of his own has still a row of several texts.
  return segments.find(({ headings }) => headings.filter((h) => h !== "").length > 1) ?? null;
}

/**
 * Cuts a row where two columns are empty, and where what a formula fills or a heading `Term` begins
 * another block: one empty column may stand within a yard sheet.
 */
function segmentsOf(block: Block, row: number): Segment[] {
  const { values, entries } = block;
  const texts = values[row]!.map(headingOf);
  const segments: { row: number; left: number; headings: string[] }[] = [];
  let open: (typeof segments)[number] | null = null;
  texts.forEach((text, left) => {
    const isSpilled = entries[row]![left] === "" && text !== "";
    const isComputed = isSpilled || holdsFormula(block, row, left);
    const isGap = text === "" && (texts[left - 1] ?? "") === "";
    if (isComputed || isGap || isTerm(text)) open = null;
    if (isComputed || text === "" || isTerm(text)) return;
    if (open === null) segments.push((open = { row, left, headings: [] }));
    while (open.headings.length < left - open.left) open.headings.push("");
    open.headings.push(text);
  });
  return segments;
}
