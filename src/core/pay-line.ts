import type { Contract } from "./contract.js";
import { exact, inUnits, times, type Exact } from "./exact.js";
import { NOTHING } from "./fees.js";

/** A line of a settlement in the contract's smallest sums: quantity times rate, rounded. */
export interface Line {
  readonly label: string;
  readonly quantity: Exact;
  readonly rate: Exact;
  readonly units: bigint;
}

export function line(contract: Contract, label: string, quantity: Exact, rate: Exact): Line {
  const units = inUnits(times(quantity, rate), exact(contract.moneyRounding));
  return { label, quantity, rate, units };
}

/** A line that says something and pays nothing. */
export function remark(label: string): Line {
  return { label, quantity: NOTHING, rate: NOTHING, units: 0n };
}

/** A part taken off the sum of the lines before. */
export function deduction(
  contract: Contract,
  label: string,
  part: Exact,
  before: readonly Line[],
): Line {
  const sum = times({ top: sumOf(before), bottom: 1n }, exact(contract.moneyRounding));
  return line(contract, label, { top: -part.top, bottom: part.bottom }, sum);
}

export function sumOf(lines: readonly Line[]): bigint {
  return lines.reduce((sum, { units }) => sum + units, 0n);
}
