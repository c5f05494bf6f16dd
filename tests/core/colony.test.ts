import { describe, expect, it } from "vitest";
import { framesAhead, type Course, type Seen } from "../../src/core/colony.js";
import { DEEP } from "../../src/core/comb.js";

const seen: Seen = { day: 46110, frames: 8, frame: DEEP, brood: [] };
const course: Course = { season: 0, laying: null, space: null };

describe("days ahead on which bees come of eggs not laid yet", () => {
  // A worker emerges 21 days after the egg (docs/sources.md).
  it("begin after the 21st: until then nothing need be said of the laying", () => {
    expect(framesAhead(seen, 21, course).middle).toBeCloseTo(8, 10);
    expect(() => framesAhead(seen, 22, course)).toThrow(
      /^22 days ahead bees come of eggs that are not laid yet: say by laying that it goes on as "today", or how many eggs a day, or "none"$/,
    );
  });

  it("are told once the laying is: none, with no adult lost, leaves the frames as they are", () => {
    expect(framesAhead(seen, 40, { ...course, laying: 0 }).middle).toBeCloseTo(8, 10);
  });
});

describe("what a hive has in it", () => {
  const JANUARY_15 = 46037;

  it("makes bees die as fast as in spring where any brood is reared in winter", () => {
    const brood = [
      { stage: "egg" as const, cells: 1000 },
      { stage: "capped" as const, cells: 0 },
    ];
    const rearing = framesAhead({ ...seen, day: JANUARY_15, brood }, 1, {
      ...course,
      season: null,
    });
    // 3.5 % a day from March to May (docs/sources.md), no egg of today is a bee tomorrow, and the
    // forecast goes half way, as a power (docs/forecast.md).
    expect(rearing.middle).toBeCloseTo(8 * Math.sqrt(0.965), 10);
  });

  it("holds no more bees than its boxes", () => {
    const brood = [{ stage: "capped" as const, cells: 10_000 }];
    expect(framesAhead({ ...seen, brood }, 12, { ...course, space: 9 }).middle).toBeCloseTo(9, 10);
    expect(framesAhead({ ...seen, brood }, 12, course).middle).toBeGreaterThan(9.5);
  });
});
