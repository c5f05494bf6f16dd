/** What is placed as one: a pallet's hives and their frames of bees in all. */
export interface Unit {
  readonly hives: number;
  readonly frames: number;
}

/** Where units go: how many it takes, and the average it should have at least. */
export interface Place {
  readonly units: number;
  readonly least: number;
}

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

/** Frames by which places miss their least, over their hives; then strongest less weakest average. */
export interface Score {
  readonly missed: number;
  readonly range: number;
}

interface State {
  readonly hives: number[];
  readonly frames: number[];
}

const EPSILON = 1e-9;
/** Steps of the exhaustive search: some tenths of a second, and the same on every computer. */
const MOST_STEPS = 300_000;

/**
 * Places units so that the averages of the places differ as little as can be: the least of every
 * place is kept if that can be, then the range from the weakest to the strongest is as small as can
 * be. Neediest place first, then by exchanges; small cases are searched through to the best.
 *
 * @param places - with room for all units; the last stay short where there is more room
 */
export function placeEvenly(units: readonly Unit[], places: readonly Place[]): Placing {
  const counts = filled(places, units.length);
  const bound = boundOf(units, places, counts);
  const first = exchanged(units, places, neediestFirst(units, places, counts, bound.targets));
  const start = scoreOf(places, stateOf(units, places, first));
  if (reaches(start, bound)) return { of: first, score: start, bound, isBest: true };
  const search = new Search(units, places, counts, start, bound);
  const of = search.run() ?? first;
  const score = scoreOf(places, stateOf(units, places, of));
  return { of, score, bound, isBest: search.isComplete || reaches(score, bound) };
}

/** Units that each place gets, in order, so that only the last stay short. */
function filled(places: readonly Place[], units: number): number[] {
  let left = units;
  return places.map((place) => {
    const taken = Math.min(place.units, left);
    left -= taken;
    return taken;
  });
}

function stateOf(units: readonly Unit[], places: readonly Place[], of: readonly number[]): State {
  const state: State = { hives: places.map(() => 0), frames: places.map(() => 0) };
  units.forEach((unit, i) => {
    state.hives[of[i]!]! += unit.hives;
    state.frames[of[i]!]! += unit.frames;
  });
  return state;
}

