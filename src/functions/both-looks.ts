import type { Estimate } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import { isBlankOrZero } from "./cells.js";
import type { HiveCells } from "./hive-cells.js";

/** A column of a block of cells. */
type Column = readonly [cells: HiveCells, k: number];

/**
 * Seams are looked at from above and from below: a look that nobody took would halve the count if it
 * were taken for none, and a 0 may be a blank that came so.
 *
 * @param seen - what the two looks of a row were read as
 * @throws Refusal where one of the two is blank, and bees were seen in the other
 */
export function refuseOneLook(
  i: number,
  above: Column,
  below: Column,
  seen: readonly Estimate[],
): void {
  if (seen.every(({ middle }) => middle === 0)) return;
  const missing = [above, below].find(([cells, k]) => isBlankOrZero(cells.raw(i, k)));
  if (missing === undefined) return;
  const [cells, k] = missing;
  cells.named(i, k, () => {
    throw new Refusal(
      "blank or 0, and the look from the other side is not: write none where no bees were seen, or, " +
        "where nobody looked, the count of the one look in both",
    );
  });
}

/** The same for columns that stand two and two, the look from above first. */
export function refuseOneLookOfPairs(i: number, cells: HiveCells, seen: readonly Estimate[]): void {
  for (let k = 0; k + 1 < cells.width; k += 2) {
    refuseOneLook(i, [cells, k], [cells, k + 1], seen.slice(k, k + 2));
  }
}
