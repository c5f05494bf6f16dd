import type { Contract } from "../core/contract.js";
import { firstOf } from "../core/listing.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { CellError } from "./cells.js";
import { contractNamed } from "./contracts.js";
import { hivesOfLot } from "./lot-rows.js";
import { yardSheet, type YardSheet } from "./yard-sheet.js";

type Cells = readonly (readonly unknown[])[];

/**
 * The contract that a lot goes by: the one that is asked for, else the one that its hives name in the
 * sheet's contract column, else the only one of the terms.
 *
 * @param lot - its name in the sheet's lot column; null for a sheet of one lot
 * @throws Refusal that names the contracts of which one is to be chosen
 */
export function contractOfLot(
  terms: Cells | null,
  asked: string | null,
  yard: Cells,
  lot: string | null,
): Contract {
  if (asked !== null) return contractNamed(terms, asked);
  const sheet = yardSheet(yard);
  const [only = null, ...others] = contractsIn(sheet, hivesOfLot(sheet, lot));
  if (others.length === 0) return contractNamed(terms, only);
  const names = firstOf([only!, ...others].map(quote));
  throw new Refusal(`the hives go by several contracts (${names}): say which one, or which lot`);
}

/** That the hives name another contract than the one they are counted under; empty where none does. */
export function remarkOnContract(
  sheet: YardSheet,
  rows: readonly number[],
  { name }: Contract,
): string {
  const others = contractsIn(sheet, rows).filter((other) => normalise(other) !== normalise(name));
  return others.length === 0 ? "" : `the hives name the contract ${firstOf(others.map(quote))}`;
}

/** The contracts that these hives name, each once, in the order in which they stand. */
export function contractsIn(sheet: YardSheet, rows: readonly number[]): readonly string[] {
  const column = sheet.column("contract");
  if (column === null) return [];
  const names = new Map<string, string>();
  for (const i of rows) {
    const name = column.raw(i) instanceof CellError ? null : column.text(i);
    if (name !== null && !names.has(normalise(name))) names.set(normalise(name), name);
  }
  return [...names.values()];
}
