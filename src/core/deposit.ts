import type { Contract } from "./contract.js";
import { exactly } from "./estimate.js";
import { exact, times, type Exact } from "./exact.js";
import { feeOf, NOTHING } from "./fees.js";
import { gradeOf, type Hive } from "./grade.js";
import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";

const PLENTY = exactly(sources.mostFrames.value);

/**
 * What the hives agreed would be paid at the fee agreed, which is all that a deposit can be a
 * percent of before any hive is opened: the base fee, or that of a hive at the contract's average.
 *
 * @throws Refusal where the contract gives no such fee
 */
export function agreedPay(contract: Contract, hives: number): Exact {
  if (contract.deposit === 0) return NOTHING;
  const fee = contract.baseFee > 0 ? exact(contract.baseFee) : feeAtAverage(contract);
  if (fee.top > 0n) return times(fee, exact(hives));
  throw new Refusal(
    `contract ${quote(contract.name)} does not say of what fee its deposit is a part: ` +
      `give "base fee", or "average frames" that a grade pays for, or leave "deposit" out`,
  );
}

function feeAtAverage(contract: Contract): Exact {
  const frames = contract.averageFrames;
  if (frames === 0) return NOTHING;
  const brood = { combs: PLENTY, fullFrames: PLENTY, cover: exactly(100) };
  const hive: Hive = { frames: exactly(frames), brood, queen: true, stores: exactly(Infinity) };
  const grade = gradeOf(contract, hive).name;
  return feeOf(contract, {
    id: "",
    pallet: null,
    frames,
    counted: frames,
    grade,
    accepted: true,
    dead: false,
  });
}
