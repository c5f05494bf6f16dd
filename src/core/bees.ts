import { deepEquivalent, DEEP, frameOf, type FrameSize } from "./comb.js";
import { scale, type Estimate } from "./estimate.js";
import { sources } from "./sources.js";

/**
 * How many bees a deep comb holds on both sides: the published figures, each for what it measured.
 * `well covered` and `fully covered` are of a comb that bees cover; `average` is of occupied combs,
 * not full; `liebefeld` is that method's 125 bees an eighth of a Zander side.
 */
export const BEES_PER_FRAME = {
  "well covered": sources.beesWellCovered.value,
  "fully covered": sources.beesFullyCovered.value,
  average: sources.beesAverageOccupied.value,
  liebefeld: (16 * sources.beesPerEighth.value) / deepEquivalent(frameOf("zander")),
} as const;

/**
 * Bees on frames of bees.
 *
 * @param frames - frames of bees
 * @param perDeep - bees on one deep
 * @param frame - the frame that was counted
 * @example bees(exactly(8)).middle // 19200
 */
export function bees(
  frames: Estimate,
  perDeep: number = BEES_PER_FRAME["well covered"],
  frame: FrameSize = DEEP,
): Estimate {
  return scale(frames, perDeep * deepEquivalent(frame));
}

/** Frames of bees that so many bees make: the way back of `bees`. */
export function framesOf(
  amount: Estimate,
  perDeep: number = BEES_PER_FRAME["well covered"],
  frame: FrameSize = DEEP,
): Estimate {
  return scale(amount, 1 / (perDeep * deepEquivalent(frame)));
}

/**
 * Bees on one side of a comb.
 *
 * @param percent - of the side that bees cover, 0 to 100
 * @example beesOnSide(exactly(50)).middle // 600
 */
export function beesOnSide(
  percent: Estimate,
  perDeep: number = BEES_PER_FRAME["well covered"],
  frame: FrameSize = DEEP,
): Estimate {
  return scale(percent, (perDeep * deepEquivalent(frame)) / 200);
}

export const WEIGHT_UNITS = ["lb", "kg", "bees"] as const;
export type WeightUnit = (typeof WEIGHT_UNITS)[number];

/**
 * Bees in pounds or kilograms, and back. A pound holds about 3,500 bees, and 3,000 to 5,000 are
 * found: without a figure of the user's own the result carries that range.
 *
 * @param perPound - the user's own bees a pound, null for the published figure and its range
 * @example weighBees(exactly(3), "lb", "bees", null) // 9000 to 15000, middle 10500
 */
export function weighBees(
  amount: Estimate,
  from: WeightUnit,
  to: WeightUnit,
  perPound: number | null,
): Estimate {
  const perKilogram = sources.poundsPerKilogram.value;
  const pounds = (value: Estimate): Estimate => (from === "kg" ? scale(value, perKilogram) : value);
  const out = (value: Estimate): Estimate => (to === "kg" ? scale(value, 1 / perKilogram) : value);
  if (from !== "bees" && to !== "bees") return out(pounds(amount));
  if (from === to) return amount;
  const middle = perPound ?? sources.beesPerPound.value;
  const fewest = perPound ?? sources.beesPerPoundLeast.value;
  const most = perPound ?? sources.beesPerPoundMost.value;
  const weight = pounds(amount);
  const convert = (value: number, by: number): number =>
    from === "bees" ? value / by : value * by;
  const [least, greatest] = from === "bees" ? [most, fewest] : [fewest, most];
  return out({
    ...weight,
    low: convert(weight.low, least),
    middle: convert(weight.middle, middle),
    high: weight.high === null ? null : convert(weight.high, greatest),
  });
}
