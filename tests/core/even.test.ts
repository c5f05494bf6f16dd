import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeEvenly, type Placing } from "../../src/core/even.js";
import type { Destination, HiveGroup } from "../../src/core/even-score.js";

/** What a placing comes to, by the definition: frames missed over hives, and the range. */
function judged(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  of: readonly number[],
) {
  const averages = places.map((_, d) => {
    const own = units.filter((__, i) => of[i] === d);
    const hives = own.reduce((sum, unit) => sum + unit.hives, 0);
    return { hives, average: own.reduce((sum, unit) => sum + unit.frames, 0) / hives };
  });
  const used = averages.filter(({ hives }) => hives > 0);
  const missed = averages.reduce(
    (sum, { hives, average }, d) =>
      sum + (hives === 0 ? 0 : Math.max(0, places[d]!.least - average) * hives),
    0,
  );
  const all = used.map(({ average }) => average);
  return { missed, range: Math.max(...all) - Math.min(...all) };
}

/** The best of every way there is: each unit to each place that has room left. */
function bruteForce(units: readonly HiveGroup[], places: readonly Destination[]) {
  let best = { missed: Infinity, range: Infinity };
  const of: number[] = [];
  const left = places.map((place) => place.units);
  const next = (i: number): void => {
    if (i === units.length) {
      const now = judged(units, places, of);
      const better =
        now.missed < best.missed - 1e-9 ||
        (now.missed < best.missed + 1e-9 && now.range < best.range);
      if (better) best = now;
      return;
    }
    for (let d = 0; d < places.length; d++) {
      if (left[d] === 0) continue;
      left[d]!--;
      of[i] = d;
      next(i + 1);
      left[d]!++;
    }
  };
  next(0);
  return best;
}

const frames = fc.integer({ min: 0, max: 96 }).map((halves) => halves / 2);
const least = fc.constantFrom(0, 0, 0, 6, 8, 10);

/** Units that just fill their places, full pallets of four. */
const full = fc
  .array(fc.record({ units: fc.integer({ min: 1, max: 4 }), least }), {
    minLength: 1,
    maxLength: 4,
  })
  .filter((places) => places.reduce((sum, place) => sum + place.units, 0) <= 8)
  .chain((places) => {
    const count = places.reduce((sum, place) => sum + place.units, 0);
    const units = fc.array(
      frames.map((f): HiveGroup => ({ hives: 4, frames: f })),
      {
        minLength: count,
        maxLength: count,
      },
    );
    return fc.record({ units, places: fc.constant(places) });
  });

function check(
  units: readonly HiveGroup[],
  places: readonly Destination[],
  placing: Placing,
): void {
  const now = judged(units, places, placing.of);
  expect(placing.score.missed).toBeCloseTo(now.missed, 6);
  expect(placing.score.range).toBeCloseTo(now.range, 6);
}

