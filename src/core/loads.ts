import { Refusal } from "./refusal.js";
import { TOLERANCE } from "./tolerance.js";

/** How pallets stand on a truck. */
export interface Stacking {
  readonly stacks: number;
  readonly sides: number;
  readonly high: number;
  readonly onPallet: number;
}

/** What a truck takes and how many loads that makes; hives, in whole pallets. */
export interface Loads {
  readonly bySpace: number;
  /** Null where no weights are given. */
  readonly byWeight: number | null;
  readonly aLoad: number;
  readonly loads: number;
  readonly onLast: number;
}

/**
 * Truckloads of hives, by the space of the truck and by the weight it may carry, whichever is less.
 *
 * @param weight - of a hive with its share of the pallet, and of the payload, in one unit; null
 *   where only space is reckoned
 * @throws Refusal where not even one pallet may be carried
 * @example loadsOf(960, { stacks: 17, sides: 2, high: 3, onPallet: 4 }, null).aLoad // 408
 */
export function loadsOf(
  hives: number,
  { stacks, sides, high, onPallet }: Stacking,
  weight: { readonly hive: number; readonly payload: number } | null,
): Loads {
  const bySpace = stacks * sides * high * onPallet;
  const pallets =
    weight === null ? null : Math.floor(weight.payload / (weight.hive * onPallet) + TOLERANCE);
  if (pallets === 0) {
    throw new Refusal(
      `a pallet of ${onPallet} weighs ${weight!.hive * onPallet}, and the payload is ${weight!.payload}`,
    );
  }
  const byWeight = pallets === null ? null : pallets * onPallet;
  const aLoad = Math.min(bySpace, byWeight ?? Infinity);
  const loads = Math.ceil(hives / aLoad);
  return { bySpace, byWeight, aLoad, loads, onLast: hives - (loads - 1) * aLoad };
}
