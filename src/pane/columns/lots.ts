import { Refusal } from "../../core/refusal.js";
import { normalise } from "../../core/text.js";
import { contractsIn } from "../../functions/lot-contract.js";
import { hivesOfLot, lotsIn } from "../../functions/lot-rows.js";
import { yardSheet, type YardSheet } from "../../functions/yard-sheet.js";
import type { Yard } from "./yard.js";

type Values = Pick<Yard, "values">;

/** The lots that a yard sheet names; none as long as its headings leave something to be asked. */
export function lotsOf(yard: Values): readonly string[] {
  return namesIn(yard, lotsIn);
}

/** The contract that all hives of a lot name which name one; null where they name none or several. */
export function contractNamedIn(yard: Values, lot: string | null): string | null {
  const [only = null, ...others] = namesIn(yard, (sheet) =>
    contractsIn(sheet, hivesOfLot(sheet, lot)),
  );
  return others.length === 0 ? only : null;
}

export function isNamed(name: string | null, named: string | null): boolean {
  return name !== null && named !== null && normalise(name) === normalise(named);
}

function namesIn(
  { values }: Values,
  names: (sheet: YardSheet) => readonly string[],
): readonly string[] {
  try {
    return names(yardSheet(values));
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}
