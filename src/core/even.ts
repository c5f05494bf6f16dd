import {
  average,
  boundOf,
  isBetter,
  reaches,
  scoreOf,
  stateOf,
  type Destination,
  type Score,
  type State,
  type HiveGroup,
} from "./even-score.js";
import { Search } from "./even-search.js";
import { TOLERANCE } from "./tolerance.js";

/** A way to place every unit, and how good it is. */
export interface Placing {
  /** The place of each unit. */
  readonly of: readonly number[];
  readonly score: Score;
  /** No way is known to have less than this. */
  readonly bound: Score;
  /** Whether no other way is better. */
  readonly isBest: boolean;
}

/**
 * Places units so that the averages of the places differ as little as can be: the least of every
 * place is kept if that can be, then the range from the weakest to the strongest is as small as can
 * be. Neediest place first, then by exchanges; small cases are searched through to the best.
 *
 * @param places - with room for all units; the last stay short where there is more room
 */
export function placeEvenly(units: readonly HiveGroup[], places: readonly Destination[]): Placing {
  const counts = filled(places, units.length);
  const bound = boundOf(units, places, counts);
  const first = exchanged(units, places, neediestFirst(units, places, counts, bound.targets));
  const start = scoreOf(places, stateOf(units, places, first));
  if (reaches(start, bound)) return { of: first, score: start, bound, isBest: true };
  const search = new Search(units, places, counts, start, bound);
  const found = search.run();
  const of = found === null ? first : exchanged(units, places, found);
  const score = scoreOf(places, stateOf(units, places, of));
  return { of, score, bound, isBest: search.isComplete || reaches(score, bound) };
}

/** Units that each place gets, in order, so that only the last stay short. */
function filled(places: readonly Destination[], units: number): number[] {
  let left = units;
  return places.map((place) => {
    const taken = Math.min(place.units, left);
    left -= taken;
    return taken;
  });
}

/** Strongest unit first, each to the place whose open room needs the strongest hives. */
function neediestFirst(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  counts: readonly number[],
  targets: readonly number[],
): number[] {
  const mean = units.reduce((sum, unit) => sum + unit.hives, 0) / units.length;
  const lacks = counts.map((count, d) => count * mean * targets[d]!);
  const open = [...counts];
  const of = units.map(() => 0);
  const order = units.map((_, i) => i);
  order.sort((a, b) => units[b]!.frames - units[a]!.frames || a - b);
  for (const i of order) {
    let neediest = -1;
    for (let d = 0; d < places.length; d++) {
      if (open[d] === 0) continue;
      if (neediest < 0 || lacks[d]! / open[d]! > lacks[neediest]! / open[neediest]! + TOLERANCE) {
        neediest = d;
      }
    }
    of[i] = neediest;
    open[neediest]!--;
    lacks[neediest]! -= units[i]!.frames;
  }
  return of;
}

/** Exchanges two units as long as that makes the placing better, or as good and more even over all. */
function exchanged(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  from: number[],
): number[] {
  const of = [...from];
  const state = stateOf(units, places, of);
  const total = units.reduce((sum, unit) => sum + unit.frames, 0);
  const mean = total / units.reduce((sum, unit) => sum + unit.hives, 0);
  const move = (a: number, b: number, hives: number, frames: number): void => {
    state.hives[a]! -= hives;
    state.hives[b]! += hives;
    state.frames[a]! -= frames;
    state.frames[b]! += frames;
  };
  const unevenness = (a: number, b: number): number =>
    state.hives[a]! * (average(state, a) - mean) ** 2 +
    state.hives[b]! * (average(state, b) - mean) ** 2;
  let score = scoreOf(places, state);
  let edges = edgesOf(state);
  for (let improved = true; improved;) {
    improved = false;
    for (let i = 0; i < units.length; i++) {
      for (let j = i + 1; j < units.length; j++) {
        const [a, b] = [of[i]!, of[j]!];
        const frames = units[i]!.frames - units[j]!.frames;
        const hives = units[i]!.hives - units[j]!.hives;
        if (a === b || (frames === 0 && hives === 0)) continue;
        const before = unevenness(a, b);
        move(a, b, hives, frames);
        const isEvener = unevenness(a, b) < before - TOLERANCE;
        // Between places that are neither missed nor at an end nothing else can get better.
        const matters = isEvener || score.missed > 0 || edges.includes(a) || edges.includes(b);
        const now = matters ? scoreOf(places, state) : score;
        if (matters && (isBetter(now, score) || (isEvener && !isBetter(score, now)))) {
          [of[i], of[j]] = [b, a];
          score = now;
          edges = edgesOf(state);
          improved = true;
        } else {
          move(b, a, hives, frames);
        }
      }
    }
  }
  return of;
}

/** The weakest and the strongest place. */
function edgesOf(state: State): [number, number] {
  let [weakest, strongest] = [-1, -1];
  for (let d = 0; d < state.hives.length; d++) {
    if (state.hives[d] === 0) continue;
    if (weakest < 0 || average(state, d) < average(state, weakest)) weakest = d;
    if (strongest < 0 || average(state, d) > average(state, strongest)) strongest = d;
  }
  return [weakest, strongest];
}
