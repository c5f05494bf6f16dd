import { DEEP } from "./comb.js";
import { scale, sum, type Estimate } from "./estimate.js";
import { sources } from "./sources.js";

/**
 * A box's cluster count: the mean of the seams of bees seen from above and, the box tipped, from
 * below (from memory). A seam is the space between two combs, not a comb: the contract must ask
 * for this count for it to stand for frames.
 *
 * @returns seams
 */
export function clusterCount(above: Estimate, below: Estimate): Estimate {
  return scale(sum([above, below]), 1 / 2);
}

/** Comb that the bees of one seam were found to cover, in cm2, by month, and how well it holds. */
export const SEAM_COVER = {
  april: { cm2: sources.seamCoverApril.value, r: sources.seamCorrelationApril.value },
  may: { cm2: sources.seamCoverMay.value, r: sources.seamCorrelationMay.value },
  june: { cm2: sources.seamCoverJune.value, r: sources.seamCorrelationJune.value },
} as const;
export type SeamMonth = keyof typeof SEAM_COVER;

/**
 * Deep frames of bees, fully covered on both sides, that seams were found to make. One seam is far
 * less than a frame, and the count from above moves with the weather.
 *
 * @example framesOfSeams(exactly(10), "april").middle // 3.64
 */
export function framesOfSeams(seams: Estimate, month: SeamMonth): Estimate {
  return scale(seams, SEAM_COVER[month].cm2 / (2 * DEEP.comb));
}
