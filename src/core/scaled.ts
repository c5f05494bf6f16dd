import type { Exact } from "./exact.js";

/**
 * The hives of each class in the whole lot, from the share that each has among those opened.
 *
 * Whole hives go to the largest remainders, so that they add up to the lot; of equal remainders to
 * the class that stands first.
 *
 * @param opened - hives opened of each class, at least one in all
 * @param size - hives in the lot
 * @example
 * // 7 and 44 of 51 opened, a lot of 340: exactly 46.67 and 293.33, in whole hives 47 and 293
 */
export function scaled(
  opened: readonly number[],
  size: number,
  rounding: "exact" | "whole",
): Exact[] {
  const bottom = BigInt(opened.reduce((sum, hives) => sum + hives, 0));
  const shares = opened.map((hives): Exact => ({ top: BigInt(hives) * BigInt(size), bottom }));
  if (rounding === "exact") return shares;
  const whole = shares.map(({ top }) => top / bottom);
  const left = Number(whole.reduce((sum, hives) => sum - hives, BigInt(size)));
  const byRemainder = shares
    .map(({ top }, i) => ({ i, remainder: top % bottom }))
    .sort((a, b) => Number(b.remainder - a.remainder));
  for (const { i } of byRemainder.slice(0, left)) whole[i]!++;
  return whole.map((top) => ({ top, bottom: 1n }));
}
