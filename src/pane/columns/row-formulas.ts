import type { Contract } from "../../core/contract.js";
import {
  asksWhetherSeen,
  countsCombsThatHold,
  frameOfHeading,
  matchHeadings,
  type Role,
} from "../../core/headings.js";
import type { SheetFunction } from "../../functions/declare.js";
import { CellError } from "../../functions/cells.js";
import { beesFunction } from "../../functions/bees.js";
import { broodFrames } from "../../functions/brood.js";
import { grade, shortOfFunction } from "../../functions/grade.js";
import { framesOfBeesFunction } from "../../functions/strength.js";
import { labelOfSums } from "../../functions/sum-rows.js";
import { columnName } from "../address.js";
import { cells, evaluate, formula, literal, type Argument } from "../formula.js";
import type { Block, Place, Step } from "../port.js";
import { freeName } from "../start/names.js";
import { nameArgument, termsArgument, type ContractChoice } from "./contracts.js";
import { columnsOf, type Yard } from "./yard.js";

/**
 * Each row formula is a call of its own to the add-in, while a spill is one call for the whole
 * sheet: past this many rows only the spill is offered.
 */
export const MOST_ROWS = 2000;

/** A computed column as one formula a row. */
export interface RowColumn {
  readonly heading: string;
  readonly fn: SheetFunction;
  /** What the formula of row i is given; rows count from 1, under the headings. */
  readonly args: (i: number) => readonly Argument[];
}

/** Why a sheet cannot have row formulas, in a word that the pane has a sentence for. */
export type Obstacle = "rows" | "seams" | "apart" | "frames" | "headings";

/** Columns of a yard sheet that hold one role, as a formula of one row takes them. */
type CellsOf = (role: Role) => (i: number) => Argument;

/** What stops row formulas in a sheet, null where they work. */
export function obstacleTo(yard: Yard, contract: Contract | null): Obstacle | null {
  const { roles } = columnsOf(yard);
  const at = (role: Role): number[] => roles.flatMap((r, k) => (r === role ? [k] : []));
  if (yard.place.rows - 1 > MOST_ROWS) return "rows";
  if (at("bees").length === 0 || contract?.combRule === "cluster count") return "seams";
  const together = (ks: readonly number[]): boolean => ks.every((k, n) => k === ks[0]! + n);
  if (!together(at("bees")) || !together(at("brood")) || at("brood cover").length > 1)
    return "apart";
  const says = (role: Role, what: (heading: string) => boolean): boolean =>
    at(role).some((k) => what(yard.headings[k]!));
  const isCovered = at("brood cover").length > 0 || contract?.broodMeasure === "combs";
  if (says("queen", asksWhetherSeen) || (!isCovered && says("brood", countsCombsThatHold)))
    return "headings";
  const box = contract?.boxFrame.name;
  const isOther = (k: number): boolean => {
    const named = frameOfHeading(yard.headings[k]!);
    return named !== null && named.name !== box;
  };
  return [...at("bees"), ...at("brood")].some(isOther) ? "frames" : null;
}

/**
 * The columns that a formula a row can give under a contract, by the names of the computed columns.
 * Their headings say that they were worked out, so that no function takes them for columns of counts.
 *
 * @param contract - the contract as it is now; null where the sheet says it row by row
 */
export function rowColumns(
  yard: Yard,
  choice: ContractChoice,
  contract: Contract | null,
): ReadonlyMap<string, RowColumn> {
  const { roles } = columnsOf(yard);
  const of: CellsOf = (role) => (i) => cellsAt(yard, roles, role, i);
  const terms = termsArgument(choice, yard.place.sheet);
  const byRow = of("contract");
  const graded = (i: number, ...more: readonly Argument[]): readonly Argument[] => [
    of("bees")(i),
    terms,
    choice.kind === "by row" ? byRow(i) : nameArgument(choice),
    of("brood")(i),
    of("brood cover")(i),
    of("queen")(i),
    of("stores")(i),
    literal(null),
    of("date")(i),
    ...more,
  ];
  const short = (heading: string, part: string): RowColumn => ({
    heading,
    fn: shortOfFunction,
    args: (i) => graded(i, literal(part === "frames" ? null : part)),
  });
  return new Map<string, RowColumn>([
    ...(contract === null ? [] : measures(of, roles, contract)),
    ["grade", { heading: "Grade", fn: grade, args: (i) => graded(i) }],
    ["short", short("Grade: frames short", "frames")],
    ["short brood", short("Grade: brood short", "brood")],
    ["next grade", short("Grade: next", "grade")],
  ]);
}

