import { describe, expect, it } from "vitest";
import { between, exactly } from "../../src/core/estimate.js";
import { honeyUsed, shortOfTarget } from "../../src/core/feed.js";

const open = { ...exactly(10), high: null };

describe("honey that bees use", () => {
  it("is their own and what rearing takes: a full frame is replaced in 21 days", () => {
    // 134 in2 x 6.4516 x 3.96 cells on each of two sides are 6,846.9 bees; 0.142 to 0.2222 g each.
    // 10,000 bees x 21 days x 4.2 to 6.7 mg are 882 to 1,407 g. A pound has 453.592 g.
    const { low, middle, high } = honeyUsed(exactly(10_000), 21, exactly(1));
    const cells = 2 * 134 * 6.4516 * 3.96;
    expect(low).toBeCloseTo((882 + cells * 0.142) / 453.59237, 4);
    expect(high).toBeCloseTo((1407 + (cells * 10) / 45) / 453.59237, 4);
    expect(middle).toBeCloseTo((low + high!) / 2, 9);
  });

  it("is of half the brood in half the time", () => {
    const month = honeyUsed(exactly(0), 42, exactly(1)).middle;
    expect(honeyUsed(exactly(0), 21, exactly(1)).middle).toBeCloseTo(month / 2, 12);
    expect(honeyUsed(exactly(0), 42, exactly(0.5)).middle).toBeCloseTo(month / 2, 12);
  });

  it("is open where the bees or the brood are, and not where no brood is said", () => {
    expect(honeyUsed(open, 30, null).high).toBeNull();
    expect(honeyUsed(exactly(10), 30, open).high).toBeNull();
    expect(honeyUsed(exactly(10), 30, null).high).not.toBeNull();
  });
});

describe("what stores lack", () => {
  it("is least where the stores are most and the target least", () => {
    // 20 - 14, 25 - 12, 30 - 10.
    expect(shortOfTarget(between(10, 14), between(20, 30))).toMatchObject({
      low: 6,
      middle: 13,
      high: 20,
    });
  });

  it("is never under nothing", () => {
    expect(shortOfTarget(exactly(40), between(20, 30))).toEqual(exactly(0));
  });

  it("says what is to be known of the stores and of the target", () => {
    const noted = (note: string) => ({ ...exactly(20), note });
    expect(shortOfTarget(noted("hefted"), noted("a guess")).note).toBe("hefted; a guess");
  });

  it("may be none where the stores are open, and is open where the target is", () => {
    expect(shortOfTarget(open, exactly(25))).toMatchObject({ low: 0, middle: 15, high: 15 });
    expect(shortOfTarget(exactly(3), open)).toMatchObject({ low: 7, middle: 7, high: null });
  });
});
