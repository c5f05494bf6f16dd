import { cellsOfSide } from "./cells.js";
import { deepEquivalent, frameOf, type FrameSize } from "./comb.js";
import { bothNotes, scale, type Estimate } from "./estimate.js";
import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";

export const WEIGHTS = ["lb", "kg"] as const;
export type Weight = (typeof WEIGHTS)[number];

/** What stores may be written in: full frames of honey, or their weight. */
export const STORES_UNITS = ["frames", "lb", "kg"] as const;
export type StoresUnit = (typeof STORES_UNITS)[number];

const GRAMS_PER_POUND = 1000 / sources.poundsPerKilogram.value;
const MEDIUM = deepEquivalent(frameOf("medium"));

/** Pounds of a weight, or a weight of pounds: `pounds * perPound("kg")` are kilograms. */
export function perPound(unit: Weight): number {
  return unit === "kg" ? 1 / sources.poundsPerKilogram.value : 1;
}

/**
 * Honey in one full frame, in lb, between the least and the most that are published. Deep and
 * medium are published; a frame between them lies between them by its area, and another has as
 * much a cm2 as the nearer of the two.
 *
 * @example honeyOfFrame(frameOf("deep")) // { least: 6, most: 8 }
 */
export function honeyOfFrame(frame: FrameSize): { least: number; most: number } {
  const size = deepEquivalent(frame);
  const between = (medium: number, deep: number): number => {
    if (size <= MEDIUM) return (medium * size) / MEDIUM;
    if (size >= 1) return deep * size;
    return medium + ((deep - medium) * (size - MEDIUM)) / (1 - MEDIUM);
  };
  const { deepHoneyLeast, deepHoneyMost, mediumHoneyLeast, mediumHoneyMost } = sources;
  return {
    least: between(mediumHoneyLeast.value, deepHoneyLeast.value),
    most: between(mediumHoneyMost.value, deepHoneyMost.value),
  };
}

/**
 * Honey in frames, in lb; its range is that of the count and of what a full frame holds.
 *
 * @param frames - full frames, as many parts as make one
 * @example honeyOfFrames(exactly(2), frameOf("deep")) // 12 to 16 lb, middle 14
 */
export function honeyOfFrames(frames: Estimate, frame: FrameSize): Estimate {
  const { least, most } = honeyOfFrame(frame);
  const { low, middle, high } = frames;
  return {
    ...frames,
    low: low * least,
    middle: (middle * (least + most)) / 2,
    high: high === null ? null : high * most,
  };
}

/** Stored pollen in full frames, both sides of every comb, in lb. */
export function pollenOfFrames(frames: Estimate, frame: FrameSize): Estimate {
  const grams = 2 * cellsOfSide(frame, 100) * sources.pollenPerCell.value;
  return scale(frames, grams / GRAMS_PER_POUND);
}

/**
 * What a hefted hive weighs more than its tare: honey and pollen together, and whatever the tare
 * leaves out. Both in one unit.
 *
 * @throws Refusal where the hive weighs less than its tare
 * @example heft(exactly(95), exactly(60)).middle // 35
 */
export function heft(weight: Estimate, tare: Estimate): Estimate {
  if (weight.middle < tare.middle) {
    throw new Refusal(
      `${weight.middle} is less than the tare of ${tare.middle}: stores cannot be negative`,
    );
  }
  const least = tare.high === null ? 0 : weight.low - tare.high;
  return {
    ...weight,
    low: Math.max(0, least),
    middle: weight.middle - tare.middle,
    high: weight.high === null ? null : weight.high - tare.low,
    note: bothNotes(weight.note, tare.note),
  };
}

/** Stores as they are written, in lb. */
export function storesInPounds(stores: Estimate, unit: StoresUnit, frame: FrameSize): Estimate {
  return unit === "frames" ? honeyOfFrames(stores, frame) : scale(stores, 1 / perPound(unit));
}

/** Refuses a weight that is written with the other unit behind it, such as `40 kg` among pounds. */
export function checkUnit(text: string, unit: StoresUnit | "bees"): void {
  const words = /(\p{L}+)\.?\s*$/u.exec(text.toLowerCase())?.[1] ?? "";
  const written = /^(lb|lbs|pounds?)$/.test(words)
    ? "lb"
    : /^(kg|kgs|kilos?)$/.test(words)
      ? "kg"
      : null;
  if (written !== null && written !== unit) {
    throw new Refusal(`${quote(text)} is in ${written}, and the unit given is ${unit}`);
  }
}
