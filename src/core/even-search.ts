import { isBetter, reaches, type Destination, type Score, type HiveGroup } from "./even-score.js";
import { TOLERANCE } from "./tolerance.js";

/** Steps of the exhaustive search: some tenths of a second, and the same on every computer. */
const MOST_STEPS = 300_000;

/** Goes through every way to fill the places, one after the other, leaving out what cannot win. */
export class Search {
  isComplete = false;
  private steps = 0;
  private best: number[][] | null = null;
  private readonly kinds: { readonly unit: HiveGroup; readonly members: number[] }[] = [];
  private readonly left: number[];
  private readonly order: number[];
  private readonly taken: number[][];
  private readonly isEven: boolean;

  constructor(
    private readonly units: readonly HiveGroup[],
    private readonly places: readonly Destination[],
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
    const sum = (key: keyof HiveGroup): number => this.units.reduce((s, unit) => s + unit[key], 0);
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
    const done = (taken: HiveGroup): boolean => {
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
    taken: HiveGroup,
    weakest: number,
    strongest: number,
    missed: number,
    done: (taken: HiveGroup) => boolean,
  ): boolean {
    if (++this.steps > MOST_STEPS) return false;
    if (open === 0) return done(taken);
    if (kind === this.kinds.length) return true;
    const { unit } = this.kinds[kind]!;
    if (this.isEven && missed >= this.score.missed - TOLERANCE) {
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
