import { dayOfSerial } from "./serial.js";
import { sources } from "./sources.js";

/** Times of the year in which adult bees die at different rates. */
export const LOSS_SEASONS = ["build-up", "summer", "autumn", "winter"] as const;
export type LossSeason = (typeof LOSS_SEASONS)[number];

const LOSS: Readonly<Record<LossSeason, number>> = {
  "build-up": sources.adultLossBuildUp.value,
  summer: sources.adultLossSummer.value,
  autumn: sources.adultLossAutumn.value,
  winter: sources.adultLossWinter.value,
};

/** Share of adult bees that die in a day. */
export type AdultLoss = (day: number) => number;

/**
 * The daily loss of adult bees: of one season, of the user's own rate, or by the calendar.
 *
 * By the calendar of the north it is build-up from March to May, summer from June to August, autumn
 * from September to November. From December to February a hive without brood has winter's loss, and
 * one that rears brood that of build-up. Bees that come old out of winter storage die faster than
 * any figure here: no source gives one, so the rate is the user's to give.
 *
 * @param season - a season, a share a day over 0 and up to 0.5, or null for the calendar
 * @param rears - whether the hive has brood
 * @example adultLoss(null, true)(46110) // 0.035, on 29 March 2026
 */
export function adultLoss(season: LossSeason | number | null, rears: boolean): AdultLoss {
  if (typeof season === "number") return () => season;
  if (season !== null) return () => LOSS[season];
  return (day) => {
    const { month } = dayOfSerial(day);
    if (month >= 3 && month <= 5) return LOSS["build-up"];
    if (month >= 6 && month <= 8) return LOSS.summer;
    if (month >= 9 && month <= 11) return LOSS.autumn;
    return rears ? LOSS["build-up"] : LOSS.winter;
  };
}
