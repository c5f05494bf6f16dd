import type { Contract, Grade } from "./contract.js";
import { exact, inUnits, least, minus, over, plus, times, toNumber, type Exact } from "./exact.js";
import type { OpenedHive } from "./lot.js";
import { quote, Refusal } from "./refusal.js";

export const NOTHING = exact(0);

/**
 * Refuses a contract that leaves open what a hive is paid.
 *
 * @throws Refusal that asks for the term by name
 */
export function checkFees({ name, baseFee, grades }: Contract): void {
  const paid = grades.filter((grade) => grade.fee > 0).at(-1);
  if (baseFee === 0 && paid === undefined) {
    throw new Refusal(
      `contract ${quote(name)} gives no fee: give "base fee" or the grades' own ("grade 1 fee") in a Terms table`,
    );
  }
  const open = grades.findIndex((grade) => grade.fee === 0);
  if (paid !== undefined && open >= 0 && open < grades.indexOf(paid)) {
    throw new Refusal(
      `contract ${quote(name)} gives no fee for ${quote(grades[open]!.name)} and one for ` +
        `${quote(paid.name)} below it: give "grade ${open + 1} fee"`,
    );
  }
}

/** Whether each hive is paid by its grade, and not all by one base fee. */
export function isByGrade({ baseFee }: Contract): boolean {
  return baseFee === 0;
}

/**
 * The fee of a hive, unrounded and without any bonus: nothing for one that is not accepted or has
 * no grade.
 *
 * @example
 * // 7: 140 and 8: 175, 7.5 frames: down and as it is 140, nearest 175, between 157.50
 */
export function feeOf(contract: Contract, hive: OpenedHive): Exact {
  if (!hive.accepted) return NOTHING;
  if (!isByGrade(contract)) return exact(contract.baseFee);
  const own = contract.grades.find((grade) => grade.name === hive.grade);
  if (own === undefined) return NOTHING;
  return contract.partFrame === "between" ? feeBetween(contract, own, hive.frames) : exact(own.fee);
}

/**
 * A part frame between two classes is paid between their fees; a whole frame is paid as its class.
 * A better class that asks for more brood as well is no neighbour: between is said of frames.
 */
function feeBetween({ grades, brood }: Contract, own: Grade, frames: number): Exact {
  const at = withoutNoise(frames);
  const better = grades.slice(0, grades.indexOf(own));
  const next = better.filter((g) => g.frames > at && g.brood <= Math.max(own.brood, brood)).at(-1);
  const whole = Math.floor(at);
  const from = Math.max(whole, own.frames);
  if (next === undefined || next.frames > whole + 1 || at <= from) return exact(own.fee);
  const share = over(minus(exact(at), exact(from)), minus(exact(next.frames), exact(from)));
  return plus(exact(own.fee), times(share, minus(exact(next.fee), exact(own.fee))));
}

/** Frames over the average that one hive is paid a bonus for, at most what the ceiling lets. */
export function framesOver(contract: Contract, frames: Exact): Exact {
  const more = minus(frames, exact(contract.averageFrames));
  if (contract.bonus === 0 || more.top <= 0n) return NOTHING;
  if (contract.bonusCeiling === 0) return more;
  return least(more, over(exact(contract.bonusCeiling), exact(contract.bonus)));
}

/**
 * The pay of one hive by itself: its fee, and its bonus where that is worked out hive by hive. What
 * hangs on the lot's average is not in it.
 */
export function hivePay(contract: Contract, hive: OpenedHive): number {
  checkFees(contract);
  const fee = feeOf(contract, hive);
  const frames =
    contract.bonusBy === "hive" && fee.top > 0n
      ? framesOver(contract, exact(withoutNoise(hive.counted)))
      : NOTHING;
  const pay = plus(fee, times(frames, exact(contract.bonus)));
  return asMoney(contract, inUnits(pay, exact(contract.moneyRounding)));
}

/** A number of the contract's smallest sums as money. */
export function asMoney(contract: Contract, units: bigint): number {
  return toNumber(times({ top: units, bottom: 1n }, exact(contract.moneyRounding)));
}

/** A sum of thirds without the last digits that a machine adds, so that money does not hang on them. */
export function withoutNoise(frames: number): number {
  return Number(frames.toFixed(9));
}
