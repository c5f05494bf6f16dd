import { checkBrood } from "../core/brood.js";
import { framesAhead, type Course } from "../core/colony.js";
import { sum } from "../core/estimate.js";
import { averageForecast, BROOD_DAYS, type Forecast } from "../core/forecast.js";
import { Refusal } from "../core/refusal.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { checkRows, eachHive, type HiveCells } from "./hive-cells.js";
import { daysBetween, layingParameter, seasonParameter, trustIn } from "./forecast-cells.js";
import { choice, frameSize, hives, number } from "./parameters.js";
import { checkSingle } from "./rows.js";
import { BROOD_UNITS, cellsAt, type BroodColumns } from "./stages.js";
import { dateAt } from "./dates.js";
import { writtenParameter, yearOfRow } from "./written.js";

const PARTS = ["middle", "low", "high"] as const;

/** What both functions take of a hive, in this order. */
const ofHive = [
  optional(hives("brood")),
  optional(hives("brood_cover")),
  optional(hives("open")),
  optional(hives("eggs")),
  choice("unit", BROOD_UNITS),
  seasonParameter,
  layingParameter,
  number("space", 100),
  frameSize("frame"),
  number("fill", 100),
] as const;

const parameters = [
  hives("frames"),
  hives("seen"),
  hives("on"),
  ...ofHive,
  choice("part", [...PARTS, "all", "note"]),
  writtenParameter,
] as const;

/**
 * Frames of bees of each hive on a later day, from its bees and brood of today, with the band that holds nine hives in ten.
 *
 * @remarks Half way, as a power of their ratio, between today's bees and what brood and deaths alone
 * would leave: better than either (docs/forecast.md: 0.83 of the error of "same as today").
 * Adults die at 3.5 % a day in build-up, 5.5 % in summer, 6 % in autumn, 0.5 % in a winter without
 * brood or laying, by the calendar of the north where no season is said; for old bees out of winter
 * storage give your own percent. The middle of each figure is taken: what the eye misses is in the
 * band.
 * Brood without open and eggs columns is taken as all stages, 1 : 1.5 : 3.2 as found in the field.
 * @example =COMB.FORECAST(8,DATE(2026,3,28),DATE(2026,4,11),4) gives 9.26, with "low" 4.94 and "high" 14.3.
 * @customfunction FORECAST
 * @helpurl https://localhost:3000/help.html#FORECAST
 * @param frames A row a hive: frames of bees, or the counts of its boxes.
 * @param seen Date of the inspection, one or a row each.
 * @param on Date to forecast, one or a row each.
 * @param brood A row a hive: combs with brood where their cover is given, else full frames, or what unit says; capped brood alone where open or eggs have their own columns. A blank is not judged: write none for none.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100: one, or a row each.
 * @param open A row a hive: open brood, in the unit.
 * @param eggs A row a hive: eggs, in the unit.
 * @param unit "frames" (also where left out: full frames, both sides), "cells", or "percent" of combs, a column a comb.
 * @param season "build-up", "summer", "autumn", "winter", or adult bees that die a day in percent, such as 5; by the date where left out.
 * @param laying Eggs a day that go on being laid, or "today" for what today's eggs show; or "none"; beyond 21 days it must be said.
 * @param space Most frames of bees that the boxes hold; no limit where left out.
 * @param frame Frame that is counted: deep where left out.
 * @param fill Percent of the brood's cells that hold brood; 100 where left out.
 * @param part "middle" (also where left out), "low", "high", "all" three beside each other, or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames", "fractions", "1904 dates", "day first" or "month first" for dates that are text; several with commas.
 * @returns Frames of bees, a row a hive; blank for a hive that was not opened.
 */
export function FORECAST(
  frames: unknown[][],
  seen: unknown[][],
  on: unknown[][],
  brood?: unknown[][],
  brood_cover?: unknown[][],
  open?: unknown[][],
  eggs?: unknown[][],
  unit?: unknown,
  season?: unknown,
  laying?: unknown,
  space?: unknown,
  frame?: unknown,
  fill?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [
    frames,
    seen,
    on,
    brood,
    brood_cover,
    open,
    eggs,
    unit,
    season,
    laying,
    space,
    frame,
    fill,
    part,
    written,
  ];
  return answer(parameters, values, (bees, seen, on, ...rest) => {
    const [part, writing] = [rest[10], rest[11]];
    const [brood, cover, open, eggs, unit, season, laying, space, frame, fill] = rest;
    const columns = { brood, cover, open, eggs, unit, frame, fill: fill ?? 100 };
    const hive = hiveReader({ bees, seen, brood: columns, season, laying, space, writing });
    const parts = part === "all" ? PARTS : [part];
    checkSingle([on]);
    return eachHive([bees, seen, on, brood, cover, open, eggs], parts.length, (i) => {
      const from = dateAt(seen, i, writing);
      const to = dateAt(on, i, writing);
      if (from === null || to === null) {
        throw new Refusal(`the date is blank: ${from === null ? "seen" : "on"}`);
      }
      const days = daysBetween(from, to, "on");
      const told = hive(i, from, days);
      return parts.map((p): Cell => (p === "note" ? trustIn(days, laying, space) : told[p]));
    });
  });
}

