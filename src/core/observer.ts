import type { Contract } from "./contract.js";
import { mean } from "./mean.js";
import { ratioOf, standardError } from "./ratio.js";
import { Refusal } from "./refusal.js";

/**
 * Frames by which one observer's average is usually off: two people's errors are independent, so
 * that one of them makes a half of the square of their gap.
 */
export function observerFrames({ observerError }: Contract, average: number): number {
  return (average * observerError) / 100 / Math.SQRT2;
}

/** How two people who judged the same hives differ. */
export interface ObserverError {
  readonly hives: number;
  /** Each one's average. */
  readonly first: number;
  readonly second: number;
  /** The second's average over the first's, in percent of the mean of both; under 0 where it is less. */
  readonly difference: number;
  /** Standard error of that difference, from how it varies from hive to hive. */
  readonly se: number;
  /** What to write in the terms: percent, never under 0. */
  readonly error: number;
}

/**
 * The percent by which two people's averages of one lot differ, worked out from hives that both
 * judged, each without the other's figures.
 *
 * What the terms want is how far apart their averages would lie over many hives, since what they
 * judge unlike hive by hive evens out and is part of the spread already. The hives at hand show it
 * give or take a standard error, so that the root of both squares is given: two people who agree
 * over five hives by luck do not pass as being of one mind.
 *
 * @param first - frames of bees of each hive by one person
 * @param second - of the same hives, in the same order, by the other
 * @throws Refusal for fewer than two hives, and where both saw no bees at all
 * @example
 * // 8, 6, 10 and 9, 7, 11: averages 8 and 9, apart by 1 of 8.5, 11.8 %
 */
export function observerError(first: readonly number[], second: readonly number[]): ObserverError {
  const hives = first.length;
  if (hives < 2) {
    throw new Refusal(`hives that both judged: ${hives}, and two are needed, better twenty`);
  }
  const gap = ratioOf(
    first.map((frames, i) => ({ total: second[i]! - frames, count: (frames + second[i]!) / 2 })),
    0,
  );
  if (gap === null) throw new Refusal("both saw no bees in any hive");
  const se = standardError(gap);
  if (se === null) throw new Refusal("bees in one hive alone, and two are needed, better twenty");
  return {
    hives,
    first: mean(first)!,
    second: mean(second)!,
    difference: 100 * gap.ratio,
    se: 100 * se,
    error: 100 * Math.hypot(gap.ratio, se),
  };
}
