import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Contract } from "../../src/core/contract.js";
import type { Lot, OpenedHive } from "../../src/core/lot.js";
import { observerError } from "../../src/core/observer.js";
import { Refusal } from "../../src/core/refusal.js";
import { quickLook } from "../../src/core/quick-look.js";
import { lotAverage, lotChance } from "../../src/core/sampling.js";
import { shareUnder } from "../../src/core/share.js";
import { standardContract } from "../../src/core/standards.js";
import { planOfLot, planOfSpread, toOpen } from "../../src/core/to-open.js";

const EIGHT = contract({});

function contract(terms: Partial<Contract>): Contract {
  const standard = standardContract("Almond Board of California");
  return { ...standard, minimumFrames: 0, underMinimum: "counted", ...terms };
}

function lot(terms: Contract, frames: readonly number[], size: number, hivesOnPallet = 0): Lot {
  const hives = frames.map((value, i): OpenedHive => {
    const counted = Math.min(value, terms.mostFrames || Infinity);
    const pallet = hivesOnPallet === 0 ? null : `P${Math.floor(i / hivesOnPallet)}`;
    const accepted = value >= terms.minimumFrames;
    return { id: `H${i}`, pallet, frames: value, counted, grade: "", accepted, dead: false };
  });
  return { hives, size };
}

const aLot = fc
  .record({
    frames: fc.array(
      fc.integer({ min: 0, max: 32 }).map((n) => n / 2),
      { minLength: 2, maxLength: 40 },
    ),
    unopened: fc.integer({ min: 1, max: 400 }),
    terms: fc.constantFrom<Partial<Contract>>(
      {},
      { mostFrames: 10 },
      { minimumFrames: 6, underMinimum: "left out" },
      { minimumFrames: 4, mostFrames: 12, underMinimum: "left out", observerError: 8 },
      { openedBy: "pallets" },
    ),
  })
  .map(({ frames, unopened, terms }) => {
    const by = contract(terms);
    return { by, frames, sample: lot(by, frames, frames.length + unopened, 4) };
  });

const width = ({ low, high }: { low: number | null; high: number | null }): number =>
  low === null || high === null ? NaN : high - low;

