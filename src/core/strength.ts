import { equivalent, type FrameSize } from "./comb.js";
import { checkPairs, combine, scale, sum, type Estimate } from "./estimate.js";
import { Refusal } from "./refusal.js";
import { clusterCount } from "./seams.js";
import { sources } from "./sources.js";
import { atLeast } from "./tolerance.js";

/**
 * How a comb counts as a frame of bees. Contracts differ: a comb may count once it is two-thirds
 * covered, once both sides are three-quarters covered with lesser combs pooled, or by the sum of
 * its covered parts; or the combs stay in the box and the seams are counted from above and below.
 */
export const COMB_RULES = [
  "two-thirds",
  "three-quarters",
  "sum of parts",
  "cluster count",
] as const;
export type CombRule = (typeof COMB_RULES)[number];

/**
 * What the columns of a hive's row hold: the counts of its boxes; the percent of each comb, or of
 * each side of each comb, that bees cover; or the seams of each box from above and below.
 */
export const BEE_COLUMNS = ["boxes", "combs", "sides", "seams"] as const;
export type BeeColumns = (typeof BEE_COLUMNS)[number];

/**
 * Frames of bees of a hive from the columns of its row.
 *
 * @param columns - counts in combs or seams, or percents, 0 to 100; sides and seams two and two
 * @param rule - when a covered comb counts; a box's count was made by the rule already
 * @param sizes - the frame of each column's box or comb
 * @param frame - the frame in which the contract counts
 * @returns frames of bees of that size
 * @throws Refusal where sides or seams do not pair, or combs are to make a cluster count
 * @example
 * // 90 % and 80 % of the sides, then 60 % and 60 %: one whole comb and a pooled one of 0.6
 * framesOfBees([90, 80, 60, 60].map(exactly), "sides", "three-quarters", deeps, DEEP).middle // 1.6
 */
export function framesOfBees(
  columns: readonly Estimate[],
  are: BeeColumns,
  rule: CombRule,
  sizes: readonly FrameSize[],
  frame: FrameSize,
): Estimate {
  const step = are === "sides" || are === "seams" ? 2 : 1;
  if (step === 2) checkPairs(columns, are);
  const parts: Estimate[] = [];
  for (let k = 0; k < columns.length; k += step) {
    const first = columns[k]!;
    const second = columns[k + step - 1]!;
    const counted =
      are === "boxes"
        ? first
        : are === "seams"
          ? clusterCount(first, second)
          : frameOfComb(first, second, rule);
    parts.push(scale(counted, equivalent(sizes[k]!, frame)));
  }
  return sum(parts);
}

function frameOfComb(first: Estimate, second: Estimate, rule: CombRule): Estimate {
  const counts = (a: number, b: number): number => {
    const part = (a + b) / 200;
    if (rule === "sum of parts") return part;
    if (rule === "two-thirds") return atLeast(part * 100, sources.twoThirdsCover.value) ? 1 : 0;
    if (rule === "three-quarters") {
      return Math.min(a, b) >= sources.threeQuartersCover.value ? 1 : part;
    }
    throw new Refusal(
      "a cluster count is made of seams from above and below, not of covered combs",
    );
  };
  return combine(within(first), within(second), counts);
}

/** A percent without an upper end lies within the whole. */
function within(percent: Estimate): Estimate {
  return { ...percent, high: percent.high ?? 100 };
}
