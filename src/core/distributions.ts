import hypergeometricCdf from "@stdlib/stats-base-dists-hypergeometric-cdf";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import tCdf from "@stdlib/stats-base-dists-t-cdf";
import tQuantile from "@stdlib/stats-base-dists-t-quantile";

/**
 * The distributions that the lot's statistics rest on, from one library, so that another can take
 * its place here.
 */
export { hypergeometricCdf, normalCdf, normalQuantile, tCdf, tQuantile };
