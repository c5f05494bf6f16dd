import { cellsOfSide } from "./cells.js";
import { development } from "./clock.js";
import { DEEP } from "./comb.js";
import type { Estimate } from "./estimate.js";
import { between, bothNotes, exactly } from "./estimate.js";
import { sources } from "./sources.js";
import { perPound } from "./stores.js";

export const FEEDS = ["2:1", "1:1", "dry sugar"] as const;
export type Feed = (typeof FEEDS)[number];

const MG_PER_POUND = 1e6 * perPound("kg");
const WORKER_DAYS = development("worker").expected;

/** Stores in lb that a US gallon of syrup makes, or a pound of dry sugar. */
export const STORES_OF_FEED: Readonly<Record<Feed, number>> = {
  "2:1": sources.storesPerGallonHeavy.value,
  "1:1": sources.storesPerGallonLight.value,
  "dry sugar": sources.storesPerSugar.value,
};

/** What is asked of a hive's stores where nothing else is said: enough for now in spring, in lb. */
export const ENOUGH_IN_SPRING: Estimate = exactly(sources.storesInSpring.value);

/**
 * Honey that bees use in so many days, in lb: each bee at the winter rate, and what it takes to
 * rear the brood that is replaced in that time. The winter rate is that of bees without brood; bees
 * that fly or keep brood warm use more.
 *
 * @param bees - adult bees
 * @param days - over 0
 * @param brood - full frames of brood, deep, that stay as many; null or 0 for none
 * @example honeyUsed(exactly(19200), 30, null).middle // 6.92
 */
export function honeyUsed(bees: Estimate, days: number, brood: Estimate | null): Estimate {
  const { winterUseLeast, winterUseMost, honeyPerBeeLeast, honeyPerBeeMost } = sources;
  const reared = (full: number): number => (full * 2 * cellsOfSide(DEEP, 100) * days) / WORKER_DAYS;
  const used = (bees: number, full: number, mg: number, grams: number): number =>
    (bees * days * mg + reared(full) * grams * 1000) / MG_PER_POUND;
  const [low, high] = [
    used(bees.low, brood?.low ?? 0, winterUseLeast.value, honeyPerBeeLeast.value),
    used(
      bees.high ?? Infinity,
      brood === null ? 0 : (brood.high ?? Infinity),
      winterUseMost.value,
      honeyPerBeeMost.value,
    ),
  ];
  const middle = used(
    bees.middle,
    brood?.middle ?? 0,
    (winterUseLeast.value + winterUseMost.value) / 2,
    (honeyPerBeeLeast.value + honeyPerBeeMost.value) / 2,
  );
  return { ...between(low, low), middle, high: Number.isFinite(high) ? high : null };
}

/** What stores lack of a target, in their unit; never under 0, and less the more stores there are. */
export function shortOfTarget(stores: Estimate, target: Estimate): Estimate {
  const short = (wanted: number, there: number): number => Math.max(0, wanted - there);
  return {
    ...stores,
    low: stores.high === null ? 0 : short(target.low, stores.high),
    middle: short(target.middle, stores.middle),
    high: target.high === null ? null : short(target.high, stores.low),
    note: bothNotes(stores.note, target.note),
  };
}
