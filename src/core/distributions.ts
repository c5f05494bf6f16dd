import hypergeometricCdf from "@stdlib/stats-base-dists-hypergeometric-cdf";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import tCdf from "@stdlib/stats-base-dists-t-cdf";

/**
 * The distributions that the lot's statistics rest on, from one library, so that another can take
 * its place here.
 */
export { hypergeometricCdf, normalCdf, tCdf };

/**
 * The standard normal value below which a share lies.
 *
 * @param share - over 0 and under 1
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(share: number): number {
  return quantileOf((z) => normalCdf(z, 0, 1), share);
}

/**
 * Student's t below which a share lies.
 *
 * @param share - over 0 and under 1
 * @param df - degrees of freedom, over 0
 * @example tQuantile(0.975, 9) // 2.262157162798205
 */
export function tQuantile(share: number, df: number): number {
  return quantileOf((t) => tCdf(t, df), share);
}

/**
 * A distribution about 0 taken backwards, by halving: the library's own inverses are a third of what
 * it weighs.
 */
function quantileOf(cdf: (value: number) => number, share: number): number {
  if (share < 0.5) return -quantileOf(cdf, 1 - share);
  let [low, high] = [0, 1];
  while (cdf(high) < share) [low, high] = [high, 2 * high];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (cdf(middle) < share) low = middle;
    else high = middle;
  }
}
