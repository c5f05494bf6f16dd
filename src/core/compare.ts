import { tQuantile } from "./distributions.js";
import { mean, variance } from "./mean.js";
import { Refusal } from "./refusal.js";

/** A mean difference and its interval; ends null where too few hives were opened to tell. */
export interface Difference {
  readonly middle: number;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * How far the mean of one lot's hives is ahead of another's, with the interval of Welch (1947),
 * which does not take the two spreads for equal.
 *
 * @param confidence - percent, over 0 and under 100
 * @returns the difference in the values' unit; its ends need two hives of each lot that differ
 * @throws Refusal where a lot has no hives
 * @example difference([10, 12], [8, 8], 95).middle // 3
 */
export function difference(
  one: readonly number[],
  other: readonly number[],
  confidence: number,
): Difference {
  const [a, b] = [mean(one), mean(other)];
  if (a === null || b === null) throw new Refusal("a lot without opened hives");
  const [va, vb] = [varianceOfMean(one), varianceOfMean(other)];
  if (va === null || vb === null || va + vb === 0) return { middle: a - b, low: null, high: null };
  const df = (va + vb) ** 2 / (va ** 2 / (one.length - 1) + vb ** 2 / (other.length - 1));
  const margin = tQuantile(0.5 + confidence / 200, df) * Math.sqrt(va + vb);
  return { middle: a - b, low: a - b - margin, high: a - b + margin };
}

function varianceOfMean(values: readonly number[]): number | null {
  const ofOne = variance(values);
  return ofOne === null ? null : ofOne / values.length;
}
