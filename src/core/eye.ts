import { tQuantile } from "./distributions.js";
import { mean, variance } from "./mean.js";
import { Refusal } from "./refusal.js";

/** A comb as somebody judged it and as it was, both in percent of its side. */
export interface JudgedComb {
  readonly said: number;
  readonly was: number;
}

/** How somebody's eye misses, in points of percent. */
export interface EyeError {
  /** Mean of said less was: over 0 for who judges high. */
  readonly bias: number;
  /** Ends of the 95 % interval of the bias, by Student's t. */
  readonly low: number;
  readonly high: number;
  /** Standard deviation of the misses about the bias. */
  readonly spread: number;
  /** Standard error of the spread, were the misses normal: spread / root of 2 (n - 1). */
  readonly spreadError: number;
}

/**
 * Bias and spread of an eye, from combs whose cover is known.
 *
 * @throws Refusal for fewer than two combs
 * @example eyeError([{ said: 52, was: 50 }, { said: 46, was: 40 }]).bias // 4
 */
export function eyeError(judged: readonly JudgedComb[]): EyeError {
  const n = judged.length;
  if (n < 2) throw new Refusal(`combs judged: ${n}, and two are needed, better twenty`);
  const misses = judged.map(({ said, was }) => said - was);
  const bias = mean(misses)!;
  const spread = Math.sqrt(variance(misses)!);
  const arm = (tQuantile(0.975, n - 1) * spread) / Math.sqrt(n);
  return {
    bias,
    low: bias - arm,
    high: bias + arm,
    spread,
    spreadError: spread / Math.sqrt(2 * (n - 1)),
  };
}
