import type { Contract } from "../core/contract.js";
import { storesUnitOf } from "../core/headings.js";
import { quote, Refusal } from "../core/refusal.js";
import type { HiveCells } from "./hive-cells.js";

/**
 * A weight read in another unit, or a hive's weight as its stores, would grade a hive wrongly, and
 * never feed a hungry one.
 *
 * @throws Refusal where the column's heading says another unit than the contract's terms
 */
export function checkStoresUnit(stores: HiveCells | null, { storesUnit }: Contract): void {
  const written = stores === null ? null : storesUnitOf(stores.name);
  if (written === null || written === storesUnit) return;
  const heading = quote(stores!.name);
  if (written === "hive weight") {
    throw new Refusal(
      `the heading ${heading} may be the weight of the whole hive: head it Stores, with what the ` +
        `hive weighs over its tare`,
    );
  }
  throw new Refusal(
    `the heading ${heading} is in ${written}, and the term "stores unit" says ${storesUnit}`,
  );
}
