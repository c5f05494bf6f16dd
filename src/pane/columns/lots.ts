import { Refusal } from "../../core/refusal.js";
import { lotsIn } from "../../functions/lot-rows.js";
import { yardSheet } from "../../functions/yard-sheet.js";
import type { Yard } from "./yard.js";

/** The lots that a yard sheet names; none as long as its headings leave something to be asked. */
export function lotsOf({ values }: Pick<Yard, "values">): readonly string[] {
  try {
    return lotsIn(yardSheet(values));
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}