/** Strength and brood take the contract's frame as it is now, which their headings name. */
function measures(
  of: CellsOf,
  roles: readonly (Role | null)[],
  contract: Contract,
): (readonly [string, RowColumn])[] {
  const [frame, box] = [contract.frame.name, contract.boxFrame.name];
  const orDeep = (name: string): Argument => literal(name === "deep" ? null : name);
  const boxes = literal(box === frame ? null : box);
  const written = literal(writtenWords(contract));
  const none = literal(null);
  const inFrame = (what: string): string => `Strength: ${what} (${frame})`;
  const frames = (heading: string, part: string | null): RowColumn => ({
    heading: inFrame(heading),
    fn: framesOfBeesFunction,
    args: (i) => [
      of("bees")(i),
      none,
      none,
      boxes,
      orDeep(frame),
      literal(part),
      written,
      of("date")(i),
    ],
  });
  const brood = (heading: string, measure: string | null): RowColumn => ({
    heading: inFrame(heading),
    fn: broodFrames,
    args: (i) => [
      of("brood")(i),
      of("brood cover")(i),
      literal(measure),
      none,
      boxes,
      orDeep(frame),
      none,
      none,
      written,
      of("date")(i),
    ],
  });
  const bees: RowColumn = {
    heading: "Strength: bees",
    fn: beesFunction,
    args: (i) => [of("bees")(i), none, none, orDeep(box), none, written, of("date")(i)],
  };
  const hasCover = roles.includes("brood") && roles.includes("brood cover");
  return [
    ["frames", frames("frames of bees", null)],
    ["frames low", frames("frames of bees, low", "low")],
    ["frames high", frames("frames of bees, high", "high")],
    ["bees", bees],
    ...(hasCover
      ? ([
          ["brood full", brood("full frames of brood", null)],
          ["brood combs", brood("combs with brood", "combs")],
          ["brood cells", brood("cells of brood", "cells")],
        ] as const)
      : []),
  ];
}

/** What the columns hold, row by row; a row of sums gets no formulas, for it is no hive. */
export function rowResults(
  yard: Yard,
  columns: readonly RowColumn[],
): (i: number) => readonly unknown[] {
  const isSums = sumsIn(yard);
  return (i) => columns.map(({ fn, args }) => (isSums(i) ? "" : evaluate(fn, args(i))[0]![0]));
}

function sumsIn({ values, headings }: Yard): (i: number) => boolean {
  const hive = matchHeadings(headings).roles.indexOf("hive");
  return (i) => labelOfSums(values[i]!, hive) !== null;
}

/** Rows, counted from 1, in which the formulas give something else than the whole sheet's function. */
export function differingRows(
  yard: Yard,
  columns: readonly RowColumn[],
  whole: readonly (readonly unknown[])[],
): number[] {
  const plain = (cell: unknown): unknown => (cell instanceof CellError ? cell.code : cell);
  const rows = Array.from({ length: yard.place.rows - 1 }, (_, k) => k + 1);
  const results = rowResults(yard, columns);
  return rows.filter((i) => results(i).some((cell, k) => plain(cell) !== plain(whole[i]?.[k])));
}

/** The columns right beside the sheet, in the rows of its hives. */
export function insidePlace({ place }: Yard, columns: number): Place {
  return { ...place, column: place.column + place.columns, columns };
}

/** Writes the columns into free cells; a table is made wider so that they belong to it. */
export function insideSteps(yard: Yard, block: Block, columns: readonly RowColumn[]): Step[] {
  const isSums = sumsIn(yard);
  const rows = Array.from({ length: block.place.rows }, (_, i) =>
    columns.map(({ heading, fn, args }) => {
      if (i === 0) return freeName(heading, yard.headings);
      return isSums(i) ? "" : formula(fn, args(i));
    }),
  );
  const put: Step = {
    kind: "put",
    place: block.place,
    expect: rows.map((row) => row.map(() => "")),
    put: rows,
    formats: "General",
  };
  if (yard.region.kind !== "table") return [put];
  const whole = yard.region.place;
  const place = { ...whole, columns: whole.columns + columns.length };
  return [put, { kind: "cover", region: "table", name: yard.region.name, place }];
}

function cellsAt(
  { place, values }: Yard,
  roles: readonly (Role | null)[],
  role: Role,
  i: number,
): Argument {
  const from = roles.indexOf(role);
  if (from < 0) return literal(null);
  const to = roles.lastIndexOf(role);
  const [first, last] = [from, to].map(
    (k) => `$${columnName(place.column + k)}${place.row + i + 1}`,
  );
  return cells(from === to ? first! : `${first}:${last}`, [values[i]!.slice(from, to + 1)]);
}

function writtenWords({
  decimal,
  wholeFrames,
  percentsAs,
  dateSystem,
  dates,
}: Contract): string | null {
  const said = [
    decimal === "," ? "decimal comma" : "",
    wholeFrames ? "whole frames" : "",
    percentsAs === "fraction" ? "fractions" : "",
    dateSystem === 1904 ? "1904 dates" : "",
    dates === "one way" ? "" : dates,
  ].filter((word) => word !== "");
  return said.length === 0 ? null : said.join(", ");
}
