import { adultLoss, type LossSeason } from "./adult-loss.js";
import { bees } from "./bees.js";
import type { FrameSize } from "./comb.js";
import { emergence, withLaying, type BroodInStage } from "./emergence.js";
import { exactly } from "./estimate.js";
import { BROOD_DAYS, forecast, type Forecast } from "./forecast.js";
import { laying } from "./laying.js";
import { Refusal } from "./refusal.js";

/** A hive on the day it was looked at. */
export interface Seen {
  /** Serial number of that day. */
  readonly day: number;
  /** Frames of bees, of this frame. */
  readonly frames: number;
  readonly frame: FrameSize;
  readonly brood: readonly BroodInStage[];
}

/** What is said of the weeks between the look and the day that counts. */
export interface Course {
  readonly season: LossSeason | number | null;
  /** Eggs a day that go on being laid, or as many as today's brood shows; null where nobody says. */
  readonly laying: number | "today" | null;
  /** Most frames of bees that a hive's boxes hold. */
  readonly space: number | null;
}

/**
 * A hive's frames of bees some days after it was seen; one that goes on laying rears brood.
 *
 * @throws Refusal of kind `unknown` for days that hang on a laying that nobody says
 */
export function framesAhead(
  { day, frames, frame, brood }: Seen,
  days: number,
  course: Course,
): Forecast {
  if (course.laying === null && days > BROOD_DAYS) {
    throw new Refusal(
      `${days} days ahead bees come of eggs that are not laid yet: say by laying that it goes on as "today", ` +
        'or how many eggs a day, or "none"',
      "unknown",
    );
  }
  const eggs = brood.find(({ stage }) => stage === "egg")?.cells ?? 0;
  const rate =
    course.laying === "today" ? (laying(eggs, null, null).byEggs ?? 0) : (course.laying ?? 0);
  const rears = rate > 0 || brood.some(({ cells }) => cells > 0);
  const beesOn = (count: number): number => bees(exactly(count), undefined, frame).middle;
  const { middle, low, high } = forecast(
    { bees: beesOn(frames), emerging: withLaying(emergence(brood, "worker"), rate, days) },
    day,
    days,
    adultLoss(course.season, rears),
    course.space === null ? Infinity : beesOn(course.space),
  );
  const perFrame = beesOn(1);
  return { middle: middle / perFrame, low: low / perFrame, high: high / perFrame };
}
