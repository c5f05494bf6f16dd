import { mean } from "./mean.js";
import { halfWidth, ratioOf, tailOf } from "./ratio.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";

/** A hive that was looked at quickly, and counted in full or not. */
export interface QuickHive {
  readonly quick: number;
  readonly full: number | null;
}

/** The lot's average by a quick look at every hive and a full count of some. */
export interface QuickLook {
  readonly looked: number;
  readonly counted: number;
  /** Frames of a full count to one of the quick look. */
  readonly ratio: number;
  /** Average of the quick looks as they were taken. */
  readonly quickAverage: number;
  readonly average: number;
  /** Null where one hive alone was counted in full. */
  readonly low: number | null;
  readonly high: number | null;
  /** Why the interval may miss more often than it says; else empty. */
  readonly warning: string;
}

/**
 * The ratio estimate of a lot's average: the quick look's average, times full frames to a quick one
 * in the hives that were counted in full (Cochran, Sampling Techniques, chapter 6, from memory). It
 * gains on the full counts alone where the quick look is nearly in proportion to them.
 *
 * @param hives - every hive of the lot; those counted in full are taken as drawn at random
 * @param confidence - percent
 * @throws Refusal where nothing was counted in full, or quick looks of 0 hold full counts alone
 * @example
 * // 8, 6 and 10 at a quick look; the first two counted in full as 7 and 5: ratio 12/14, average 6.86
 */
export function quickLook(hives: readonly QuickHive[], confidence: number): QuickLook {
  const tail = tailOf(confidence);
  const counted = hives.filter((hive) => hive.full !== null);
  if (counted.length === 0) throw new Refusal("no hive is counted in full");
  const units = counted.map(({ quick, full }) => ({ total: full!, count: quick }));
  const ratio = ratioOf(units, counted.length / hives.length);
  if (ratio === null) {
    throw new Refusal("the quick look saw no bees in the hives that were counted in full");
  }
  const quickAverage = mean(hives.map(({ quick }) => quick))!;
  const average = ratio.ratio * quickAverage;
  const arm = halfWidth(ratio, tail, 0);
  const reach = arm === null ? null : arm * quickAverage;
  return {
    looked: hives.length,
    counted: counted.length,
    ratio: ratio.ratio,
    quickAverage,
    average,
    low: reach === null ? null : Math.max(0, average - reach),
    high: reach === null ? null : average + reach,
    warning: warningOf(counted.length, hives.length, ratio.spread),
  };
}

function warningOf(counted: number, looked: number, spread: number | null): string {
  if (counted === looked) return "";
  if (spread === null) return "one full count shows no spread: count more hives in full";
  const enough = sources.sureFrom.value;
  const parts: string[] = [];
  if (counted < enough) {
    parts.push(
      `only ${counted} full counts: under ${enough} the interval may miss more often than it says`,
    );
  }
  if (spread === 0) parts.push("all are exactly in proportion: they show no spread");
  return parts.join("; ");
}
