import hypergeometricCdf from "@stdlib/stats-base-dists-hypergeometric-cdf";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import tCdf from "@stdlib/stats-base-dists-t-cdf";

/**
 * The distributions that the lot's statistics rest on, from one library, so that another can take
 * its place here.
 */
export { hypergeometricCdf, normalCdf, normalQuantile, tCdf };

/**
 * Student's t below which a share lies: the library's distribution taken backwards by halving, since
 * the library's own inverse is a quarter of what the add-in may weigh.
 *
 * @param share - over 0 and under 1
 * @param df - degrees of freedom, over 0
 * @example tQuantile(0.975, 9) // 2.262157162798205
 */
export function tQuantile(share: number, df: number): number {
  if (share < 0.5) return -tQuantile(1 - share, df);
  let [low, high] = [0, 1];
  while (tCdf(high, df) < share) [low, high] = [high, 2 * high];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (tCdf(middle, df) < share) low = middle;
    else high = middle;
  }
}
