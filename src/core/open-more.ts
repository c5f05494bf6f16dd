import { normalQuantile } from "./distributions.js";
import { first } from "./first.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { atLeast, atMost } from "./tolerance.js";

/** What is settled before the first hive is opened; averages in frames of bees. */
export interface SequentialPlan {
  /** A lot of this average should pass. */
  readonly good: number;
  /** A lot of this average should fail. */
  readonly bad: number;
  /** Chance, 0 to 0.5, that a lot as good as `good` fails. */
  readonly alpha: number;
  /** Chance, 0 to 0.5, that a lot as bad as `bad` passes. */
  readonly beta: number;
  /** Standard deviation of what is opened, no less than it is. */
  readonly spread: number;
  /** Most to open. */
  readonly most: number;
  /** How many the lot has; Infinity where it is not known. */
  readonly size: number;
}

export type SequentialVerdict = "pass" | "fail" | "open more" | "undecided";

/** Where the check stands, at its verdict or after all that was opened. */
export interface Standing {
  readonly verdict: SequentialVerdict;
  /** Hives or pallets that the verdict rests on. */
  readonly opened: number;
  /** Null before the first. */
  readonly average: number | null;
  /** The average that fails now, and the one that passes; null while none can. */
  readonly failsAt: number | null;
  readonly passesAt: number | null;
  /** To open yet, if they go on at the average so far; 0 with a verdict. */
  readonly more: number;
}

/**
 * Pass, fail or open more: a sequential test of a lot's average.
 *
 * Wald's sequential probability ratio test for a normal mean (Sequential Analysis, 1947, ch. 7), a
 * verdict where the likelihood ratio reaches 1/alpha or 1/beta: by Wald's inequality neither chance
 * of error is then over the one stated, if the spread is no more than the plan says. The spread of
 * those opened counts too: a verdict must also hold for it, under the wider bounds of Hall (Some
 * sequential analogs of Stein's two-stage test, Biometrika 49, 1962) for a spread that is estimated.
 * In a finite lot n opened of N weigh as n / (1 - n/N), which is what they do for the variance of
 * their mean. All three are from memory; docs/open-more.md has the error rates as measured.
 *
 * @param strengths - frames of bees of each hive, or of each pallet's mean, in the order opened
 * @throws Refusal for a plan that contradicts itself, and for more opened than the lot has
 * @example
 * // 12, 11, 12 frames, good 9, bad 7, spread 2.4, both chances 10 %: pass, 11.7 where 10.2 would do
 */
export function openMore(strengths: readonly number[], plan: SequentialPlan): Standing {
  checkPlan(plan);
  if (strengths.length > plan.size) {
    throw new Refusal(`a lot of ${plan.size} cannot have ${strengths.length} opened`);
  }
  const most = Math.min(plan.most, plan.size);
  let [average, squares, opened] = [0, 0, 0];
  for (const strength of strengths.slice(0, most)) {
    opened++;
    const off = strength - average;
    average += off / opened;
    squares += off * (strength - average);
    const verdict = verdictOf(average, boundsOf(plan, opened, squares / (opened - 1)));
    if (verdict !== null) return standing(plan, verdict, opened, average, squares, 0);
  }
  if (opened === most) return standing(plan, "undecided", opened, average, squares, 0);
  const more = moreToOpen(plan, opened, average, squares, most);
  return standing(plan, "open more", opened, average, squares, more);
}

/**
 * The fixed sample with the same chances of error for a lot of the plan's spread, as a number that
 * need not be whole: ((z_alpha + z_beta) spread / (good - bad))2, less in a finite lot.
 */
export function fixedSample({
  good,
  bad,
  alpha,
  beta,
  spread,
  size,
}: Omit<SequentialPlan, "most">): number {
  const z = -normalQuantile(alpha) - normalQuantile(beta);
  const endless = ((z * spread) / (good - bad)) ** 2;
  return endless / (1 + endless / size);
}

