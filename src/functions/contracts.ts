import type { Contract } from "../core/contract.js";
import { readContract } from "../core/contract-reading.js";
import { Refusal } from "../core/refusal.js";
import { standardContract } from "../core/standards.js";
import { CellError } from "./cells.js";
import { onceEach } from "./once-each.js";
import type { HiveCells } from "./hive-cells.js";

/**
 * The contract of each row: of the Terms table, or a published standard where no Terms are given.
 * One name serves every row; each contract is read once.
 */
export function contractOfRow(
  terms: readonly (readonly unknown[])[] | null,
  names: HiveCells | null,
): (i: number) => Contract {
  const named = onceEach((name: string | null) => contractNamed(terms, name));
  // A fault that every hive would share is the whole call's, not one error a row.
  if (names === null || (names.rows === 1 && !names.isOfSheet)) named(names?.text(0) ?? null);
  return (i) => named(names?.text(i) ?? null);
}

/** One contract: of the Terms table, the only one where no name is given, or a published standard. */
export function contractNamed(
  terms: readonly (readonly unknown[])[] | null,
  name: string | null,
): Contract {
  if (terms === null) {
    if (name !== null) return standardContract(name);
    throw new Refusal("give the Terms table, or a published standard's name as the contract");
  }
  const error = terms.flat().find((cell) => cell instanceof CellError);
  if (error === undefined) return readContract(terms, name);
  throw new CellError(error.code, `terms: ${error.message || "an error stands in the table"}`);
}
