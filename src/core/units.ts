import type { Contract } from "./contract.js";
import { isCounted, type Lot } from "./lot.js";
import type { Unit } from "./ratio.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";

/** A lot's opened hives as they were drawn, each with the frames that its hives add to the average. */
export interface Drawn {
  readonly kind: "hives" | "pallets";
  readonly units: readonly Unit[];
  /** Units in the whole lot. */
  readonly inLot: number;
  /** Share of the lot that was opened. */
  readonly share: number;
}

/**
 * The units of a lot as they were drawn: whole pallets where the contract opens pallets and the
 * sheet names them, else hives.
 *
 * The lot has as many pallets as its hives make at the mean of hives on an opened pallet, so that
 * the share of its pallets that was opened is that of its hives.
 *
 * @throws Refusal where only some of the hives have a pallet
 */
export function drawnOf(contract: Contract, { hives, size }: Lot): Drawn {
  const share = hives.length / size;
  const units = hives.map((hive): Unit =>
    isCounted(contract, hive) ? { total: hive.counted, count: 1 } : { total: 0, count: 0 },
  );
  const isNamed = hives.some((hive) => hive.pallet !== null);
  if (contract.openedBy === "hives" || !isNamed) {
    return { kind: "hives", units, inLot: size, share };
  }
  const pallets = new Map<string, Unit>();
  hives.forEach(({ id, pallet }, i) => {
    if (pallet === null) {
      throw new Refusal(`hive ${id} has no pallet, and the contract opens whole pallets`);
    }
    const { total, count } = pallets.get(pallet) ?? { total: 0, count: 0 };
    pallets.set(pallet, { total: total + units[i]!.total, count: count + units[i]!.count });
  });
  return { kind: "pallets", units: [...pallets.values()], inLot: pallets.size / share, share };
}

/**
 * How much hives usually differ: a share of their average, or of what is asked where all are empty,
 * and no more than figures spread evenly between the least and the most that the contract counts.
 */
export function typicalSpread(contract: Contract, average: number): number {
  const { mostFrames, minimumFrames, underMinimum, averageFrames } = contract;
  const most = mostFrames || Infinity;
  const least = underMinimum === "left out" ? minimumFrames : 0;
  const usual = (sources.typicalSpread.value / 100) * (average || averageFrames);
  return Math.min(usual, (most - least) / Math.sqrt(12));
}
