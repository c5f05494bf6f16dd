import { sum } from "../core/estimate.js";
import { observerError } from "../core/observer.js";
import { quickLook, type QuickHive } from "../core/quick-look.js";
import { Refusal } from "../core/refusal.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { answer, type SheetFunction } from "./declare.js";
import { checkRows, checkSameRows, type HiveCells } from "./hive-cells.js";
import { confidence, hives } from "./parameters.js";
import { writtenParameters, yearOfRow } from "./written.js";

/** A row of a statement: what it is, its figure, and what is to be known of it. */
type Row = [label: string, figure: Cell, remark: string];

const quickParameters = [
  hives("quick"),
  hives("full"),
  confidence("confidence"),
  ...writtenParameters,
] as const;

/**
 * The lot's average from a quick look at every hive and a full count of some of them, with its interval.
 *
 * @remarks The ratio estimate (Cochran, Sampling Techniques, chapter 6, from memory): the quick
 * looks' average, times full frames to one quick frame where both were taken. The hives to count in
 * full are drawn at random beforehand, not picked by the look. A blank or a 0 is not looked at, or
 * not counted: write none or dead.
 * @example =COMB.QUICK_LOOK(B2:B97,C2:C97) with 96 quick looks and 20 full counts beside them.
 * @customfunction QUICK_LOOK
 * @helpurl https://localhost:3000/help.html#QUICK_LOOK
 * @param quick A row a hive of the whole lot: frames of bees by the quick look.
 * @param full The same rows: frames of bees by the full count, blank where not counted.
 * @param confidence Confidence of the interval in percent: 95 where left out.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Three columns: label, figure, remark.
 */
export function QUICK_LOOK(
  quick: unknown[][],
  full: unknown[][],
  confidence?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [quick, full, confidence, written, inspected];
  return answer(quickParameters, values, (quick, full, confidence, writing, inspected) => {
    const pairs = pairsOf(quick, full, writing, inspected);
    const looks = pairs.flatMap(({ row, first, second }): QuickHive[] => {
      if (first !== null) return [{ quick: first, full: second }];
      if (second === null) return [];
      throw new Refusal(
        `row ${row} is counted in full and has no quick look: write none where it saw no bees`,
      );
    });
    if (looks.length === 0) throw new Refusal("quick: no hive is looked at");
    const lot = quickLook(looks, confidence);
    return [
      ["Hives looked at", lot.looked, "the whole lot"],
      [
        "Counted in full",
        lot.counted,
        `${Math.round((100 * lot.counted) / lot.looked)} % of the lot`,
      ],
      ["Quick look's average", lot.quickAverage, ""],
      ["Full frames to one quick", lot.ratio, "in the hives counted in full"],
      ["Average of the lot", lot.average, "the one times the other"],
      ["Average, low", lot.low ?? "", `${confidence} % interval`],
      ["Average, high", lot.high ?? "", ""],
      ["Note", "", lot.warning],
    ] satisfies Row[];
  });
}

const observerParameters = [hives("first"), hives("second"), ...writtenParameters] as const;

/**
 * How far two people differ who judged the same hives: the observers' error that the terms ask for.
 *
 * @remarks The gap between their averages in percent of the mean of both, and its standard error,
 * squared, added and rooted, so that few hives do not pass for agreement. What they judge unlike
 * hive by hive evens out over a lot and is in its spread already. One pair of people is one pair:
 * take the largest of several.
 * @example =COMB.OBSERVER_ERROR(B2:B21,C2:C21) for 20 hives that both judged, without the other's figures.
 * @customfunction OBSERVER_ERROR
 * @helpurl https://localhost:3000/help.html#OBSERVER_ERROR
 * @param first A row a hive: frames of bees by the first person.
 * @param second The same hives by the second; rows that one of them left blank are passed over.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Three columns: label, figure, remark.
 */
export function OBSERVER_ERROR(
  first: unknown[][],
  second: unknown[][],
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  return answer(
    observerParameters,
    [first, second, written, inspected],
    (first, second, writing, inspected) => {
      const both = pairsOf(first, second, writing, inspected).filter(
        (pair) => pair.first !== null && pair.second !== null,
      );
      const found = observerError(
        both.map((pair) => pair.first!),
        both.map((pair) => pair.second!),
      );
      return [
        ["Observer error, %", found.error, 'the term "observer error"'],
        ["Hives judged by both", found.hives, ""],
        ["First's average", found.first, ""],
        ["Second's average", found.second, ""],
        ["Second over first, %", found.difference, "of the mean of both"],
        ["Standard error of that, %", found.se, "less with more hives judged by both"],
      ] satisfies Row[];
    },
  );
}

interface Pair {
  readonly row: number;
  readonly first: number | null;
  readonly second: number | null;
}

/** Two counts of each row, null for a blank: the boxes of a hive are added. */
function pairsOf(
  first: HiveCells,
  second: HiveCells,
  writing: Writing,
  inspected: HiveCells | null,
): Pair[] {
  checkRows([first, inspected]);
  checkSameRows(first, second);
  const yearOf = yearOfRow(inspected, writing);
  const at = (column: HiveCells, i: number): number | null =>
    column.isUncounted(i) ? null : sum(column.estimates(i, "count", writing, yearOf(i))).middle;
  return Array.from({ length: first.rows }, (_, i) => ({
    row: i + 1,
    first: at(first, i),
    second: at(second, i),
  }));
}

export const quickLookFunction: SheetFunction = {
  id: "QUICK_LOOK",
  parameters: quickParameters,
  evaluate: QUICK_LOOK,
  table: true,
};
export const observerErrorFunction: SheetFunction = {
  id: "OBSERVER_ERROR",
  parameters: observerParameters,
  evaluate: OBSERVER_ERROR,
  table: true,
};
