import { cellsOfBrood, checkBrood } from "./brood.js";
import { framesAhead, type Course } from "./colony.js";
import type { Contract } from "./contract.js";
import { normalCdf } from "./distributions.js";
import { ofAllStages } from "./emergence.js";
import { exactly } from "./estimate.js";
import { averageForecast, type Forecast } from "./forecast.js";
import { countLot, isCounted, lotOf, type Look } from "./lot.js";
import { plural } from "./plural.js";
import { Refusal } from "./refusal.js";
import { lotAverage } from "./sampling.js";

/** A lot's average on a later day, under the contract's rules. */
export interface LotForecast extends Forecast {
  /** Days from the first and from the last look. */
  readonly days: readonly [number, number];
  readonly counted: number;
  /** Whether the forecast itself reaches what is asked; null where no average is asked. */
  readonly met: boolean | null;
  /** Chance that the lot's average on that day reaches what is asked, 0 to 1; null as above. */
  readonly chance: number | null;
  /** Whether the chance holds the error of not having opened every hive. */
  readonly sampled: boolean;
}

/**
 * The average of a lot on a later day, and the chance that it meets the contract then.
 *
 * Each opened hive is forecast from its own bees and brood; the contract counts the forecasts as it
 * counts hives. The band holds each hive's own error, the error that all share, and that of not
 * having opened every hive. Brood is taken as of all stages.
 *
 * @param looks - each with its day and with its brood in full frames
 * @param size - hives in the lot, null where every hive was opened
 * @param on - serial number of the day
 * @throws Refusal for a hive without a day or brood, and a day before a look
 */
export function lotForecast(
  contract: Contract,
  looks: readonly Look[],
  size: number | null,
  on: number,
  course: Course,
): LotForecast {
  const days = looks.map((look) => daysTo(look, on));
  const later = looks.map((look, i) => lookOn(contract, look, days[i]!, course));
  const lot = lotOf(contract, later, size);
  const counted = lot.hives.filter((hive) => isCounted(contract, hive));
  if (counted.length === 0) throw new Refusal("no hive is forecast to reach the minimum");
  const span: [number, number] = [Math.max(...days), Math.min(...days)];
  const { se } = lotAverage(contract, lot, 90);
  const frames = counted.map((hive) => hive.counted);
  const { error, ...band } = averageForecast(frames, span[0], se ?? 0);
  const asked = contract.averageFrames;
  const most = contract.mostFrames || Infinity;
  return {
    ...band,
    high: Math.min(most, band.high),
    days: span,
    counted: counted.length,
    met: asked === 0 ? null : countLot(contract, lot).averageMet,
    chance: asked === 0 ? null : chanceOf(band.middle, asked, error),
    sampled: lot.hives.length < lot.size,
  };
}

/** Adds the hive to what is refused. */
function naming(id: string, body: () => void): void {
  try {
    body();
  } catch (error) {
    if (error instanceof Refusal) throw new Refusal(`hive ${id}: ${error.message}`, error.kind);
    throw error;
  }
}

function chanceOf(average: number, asked: number, error: number): number {
  if (average === 0) return 0;
  return normalCdf(Math.log(average / asked) / error, 0, 1);
}

function daysTo({ id, day }: Look, on: number): number {
  if (day === null)
    throw new Refusal(`hive ${id} has no date that can be one day, and the forecast begins there`);
  if (on >= day) return on - day;
  throw new Refusal(`the date lies ${plural(day - on, "day")} before hive ${id} was looked at`);
}

/** The same hive as it is forecast to be found; what else the contract asks of it is as today. */
function lookOn(contract: Contract, look: Look, days: number, course: Course): Look {
  const { hive, id } = look;
  if (hive.frames.dead || days === 0) return look;
  if (hive.brood === null) {
    throw new Refusal(
      `hive ${id}: no brood is judged: add a column "Brood" of all stages together`,
    );
  }
  const full = hive.brood.fullFrames;
  if (full === null) {
    throw new Refusal(`hive ${id}: brood is not known in full frames: combs need their cover`);
  }
  const cells = cellsOfBrood(full, contract.frame).middle;
  naming(id, () => checkBrood(cells, contract.frame, course.space));
  const seen = {
    day: look.day!,
    frames: hive.frames.middle,
    frame: contract.frame,
    brood: ofAllStages(cells),
  };
  const frames = exactly(framesAhead(seen, days, course).middle);
  return { ...look, hive: { ...hive, frames } };
}
