import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  openMore,
  palletMeans,
  usualMost,
  usualSpread,
  type SequentialPlan,
} from "../../src/core/open-more.js";
import { Refusal } from "../../src/core/refusal.js";

const plan = (over: Partial<SequentialPlan> = {}): SequentialPlan => ({
  good: 9,
  bad: 8,
  alpha: 0.1,
  beta: 0.1,
  spread: 2.5,
  most: 200,
  size: Infinity,
  ...over,
});
const times = (n: number, strength: number) => Array.from({ length: n }, () => strength);
const quarters = fc.integer({ min: 0, max: 80 }).map((n) => n / 4);
const lots = fc.array(quarters, { minLength: 1, maxLength: 60 });

describe("hives one by one", () => {
  it("open more before the first and after it", () => {
    const none = openMore([], plan({ good: 8.5 }));
    expect(none).toMatchObject({ verdict: "open more", average: null, more: 2 });
    for (const strength of [0, 8.5, 40]) {
      const first = openMore([strength], plan({ good: 9, bad: 1 }));
      expect(first).toMatchObject({ verdict: "open more", failsAt: null, passesAt: null });
    }
  });

  it("give the verdict of the first hive that reached one, whatever comes after", () => {
    fc.assert(
      fc.property(
        lots,
        fc.constantFrom(plan(), plan({ size: 60 }), plan({ most: 20 })),
        (lot, p) => {
          const stops = lot.map((_, i) => openMore(lot.slice(0, i + 1), p));
          const first = stops.find(({ verdict }) => verdict !== "open more") ?? stops.at(-1);
          expect(openMore(lot, p)).toEqual(first);
        },
      ),
    );
    const weakFirst = [...times(10, 3), ...times(50, 12)];
    expect(openMore(weakFirst, plan())).toMatchObject({ verdict: "fail", average: 3 });
  });

  it("come out the other way round where the strengths are mirrored between the levels", () => {
    fc.assert(
      fc.property(lots, (lot) => {
        const p = plan({ good: 12, bad: 8, alpha: 0.05, beta: 0.2 });
        const mirrored = lot.map((strength) => 20 - strength);
        const one = openMore(lot, p);
        const other = openMore(mirrored, { ...p, alpha: p.beta, beta: p.alpha });
        const turned = { pass: "fail", fail: "pass" } as Record<string, string>;
        expect(other.verdict).toBe(turned[one.verdict] ?? one.verdict);
        expect(other.opened).toBe(one.opened);
        expect(other.average).toBeCloseTo(20 - one.average!, 9);
      }),
    );
  });

  it("say the same in another unit", () => {
    fc.assert(
      fc.property(lots, (lot) => {
        const tenfold = { ...plan(), good: 90, bad: 80, spread: 25 };
        const [one, other] = [
          openMore(lot, plan()),
          openMore(
            lot.map((x) => 10 * x),
            tenfold,
          ),
        ];
        expect(other.verdict).toBe(one.verdict);
        expect([other.opened, other.more]).toEqual([one.opened, one.more]);
      }),
    );
  });

  it("need more the closer the levels, the smaller the chances and the wider the spread", () => {
    const needed = (over: Partial<SequentialPlan>) =>
      openMore(times(over.size ?? 200, 10), plan(over)).opened;
    // ln 10 x 6.25 / (1.5 n) <= 1 from n = 9.6 on, since 10 is 1.5 over the middle.
    expect(needed({})).toBe(10);
    expect(needed({ good: 8.5 })).toBe(17);
    expect(needed({ beta: 0.01 })).toBe(20);
    expect(needed({ spread: 5 })).toBe(39);
    expect(needed({ size: 20 })).toBe(7);
  });
});

describe("how many more", () => {
  it("is what a verdict takes if they go on at the average so far", () => {
    // 10 is 1.5 over the middle: ln 10 x 6.25 / 1.5 = 9.59, so ten in all.
    expect(openMore(times(4, 10), plan())).toMatchObject({ verdict: "open more", more: 6 });
    expect(openMore(times(1, 10), plan()).more).toBe(9);
    expect(openMore(times(9, 10), plan()).more).toBe(1);
    // 7.5 is 1 under it: 14.39, so fifteen.
    expect(openMore(times(4, 7.5), plan()).more).toBe(11);
  });

  it("is never more than may be opened, and never none without a verdict", () => {
    expect(openMore(times(4, 8.5), plan({ most: 50 })).more).toBe(46);
    expect(openMore(times(4, 8.5), plan({ most: 50, size: 10 })).more).toBe(6);
    fc.assert(
      fc.property(lots, fc.integer({ min: 61, max: 300 }), (lot, most) => {
        const { verdict, opened, more } = openMore(lot, plan({ most }));
        const without = verdict === "open more";
        expect(more > 0).toBe(without);
        expect(opened + more).toBeLessThanOrEqual(most);
      }),
    );
  });
});

