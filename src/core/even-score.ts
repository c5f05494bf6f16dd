import { TOLERANCE } from "./tolerance.js";

/** What is placed as one: a pallet's hives and their frames of bees in all. */
export interface HiveGroup {
  readonly hives: number;
  readonly frames: number;
}

/** Where units go: how many it takes, and the average it should have at least. */
export interface Destination {
  readonly units: number;
  readonly least: number;
}

/** Frames by which places miss their least, over their hives; then strongest less weakest average. */
export interface Score {
  readonly missed: number;
  readonly range: number;
}

/** Hives and frames of each place. */
export interface State {
  readonly hives: number[];
  readonly frames: number[];
}

export function stateOf(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  of: readonly number[],
): State {
  const state: State = { hives: places.map(() => 0), frames: places.map(() => 0) };
  units.forEach((unit, i) => {
    state.hives[of[i]!]! += unit.hives;
    state.frames[of[i]!]! += unit.frames;
  });
  return state;
}

export function scoreOf(places: readonly Destination[], { hives, frames }: State): Score {
  let [missed, weakest, strongest] = [0, Infinity, -Infinity];
  for (let d = 0; d < places.length; d++) {
    if (hives[d] === 0) continue;
    const average = frames[d]! / hives[d]!;
    missed += Math.max(0, places[d]!.least - average) * hives[d]!;
    weakest = Math.min(weakest, average);
    strongest = Math.max(strongest, average);
  }
  return { missed, range: Math.max(0, strongest - weakest) };
}

/** Better by what is missed, or as good and better by the range. */
export function isBetter(one: Score, other: Score): boolean {
  if (one.missed < other.missed - TOLERANCE) return true;
  return one.missed <= other.missed + TOLERANCE && one.range < other.range - TOLERANCE;
}

export function reaches(score: Score, bound: Score): boolean {
  return score.missed <= bound.missed + TOLERANCE && score.range <= bound.range + TOLERANCE;
}

/**
 * What no way can be under, as though the bees could be shared out freely: every place at its least
 * or at one common level, whichever is more. Where the places' least cannot be kept, the range has
 * no such bound.
 */
export function boundOf(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  counts: readonly number[],
): Score & { readonly targets: readonly number[] } {
  const hives = units.reduce((sum, unit) => sum + unit.hives, 0);
  const frames = units.reduce((sum, unit) => sum + unit.frames, 0);
  const mean = frames / hives;
  const each = hives / units.length;
  const none = { missed: 0, range: 0, targets: places.map((place) => Math.max(mean, place.least)) };
  // Where a place's hives hang on which units it gets, nothing is claimed.
  if (units.some((unit) => unit.hives !== each)) return none;
  const missed = leastMissed(units, places, counts, each);
  if (missed > TOLERANCE) return { ...none, missed };
  const used = places.map((place, d) => ({ ...place, hives: counts[d]! * each }));
  const level = commonLevel(used, frames);
  const highest = used.reduce((most, p) => (p.hives > 0 ? Math.max(most, p.least) : most), level);
  return {
    missed: 0,
    range: Math.max(0, highest - level - TOLERANCE),
    targets: places.map((place) => Math.max(level, place.least)),
  };
}

/** The most demanding places together cannot have more than as many of the strongest units. */
function leastMissed(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  counts: readonly number[],
  hives: number,
): number {
  const strongest = units.map((unit) => unit.frames).sort((a, b) => b - a);
  const demanding = places.map((_, d) => d).sort((a, b) => places[b]!.least - places[a]!.least);
  let [missed, asked, given, next] = [0, 0, 0, 0];
  for (const d of demanding) {
    asked += places[d]!.least * counts[d]! * hives;
    for (let n = 0; n < counts[d]!; n++) given += strongest[next++]!;
    missed = Math.max(missed, asked - given);
  }
  return missed;
}

/** The level at which all places that do not ask for more share what is left. */
function commonLevel(
  places: readonly (Destination & { readonly hives: number })[],
  frames: number,
): number {
  const rising = [...places].sort((a, b) => b.least - a.least);
  let [left, hives] = [frames, places.reduce((sum, place) => sum + place.hives, 0)];
  for (const place of rising) {
    if (hives === 0 || place.least <= left / hives) break;
    left -= place.least * place.hives;
    hives -= place.hives;
  }
  return hives === 0 ? rising.at(-1)!.least : left / hives;
}

export function average({ hives, frames }: State, d: number): number {
  return hives[d] === 0 ? 0 : frames[d]! / hives[d]!;
}
