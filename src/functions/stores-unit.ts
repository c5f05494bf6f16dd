import type { Contract } from "../core/contract.js";
import { storesUnitOf } from "../core/headings.js";
import { quote, Refusal } from "../core/refusal.js";
import { checkUnit, type StoresUnit } from "../core/stores.js";
import type { HiveCells } from "./hive-cells.js";

/** Refuses a row in which a weight is written with another unit behind it than the one it is read in. */
export function checkUnitsWritten(cells: HiveCells, i: number, unit: StoresUnit): void {
  for (let k = 0; k < cells.width; k++) {
    const cell = cells.cell(i, k);
    if (typeof cell === "string") cells.named(i, k, () => checkUnit(cell, unit));
  }
}

/**
 * The unit in which a sheet's stores stand: the contract's; where no term of it says how much there
 * must be, whatever the heading says.
 */
export function storesUnitFor(stores: HiveCells | null, contract: Contract): StoresUnit {
  const written = stores === null ? null : storesUnitOf(stores.name);
  const isAsked = contract.stores > 0 || contract.feedUnder > 0;
  if (written === null || written === "hive weight" || isAsked) return contract.storesUnit;
  return written;
}

/**
 * A weight read in another unit, or a hive's weight as its stores, would grade a hive wrongly, and
 * never feed a hungry one.
 *
 * @throws Refusal where the column's heading says another unit than the contract's terms
 */
export function checkStoresUnit(stores: HiveCells | null, contract: Contract): void {
  const written = stores === null ? null : storesUnitOf(stores.name);
  const storesUnit = storesUnitFor(stores, contract);
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
