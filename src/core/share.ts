import { hypergeometricCdf } from "./distributions.js";
import { first } from "./first.js";
import type { Lot } from "./lot.js";
import { tailOf } from "./ratio.js";

/** A share of the whole lot with its exact limits, each 0 to 1. */
export interface LotShare {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The share of the whole lot's hives under the minimum, with exact limits for a finite lot: every
 * number of such hives that the sample does not speak against (the cdf of the hypergeometric
 * distribution inverted; Buonaccorsi 1987, and Cochran, Sampling Techniques, 3.6: from memory).
 *
 * @param confidence - percent; at the least, since the numbers of hives are whole
 * @example
 * // none of 20 opened in a lot of 400: at most 65 hives, 16.25 %
 */
export function shareUnder({ hives, size }: Lot, confidence: number): LotShare {
  const under = hives.filter((hive) => !hive.accepted).length;
  return shareLimits(under, hives.length, size, confidence);
}

/** The same from bare numbers: `found` of `opened` hives in a lot of `size`. */
export function shareLimits(
  found: number,
  opened: number,
  size: number,
  confidence: number,
): LotShare {
  const tail = tailOf(confidence);
  const atMost = (marked: number): boolean => atMostFound(found, size, marked, opened) > tail;
  const atLeast = (marked: number): boolean =>
    found === 0 || 1 - atMostFound(found - 1, size, marked, opened) > tail;
  const fewest = first(found, size - opened + found, atLeast);
  const most = first(found, size - opened + found, (marked) => !atMost(marked + 1));
  return { share: found / opened, low: fewest / size, high: most / size };
}

/**
 * The chance of at most `found` marked hives. Summed from the side that is the smaller, where the
 * library's sum does not begin with a term too small for the machine.
 */
function atMostFound(found: number, size: number, marked: number, opened: number): number {
  if (found >= Math.min(opened, marked)) return 1;
  if (found * size <= opened * marked) return hypergeometricCdf(found, size, marked, opened);
  return 1 - hypergeometricCdf(opened - found - 1, size, size - marked, opened);
}
