import { plural } from "../core/plural.js";
import type { Outcome, Remark } from "../workbook/outcome.js";
import { paragraph } from "./text-table.js";

/** How many cells are listed before the rest is only counted. */
const LISTED = 12;

export function calculatedLine({ ours, native }: Outcome): string {
  return `Calculated: ${plural(ours, "formula")} with functions of Comb Tally, ${native} of Excel's own.`;
}

/** What was not calculated, what came out otherwise, and what did not come along into the copy. */
export function wentWrong(
  { notCalculated, changed }: Outcome,
  losses: readonly string[],
  width: number,
): string[] {
  return [
    ...list("Not calculated, or with an error:", notCalculated, width),
    ...list("Formulas of Excel that came out otherwise than the file held:", changed, width),
    ...(losses.length === 0 ? [] : ["Not carried over into the copy:"]),
    ...losses.flatMap((loss) => paragraph(loss, width, "  ")),
  ];
}

function list(title: string, remarks: readonly Remark[], width: number): string[] {
  if (remarks.length === 0) return [];
  const rest = remarks.length - LISTED;
  return [
    title,
    ...remarks
      .slice(0, LISTED)
      .flatMap((r) => paragraph(`${r.sheet}!${r.address}: ${r.text}`, width, "  ")),
    ...(rest > 0 ? [`  and ${rest} more`] : []),
  ];
}
