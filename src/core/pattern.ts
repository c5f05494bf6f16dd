import { CELL_DENSITIES } from "./cells.js";
import type { Estimate } from "./estimate.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";

export const BROOD_SEASONS = ["end of winter", "build-up", "summer", "autumn"] as const;
export type BroodSeason = (typeof BROOD_SEASONS)[number];

/** Where drone brood stands: on its own cells together, or scattered in worker cells. */
export const PLACES = ["together", "scattered"] as const;
export type DronePlace = (typeof PLACES)[number];

/** A word to sort by and a sentence to read; the word is empty where nothing is known to judge by. */
export interface Verdict<V extends string> {
  readonly verdict: V | "";
  readonly note: string;
}

/** What every warning says: what was seen has many causes, and a sheet tells none from another. */
const ASK = "look again, and ask someone who knows, such as the apiary inspector";

/** Percent of brood that is drone brood, by cells and by area. */
export interface DroneShare {
  readonly byCells: number;
  readonly byArea: number;
}

/**
 * The share of drone brood by cells and by area. Drone cells are wider, so that the same brood has
 * the lesser share by cells.
 *
 * @param drone - cells or area of drone brood
 * @param worker - the same of worker brood
 * @throws Refusal where there is no brood
 * @example droneShare(5, 95, "area").byCells // 3.15
 */
export function droneShare(drone: number, worker: number, countedIn: "cells" | "area"): DroneShare {
  if (drone + worker === 0) throw new Refusal("no brood, so it has no drone share", "unknown");
  const { drone: droneCells, worker: workerCells } = CELL_DENSITIES.counted;
  const share = (d: number, w: number): number => (100 * d) / (d + w);
  return countedIn === "cells"
    ? {
        byCells: share(drone, worker),
        byArea: share(drone / droneCells, worker / workerCells),
      }
    : {
        byCells: share(drone * droneCells, worker * workerCells),
        byArea: share(drone, worker),
      };
}

/**
 * What a drone share means where the season and the place of the drone brood are known.
 *
 * @param byArea - percent of brood area
 */
export function droneVerdict(
  byArea: number,
  season: BroodSeason | null,
  place: DronePlace | null,
): Verdict<"normal" | "look again"> {
  const most = sources.droneShareMost.value;
  if (byArea === 0) {
    return season === "end of winter"
      ? { verdict: "normal", note: "no drone brood at the end of winter is normal" }
      : { verdict: "", note: "no drone brood" };
  }
  if (place === "scattered") {
    return {
      verdict: "look again",
      note: `domed caps scattered in worker cells are a warning at any share: ${ASK}`,
    };
  }
  if (byArea > most) {
    return { verdict: "look again", note: `over ${most} % of brood area is drone brood: ${ASK}` };
  }
  if (place === null) {
    return { verdict: "", note: "say whether it stands together or scattered in worker cells" };
  }
  if (season === "build-up" || season === "summer") {
    const { droneShareMay: may, droneShareJune: june } = sources;
    return {
      verdict: "normal",
      note: `together and up to about ${most} % is normal; ${may.value} % in May and ${june.value} % in June were measured`,
    };
  }
  return {
    verdict: "",
    note:
      season === null
        ? "say the season"
        : `drone brood that stands together: no figure is known for the ${season}`,
  };
}

/**
 * How solid capped brood is, from the percent of cells in the patch that are filled.
 *
 * @param fill - percent, 0 to 100
 */
export function solidness(fill: Estimate): Verdict<"solid" | "spotty"> & { empty: number } {
  const spotty = sources.spottyEmpty.value;
  const isSpotty = (filled: number): boolean => 100 - filled >= spotty;
  const empty = 100 - fill.middle;
  const usual = `solid brood has ${sources.solidEmpty.value} to ${spotty} % of empty cells (from memory)`;
  if (isSpotty(fill.low) !== isSpotty(fill.high ?? fill.middle)) {
    const verdict = isSpotty(fill.middle) ? "spotty" : "solid";
    return { verdict, empty, note: `judged too widely to be sure: ${usual}` };
  }
  return isSpotty(fill.middle)
    ? { verdict: "spotty", empty, note: `${usual}: ${ASK}` }
    : { verdict: "solid", empty, note: usual };
}
