import { normalise } from "./text.js";

const FIRST = new Set(
  "total totals subtotal subtotals sum sums average averages avg mean".split(" "),
);
/** Behind a lot's name a spreadsheet writes so: `North Total`. No hive is called that way. */
const LAST = new Set("total totals subtotal subtotals average averages avg".split(" "));

/**
 * Whether what stands where a hive's id would says that the row adds hives up, and holds none.
 *
 * @example saysSum("Total lot N") // true, as "Avg. truck 2" and "North Total" are
 */
export function saysSum(label: string): boolean {
  if (!LIKE_SUM.test(label)) return false;
  const text = normalise(label).replace(/\bsub[- ]total/, "subtotal");
  return FIRST.has(FIRST_WORD.exec(text)?.[0] ?? "") || LAST.has(LAST_WORD.exec(text)?.[0] ?? "");
}

/** Hardly a hive's name holds these letters: the words are looked at only where one does. */
const LIKE_SUM = /tot|sum|av|mean/i;
const FIRST_WORD = /^\p{L}+(?![\p{L}\p{N}])/u;
const LAST_WORD = /(?<![\p{L}\p{N}])\p{L}+(?=[^\p{L}\p{N}]*$)/u;
