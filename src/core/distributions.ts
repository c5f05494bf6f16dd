/**
 * The distributions that the lot's statistics rest on. Each is a sum of positive terms, so that no
 * digits cancel; 40 digits by another program hold them to 13 and more (tests/published).
 */

/** Terms under this part of their sum change no digit of it. */
const NOTHING = 1e-17;

/** From here on the tail is summed by itself: what the middle leaves of it has few digits. */
const FAR = 2;

/**
 * The part of the normal distribution that lies below z, of mean 0 and deviation 1.
 *
 * The middle by its series (DLMF 7.6.2), the tail by Laplace's continued fraction (DLMF 7.9.2).
 *
 * @example normalCdf(1.96) // 0.9750021048517795
 */
export function normalCdf(z: number): number {
  if (z > 0) return 1 - normalCdf(-z);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (z > -FAR) return 0.5 + z * density * sumOf((n) => (z * z) / (2 * n + 1));
  let fraction = -z;
  for (let n = 100; n > 0; n--) fraction = -z + n / fraction;
  return density / fraction;
}

/**
 * The z below which a share of the normal distribution lies.
 *
 * @param share - over 0 and under 1
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(share: number): number {
  return quantileOf(normalCdf, share);
}

/**
 * The part of Student's t distribution that lies below t.
 *
 * The incomplete beta function by its series from either end (DLMF 8.17.8).
 *
 * @param df - degrees of freedom, over 0
 * @example tCdf(2.262157162798205, 9) // 0.975
 */
export function tCdf(t: number, df: number): number {
  if (t > 0) return 1 - tCdf(-t, df);
  const y = (t * t) / (df + t * t);
  const x = df / (df + t * t);
  const lead =
    (Math.sqrt(y / Math.PI) * gammaRatio(df / 2)) / Math.exp((df / 2) * Math.log1p((t * t) / df));
  // So far out that the machine has no such numbers.
  if (lead < 1e-300) return t === 0 ? 0.5 : 0;
  const half = (df + 1) / 2;
  return t > -FAR
    ? 0.5 - lead * sumOf((n) => ((half + n - 1) / (0.5 + n)) * y)
    : (lead / df) * sumOf((n) => ((half + n - 1) / (df / 2 + n)) * x);
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
 * The chance that at most `found` are marked among those drawn.
 *
 * Every number of them is weighed against the likeliest by the ratio of neighbours, which needs no
 * factorials.
 *
 * @param size - how many there are in all, of which `marked` are marked and `drawn` drawn
 * @example hypergeometricCdf(0, 4, 2, 2) // 1/6
 */
export function hypergeometricCdf(
  found: number,
  size: number,
  marked: number,
  drawn: number,
): number {
  const least = Math.max(0, drawn + marked - size);
  const most = Math.min(drawn, marked);
  const ratio = (n: number) =>
    ((marked - n) * (drawn - n)) / ((n + 1) * (size - marked - drawn + n + 1));
  const likeliest = Math.floor(((drawn + 1) * (marked + 1)) / (size + 2));
  const weights = new Map([[likeliest, 1]]);
  for (let n = likeliest; n < most; n++) weights.set(n + 1, weights.get(n)! * ratio(n));
  for (let n = likeliest; n > least; n--) weights.set(n - 1, weights.get(n)! / ratio(n - 1));
  let [below, all] = [0, 0];
  for (const [n, weight] of weights) {
    all += weight;
    if (n <= found) below += weight;
  }
  return below / all;
}

/** 1 and the terms after it, each the last one's times `ratio(n)`, until they add nothing. */
function sumOf(ratio: (n: number) => number): number {
  let sum = 1;
  for (let n = 1, term = ratio(1); term > sum * NOTHING; term *= ratio(++n)) sum += term;
  return sum;
}

/** Γ(a + ½) / Γ(a): by DLMF 5.11.14 where a is large, and down to there by Γ(a + 1) = a Γ(a). */
function gammaRatio(a: number): number {
  let down = 1;
  for (; a < 30; a++) down *= a / (a + 0.5);
  const v = (a - 0.25) ** -2;
  return down * Math.sqrt(a - 0.25) * (1 + v * (1 / 64 + v * (-19 / 8192 + (v * 631) / 524288)));
}

/** A distribution about 0 taken backwards, by halving. */
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
