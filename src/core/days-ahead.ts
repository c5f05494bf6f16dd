import { tQuantile } from "./distributions.js";
import { mean, variance } from "./mean.js";
import type { Began } from "./brood-start.js";

/** When a lot's hives began to rear, as serial numbers of days. */
export interface LotStart {
  /** Mean of the hives' latest possible days. */
  readonly latest: number;
  /** Mean of their earliest; null where a hive is past the clock. */
  readonly earliest: number | null;
  /** How far sampling may move either, in days; null of a single hive. */
  readonly margin: number | null;
  readonly pastClock: number;
}

/** Days that one lot began before another; an end that nothing shows is null. */
export interface Ahead {
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * When a lot began to rear, from what each hive shows.
 *
 * The width of a stage is no matter of chance: all hives of a lot may stand at the same end of it,
 * so that more hives do not narrow it. Only how the hives differ is.
 *
 * @param began - of each hive, with the day on which it was looked at
 * @param confidence - percent of the sampling's margin
 */
export function lotStart(
  began: readonly { readonly seen: number; readonly began: Began }[],
  confidence: number,
): LotStart {
  const latest = began.map(({ seen, began: { least } }) => seen - least);
  const pastClock = began.filter(({ began: { most } }) => most === null).length;
  const earliest =
    pastClock > 0 ? null : mean(began.map(({ seen, began: { most } }) => seen - most!));
  return { latest: mean(latest)!, earliest, margin: marginOf(latest, confidence), pastClock };
}

function marginOf(days: readonly number[], confidence: number): number | null {
  const ofOne = variance(days);
  if (ofOne === null) return null;
  return Math.sqrt(ofOne / days.length) * tQuantile(0.5 + confidence / 200, days.length - 1);
}

/**
 * How many days one lot began before another: the least and the most that both clocks allow, with
 * both samplings' margins as of independent errors. Where one is past the clock, only an end is left;
 * where both are, none.
 *
 * @example
 * // emerging seen on day 100 (19.1 days and more), and larvae on day 100 (3 to 9): at least 10.1 days
 */
export function daysAhead(one: LotStart, other: LotStart): Ahead {
  const margin = Math.hypot(one.margin ?? 0, other.margin ?? 0);
  return {
    low: other.earliest === null ? null : other.earliest - one.latest - margin,
    high: one.earliest === null ? null : other.latest - one.earliest + margin,
  };
}
