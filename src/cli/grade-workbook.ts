import type { Workbook } from "@cj-tech-master/excelts";
import { functions } from "../functions/index.js";
import { valuesIn } from "../workbook/area.js";
import { calculate } from "../workbook/calculate.js";
import { addColumns, computedHeadings } from "./columns.js";
import { writeWhole } from "./files.js";
import { findYardSheets, nearestMiss, type YardSheet } from "./find.js";
import { formulasOf } from "../workbook/formulas.js";
import {
  nameOfContract,
  gradingOf,
  gradingsOf,
  refuseUnsaidDateSystem,
  wishOf,
  type Wish,
} from "./grading.js";
import { hiveReport } from "./hive-report.js";
import { lossesBetween } from "../workbook/losses.js";
import type { Done, Order } from "./order.js";
import { settle, type Outcome, type Remark } from "../workbook/outcome.js";
import { Problem } from "../workbook/problem.js";
import { inSheetRows } from "./sheet-rows.js";
import { statements } from "./statements.js";
import { calculatedLine, wentWrong } from "./summary.js";
import { copyTerms, findTerms, nameTerms, sameTerms, type Terms } from "./terms.js";
import { packed, writtenParts } from "../workbook/save.js";
import type { OpenedWorkbook } from "../workbook/workbook.js";

/** Calculates a workbook, with computed columns beside each yard sheet where it has no formulas of ours. */
export async function gradeWorkbook(
  { workbook, parts, restore }: OpenedWorkbook,
  order: Order,
): Promise<Done> {
  const { progress, width } = order;
  const wish = wishOf(order);
  const hasFormulas = formulasOf(workbook).some((formula) => formula.ours);
  const wantsYards = !hasFormulas || !order.isQuiet || workbook.properties.date1904;
  const yards = wantsYards ? findYardSheets(workbook, computedHeadings()) : [];
  if (yards.length === 0 && !hasFormulas) throw new Problem(NOTHING + nearestMiss(workbook));
  const terms = termsFor(workbook, order);
  if (terms && order.under !== null) nameOfContract(terms, order.under);
  if (workbook.properties.date1904 && yards.length > 0) {
    refuseUnsaidDateSystem(yards, terms, wish);
  }
  if (!hasFormulas) addAllColumns(workbook, yards, terms, wish);
  progress.step("calculating");
  const settled = settle(calculate(workbook, functions, progress.tick));
  const outcome = hasFormulas ? settled : { ...settled, notCalculated: inSheet(settled, yards) };
  const calculated = terms && { ...terms, values: valuesIn(terms.area) };
  const reports = order.isQuiet
    ? []
    : [
        ...yards.flatMap((yard) => reportOn(yard, calculated, wish, { width, extra: hasFormulas })),
        ...statements(workbook, width),
        calculatedLine(outcome),
      ];
  if (order.asValues) formulasOf(workbook).forEach(({ cell }) => (cell.value = cell.result));
  restore();
  progress.step("writing");
  const copy = await writtenParts(workbook);
  const losses = lossesBetween(parts, copy);
  await writeWhole(order.output, await packed(copy));
  return {
    lines: [...reports, ...wentWrong(outcome, losses, width), `Written: ${order.output}`],
    complete: outcome.notCalculated.length === 0,
  };
}

/** All that was calculated are our columns, whose rows are counted from the headings beside them. */
function inSheet({ notCalculated }: Outcome, yards: readonly YardSheet[]): Remark[] {
  return notCalculated.map((remark) => {
    const row = Number(/\d+$/.exec(remark.address));
    const yard = yards.find(
      ({ area }) => area.sheet.name === remark.sheet && row >= area.top && row <= area.bottom,
    );
    return yard ? { ...remark, text: inSheetRows(remark.text, yard.area.top) } : remark;
  });
}

const NOTHING =
  "There is nothing to grade: no formula of Comb Tally, and no yard sheet. A yard sheet has a row " +
  "of headings, among the first 20 rows, with one for the hive (Hive) and one for its bees " +
  "(Frames of bees, or Bees for each box). Percents of a comb or side covered, a column each (F1A, " +
  "F1B), are made frames by COMB.FRAMES_OF_BEES, and bees by COMB.COVER_TO_BEES.";

function termsFor(workbook: Workbook, { contract }: Order): Terms | null {
  const own = findTerms(workbook);
  if (contract.kind !== "terms") return own;
  if (!own) return copyTerms(workbook, contract.terms);
  if (sameTerms(own, contract.terms)) return own;
  throw new Problem(
    `The workbook has terms of its own, and they are not those of ${contract.path}. ` +
      `Leave out --contract to grade by its own, or take them out of the workbook.`,
  );
}

function addAllColumns(
  workbook: Workbook,
  yards: readonly YardSheet[],
  terms: Terms | null,
  wish: Wish,
): void {
  const named = terms && wish.standard === null ? nameTerms(workbook, terms) : terms;
  for (const yard of yards) addColumns(yard, gradingOf(yard, named, wish));
}

/** Where the workbook's own formulas are what counts, a table that cannot be made is no failure. */
function reportOn(
  yard: YardSheet,
  terms: Terms | null,
  wish: Wish,
  { width, extra }: { width: number; extra: boolean },
): string[] {
  if (extra && terms === null && wish.standard === null) return [];
  try {
    return [...hiveReport(yard, gradingsOf(yard, terms, wish), width), ""];
  } catch (error) {
    if (extra && error instanceof Problem) return [error.message, ""];
    throw error;
  }
}
