import { BROOD_DAYS } from "../../core/forecast.js";
import type { Contract } from "../../core/contract.js";
import { countLot, lotOf, type Look, type LotCount } from "../../core/lot.js";
import { lotForecast, type LotForecast } from "../../core/lot-forecast.js";
import { lotPay } from "../../core/pay.js";
import { Refusal } from "../../core/refusal.js";
import { lotAverage, lotChance, type LotAverage } from "../../core/sampling.js";
import { orWhy, type OrWhy } from "../or-why.js";

/** What the pane says of a lot under a contract. */
export interface JudgedLot {
  readonly count: LotCount;
  readonly sure: LotAverage;
  /** 0 to 1. */
  readonly chance: OrWhy<number>;
  readonly pay: OrWhy<number>;
}

const CONFIDENCE = 95;

/** The same as LOT, LOT_CHANCE and LOT_PAY say of the sheet. */
export function judged(contract: Contract, looks: readonly Look[], size: number): JudgedLot {
  const lot = lotOf(contract, looks, size);
  return {
    count: countLot(contract, lot),
    sure: lotAverage(contract, lot, CONFIDENCE),
    chance: orWhy(() => lotChance(contract, lot)),
    pay: orWhy(() => lotPay(contract, lot, null).total),
  };
}

/** Frames of each opened hive, as the histogram shows them. */
export function framesOf(looks: readonly Look[]): number[] {
  return looks.map(({ hive }) => hive.frames.middle);
}

/**
 * A lot's average day by day from its last look on, as far as the brood of the first goes; a sentence
 * where it cannot be told.
 */
export function ahead(
  contract: Contract,
  looks: readonly Look[],
  size: number,
): OrWhy<readonly (LotForecast & { readonly date: number })[]> {
  return orWhy(() => {
    const days = looks.flatMap(({ day }) => day ?? []);
    if (days.length < looks.length) {
      throw new Refusal("a forecast begins at the date of each hive: give the sheet a date column");
    }
    const last = Math.max(...days);
    const span = Math.min(...days) + BROOD_DAYS - last;
    if (span < 0) {
      throw new Refusal(
        `the hives were looked at more than ${BROOD_DAYS} days apart: the brood of the first tells of none of the days ahead`,
      );
    }
    const course = { season: null, laying: null, space: null };
    return Array.from({ length: span + 1 }, (_, k) => ({
      date: last + k,
      ...lotForecast(contract, looks, size, last + k, course),
    }));
  });
}

/** Hives in each whole frame: bin k holds those from k to under k + 1. */
export function binsOf(frames: readonly number[], most: number): number[] {
  const bins = Array<number>(most).fill(0);
  for (const value of frames) bins[Math.min(most - 1, Math.floor(value))]!++;
  return bins;
}