/** A sheet's hives as both functions read them. */
interface Hives extends Course {
  readonly bees: HiveCells;
  readonly seen: HiveCells;
  readonly brood: BroodColumns;
  readonly writing: Writing;
}

/** Reads a row as a hive and forecasts it, in frames. */
function hiveReader({
  bees,
  seen,
  brood,
  writing,
  ...course
}: Hives): (i: number, from: number, days: number) => Forecast {
  checkSingle([seen, brood.cover]);
  return (i, from, days) => {
    const year = yearOfRow(seen, writing)(i);
    const { middle } = sum(bees.combs(i, writing, year));
    // A hive without bees raises none, whatever its brood.
    const stages = middle === 0 ? [] : cellsAt(brood, i, writing, year);
    const cells = stages.reduce((total, stage) => total + stage.cells, 0);
    checkBrood(cells, brood.frame, course.space);
    const hive = { day: from, frames: middle, frame: brood.frame, brood: stages };
    return framesAhead(hive, days, course);
  };
}

const MOST_DAYS = 120;
const daysParameters = [
  hives("frames"),
  hives("seen"),
  number("days", MOST_DAYS),
  ...ofHive,
  writtenParameter,
] as const;
const DAYS = 30;

/**
 * Frames of bees day by day, of one hive or the average of a column, with the band that holds nine in ten, spilled.
 *
 * @remarks As FORECAST. The average's band holds the part of the error that all hives of one yard and
 * date share, which no number of hives lessens. All hives are forecast from the same day.
 * @example =COMB.FORECAST_DAYS(8,DATE(2026,3,28),14,4) gives fifteen rows under a heading, from 28 March to 11 April.
 * @customfunction FORECAST_DAYS
 * @helpurl https://localhost:3000/help.html#FORECAST_DAYS
 * @param frames A row a hive: frames of bees, or the counts of its boxes.
 * @param seen Date of the inspection, one for all.
 * @param days Days to forecast, up to 120; where left out 30, or 21 where laying is not said.
 * @param brood A row a hive: combs with brood where their cover is given, else full frames, or what unit says; capped brood alone where open or eggs have their own columns. A blank is not judged: write none for none.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100: one, or a row each.
 * @param open A row a hive: open brood, in the unit.
 * @param eggs A row a hive: eggs, in the unit.
 * @param unit "frames" (also where left out: full frames, both sides), "cells", or "percent" of combs, a column a comb.
 * @param season "build-up", "summer", "autumn", "winter", or adult bees that die a day in percent, such as 5; by the date where left out.
 * @param laying Eggs a day that go on being laid, or "today" for what today's eggs show; or "none"; beyond 21 days it must be said.
 * @param space Most frames of bees that the boxes of a hive hold; no limit where left out.
 * @param frame Frame that is counted: deep where left out.
 * @param fill Percent of the brood's cells that hold brood; 100 where left out.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames", "fractions", "1904 dates", "day first" or "month first" for dates that are text; several with commas.
 * @returns A heading row, then a row a day: date, frames of bees, low, high, note.
 */
export function FORECAST_DAYS(
  frames: unknown[][],
  seen: unknown[][],
  days?: unknown,
  brood?: unknown[][],
  brood_cover?: unknown[][],
  open?: unknown[][],
  eggs?: unknown[][],
  unit?: unknown,
  season?: unknown,
  laying?: unknown,
  space?: unknown,
  frame?: unknown,
  fill?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [
    frames,
    seen,
    days,
    brood,
    brood_cover,
    open,
    eggs,
    unit,
    season,
    laying,
    space,
    frame,
    fill,
    written,
  ];
  return answer(daysParameters, values, (bees, seen, days, ...rest) => {
    const [brood, cover, open, eggs, unit, season, laying, space, frame, fill, writing] = rest;
    const columns = { brood, cover, open, eggs, unit, frame, fill: fill ?? 100 };
    const hive = hiveReader({ bees, seen, brood: columns, season, laying, space, writing });
    if (seen.rows > 1) throw new Refusal(`seen has ${seen.rows} rows: give one date for all hives`);
    const from = dateAt(seen, 0, writing);
    if (from === null) throw new Refusal("seen is blank, and the forecast begins there");
    checkRows([bees, brood, cover, open, eggs]);
    const opened = Array.from({ length: bees.rows }, (_, i) => i).filter(
      (i) => !bees.isUncounted(i),
    );
    if (opened.length === 0) throw new Refusal("frames: no hive is opened");
    const last = days ?? (laying === null ? BROOD_DAYS : DAYS);
    const of = opened.length > 1 ? "lots" : "hives";
    const rows = Array.from({ length: last + 1 }, (_, day): Cell[] => {
      const told = opened.map((i) => hive(i, from, day));
      const middles = told.map(({ middle }) => middle);
      const { middle, low, high } = told.length > 1 ? averageForecast(middles, day, 0) : told[0]!;
      return [from + day, middle, low, high, day === last ? trustIn(day, laying, space, of) : ""];
    });
    return [["Date", "Frames of bees", "Low", "High", "Note"], ...rows];
  });
}

export const forecastFunction: SheetFunction = {
  id: "FORECAST",
  parameters,
  evaluate: FORECAST,
};
export const forecastDays: SheetFunction = {
  id: "FORECAST_DAYS",
  parameters: daysParameters,
  evaluate: FORECAST_DAYS,
  table: true,
  dates: ["Date"],
};