describe("placing units on places", () => {
  it("finds the best there is in small cases, as going through every way finds it", () => {
    fc.assert(
      fc.property(full, ({ units, places }) => {
        const placing = placeEvenly(units, places);
        const best = bruteForce(units, places);
        check(units, places, placing);
        expect(placing.isBest).toBe(true);
        expect(placing.score.missed).toBeCloseTo(best.missed, 6);
        expect(placing.score.range).toBeCloseTo(best.range, 6);
      }),
      { numRuns: 150 },
    );
  });

  it("finds the best also where pallets are not all full", () => {
    const uneven = full.chain(({ units, places }) =>
      fc
        .array(fc.integer({ min: 1, max: 4 }), {
          minLength: units.length,
          maxLength: units.length,
        })
        .map((hives) => ({
          places,
          units: units.map((unit, i) => ({
            hives: hives[i]!,
            frames: (unit.frames * hives[i]!) / 4,
          })),
        })),
    );
    fc.assert(
      fc.property(uneven, ({ units, places }) => {
        const placing = placeEvenly(units, places);
        const best = bruteForce(units, places);
        check(units, places, placing);
        expect(placing.score.missed).toBeCloseTo(best.missed, 6);
        expect(placing.score.range).toBeCloseTo(best.range, 6);
      }),
      { numRuns: 100 },
    );
  });

  it("is never better than the bound that it claims, at any size", () => {
    const large = fc
      .array(fc.record({ units: fc.integer({ min: 1, max: 12 }), least }), {
        minLength: 2,
        maxLength: 8,
      })
      .chain((places) => {
        const count = places.reduce((sum, place) => sum + place.units, 0);
        const units = fc.array(
          frames.map((f): HiveGroup => ({ hives: 4, frames: f })),
          {
            minLength: count,
            maxLength: count,
          },
        );
        return fc.record({ units, places: fc.constant(places) });
      });
    fc.assert(
      fc.property(large, ({ units, places }) => {
        const { score, bound, of } = placeEvenly(units, places);
        check(units, places, { score, bound, of, isBest: false });
        expect(score.missed).toBeGreaterThanOrEqual(bound.missed - 1e-6);
        if (score.missed < 1e-9) expect(score.range).toBeGreaterThanOrEqual(bound.range - 1e-6);
        places.forEach((place, d) => expect(of.filter((at) => at === d).length).toBe(place.units));
      }),
      { numRuns: 40 },
    );
  });

  it("places 120 pallets on 24 drops to within a tenth of a frame", () => {
    // Pallets from 4 to 12 frames a hive, in half frames a pallet, in no order.
    const units = Array.from({ length: 120 }, (_, i) => ({
      hives: 4,
      frames: 16 + ((i * 37) % 65) / 2,
    }));
    const places = Array.from({ length: 24 }, () => ({ units: 5, least: 0 }));
    expect(placeEvenly(units, places).score.range).toBeLessThan(0.1);
  });

  it("is not made better by exchanging any two pallets", () => {
    const irregular = fc.array(
      fc.integer({ min: 800, max: 5600 }).map((f): HiveGroup => ({ hives: 4, frames: f / 100 })),
      { minLength: 48, maxLength: 48 },
    );
    // Where places are of one size, what is evener over all is also what makes the range less.
    const sizes = fc.constantFrom([12, 12, 12, 12], [1, 2, 15, 30], [30, 15, 2, 1]);
    fc.assert(
      fc.property(irregular, least, sizes, (units, asked, counts) => {
        const places = counts.map((count, d) => ({ units: count, least: d === 0 ? asked : 0 }));
        const { of, score } = placeEvenly(units, places);
        let isBetter = false;
        for (let i = 0; i < units.length; i++) {
          for (let j = i + 1; j < units.length; j++) {
            if (of[i] === of[j]) continue;
            const other = [...of];
            [other[i], other[j]] = [of[j]!, of[i]!];
            const now = judged(units, places, other);
            isBetter ||= now.missed < score.missed - 1e-6;
            isBetter ||= now.missed <= score.missed && now.range < score.range - 1e-6;
          }
        }
        expect(isBetter).toBe(false);
      }),
      { numRuns: 18 },
    );
  });

  it("leaves the last places short where there is more room than units", () => {
    const units = [8, 8, 8].map((f) => ({ hives: 4, frames: f }));
    const places = [2, 2, 2].map((n) => ({ units: n, least: 0 }));
    const { of } = placeEvenly(units, places);
    expect([0, 1, 2].map((d) => of.filter((at) => at === d).length)).toEqual([2, 1, 0]);
  });

  it("calls best at any size what cannot be better, and not what it could not go through", () => {
    const places = [12, 12, 12, 12].map((n) => ({ units: n, least: 0 }));
    const alike = Array.from({ length: 48 }, () => ({ hives: 4, frames: 32 }));
    expect(placeEvenly(alike, places)).toMatchObject({ isBest: true, score: { range: 0 } });
    // Sums of roots hardly ever meet, and there are too many to try.
    const irregular = alike.map((unit, i) => ({ ...unit, frames: 24 + Math.sqrt(i + 2) }));
    const { isBest, score } = placeEvenly(irregular, places);
    expect(score.range).toBeGreaterThan(1e-9);
    expect(isBest).toBe(false);
  });
});