describe("hives that differ more than the plan says", () => {
  // The levels are 7 apart about 8.5, both chances 10 %. Hall's figure in place of ln 10, by degrees
  // of freedom d, is d / 2 x (10 ** (2 / d) - 1): 9 for 2, 5.462 for 3, 4.325 for 4, 3.780 for 5.
  const wide = plan({ good: 12, bad: 5, spread: 0.5 });

  it("give no verdict before their own spread allows it", () => {
    // Mean 11, variance (1 + 9 + 4) / 2 = 7: 9 x 7 / (7 x 3) = 3 to either side of 8.5.
    expect(openMore([12, 8, 13], wide)).toMatchObject({
      verdict: "open more",
      average: expect.closeTo(11, 9),
      failsAt: expect.closeTo(5.5, 9),
      passesAt: expect.closeTo(11.5, 9),
    });
    expect(openMore([13, 9, 14], wide)).toMatchObject({ verdict: "pass", opened: 3 });
    expect(openMore([6, 2, 7], wide)).toMatchObject({ verdict: "fail", opened: 3 });
  });

  it("take more, by the spread so far", () => {
    // Mean 11, variance 25: 25 x 4.325 / 35 = 3.09 after five, 25 x 3.780 / 42 = 2.25 after six,
    // and 11 is 2.5 over the middle.
    expect(openMore([16, 6, 11], wide)).toMatchObject({ verdict: "open more", more: 3 });
    // Variance 50: 50 x 3.258 / 56 = 2.91 after eight, 50 x 3.113 / 63 = 2.47 after nine.
    expect(openMore([16, 6], wide)).toMatchObject({ verdict: "open more", more: 7 });
  });
});

describe("the end", () => {
  it("is undecided after the most that may be opened", () => {
    const lot = times(30, 8.5);
    expect(openMore(lot, plan({ most: 31 })).verdict).toBe("open more");
    expect(openMore(lot, plan({ most: 30 }))).toMatchObject({ verdict: "undecided", more: 0 });
    expect(openMore(lot, plan({ most: 12 }))).toMatchObject({ verdict: "undecided", opened: 12 });
  });

  it("is a verdict by the middle of the levels where the whole lot is opened", () => {
    const verdict = (...lot: number[]) => openMore(lot, plan({ size: lot.length })).verdict;
    expect(verdict(8, 9)).toBe("pass");
    expect(verdict(8, 8.9)).toBe("fail");
    expect(verdict(8)).toBe("fail");
    expect(verdict(1, 16)).toBe("pass");
    // Three thirds are a whole: 1/3 + 4/3 + 4/3 = 3, the middle of 0.9 and 1.1 three times.
    const thirds = openMore([1 / 3, 4 / 3, 4 / 3], plan({ good: 1.1, bad: 0.9, size: 3 }));
    expect(thirds.verdict).toBe("pass");
  });

  it("shows no bound that no average can reach", () => {
    const { failsAt, passesAt } = openMore([8, 9], plan());
    expect(failsAt).toBeNull();
    expect(passesAt).toBeGreaterThan(8.5);
    expect(openMore([0, 20], plan()).passesAt).toBeNull();
  });
});

describe("pallets", () => {
  it("count by their means, in the order opened", () => {
    expect(palletMeans([8, 10, 7, 9, 5], ["P2", "P2", "P1", "P1", "P3"])).toEqual([9, 8, 5]);
  });

  it("are refused where one stands in two places, since the order counts", () => {
    expect(() => palletMeans([8, 9, 10], ["P1", "P2", "P1"])).toThrow(
      "pallet P1 stands in two places: give the hives in the order opened",
    );
  });

  it("differ less than hives where no spread is stated", () => {
    // 30 % of 8.5 is 2.55; the mean of four hives that are not alike has half of that.
    expect(usualSpread(9, 8, 1)).toBeCloseTo(2.55, 12);
    expect(usualSpread(9, 8, 4)).toBeCloseTo(1.275, 12);
  });
});

describe("a plan that contradicts itself", () => {
  it.each([
    ["good under bad", { good: 8, bad: 9 }, /^the good level 8 is not over the bad level 9$/],
    ["good equal to bad", { good: 8, bad: 8 }, /good level 8/],
    ["one hive at most", { most: 1 }, /most to open is 1/],
    ["half a hive", { most: 20.5 }, /^the most to open is 20.5: give a whole number from 2 on$/],
    ["no spread", { spread: 0 }, /^a spread of 0: give one over 0$/],
  ])("is refused: %s", (_, over, message) => {
    expect(() => openMore([8, 9], plan(over))).toThrow(Refusal);
    expect(() => openMore([8, 9], plan(over))).toThrow(message);
  });

  it("is refused where more are opened than the lot has", () => {
    expect(() => openMore([8, 9, 10], plan({ size: 2 }))).toThrow(
      "a lot of 2 cannot have 3 opened",
    );
  });

  it("is refused where the levels are too close to tell apart", () => {
    expect(() => usualMost(plan({ good: 8 + 1e-12 }))).toThrow(
      "levels of 8.000000000001 and 8 are too close to tell apart",
    );
    expect(usualMost(plan({ good: 30, bad: 1 }))).toBe(2);
  });
});