/** The most to open where the plan says none: three times the fixed sample. */
export function usualMost(plan: Omit<SequentialPlan, "most">): number {
  checkPlan({ ...plan, most: 2 });
  const most = Math.max(2, Math.ceil(sources.sequentialMost.value * fixedSample(plan)));
  if (Number.isSafeInteger(most)) return most;
  throw new Refusal(`levels of ${plan.good} and ${plan.bad} are too close to tell apart`);
}

/** The spread that is taken where none is stated: that of hives, or of pallets of so many. */
export function usualSpread(good: number, bad: number, hivesOnPallet: number): number {
  const ofHives = ((sources.typicalSpread.value / 100) * (good + bad)) / 2;
  return ofHives / Math.sqrt(hivesOnPallet);
}

/**
 * The mean of each pallet's hives, in the order opened: where whole pallets are opened they are
 * what is drawn, since the hives of one pallet are likelier alike.
 *
 * @param pallets - the pallet of each hive, as many as `strengths`
 */
export function palletMeans(strengths: readonly number[], pallets: readonly string[]): number[] {
  const sums = new Map<string, { total: number; hives: number }>();
  strengths.forEach((strength, i) => {
    const pallet = pallets[i]!;
    const sum = sums.get(pallet) ?? { total: 0, hives: 0 };
    if (sum.hives > 0 && pallets[i - 1] !== pallet) {
      throw new Refusal(
        `pallet ${pallet} stands in two places: give the hives in the order opened`,
      );
    }
    sums.set(pallet, { total: sum.total + strength, hives: sum.hives + 1 });
  });
  return [...sums.values()].map(({ total, hives }) => total / hives);
}

interface Bounds {
  readonly fails: number;
  readonly passes: number;
}

/** The averages that decide after so many, by the variance of those opened (0 where it is not known). */
function boundsOf(plan: SequentialPlan, opened: number, variance: number): Bounds {
  const { good, bad, alpha, beta, spread, size } = plan;
  const weight = opened / (1 - opened / size);
  const reach = (chance: number): number => {
    if (weight === Infinity) return 0;
    if (opened < 2) return Infinity;
    const known = Math.log(1 / chance) * spread ** 2;
    const estimated = hall(chance, opened - 1) * variance;
    return Math.max(known, estimated) / ((good - bad) * weight);
  };
  const middle = (good + bad) / 2;
  return { fails: middle - reach(alpha), passes: middle + reach(beta) };
}

/**
 * What Hall puts in the place of log(1/chance) where the variance is estimated with so many degrees
 * of freedom: it makes the mean of exp(-h s2/sigma2) over s2 the chance.
 */
function hall(chance: number, degrees: number): number {
  return (degrees / 2) * (chance ** (-2 / degrees) - 1);
}

function verdictOf(average: number, { fails, passes }: Bounds): "pass" | "fail" | null {
  if (atLeast(average, passes)) return "pass";
  return atMost(average, fails) ? "fail" : null;
}

/** The fewest more that give a verdict if each is the average so far: bounds only close in. */
function moreToOpen(
  plan: SequentialPlan,
  opened: number,
  average: number,
  squares: number,
  most: number,
): number {
  if (opened === 0) return Math.min(2, most);
  const variance = opened < 2 ? 0 : squares / (opened - 1);
  const decides = (n: number): boolean => verdictOf(average, boundsOf(plan, n, variance)) !== null;
  return first(Math.max(2, opened + 1), most, decides) - opened;
}

function standing(
  plan: SequentialPlan,
  verdict: SequentialVerdict,
  opened: number,
  average: number,
  squares: number,
  more: number,
): Standing {
  const { fails, passes } = boundsOf(plan, opened, squares / (opened - 1));
  return {
    verdict,
    opened,
    average: opened === 0 ? null : average,
    failsAt: fails >= 0 ? fails : null,
    passesAt: passes <= sources.mostFrames.value ? passes : null,
    more,
  };
}

function checkPlan({ good, bad, spread, most }: SequentialPlan): void {
  if (good <= bad) throw new Refusal(`the good level ${good} is not over the bad level ${bad}`);
  if (!(spread > 0)) throw new Refusal(`a spread of ${spread}: give one over 0`);
  if (!Number.isInteger(most) || most < 2) {
    throw new Refusal(`the most to open is ${most}: give a whole number from 2 on`);
  }
}
