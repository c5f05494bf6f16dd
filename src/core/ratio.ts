import { normalQuantile, tQuantile } from "./distributions.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";

/** What was drawn as one: a hive, or a pallet of hives. */
export interface Unit {
  /** Sum of the figure over its hives, such as frames of bees. */
  readonly total: number;
  /** What it is held against: its hives that count, or their figure at a quick look. */
  readonly count: number;
}

/** A sum over another, from units drawn out of a finite lot, and how the units differ about it. */
export interface Ratio {
  readonly ratio: number;
  /** Units that tell something of it. */
  readonly units: number;
  /** Standard deviation of the units about it; null for a single unit. */
  readonly spread: number | null;
  /** Skewness of the units about it; 0 where they are all alike. */
  readonly skew: number;
  /** Share of the lot that was drawn, 0 to 1. */
  readonly drawn: number;
}

/**
 * The ratio of two sums with the linearised residuals of its units, `total - ratio x count`.
 *
 * A mean over a part of the hives is such a ratio, where the others count 0. Its spread then rests
 * on the units that count alone, as if these had been drawn (Cochran, Sampling Techniques, 2.13,
 * from memory): with few of them the usual divisor, all units drawn, leaves too little.
 *
 * @param units - those that tell nothing, 0 of 0, are passed over
 * @param drawn - share of the lot that they are, 0 to 1
 * @returns null where nothing counts
 */
export function ratioOf(units: readonly Unit[], drawn: number): Ratio | null {
  const telling = units.filter(({ total, count }) => total !== 0 || count !== 0);
  const counts = telling.reduce((sum, { count }) => sum + count, 0);
  if (counts === 0) return null;
  const first = telling.reduce((sum, { total }) => sum + total, 0) / counts;
  // What the first sum lost to rounding is in the residuals about it.
  const lost = telling.reduce((sum, { total, count }) => sum + (total - first * count), 0);
  const ratio = first + lost / counts;
  const n = telling.length;
  let [squares, cubes] = [0, 0];
  for (const { total, count } of telling) {
    const residual = total - ratio * count;
    squares += residual ** 2;
    cubes += residual ** 3;
  }
  // Equal hives leave a residue of the machine's.
  if (Math.sqrt(squares / n) * n <= 1e-12 * Math.abs(ratio) * counts) squares = 0;
  return {
    ratio,
    units: n,
    spread: n < 2 ? null : (Math.sqrt(squares / (n - 1)) * n) / counts,
    skew: squares === 0 ? 0 : cubes / n / (squares / n) ** 1.5,
    drawn,
  };
}

/** Standard error of a ratio: its units' spread over the root of their number, by the finite lot. */
export function standardError({ spread, units, drawn }: Ratio): number | null {
  if (drawn >= 1) return 0;
  return spread === null ? null : spread * Math.sqrt((1 - drawn) / units);
}

/**
 * Half the width of the interval about a ratio.
 *
 * Student's t, with two helps for few units, both measured by simulation (docs/simulation.md). It is
 * widened for skew by the term of Edgeworth's expansion that lessens two-sided coverage (Hall 1992,
 * The Bootstrap and Edgeworth Expansion, from memory). And where the units are more alike than
 * usual, a typical spread counts as one unit more: six hives that happen to be equal do not prove a
 * lot of equals.
 *
 * @param tail - share left out on each side, 0 to a half
 * @param typical - spread of a unit as it usually is; 0 where none is known
 * @returns null for a single unit of several
 */
export function halfWidth(ratio: Ratio, tail: number, typical: number): number | null {
  const { units, spread, skew, drawn } = ratio;
  if (drawn >= 1) return 0;
  if (spread === null) return null;
  const z = normalQuantile(1 - tail);
  const bySkew = (skew ** 2 * z * (z ** 4 + 2 * z ** 2 - 3) * (1 - drawn)) / (18 * units);
  const factor = (df: number): number => tQuantile(1 - tail, df) + Math.max(0, bySkew);
  const seen = factor(units - 1) * spread;
  const df = Math.max(units, sources.typicalSpreadHives.value);
  const held = factor(df) * heldUp(units, spread, typical);
  return Math.max(seen, held) * Math.sqrt((1 - drawn) / units);
}

/** The spread that was seen with a typical one counted in as that of one unit more. */
export function heldUp(units: number, spread: number, typical: number): number {
  return Math.sqrt((typical ** 2 + (units - 1) * spread ** 2) / units);
}

/**
 * The share left out on each side of an interval.
 *
 * @param confidence - percent
 * @throws Refusal for 0, 100 and what lies outside of them
 */
export function tailOf(confidence: number): number {
  if (confidence > 0 && confidence < 100) return (1 - confidence / 100) / 2;
  throw new Refusal(`a confidence of ${confidence} %: give one over 0 and under 100, such as 95`);
}