describe("the whole lot's average", () => {
  it("has an interval no narrower at a higher confidence", () => {
    fc.assert(
      fc.property(aLot, fc.double({ min: 1, max: 99, noNaN: true }), ({ by, sample }, less) => {
        const narrow = lotAverage(by, sample, less);
        const wide = lotAverage(by, sample, less + 0.9);
        fc.pre(narrow.low !== null);
        expect(wide.low!).toBeLessThanOrEqual(narrow.low! + 1e-9);
        expect(wide.high!).toBeGreaterThanOrEqual(narrow.high! - 1e-9);
      }),
    );
  });

  it("has an interval no wider where twice as many hives of the same kind are opened", () => {
    fc.assert(
      fc.property(aLot, ({ by, frames }) => {
        // Whole pallets: else the second half would begin on a pallet of the first.
        const whole = frames.length >= 8 ? frames.slice(0, 4 * Math.floor(frames.length / 4)) : [];
        const once = by.openedBy === "pallets" ? whole : frames;
        fc.pre(once.length > 0);
        const size = 4 * once.length + 8;
        const found = lotAverage(by, lot(by, once, size, 4), 95);
        fc.pre(found.low !== null);
        const twice = lotAverage(by, lot(by, [...once, ...once], size, 4), 95);
        expect(width(twice)).toBeLessThanOrEqual(width(found) + 1e-9);
      }),
    );
  });

  it("does not hang on the order of the rows", () => {
    fc.assert(
      fc.property(aLot, fc.infiniteStream(fc.nat()), ({ by, sample }, keys) => {
        const keyed = sample.hives.map((hive) => ({ hive, key: keys.next().value ?? 0 }));
        const hives = keyed.sort((a, b) => a.key - b.key).map(({ hive }) => hive);
        const one = lotAverage(by, sample, 95);
        const other = lotAverage(by, { ...sample, hives }, 95);
        for (const key of ["average", "low", "high", "se"] as const) {
          if (one[key] === null) expect(other[key]).toBeNull();
          else expect(other[key]).toBeCloseTo(one[key], 9);
        }
        expect([other.df, other.method, other.warning]).toEqual([one.df, one.method, one.warning]);
      }),
    );
  });

  it("has nothing left to sampling where every hive was opened", () => {
    fc.assert(
      fc.property(aLot, ({ by, frames }) => {
        const all = lotAverage({ ...by, observerError: 0 }, lot(by, frames, frames.length, 4), 95);
        expect([all.low, all.high, all.se ?? 0]).toEqual([all.average, all.average, 0]);
        fc.pre(all.average !== null);
        expect([all.method, all.warning]).toEqual(["every hive was opened", ""]);
      }),
    );
  });

  it("holds the average of the sample, and no more than the cap", () => {
    fc.assert(
      fc.property(aLot, ({ by, sample }) => {
        const { average, low, high } = lotAverage(by, sample, 95);
        fc.pre(average !== null && low !== null && high !== null);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(average + 1e-9);
        expect(high).toBeGreaterThanOrEqual(average - 1e-9);
        expect(high).toBeLessThanOrEqual(by.mostFrames || Infinity);
      }),
    );
  });

  it("of one hive has no interval, and says so", () => {
    const { average, low, high, warning } = lotAverage(EIGHT, lot(EIGHT, [8], 48), 95);
    expect([average, low, high]).toEqual([8, null, null]);
    expect(warning).toBe("one hive alone counts and shows no spread: open more");
  });

  it("of one hive that is the whole lot is that hive's", () =>
    expect(lotAverage(EIGHT, lot(EIGHT, [8], 1), 95)).toMatchObject({ low: 8, high: 8, se: 0 }));

  it("of equal hives rests on the typical spread", () => {
    // By hand: 30 % of 8 is 2.4, as one of six: 2.4 / sqrt(6) = 0.980; t of 7 degrees 2.3646 (R);
    // 2.3646 x 0.980 x sqrt((1 - 6/48) / 6) = 0.885.
    const { low, high, se, warning } = lotAverage(EIGHT, lot(EIGHT, Array(6).fill(8), 48), 95);
    expect([low, high]).toEqual([expect.closeTo(7.115, 3), expect.closeTo(8.885, 3)]);
    expect(se).toBe(0);
    expect(warning).toBe(
      "only 6 hives count: under 15 the interval may miss more often than it says; " +
        "all hives are equal: the interval rests on how hives usually differ",
    );
  });

  it("of hives all at 8.1 is exactly that, however many they are", () => {
    const found = lotAverage(EIGHT, lot(EIGHT, Array<number>(100_000).fill(8.1), 200_000), 95);
    expect(found.average).toBeCloseTo(8.1, 14);
    expect([found.se, found.warning]).toEqual([0, expect.stringContaining("are equal")]);
  });

  it("of equal pallets rests on the typical spread of a pallet", () => {
    // By hand: 2.4 frames a hive, 1.2 of four together, as one of six: 0.4899; R's t of 7 degrees
    // 2.3646, times sqrt((1 - 24/192) / 6): 0.4424.
    const by = contract({ openedBy: "pallets" });
    const found = lotAverage(by, lot(by, Array<number>(24).fill(8), 192, 4), 95);
    expect(width(found) / 2).toBeCloseTo(0.4424, 4);
    // Six times 2.4 added up is not 14.4 in the machine: pallets of 6, 6 and 2 hives.
    expect(lotAverage(by, lot(by, Array<number>(14).fill(2.4), 192, 6), 95)).toMatchObject({
      se: 0,
      warning: expect.stringContaining("all pallets are equal"),
    });
  });

  it("of equal hives, where the contract lets none differ, is exactly that and says so", () => {
    // No hive counts under 8 frames, and none for more than 8.
    const by = contract({ minimumFrames: 8, mostFrames: 8, underMinimum: "left out" });
    expect(lotAverage(by, lot(by, Array(20).fill(8), 48), 95)).toMatchObject({
      low: 8,
      high: 8,
      warning: "all hives are equal: they show no spread to make an interval from",
    });
  });

  it("of hives just half as unlike as usual is not called more alike than usual", () => {
    // By hand: four of five hives 1.5 frames off their average of 10: sd sqrt(4 x 2.25 / 4) = 1.5,
    // the half of 30 % of 10.
    const five = [8.5, 8.5, 10, 11.5, 11.5];
    const { se, warning } = lotAverage(EIGHT, lot(EIGHT, five, 10), 95);
    expect(se).toBe(1.5 * Math.sqrt(1 / 2 / 5));
    expect(warning).toBe(
      "only 5 hives count: under 15 the interval may miss more often than it says",
    );
  });

  it("of hives more alike than usual says that it is wider than they alone give", () => {
    const alike = Array.from({ length: 20 }, (_, i) => 8 + (i % 2));
    const { warning, se, low, high } = lotAverage(EIGHT, lot(EIGHT, alike, 200), 95);
    expect(warning).toBe(
      "the hives are more alike than usual: the interval is wider than they alone give",
    );
    expect((high! - low!) / 2).toBeGreaterThan(2.093 * se!);
  });

  it("of equal hives within a narrow contract rests on no more than that allows", () => {
    // By hand: 4 frames from 6 to the cap of 10, spread evenly: 4 / sqrt(12) = 1.155.
    const by = contract({ minimumFrames: 6, mostFrames: 10, underMinimum: "left out" });
    const found = lotAverage(by, lot(by, Array(6).fill(8), 48), 95);
    expect(width(found)).toBeCloseTo((1.7695 * 1.1547) / 2.4, 3);
    // Where hives under the minimum count, 10 / sqrt(12) = 2.887, and the usual 2.4 is less.
    const counting = contract({ minimumFrames: 6, mostFrames: 10 });
    const wide = lotAverage(counting, lot(counting, Array(6).fill(8), 48), 95);
    expect(width(wide)).toBeCloseTo(1.7695, 3);
  });

  it("is widened for skew by Edgeworth's term", () => {
    // By hand: 19 hives at 5 frames and one at 30: mean 6.25, sd sqrt(31.25), skewness
    // 18 / sqrt(19) = 4.129; t of 19 degrees 2.0930; z 1.95996: z^4 + 2 z^2 - 3 = 19.440; in an
    // endless lot 2.0930 + 4.129^2 x 1.95996 x 19.440 / 360 = 3.898 errors of sqrt(31.25 / 20).
    const skewed = lot(EIGHT, [...Array<number>(19).fill(5), 30], 20_000_000);
    const { average, low, warning } = lotAverage(EIGHT, skewed, 95);
    expect(average! - low!).toBeCloseTo(3.898 * 1.25, 3);
    expect(warning).toBe("a few hives far over the others sway the average");
  });

  it("is told to be swayed by a few hives far under the others, after what else is to be known", () => {
    const skewed = lot(EIGHT, [...Array<number>(9).fill(10), 0], 40);
    expect(lotAverage(EIGHT, skewed, 95).warning).toBe(
      "only 10 hives count: under 15 the interval may miss more often than it says; " +
        "a few hives far under the others sway the average",
    );
  });

  it("is widened for skew less, the more of the lot is opened", () => {
    // By hand, half of 40 opened: 2.0930 + 1.805 / 2 = 2.9955 errors of sqrt(31.25 / 20 / 2).
    const skewed = lot(EIGHT, [...Array<number>(19).fill(5), 30], 40);
    const { average, low } = lotAverage(EIGHT, skewed, 95);
    expect(average! - low!).toBeCloseTo((2.9955 * 1.25) / Math.SQRT2, 3);
  });

  it("where no hive counts is not known", () => {
    const by = contract({ minimumFrames: 6, underMinimum: "left out" });
    expect(lotAverage(by, lot(by, [3, 4], 48), 95)).toMatchObject({
      average: null,
      low: null,
      method: "",
      warning: "no opened hive counts in the average: all are under the minimum",
    });
  });

  it("of empty hives rests on what is asked", () =>
    expect(lotAverage(EIGHT, lot(EIGHT, [0, 0, 0], 48), 95)).toMatchObject({
      average: 0,
      low: 0,
      high: expect.closeTo((2.3646 * 2.4 * Math.sqrt((1 - 3 / 48) / 3)) / Math.sqrt(3), 2),
    }));

  it("keeps the observers' error where every hive was opened", () => {
    // By hand: 10 % of 8 frames between two people, 0.8 / sqrt(2) of one, times 1.95996.
    const by = contract({ observerError: 10 });
    const { low, se } = lotAverage(by, lot(by, [6, 8, 10], 3), 95);
    expect([8 - low!, se]).toEqual([expect.closeTo(1.1087, 4), 0]);
  });

  it("adds the observers' error as the other leg, not shrinking with hives nor with the lot", () => {
    const by = contract({ observerError: 10 });
    for (const [hives, size] of [
      [7, 48],
      [28, 48],
      [28, 29],
    ] as const) {
      const frames = Array.from({ length: hives }, (_, i) => 2 + 2 * (i % 7));
      const without = width(lotAverage(EIGHT, lot(EIGHT, frames, size), 95)) / 2;
      const both = width(lotAverage(by, lot(by, frames, size), 95)) / 2;
      expect(both ** 2 - without ** 2).toBeCloseTo(1.1087 ** 2, 3);
    }
  });

  it("asks whether whole pallets were opened where the hives stand together on theirs", () => {
    const frames = Array.from({ length: 16 }, (_, i) => 6 + (i % 5));
    const said = (size: number, onPallet: number) =>
      lotAverage(EIGHT, lot(EIGHT, frames, size, onPallet), 95).warning;
    expect(said(100, 4)).toContain('"opened by" to pallets');
    expect(said(100, 2)).toContain('"opened by" to pallets');
    expect(said(100, 1)).toBe("");
    expect(said(100, 0)).toBe("");
    // Of 24 hives 16 share pallets, however they are drawn.
    expect(said(24, 4)).toBe("");
  });

  it("takes whole pallets where the contract opens them and the sheet names them", () => {
    const by = contract({ openedBy: "pallets" });
    const frames = Array.from({ length: 60 }, (_, i) => 6 + (Math.floor(i / 4) % 5));
    const { df, method, warning } = lotAverage(by, lot(by, frames, 240, 4), 95);
    expect([df, method, warning]).toEqual([
      14,
      expect.stringMatching(/^15 of 60 pallets drawn: /),
      "",
    ]);
    const unnamed = lotAverage(by, lot(by, frames, 240), 95);
    expect(unnamed.df).toBe(59);
    expect(unnamed.warning).toContain("the sheet names no pallets");
    const single = lotAverage(EIGHT, lot(EIGHT, frames, 240, 4), 95);
    expect(single.df).toBe(59);
    expect(unnamed).toMatchObject({ low: single.low, high: single.high });
  });

  it("says how its interval was made", () => {
    const method = (terms: Partial<Contract>, frames: number[], size: number): string => {
      const by = contract(terms);
      return lotAverage(by, lot(by, frames, size, 2), 95).method;
    };
    expect(method({}, [7, 9, 8, 4], 48)).toBe(
      "4 of 48 hives drawn: Student's t for a finite lot, widened for skew, " +
        "a typical spread counting as one of the hives",
    );
    const strict = { minimumFrames: 6, underMinimum: "left out", observerError: 8 } as const;
    expect(method(strict, [7, 9, 8, 4], 48)).toBe(
      "4 of 48 hives drawn, 3 counting in the average: Student's t for a finite lot, " +
        "widened for skew, a typical spread counting as one of the hives; observers' error 8 % added",
    );
    expect(method({ openedBy: "pallets" }, [7, 9, 8, 4], 48)).toBe(
      "2 of 24 pallets drawn: Student's t for a finite lot, widened for skew, " +
        "a typical spread counting as one of the pallets",
    );
    expect(method({ observerError: 8 }, [7, 9, 8, 4], 4)).toBe(
      "every hive was opened; observers' error 8 % added",
    );
  });

  it("refuses a lot whose pallets are named in part", () => {
    const by = contract({ openedBy: "pallets" });
    const { hives } = lot(by, [8, 9, 7, 8, 9], 48, 4);
    const partly = hives.map((hive, i) => (i === 2 ? { ...hive, pallet: null } : hive));
    expect(() => lotAverage(by, { hives: partly, size: 48 }, 95)).toThrow(
      "hive H2 has no pallet, and the contract opens whole pallets",
    );
  });

  it.each([0, 100, -5, 101, NaN])("refuses a confidence of %d", (confidence) =>
    expect(() => lotAverage(EIGHT, lot(EIGHT, [7, 9], 48), confidence)).toThrow(
      `a confidence of ${confidence} %`,
    ),
  );
});

