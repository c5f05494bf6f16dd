import { matchHeadings } from "../core/headings.js";
import { quote } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { addressOf, reference } from "../workbook/area.js";
import { Problem } from "../workbook/problem.js";
import { cellsOf, type YardSheet } from "./find.js";
import type { StatementOrder } from "./statement-command.js";

/**
 * The yard sheet of a statement: named by its sheet or its cells, or the only one with the lot.
 *
 * @param nearestMiss - what else looks like one, to be said where there is none
 */
export function yardAsked(
  yards: readonly YardSheet[],
  { sheet, lot }: Pick<StatementOrder, "sheet" | "lot">,
  nearestMiss: string,
): YardSheet {
  const named = yards.filter((yard) => sheet === null || isNamed(yard, sheet));
  if (named.length === 0) {
    throw new Problem(
      `There is no yard sheet${sheet === null ? "" : ` on a sheet ${quote(sheet)}`}: a row of ` +
        "headings, among the first 20 rows, with one for the hive (Hive) and one for its bees " +
        `(Frames of bees, or Bees for each box).${yards.length > 0 ? ` There are ${places(yards)}.` : nearestMiss}`,
    );
  }
  const withLot = named.length > 1 && lot !== null ? named.filter((y) => holdsLot(y, lot)) : named;
  const [yard, ...others] = withLot.length === 0 ? named : withLot;
  if (others.length === 0) return yard!;
  const held = lot !== null && withLot.length > 1 ? ` that hold the lot ${quote(lot)}` : "";
  throw new Problem(
    `There are several yard sheets${held}, ${places([yard!, ...others])}: ${howToSay([yard!, ...others])}.`,
  );
}

function howToSay(yards: readonly YardSheet[]): string {
  const sheets = new Set(yards.map(({ area }) => area.sheet));
  if (sheets.size === yards.length) return "say on which sheet with --sheet";
  return `say which by its cells with --sheet, such as --sheet ${addressOf(yards[0]!.area)}`;
}

function isNamed(yard: YardSheet, wanted: string): boolean {
  const bare = (text: string): string => normalise(text).replace(/[$']/g, "");
  const names = [yard.area.sheet.name, placeOf(yard), addressOf(yard.area)];
  return names.some((name) => bare(name) === bare(wanted));
}

function holdsLot(yard: YardSheet, lot: string): boolean {
  const [headings = [], ...rows] = cellsOf(yard);
  const column = matchHeadings(headings.map(String)).roles.indexOf("lot");
  return rows.some((row) => normalise(String(row[column] ?? "")) === normalise(lot));
}

const placeOf = ({ area }: YardSheet): string => reference(area).replaceAll("$", "");

const places = (yards: readonly YardSheet[]): string => yards.map(placeOf).join(", ");
