import { matchHeadings } from "../../core/headings.js";
import { yardColumns, type YardColumns } from "../../core/yard-columns.js";
import { isBlankOrZero } from "../../functions/cells.js";
import { isTerm } from "../../functions/sheet-end.js";
import { labelOfSums } from "../../functions/sum-rows.js";
import { absolute, rangeName } from "../address.js";
import { regionKey, type Block, type Place, type Region, type Workbook } from "../port.js";
import {
  candidatesIn,
  headingOf,
  ROWS_SEARCHED,
  rowsOfHives,
  type Candidate,
} from "./headings-row.js";
import { contractsIn, type Terms } from "./contracts.js";
import { holdsFormula } from "../stands.js";

/** A yard sheet as it stands: one hive a row under its heading row. */
export interface Yard extends Block {
  readonly region: Region;
  readonly headings: readonly string[];
  /** Of each column whether a formula stands in it. */
  readonly isCalculated: readonly boolean[];
}

/** What the view of columns reads of a workbook. */
export interface Sheets {
  readonly regions: readonly Region[];
  readonly candidates: readonly Candidate[];
  /** Null where the workbook holds nothing that could be one, and where the chosen one is gone. */
  readonly yard: Yard | null;
  readonly terms: readonly Terms[];
  /** The decimal sign that the user types. */
  readonly sign: "." | ",";
}

/** @param chosen - the key of the region to read, null for the likeliest */
export async function readSheets(workbook: Workbook, chosen: string | null): Promise<Sheets> {
  const regions = await workbook.regions();
  const heads = await workbook.read(regions.map(({ place }) => head(place)));
  const candidates = candidatesIn(regions, heads);
  const candidate =
    chosen === null ? candidates[0] : candidates.find(({ region }) => regionKey(region) === chosen);
  const termsPlaces = regions.filter((_, i) => isTerms(heads[i]!));
  const places = [
    ...termsPlaces.map(({ place }) => place),
    ...(candidate ? [candidate.place] : []),
  ];
  const blocks = places.length === 0 ? [] : await workbook.read(places);
  return {
    regions,
    candidates,
    yard: candidate === undefined ? null : yardOf(candidate, blocks.at(-1)!),
    terms: contractsIn(termsPlaces, blocks),
    sign: await workbook.decimalSign(),
  };
}

/** How a formula on the sheet `from` names the yard sheet with its heading row. */
export function yardReference({ region, place }: Yard, from: string): string {
  // Without the row of totals that a table may have.
  if (region.kind === "table") return `${region.name}[[#Headers],[#Data]]`;
  if (region.kind === "name") return region.name;
  return place.sheet === from ? rangeName(place) : absolute(place);
}

/** How many rows hold a hive. */
export function hivesIn({ values, headings }: Pick<Yard, "values" | "headings">): number {
  const hive = matchHeadings(headings).roles.indexOf("hive");
  const isHive = (row: readonly unknown[]): boolean =>
    labelOfSums(row, hive) === null &&
    (hive < 0 ? row.some((cell) => !isBlankOrZero(cell)) : !isBlankOrZero(row[hive]));
  return values.slice(1).filter(isHive).length;
}

/** A row of the sheet as the sheet numbers it; row 0 holds the headings. */
export function rowNumber({ place }: Yard, i: number): number {
  return place.row + i + 1;
}

/** What its columns were taken for. */
export function columnsOf({ values, isCalculated }: Yard): YardColumns {
  return yardColumns(values, isCalculated);
}

function yardOf({ region, place }: Candidate, block: Block): Yard {
  // A formula refers to all rows of a name, and to all of a table but its row of totals.
  const rows = region.kind === "sheet" ? rowsOfHives(block) : place.rows - (region.totals ? 1 : 0);
  const cut = <T>(of: readonly T[]): readonly T[] => of.slice(0, rows);
  return {
    region,
    place: { ...place, rows },
    values: cut(block.values),
    entries: cut(block.entries),
    formats: cut(block.formats),
    headings: block.values[0]!.map(headingOf),
    isCalculated: block.values[0]!.map((_, k) =>
      cut(block.entries).some((_, i) => i > 0 && holdsFormula(block, i, k)),
    ),
  };
}

function head(place: Place): Place {
  return { ...place, rows: Math.min(place.rows, ROWS_SEARCHED) };
}

function isTerms({ values }: Block): boolean {
  return isTerm(headingOf(values[0]?.[0]));
}
