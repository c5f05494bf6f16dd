import type { Workbook } from "@cj-tech-master/excelts";
import { functions } from "../functions/index.js";
import { valuesIn } from "./area.js";
import { calculate } from "./calculate.js";
import { addColumns, computedHeadings } from "./columns.js";
import { writeWhole } from "./files.js";
import { findYardSheets, type YardSheet } from "./find.js";
import { formulasOf } from "./formulas.js";
import { contractNamed, gradingOf, gradingsOf, refuseUnsaidDateSystem, wishOf } from "./grading.js";
import { hiveReport } from "./hive-report.js";
import { lossesBetween } from "./losses.js";
import type { Done, Order } from "./order.js";
import { settle } from "./outcome.js";
import { Problem } from "./problem.js";
import { summary } from "./summary.js";
import { copyTerms, findTerms, nameTerms, sameTerms, type Terms } from "./terms.js";
import { partsOf, saveWorkbook, type OpenedWorkbook } from "./workbook.js";

/** Calculates a workbook, with computed columns beside each yard sheet where it has no formulas of ours. */
export async function gradeWorkbook(
  { workbook, parts, restore }: OpenedWorkbook,
  order: Order,
): Promise<Done> {
  const { progress, width } = order;
  const yards = findYardSheets(workbook, computedHeadings());
  const hasFormulas = formulasOf(workbook).some((formula) => formula.ours);
  if (yards.length === 0 && !hasFormulas) throw new Problem(NOTHING);
  const terms = termsFor(workbook, order);
  if (terms && order.under !== null) contractNamed(terms, order.under);
  if (workbook.properties.date1904 && yards.length > 0) {
    refuseUnsaidDateSystem(yards, terms, wishOf(order));
  }
  if (!hasFormulas) addAllColumns(yards, terms, order);
  progress.step("calculating");
  const outcome = settle(calculate(workbook, functions, progress.tick));
  const calculated = terms && { ...terms, values: valuesIn(terms.area) };
  const reports = yards.flatMap((yard) => reportOn(yard, calculated, order, hasFormulas));
  if (order.asValues) formulasOf(workbook).forEach(({ cell }) => (cell.value = cell.result));
  restore();
  progress.step("writing");
  const bytes = await saveWorkbook(workbook);
  const losses = lossesBetween(parts, await partsOf(bytes));
  await writeWhole(order.output, bytes);
  return {
    lines: [...reports, ...summary(outcome, losses, width), `Written: ${order.output}`],
    complete: outcome.notCalculated.length === 0,
  };
}

const NOTHING =
  "There is nothing to grade: no formula of Comb Tally, and no yard sheet. A yard sheet has a row " +
  "of headings, among the first 20 rows, with one for the hive (Hive) and one for its bees " +
  "(Frames of bees, or Bees for each box).";

function termsFor(workbook: Workbook, { contract }: Order): Terms | null {
  const own = findTerms(workbook);
  if (contract.kind !== "terms") return own && nameTerms(workbook, own);
  if (!own) return copyTerms(workbook, contract.terms);
  if (sameTerms(own, contract.terms)) return nameTerms(workbook, own);
  throw new Problem(
    `The workbook has terms of its own, and they are not those of ${contract.path}. ` +
      `Leave out --contract to grade by its own, or take them out of the workbook.`,
  );
}

function addAllColumns(yards: readonly YardSheet[], terms: Terms | null, order: Order): void {
  const wish = wishOf(order);
  const graded = yards.map((yard) => [yard, gradingOf(yard, terms, wish)] as const);
  for (const [yard, grading] of graded) addColumns(yard, grading);
}

/** Where the workbook's own formulas are what counts, a table that cannot be made is no failure. */
function reportOn(yard: YardSheet, terms: Terms | null, order: Order, extra: boolean): string[] {
  const wish = wishOf(order);
  if (extra && terms === null && wish.standard === null) return [];
  try {
    return [...hiveReport(yard, gradingsOf(yard, terms, wish), order.width), ""];
  } catch (error) {
    if (extra && error instanceof Problem) return [error.message, ""];
    throw error;
  }
}