function scoreOf(places: readonly Place[], { hives, frames }: State): Score {
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
function isBetter(one: Score, other: Score): boolean {
  if (one.missed < other.missed - EPSILON) return true;
  return one.missed <= other.missed + EPSILON && one.range < other.range - EPSILON;
}

function reaches(score: Score, bound: Score): boolean {
  return score.missed <= bound.missed + EPSILON && score.range <= bound.range + EPSILON;
}

/**
 * What no way can be under, as though the bees could be shared out freely: every place at its least
 * or at one common level, whichever is more. Where the places' least cannot be kept, the range has
 * no such bound.
 */
function boundOf(
  units: readonly Unit[],
  places: readonly Place[],
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
  if (missed > EPSILON) return { ...none, missed };
  const used = places.map((place, d) => ({ ...place, hives: counts[d]! * each }));
  const level = commonLevel(used, frames);
  const highest = used.reduce((most, p) => (p.hives > 0 ? Math.max(most, p.least) : most), level);
  return {
    missed: 0,
    range: Math.max(0, highest - level - EPSILON),
    targets: places.map((place) => Math.max(level, place.least)),
  };
}

/** The most demanding places together cannot have more than as many of the strongest units. */
function leastMissed(
  units: readonly Unit[],
  places: readonly Place[],
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
  places: readonly (Place & { readonly hives: number })[],
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

/** Strongest unit first, each to the place whose open room needs the strongest hives. */
function neediestFirst(
  units: readonly Unit[],
  places: readonly Place[],
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
      if (neediest < 0 || lacks[d]! / open[d]! > lacks[neediest]! / open[neediest]! + EPSILON) {
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
function exchanged(units: readonly Unit[], places: readonly Place[], from: number[]): number[] {
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
        const isEvener = unevenness(a, b) < before - EPSILON;
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

function average({ hives, frames }: State, d: number): number {
  return hives[d] === 0 ? 0 : frames[d]! / hives[d]!;
}

/** Goes through every way to fill the places, one after the other, leaving out what cannot win. */
class Search {
  isComplete = false;
  private steps = 0;
  private best: number[][] | null = null;
  private readonly kinds: { readonly unit: Unit; readonly members: number[] }[] = [];
  private readonly left: number[];
  private readonly order: number[];
  private readonly taken: number[][];
  private readonly isEven: boolean;

  constructor(
    private readonly units: readonly Unit[],
    private readonly places: readonly Place[],
    private readonly counts: readonly number[],
    private score: Score,
    private readonly bound: Score,
  ) {
    const byStrength = units.map((_, i) => i);
    byStrength.sort(
      (a, b) => units[b]!.frames - units[a]!.frames || units[b]!.hives - units[a]!.hives || a - b,
    );
    for (const i of byStrength) {
      const last = this.kinds.at(-1);
      const { frames, hives } = units[i]!;
      if (last?.unit.frames === frames && last.unit.hives === hives) last.members.push(i);
      else this.kinds.push({ unit: units[i]!, members: [i] });
    }
    this.left = this.kinds.map((kind) => kind.members.length);
    // Places that are alike stand together, so that their order need not be tried.
    this.order = places.map((_, d) => d).filter((d) => counts[d]! > 0);
    this.order.sort(
      (a, b) => counts[b]! - counts[a]! || places[b]!.least - places[a]!.least || a - b,
    );
    this.taken = this.order.map(() => this.kinds.map(() => 0));
    this.isEven = units.every((unit) => unit.hives === units[0]!.hives);
  }

  /** The best way, null where none is better than what was known. */
  run(): number[] | null {
    const sum = (key: keyof Unit): number => this.units.reduce((s, unit) => s + unit[key], 0);
    this.isComplete = this.next(0, 0, Infinity, -Infinity, sum("hives"), sum("frames"));
    return this.best === null ? null : this.assigned(this.best);
  }

  /** False where the steps ran out. */
  private next(
    k: number,
    missed: number,
    weakest: number,
    strongest: number,
    hives: number,
    frames: number,
  ): boolean {
    if (k === this.order.length) {
      this.score = { missed, range: strongest - weakest };
      this.best = this.taken.map((row) => [...row]);
      return true;
    }
    const d = this.order[k]!;
    const done = (taken: Unit): boolean => {
      const average = taken.frames / taken.hives;
      const now = missed + Math.max(0, this.places[d]!.least - average) * taken.hives;
      const rest = hives - taken.hives;
      const restAverage = rest === 0 ? average : (frames - taken.frames) / rest;
      const low = Math.min(weakest, average);
      const high = Math.max(strongest, average);
      const range = Math.max(high, restAverage) - Math.min(low, restAverage);
      if (!isBetter({ missed: now, range }, this.score)) return true;
      if (this.isAlike(k) && this.isAfter(k)) return true;
      return this.next(k + 1, now, low, high, rest, frames - taken.frames);
    };
    return this.fill(
      k,
      0,
      this.counts[d]!,
      { hives: 0, frames: 0 },
      weakest,
      strongest,
      missed,
      done,
    );
  }

  private fill(
    k: number,
    kind: number,
    open: number,
    taken: Unit,
    weakest: number,
    strongest: number,
    missed: number,
    done: (taken: Unit) => boolean,
  ): boolean {
    if (++this.steps > MOST_STEPS) return false;
    if (open === 0) return done(taken);
    if (kind === this.kinds.length) return true;
    const { unit } = this.kinds[kind]!;
    if (this.isEven && missed >= this.score.missed - EPSILON) {
      const hives = taken.hives + open * unit.hives;
      const most = (taken.frames + open * unit.frames) / hives;
      if (most < strongest - this.score.range) return true;
      const least = (taken.frames + open * this.kinds.at(-1)!.unit.frames) / hives;
      if (least > weakest + this.score.range) return true;
    }
    const most = Math.min(open, this.left[kind]!);
    for (let count = most; count >= 0; count--) {
      this.left[kind]! -= count;
      this.taken[k]![kind] = count;
      const more = {
        hives: taken.hives + count * unit.hives,
        frames: taken.frames + count * unit.frames,
      };
      const all = this.fill(k, kind + 1, open - count, more, weakest, strongest, missed, done);
      this.left[kind]! += count;
      this.taken[k]![kind] = 0;
      if (!all || reaches(this.score, this.bound)) return all;
    }
    return true;
  }

  private isAlike(k: number): boolean {
    if (k === 0) return false;
    const [before, d] = [this.order[k - 1]!, this.order[k]!];
    return (
      this.counts[before] === this.counts[d] && this.places[before]!.least === this.places[d]!.least
    );
  }

  /** Whether the place stands stronger than the one before, which only repeats another order. */
  private isAfter(k: number): boolean {
    const [before, now] = [this.taken[k - 1]!, this.taken[k]!];
    const differs = now.findIndex((count, kind) => count !== before[kind]);
    return differs >= 0 && now[differs]! > before[differs]!;
  }

  private assigned(taken: readonly (readonly number[])[]): number[] {
    const of = this.units.map(() => 0);
    const used = this.kinds.map(() => 0);
    taken.forEach((row, k) =>
      row.forEach((count, kind) => {
        for (let n = 0; n < count; n++)
          of[this.kinds[kind]!.members[used[kind]!++]!] = this.order[k]!;
      }),
    );
    return of;
  }
}