describe("the chance that the whole lot meets the contract", () => {
  it("is a half where the sample's average is what is asked", () =>
    expect(lotChance(EIGHT, lot(EIGHT, [7, 8, 9, 8], 48))).toBeCloseTo(0.5, 12));

  it("is Student's t of the unopened hives, worked out the long way", () => {
    // 2 to 14 frames, 7 of 48 opened, 7 asked. Sum of squares 112, a typical 30 % of 8 with it:
    // sd sqrt((2.4^2 + 112) / 7) = 4.1016. The 41 unopened must average (48 x 7 - 56) / 41 = 6.8293;
    // foretold 8 give or take 4.1016 x sqrt(1/7 + 1/41) = 1.6773: t = 0.69796 at 7 degrees of
    // freedom; R 4.2.2: pt(0.69796, 7) = 0.746140.
    const by = contract({ averageFrames: 7 });
    const chance = lotChance(by, lot(by, [2, 4, 6, 8, 10, 12, 14], 48));
    expect(chance).toBeCloseTo(0.74614, 5);
  });

  it("is 0 or 1 where every hive was opened", () => {
    expect(lotChance(EIGHT, lot(EIGHT, [7, 9], 2))).toBe(1);
    expect(lotChance(EIGHT, lot(EIGHT, [7, 8.9], 2))).toBe(0);
    expect(lotChance(EIGHT, lot(EIGHT, [9], 1))).toBe(1);
    const strict = contract({ minimumFrames: 6, underMinimum: "left out" });
    expect(lotChance(strict, lot(strict, [4, 5], 2))).toBe(0);
  });

  it("is 0 or 1 where the contract lets no hive differ that counts", () => {
    const even = (averageFrames: number, frames: number): number => {
      const by = contract({
        averageFrames,
        minimumFrames: frames,
        mostFrames: frames,
        underMinimum: "left out",
      });
      return lotChance(by, lot(by, [frames, frames, frames], 48));
    };
    expect([even(8, 8), even(7, 8), even(8, 7)]).toEqual([1, 1, 0]);
  });

  it("falls as more is asked, and lies between 0 and 1", () => {
    fc.assert(
      fc.property(aLot, fc.double({ min: 0.5, max: 15, noNaN: true }), ({ by, sample }, asked) => {
        fc.pre(lotAverage(by, sample, 95).df !== null);
        const easy = lotChance({ ...by, averageFrames: asked }, sample);
        const hard = lotChance({ ...by, averageFrames: asked + 0.5 }, sample);
        expect(hard).toBeLessThanOrEqual(easy + 1e-12);
        expect(Math.min(hard, easy)).toBeGreaterThanOrEqual(0);
        expect(Math.max(hard, easy)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("is not known of one hive, and refused where no average is asked", () => {
    const unknown = new Refusal(
      "fewer than two hives count in the average, and one shows no spread",
      "unknown",
    );
    expect(() => lotChance(EIGHT, lot(EIGHT, [9], 48))).toThrow(unknown);
    const strict = contract({ minimumFrames: 6, underMinimum: "left out" });
    expect(() => lotChance(strict, lot(strict, [4, 5], 48))).toThrow(unknown);
    const by = contract({ averageFrames: 0 });
    expect(() => lotChance(by, lot(by, [8, 9], 48))).toThrow("asks no average of a lot");
  });
});

describe("the share under the minimum", () => {
  const by = contract({ minimumFrames: 6 });

  it("is that of the hives that are not accepted", () => {
    // 5 of 24, every hive opened.
    const frames = Array.from({ length: 24 }, (_, i) => (i < 5 ? 4 : 8));
    expect(shareUnder(lot(by, frames, 24), 95)).toEqual({
      share: 5 / 24,
      low: 5 / 24,
      high: 5 / 24,
    });
  });

  it("holds the share found, narrower with more hives opened", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 30, max: 300 }),
        (opened, weak, unopened) => {
          const frames = Array.from({ length: opened }, (_, i) => (i < weak ? 4 : 8));
          const size = 2 * opened + unopened;
          const { share, low, high } = shareUnder(lot(by, frames, size), 95);
          expect(low).toBeLessThanOrEqual(share + 1e-12);
          expect(high).toBeGreaterThanOrEqual(share - 1e-12);
          const twice = shareUnder(lot(by, [...frames, ...frames], size), 95);
          // In a finite lot whole hives can move one end by one hive.
          expect(twice.high - twice.low).toBeLessThanOrEqual(high - low + 1 / size + 1e-12);
        },
      ),
    );
  });
});

describe("hives to open", () => {
  it("are the fewest whose interval is within the margin", () => {
    // By hand, 96 hives, spread 2.4, margin 1: of 19, t of 18 degrees 2.1009 x 2.4 x
    // sqrt((1 - 19/96) / 19) = 1.036; of 20, 2.0930 x 2.4 x sqrt((1 - 20/96) / 20) = 0.9994.
    const found = toOpen(planOfSpread(null, 96, 2.4), 1, 95);
    expect(found).toEqual({ units: 20, hives: 20, margin: expect.closeTo(0.9994, 4) });
  });

  it.each([
    ["unlike", [4, 6, 8, 10, 12, 8, 4, 6, 8, 10, 12, 8]],
    ["alike", [8, 8.5, 7.5, 8, 8.5, 7.5]],
  ])("bring the interval of hives as %s within the margin, and two less do not", (_, frames) => {
    const plan = planOfLot(EIGHT, lot(EIGHT, frames, 200), null);
    expect(plan.spreadFrom).toBe("the hives opened");
    const { units } = toOpen(plan, 0.7, 95);
    const marginOf = (n: number): number => {
      // Hives of that very spread: half of them a step under 8 and half a step over it.
      const step = plan.spread * Math.sqrt((n - 1) / n);
      const made = Array.from({ length: n }, (_, i) => 8 + (i % 2 === 0 ? step : -step));
      return width(lotAverage(EIGHT, lot(EIGHT, made, 200), 95)) / 2;
    };
    const even = units + (units % 2);
    expect(marginOf(even)).toBeLessThanOrEqual(0.7 + 1e-9);
    expect(marginOf(even - 2)).toBeGreaterThan(0.7);
  });

  it("are more for a narrower margin, a higher confidence, a wider spread, and never over the lot", () => {
    fc.assert(
      fc.property(
        fc.record({
          size: fc.integer({ min: 2, max: 2000 }),
          spread: fc.double({ min: 0.1, max: 6, noNaN: true }),
          margin: fc.double({ min: 0.05, max: 4, noNaN: true }),
          confidence: fc.double({ min: 50, max: 98, noNaN: true }),
        }),
        ({ size, spread, margin, confidence }) => {
          const open = (s: number, m: number, c: number) =>
            toOpen(planOfSpread(null, size, s), m, c).units;
          const units = open(spread, margin, confidence);
          expect(units).toBeLessThanOrEqual(size);
          expect(open(spread, margin / 2, confidence)).toBeGreaterThanOrEqual(units);
          expect(open(spread, margin, confidence + 1)).toBeGreaterThanOrEqual(units);
          expect(open(spread * 1.5, margin, confidence)).toBeGreaterThanOrEqual(units);
        },
      ),
    );
  });

  it("go by a typical spread of 30 % of what is asked where none is seen", () => {
    expect(planOfSpread(EIGHT, 96, null)).toMatchObject({
      kind: "hives",
      spread: 2.4,
      spreadFrom: "typical",
    });
    const one = planOfLot(EIGHT, lot(EIGHT, [10], 96), null);
    expect(one).toMatchObject({ spread: 3, spreadFrom: "typical" });
    expect(() => planOfSpread(null, 96, null)).toThrow("no spread to go by");
  });

  it("are whole pallets where the contract opens them", () => {
    const by = contract({ openedBy: "pallets" });
    const plan = planOfLot(by, lot(by, [9, 9, 9, 9, 7, 7, 7, 7, 5, 5, 5, 5], 96, 4), null);
    expect(plan).toMatchObject({ kind: "pallets", inLot: 24, hivesOnUnit: 4, spread: 2 });
    // 30 % of 7 frames a hive, of four together by the root of four.
    expect(plan.typical).toBeCloseTo(1.05, 12);
    const { units, hives } = toOpen(plan, 1, 95);
    expect(hives).toBe(4 * units);
  });

  it("are enough where the margin is just met", () => {
    const plan = planOfSpread(EIGHT, 96, 2.4);
    const { units, margin } = toOpen(plan, 1, 95);
    expect(toOpen(plan, margin, 95).units).toBe(units);
  });

  it("go by the spread that is given, and by no usual one beside it", () => {
    const opened = lot(EIGHT, [6, 8, 10], 96);
    expect(planOfLot(EIGHT, opened, 3)).toMatchObject({
      spread: 3,
      typical: 0,
      spreadFrom: "given",
    });
    expect(planOfSpread(null, 96, 3)).toMatchObject({ typical: 0, spreadFrom: "given" });
    const equal = planOfLot(EIGHT, lot(EIGHT, [8, 8, 8], 96), null);
    expect(equal.spreadFrom).toBe("typical");
    expect(equal.spread).toBeCloseTo(2.4, 12);
  });

  it("count a pallet that is not full as one, and are at most the lot's", () => {
    const by = contract({ openedBy: "pallets" });
    const plan = planOfLot(by, lot(by, [9, 9, 9, 9, 7, 7, 7, 7], 94, 4), null);
    // 94 / 4 = 23.5
    expect(plan).toMatchObject({ inLot: 24, hivesOnUnit: 4 });
    expect(toOpen(plan, 0, 95)).toEqual({ units: 24, hives: 94, margin: 0 });
    expect(toOpen(planOfSpread(null, 1, 2), 1, 95)).toEqual({ units: 1, hives: 1, margin: 0 });
  });

  it("carry the error of one of two observers", () => {
    // 10 % of 8 frames, over the root of two.
    const by = contract({ observerError: 10 });
    expect(planOfSpread(by, 96, 2).observer).toBeCloseTo(0.5657, 4);
    expect(planOfLot(by, lot(by, [7, 9], 96), null).observer).toBeCloseTo(0.5657, 4);
    expect(planOfSpread(null, 96, 2).observer).toBe(0);
  });

  it("are not known where no hive opened counts", () => {
    const by = contract({ minimumFrames: 6, underMinimum: "left out" });
    expect(() => planOfLot(by, lot(by, [3, 4], 48), null)).toThrow(
      new Refusal("no opened hive counts in the average", "unknown"),
    );
  });

  it("are more where some are left out of the average", () => {
    const by = contract({ minimumFrames: 6, underMinimum: "left out" });
    const plan = planOfLot(by, lot(by, [8, 10, 12, 6, 4, 4], 96), null);
    expect(plan.counting).toBeCloseTo(2 / 3, 12);
    expect(toOpen(plan, 1, 95).units).toBeGreaterThan(
      toOpen({ ...plan, counting: 1 }, 1, 95).units,
    );
  });

  it("are refused where the observers' error alone is over the margin", () => {
    const plan = planOfSpread(contract({ observerError: 10 }), 96, 2);
    expect(() => toOpen(plan, 1, 95)).toThrow(
      "the observers' error alone is 1.11 frames either way at 95 %: no number of hives brings the margin to 1",
    );
    expect(toOpen(plan, 1.2, 95).units).toBeGreaterThan(
      toOpen({ ...plan, observer: 0 }, 1.2, 95).units,
    );
  });
});

describe("a quick look at all and a full count of some", () => {
  it("scales the quick looks by the full counts", () => {
    // By hand: 12 full frames to 14 quick ones, quick looks 8 on average: 6.857.
    const hives = [
      { quick: 8, full: 7 },
      { quick: 6, full: 5 },
      { quick: 10, full: null },
    ];
    expect(quickLook(hives, 95)).toMatchObject({
      looked: 3,
      counted: 2,
      ratio: expect.closeTo(12 / 14, 12),
      quickAverage: 8,
      average: expect.closeTo(6.857, 3),
    });
  });

  it("has Student's interval where the full counts lie evenly about the quick ones", () => {
    // By hand: 6, 7, 9 and 10 where 8 were seen, 4 of 20: sd sqrt(10 / 3); t of 3 degrees 3.1824,
    // times sqrt((1 - 4/20) / 4): 2.5984.
    const hives = Array.from({ length: 20 }, (_, i) => ({
      quick: 8,
      full: [6, 7, 9, 10][i] ?? null,
    }));
    const { average, low, high } = quickLook(hives, 95);
    expect([average, low, high]).toEqual(
      [8, 8 - 2.5984, 8 + 2.5984].map((frames) => expect.closeTo(frames, 3)),
    );
  });

  it("is the full counts' own average, without doubt, where every hive has one", () => {
    const hives = [7, 5, 9].map((full) => ({ quick: full + 1, full }));
    const found = quickLook(hives, 95);
    expect([found.average, found.low, found.high]).toEqual(
      [7, 7, 7].map((frames) => expect.closeTo(frames, 12)),
    );
    expect(found.warning).toBe("");
  });

  it("is surer than the full counts alone where the quick look follows them", () => {
    const quick = Array.from({ length: 96 }, (_, i) => 3 + (i % 10));
    const hives = quick.map((q, i) => ({
      quick: q,
      full: i % 6 === 0 ? 0.9 * q + (i % 4 === 0 ? 0.3 : -0.3) : null,
    }));
    const full = hives.flatMap((hive) => (hive.full === null ? [] : [hive.full]));
    const alone = lotAverage(EIGHT, lot(EIGHT, full, 96), 95);
    expect(width(quickLook(hives, 95))).toBeLessThan(width(alone) / 3);
  });

  it("warns where few are counted in full, and where they show no spread", () => {
    const warning = (full: number[], looked: number, quick = 8): string =>
      quickLook(
        Array.from({ length: looked }, (_, i) => ({ quick, full: full[i] ?? null })),
        95,
      ).warning;
    const few = "under 15 the interval may miss more often than it says";
    const fifteen = Array.from({ length: 15 }, (_, i) => 7 + (i % 3));
    expect(warning(fifteen, 16)).toBe("");
    expect(warning(fifteen.slice(1), 16)).toBe(`only 14 full counts: ${few}`);
    expect(warning([7, 7], 16)).toBe(
      `only 2 full counts: ${few}; all are exactly in proportion: they show no spread`,
    );
    expect(warning([7], 1)).toBe("");
  });

  it("has an interval that ends at no bees", () => {
    const found = quickLook(
      [0, 1, 9, null].map((full) => ({ quick: 8, full })),
      95,
    );
    expect(found).toMatchObject({ average: expect.closeTo(10 / 3, 12), low: 0 });
  });

  it("answers for one full count, and refuses none", () => {
    const one = quickLook(
      [
        { quick: 8, full: 7 },
        { quick: 6, full: null },
      ],
      95,
    );
    expect([one.low, one.high, one.warning]).toEqual([
      null,
      null,
      "one full count shows no spread: count more hives in full",
    ]);
    expect(() => quickLook([{ quick: 8, full: null }], 95)).toThrow("no hive is counted in full");
    expect(() =>
      quickLook(
        [
          { quick: 0, full: 3 },
          { quick: 2, full: null },
        ],
        95,
      ),
    ).toThrow("the quick look saw no bees in the hives that were counted in full");
  });
});

describe("the error of two observers", () => {
  it("is the gap of their averages with its standard error", () => {
    // By hand: 24 and 27 frames in all, gap 3 of 25.5: 11.765 %. Hives off that gap by 0, 0.2353
    // and -0.2353, sd 0.2353, over 8.5 x sqrt(3): 1.598 %. Root of both squares: 11.873 %.
    const found = observerError([8, 6, 10], [9, 7, 11]);
    expect(found).toEqual({
      hives: 3,
      first: 8,
      second: 9,
      difference: expect.closeTo(11.765, 3),
      se: expect.closeTo(1.598, 3),
      error: expect.closeTo(11.873, 3),
    });
  });

  it("is the same whoever is first, and whatever the order", () => {
    const pair = fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }));
    fc.assert(
      fc.property(fc.array(pair, { minLength: 2, maxLength: 30 }), (pairs) => {
        const one = pairs.map(([a]) => a);
        const other = pairs.map(([, b]) => b);
        const found = observerError(one, other);
        expect(observerError(other, one).error).toBeCloseTo(found.error, 9);
        expect(observerError(one.reverse(), other.reverse()).error).toBeCloseTo(found.error, 9);
      }),
    );
  });

  it("is none for two who agree hive by hive, and some for two whose averages agree by luck", () => {
    expect(observerError([8, 6, 10], [8, 6, 10]).error).toBe(0);
    expect(observerError([8, 6, 10], [6, 8, 10]).error).toBeGreaterThan(5);
  });

  it("needs two hives with bees", () => {
    expect(() => observerError([8], [9])).toThrow(
      "hives that both judged: 1, and two are needed, better twenty",
    );
    expect(() => observerError([0, 0], [0, 0])).toThrow("both saw no bees in any hive");
    expect(() => observerError([0, 8], [0, 9])).toThrow(
      "bees in one hive alone, and two are needed, better twenty",
    );
  });
});
