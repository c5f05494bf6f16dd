import { development } from "./clock.js";
import { mean } from "./mean.js";
import { sources } from "./sources.js";
import type { AdultLoss } from "./adult-loss.js";

/** A colony on the day it was looked at. */
export interface Colony {
  readonly bees: number;
  /** Bees that will emerge on day 1, 2, … after that day. */
  readonly emerging: readonly number[];
}

/** Bees on a later day, with the band that holds nine in ten. */
export interface Forecast {
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The bees that brood and deaths alone would leave: today's and those that emerge, each less by the
 * daily loss of adults since. An adult that emerges on a day dies from the next day on.
 *
 * @param seen - serial number of the day on which the colony was looked at
 * @param days - whole days later
 * @example
 * // 1,000 bees, 100 more on each of 2 days, no loss: 1,200
 * cohort({ bees: 1000, emerging: [100, 100] }, 46110, 2, () => 0)
 */
export function cohort(
  { bees, emerging }: Colony,
  seen: number,
  days: number,
  loss: AdultLoss,
): number {
  let alive = bees;
  for (let day = 1; day <= days; day++) {
    alive = alive * (1 - loss(seen + day)) + (emerging[day - 1] ?? 0);
  }
  return alive;
}

/**
 * Bees on a later day.
 *
 * What brood and deaths alone would leave is no better a forecast than today's count: it goes too
 * far, since both counts are judged by eye and a colony keeps to its place. Half way between the two,
 * as a power of their ratio, is better in every season of the field studies that it was fitted to
 * (docs/forecast.md). A colony without bees raises none.
 *
 * @param seen - serial number of the day on which the colony was looked at
 * @param days - whole days later, 0 and over
 * @param most - bees that the boxes hold
 */
export function forecast(
  colony: Colony,
  seen: number,
  days: number,
  loss: AdultLoss,
  most = Infinity,
): Forecast {
  const left = cohort(colony, seen, days, loss);
  const pull = sources.forecastPull.value;
  const middle = colony.bees === 0 ? 0 : colony.bees * (left / colony.bees) ** pull;
  return banded(middle, hiveError(days), most);
}

/** The band of one hive about its forecast: a colony fails further than it outgrows its forecast. */
function banded(bees: number, error: number, most: number): Forecast {
  const middle = Math.min(most, bees);
  return {
    middle,
    low: Math.min(middle, bees * Math.exp(-sources.forecastLowReach.value * error)),
    high: Math.min(most, bees * Math.exp(sources.forecastHighReach.value * error)),
  };
}

/**
 * Standard deviation of the logarithm of one hive's forecast: on the day itself what two observers
 * differ by, from three weeks on what the studies show, beyond their longest span more.
 */
export function hiveError(days: number): number {
  return Math.hypot(withinError(days), sharedError(days));
}

/** The part of a forecast's error by which the hives of one yard and date differ. */
export function withinError(days: number): number {
  const observer = sources.broodObservers.value / 100;
  const full = sources.forecastWithin.value;
  return Math.sqrt(observer ** 2 + grown(days) * (full ** 2 - observer ** 2));
}

/** The part that all hives of one yard and date share: no number of hives lessens it. */
export function sharedError(days: number): number {
  return Math.sqrt(grown(days)) * sources.forecastBetween.value;
}

/** Days after which bees come of eggs that were not laid yet when the hive was seen. */
export const BROOD_DAYS = development("worker").expected;

function grown(days: number): number {
  return Math.min(1, days / BROOD_DAYS) * Math.max(1, days / sources.forecastMostDays.value);
}

/**
 * The average of many hives on a later day: each forecast has its own error, and all share one.
 *
 * @param hives - the forecast of each hive, at least one
 * @param sampling - standard error of the average by sampling alone, in the same unit; 0 where every
 *   hive was opened
 * @returns the average with the band that holds nine lots in ten, and the standard deviation of its
 *   logarithm
 */
export function averageForecast(
  hives: readonly number[],
  days: number,
  sampling: number,
): Forecast & { readonly error: number } {
  const middle = mean(hives)!;
  if (middle === 0) return { middle, low: 0, high: 0, error: 0 };
  const own = withinError(days) / Math.sqrt(hives.length);
  const error = Math.hypot(sharedError(days), own, sampling / middle);
  const reach = NINE_IN_TEN * error;
  return { middle, low: middle * Math.exp(-reach), high: middle * Math.exp(reach), error };
}

/** The normal distribution's own: nine in ten lie within so many standard deviations. */
const NINE_IN_TEN = 1.6448536269514722;
