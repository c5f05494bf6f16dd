import { headsYard, matchHeadings, type Role } from "../../core/headings.js";
import { isBlank } from "../../functions/cells.js";
import { NAMESPACE } from "../../functions/namespace.js";
import { segmentsIn, type Segment } from "../../functions/segments.js";
import { isTerm, lastRowOf } from "../../functions/sheet-end.js";
import { COLUMNS, DEFAULT } from "../../functions/yard.js";
import { within } from "../address.js";
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

/** A row's headings that stand together. */
interface Headings extends Segment {
  readonly row: number;
}

/** A function of ours, wherever it stands in a formula. */
const CALL = new RegExp(String.raw`\b${NAMESPACE}\.`, "i");

/** What stands over computed columns, unless others were asked for. */
const COMPUTED = DEFAULT.split(", ").map((name) => COLUMNS[name]!.heading);

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
    if (apart.every(({ place }) => within(place, candidate.place) === null)) apart.push(candidate);
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
  const { values } = block;
  const headings = values[0]!.map(headingOf);
  if (!rolesOf(headings).includes("hive")) {
    return values.map((row) => row.some((cell) => !isBlank(cell))).lastIndexOf(true) + 1;
  }
  const cell = (row: number, column: number): unknown => values[row]![column];
  return (
    1 +
    lastRowOf(headings, {
      last: values.length - 1,
      cell,
      isCalculated: (row, column) =>
        isSpilled(block, row, column) || holdsFormula(block, row, column),
    })
  );
}

function rolesOf(headings: readonly string[]): readonly (Role | null)[] {
  return matchHeadings(headings).roles;
}

function bestSegment({ kind }: Region, head: Block): Headings | null {
  const first = head.values[0]!.map(headingOf);
  const isTerms = isTerm(first[0] ?? "");
  if (kind !== "sheet") return isTerms ? null : { row: 0, left: 0, headings: first };
  const segments = head.values.flatMap((_, row) => segmentsOf(head, row));
  const whole = segments.find(({ headings }) => headsYard(rolesOf(headings)));
  if (whole) return whole;
  if (isTerms) return null;
  // Whoever heads his columns in words of his own has still a row of several texts.
  const isRow = ({ headings }: Headings): boolean =>
    headings.filter((heading) => heading !== "").length > 1 && !isTerm(headings[0]!);
  return segments.find(isRow) ?? null;
}

function segmentsOf(head: Block, row: number): Headings[] {
  const texts = head.values[row]!.map(headingOf);
  const filled = filledIn(head, row);
  const cells = {
    width: texts.length,
    textAt: (column: number) => texts[column]!,
    isFilled: (column: number) => filled[column]!,
  };
  return segmentsIn(cells, COMPUTED).map((segment) => ({ ...segment, row }));
}

/**
 * Of each cell of a row whether a formula fills it, and others with it. As what is typed into a cell
 * that another one fills Office.js may give nothing, the formula or the value: it is not documented.
 */
function filledIn(block: Block, row: number): boolean[] {
  const entries = block.entries[row]!;
  let isOurs = false;
  return entries.map((entry, column) => {
    const isFormulaHere = holdsFormula(block, row, column);
    const isFilledHere = headingOf(block.values[row]![column]) !== "";
    // What stands right of a call of ours without a gap came with it.
    isOurs = isFilledHere && (isOurs || (isFormulaHere && CALL.test(String(entry))));
    if (isOurs || isSpilled(block, row, column)) return true;
    const fillsOthers =
      isSpilled(block, row, column + 1) ||
      isSpilled(block, row + 1, column) ||
      entries[column - 1] === entry ||
      entries[column + 1] === entry;
    return isFormulaHere && fillsOthers;
  });
}

/** What stands where nothing was typed. */
function isSpilled({ values, entries }: Block, row: number, column: number): boolean {
  return entries[row]?.[column] === "" && !isBlank(values[row]![column]);
}
