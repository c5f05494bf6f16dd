import type { Contract } from "./contract.js";
import { normalQuantile } from "./distributions.js";
import { first } from "./first.js";
import type { Lot } from "./lot.js";
import { observerFrames } from "./observer.js";
import { halfWidth, ratioOf, tailOf } from "./ratio.js";
import { Refusal } from "./refusal.js";
import { TOLERANCE } from "./tolerance.js";
import { drawnOf, typicalSpread } from "./units.js";

/** What is known of a lot before more of it is opened. */
export interface SamplePlan {
  readonly kind: "hives" | "pallets";
  /** Hives in the lot; units in it, and the mean of hives on one. */
  readonly size: number;
  readonly inLot: number;
  readonly hivesOnUnit: number;
  /** Share of units that count in the average, 0 to 1. */
  readonly counting: number;
  /** Standard deviation of the units, in frames, and of units as they usually are. */
  readonly spread: number;
  readonly typical: number;
  readonly spreadFrom: "the hives opened" | "given" | "typical";
  /** Frames by which one observer's average is usually off. */
  readonly observer: number;
}

/** How many are to be opened in all, and the margin that they give. */
export interface ToOpen {
  readonly units: number;
  readonly hives: number;
  readonly margin: number;
}

/**
 * The plan that the opened hives of a lot make; a typical spread where they show none.
 *
 * @param spread - frames, null for the one that the opened hives show
 */
export function planOfLot(contract: Contract, lot: Lot, spread: number | null): SamplePlan {
  const { kind, units, inLot, share } = drawnOf(contract, lot);
  const ratio = ratioOf(units, share);
  if (ratio === null) throw new Refusal("no opened hive counts in the average", "unknown");
  const hivesOnUnit = lot.size / inLot;
  const typical = typicalSpread(contract, ratio.ratio) / Math.sqrt(hivesOnUnit);
  const seen = ratio.spread || null;
  return {
    kind,
    size: lot.size,
    inLot: Math.ceil(inLot - TOLERANCE),
    hivesOnUnit,
    counting: ratio.units / units.length,
    spread: spread ?? seen ?? typical,
    typical: spread === null ? typical : 0,
    spreadFrom: spread !== null ? "given" : seen === null ? "typical" : "the hives opened",
    observer: observerFrames(contract, ratio.ratio),
  };
}

/**
 * The plan for a lot of which nothing is opened: hives drawn singly, all of them counting.
 *
 * @param contract - null where none is given; its average makes the typical spread
 * @param spread - frames, null for a typical one
 */
export function planOfSpread(
  contract: Contract | null,
  size: number,
  spread: number | null,
): SamplePlan {
  const average = contract?.averageFrames ?? 0;
  if (spread === null && average === 0) {
    throw new Refusal(
      "no spread to go by: give it, the yard sheet, or a contract that asks an average",
    );
  }
  return {
    kind: "hives",
    size,
    inLot: size,
    hivesOnUnit: 1,
    counting: 1,
    spread: spread ?? typicalSpread(contract!, average),
    typical: 0,
    spreadFrom: spread === null ? "typical" : "given",
    observer: contract === null ? 0 : observerFrames(contract, average),
  };
}

/**
 * The fewest units to open for an interval of the lot's average within a margin, as `lotAverage`
 * would make it if the units differ as the plan says. A sample that differs more comes out wider.
 *
 * @param margin - frames either way
 * @param confidence - percent
 * @throws Refusal where the observers' error alone is over the margin
 */
export function toOpen(plan: SamplePlan, margin: number, confidence: number): ToOpen {
  const tail = tailOf(confidence);
  const observer = normalQuantile(1 - tail) * plan.observer;
  if (observer > margin) {
    throw new Refusal(
      `the observers' error alone is ${observer.toFixed(2)} frames either way at ${confidence} %: ` +
        `no number of hives brings the margin to ${margin}`,
    );
  }
  const marginOf = (units: number): number => {
    const counting = Math.max(2, Math.floor(units * plan.counting + TOLERANCE));
    const ratio = {
      ratio: 0,
      units: counting,
      spread: plan.spread,
      skew: 0,
      drawn: Math.min(1, units / plan.inLot),
    };
    return Math.hypot(halfWidth(ratio, tail, plan.typical)!, observer);
  };
  const least = Math.min(2, plan.inLot);
  const units = first(least, plan.inLot, (n) => marginOf(n) <= margin);
  const hives = Math.min(plan.size, Math.round(units * plan.hivesOnUnit));
  return { units, hives, margin: marginOf(units) };
}
