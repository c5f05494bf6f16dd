import { shownApart } from "./apart.js";
import type { Contract } from "./contract.js";
import { exact, inUnits, minus, over, plus, times, toNumber, type Exact } from "./exact.js";
import { feeOf, framesOver, NOTHING, withoutNoise } from "./fees.js";
import { isCounted, type LotCount } from "./lot.js";
import type { Alike } from "./pay-class.js";
import { deduction, line, remark, type Line } from "./pay-line.js";
import { plural } from "./plural.js";

const BILLIONTH: Exact = { top: 1n, bottom: 10n ** 9n };
const ONE = exact(1);

/**
 * What hangs on the contract's average: pro rata under it, the bonus over it.
 *
 * Pro rata takes its part of the fees, not of a bonus; a hive that is paid nothing has no bonus.
 *
 * @param size - hives that the fees are scaled to
 */
export function averageLines(
  contract: Contract,
  kinds: readonly Alike[],
  count: LotCount,
  fees: readonly Line[],
  size: number,
): Line[] {
  const { averageFrames: asked, bonus, bonusBy, bonusCeiling } = contract;
  const paid = fees.filter((fee) => fee.rate.top > 0n);
  if (asked === 0 || paid.length === 0) return [];
  const average = exactAverage(contract, kinds);
  const isOf = `average ${shownApart(toNumber(average), asked)} of ${plural(asked, "frame")}`;
  const ceiling = bonusCeiling === 0 ? "" : `, at most ${bonusCeiling} a hive`;
  const lines: Line[] = [];
  if (!count.averageMet && contract.proRata) {
    const missing = minus(ONE, over(average, exact(asked)));
    lines.push(deduction(contract, `pro rata: ${isOf}`, missing, fees));
  } else if (!count.averageMet) {
    lines.push(remark(`${isOf}: no pro rata is agreed`));
  }
  if (bonus > 0 && bonusBy === "hive") {
    const label = `bonus hive by hive: frames over ${asked}${ceiling}`;
    lines.push(line(contract, label, bonusFrames(contract, kinds, size), exact(bonus)));
  } else if (bonus > 0 && count.averageMet) {
    const hives = paid.reduce((sum, fee) => plus(sum, fee.quantity), NOTHING);
    const rate = times(framesOver(contract, average), exact(bonus));
    lines.push(line(contract, `bonus: ${isOf}${ceiling}`, hives, rate));
  }
  return lines;
}

/** The average of the hives that are counted, the same in whatever order they stand. */
function exactAverage(contract: Contract, kinds: readonly Alike[]): Exact {
  const counted = kinds.filter(({ hive }) => isCounted(contract, hive));
  const frames = total(counted, ({ hive }) => exact(hive.counted));
  const withoutThirds = times({ top: inUnits(frames, BILLIONTH), bottom: 1n }, BILLIONTH);
  return over(withoutThirds, exact(counted.reduce((sum, { hives }) => sum + hives, 0)));
}

/** Frames over the average of all paid hives, hive by hive, scaled to the lot. */
function bonusFrames(contract: Contract, kinds: readonly Alike[], size: number): Exact {
  const paid = kinds.filter(({ hive }) => feeOf(contract, hive).top > 0n);
  const frames = total(paid, ({ hive }) => framesOver(contract, exact(withoutNoise(hive.counted))));
  const opened = kinds.reduce((sum, { hives }) => sum + hives, 0);
  return times(frames, over(exact(size), exact(opened)));
}

function total(kinds: readonly Alike[], of: (kind: Alike) => Exact): Exact {
  return kinds.reduce((sum, kind) => plus(sum, times(of(kind), exact(kind.hives))), NOTHING);
}
