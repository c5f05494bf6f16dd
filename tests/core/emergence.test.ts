import { describe, expect, it } from "vitest";
import { emergence, withLaying } from "../../src/core/emergence.js";

describe("bees that emerge", () => {
  it("come of capped brood in equal parts over its 12 days, and then no more", () => {
    const days = emergence([{ stage: "capped", cells: 1200 }], "worker", 1);
    days.forEach((bees, day) => expect(bees).toBeCloseTo(day < 12 ? 100 : 0, 9));
  });

  it("come on the first day of brood that emerges", () => {
    const [first, ...later] = emergence([{ stage: "emerging", cells: 50 }], "worker", 1);
    expect(first).toBeCloseTo(50, 9);
    for (const bees of later) expect(bees).toBe(0);
  });
});

describe("laying that goes on", () => {
  const seen = Array<number>(21).fill(10);

  it("shows only after the 21 days of the brood that was seen", () => {
    expect(withLaying(seen, 1000, 14)).toEqual(seen);
    expect(withLaying(seen, 1000, 21)).toEqual(seen);
    const more = withLaying(seen, 1000, 24);
    expect(more).toHaveLength(24);
    expect(more.slice(0, 21)).toEqual(seen);
    // 0.97^3 x 0.99^6 x 0.999^12 = 0.8490 of the eggs live to emerge.
    for (const bees of more.slice(21)) expect(bees).toBeCloseTo(849, 0);
  });

  it("adds nothing where none goes on", () => {
    const more = withLaying(seen, 0, 24);
    expect(more.reduce((sum, bees) => sum + bees, 0)).toBe(210);
  });
});
