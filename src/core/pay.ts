import type { Contract } from "./contract.js";
import { agreedPay } from "./deposit.js";
import { exact, inUnits, over, times, toNumber } from "./exact.js";
import { asMoney, checkFees } from "./fees.js";
import { countLot, underOf, type Lot } from "./lot.js";
import { averageLines } from "./pay-average.js";
import { alike, payClasses } from "./pay-class.js";
import { deduction, line, remark, sumOf, type Line } from "./pay-line.js";
import { plural } from "./plural.js";
import { Refusal } from "./refusal.js";
import { scaled } from "./scaled.js";

/** One line of a settlement: the amount is quantity times rate, rounded by the contract. */
export interface PayLine {
  readonly label: string;
  readonly quantity: number;
  readonly rate: number;
  readonly amount: number;
}

/** What a lot is paid. The total is the sum of the rounded lines, to the last cent. */
export interface LotPay {
  readonly lines: readonly PayLine[];
  readonly total: number;
  /** What the hives agreed would be paid at the fee agreed; 0 where no deposit is asked. */
  readonly agreed: number;
  /** Paid beforehand: the contract's percent of `agreed`. */
  readonly deposit: number;
  /** Total less deposit; what is under 0 is to be paid back. */
  readonly balance: number;
  readonly currency: string;
}

/**
 * The settlement of a lot: the fees of its hives, scaled from those opened; what hangs on the lot's
 * average; a short delivery. Contracts settle on the sample. A half of the smallest sum is rounded
 * away from zero.
 *
 * @param lot - its size is the hives agreed
 * @param delivered - hives that came; null where all did
 * @throws Refusal that names what the contract leaves open, or numbers of hives that cannot be
 * @example
 * // 340 hives, 51 opened, 7 of them in a class at 200: 46.67 hives at 200, 9,333.33
 */
export function lotPay(contract: Contract, lot: Lot, delivered: number | null): LotPay {
  checkFees(contract);
  const came = delivered ?? lot.size;
  checkDelivery(lot, came);
  const lines = linesOf(contract, lot, came);
  const total = sumOf(lines);
  const agreed = agreedPay(contract, lot.size);
  const share = over(exact(contract.deposit), exact(100));
  const deposit = inUnits(times(agreed, share), exact(contract.moneyRounding));
  return {
    lines: lines.map(({ label, quantity, rate, units }) => ({
      label,
      quantity: toNumber(quantity),
      rate: toNumber(rate),
      amount: asMoney(contract, units),
    })),
    total: asMoney(contract, total),
    agreed: toNumber(agreed),
    deposit: asMoney(contract, deposit),
    balance: asMoney(contract, total - deposit),
    currency: contract.currency,
  };
}

function checkDelivery({ hives, size }: Lot, came: number): void {
  if (!Number.isInteger(came))
    throw new Refusal(`a delivery of ${came} hives: give a whole number`);
  if (came < hives.length) {
    throw new Refusal(`a delivery of ${plural(came, "hive")} cannot have ${hives.length} opened`);
  }
  if (came > size) {
    throw new Refusal(
      `${came} hives delivered, and ${size} agreed: the contract does not say what more hives are paid`,
    );
  }
}

/** A short lot that is paid pro rata is settled as agreed, and the hives that are missing taken off. */
function linesOf(contract: Contract, lot: Lot, came: number): Line[] {
  const missing = lot.size - came;
  const short = `short delivery: ${missing} of ${plural(lot.size, "hive")} did not come`;
  if (missing > 0 && contract.shortDelivery === "refused") {
    return [remark(`${short}, and the lot is refused`)];
  }
  const count = countLot(contract, { ...lot, size: came });
  if (!count.underMet) {
    return [remark(`load rejected: ${underOf(count)}`)];
  }
  const isProRata = missing > 0 && contract.shortDelivery === "pro rata";
  const size = isProRata ? lot.size : came;
  const kinds = alike(lot.hives);
  const classes = payClasses(contract, kinds);
  const opened = classes.map(({ hives }) => hives);
  const quantities = scaled(opened, size, contract.hiveRounding);
  const fees = classes.map(({ label, fee }, i) => line(contract, label, quantities[i]!, fee));
  const lines = [...fees, ...averageLines(contract, kinds, count, fees, size)];
  if (missing === 0) return lines;
  const part = over(exact(missing), exact(lot.size));
  const last = isProRata ? deduction(contract, `${short}, pro rata`, part, lines) : remark(short);
  return [...lines, last];
}
