import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Contract } from "../../src/core/contract.js";
import { readContract } from "../../src/core/contract-reading.js";
import { exactly } from "../../src/core/estimate.js";
import { exact, inUnits, toNumber } from "../../src/core/exact.js";
import { hivePay } from "../../src/core/fees.js";
import { lotOf, type Look } from "../../src/core/lot.js";
import { lotPay } from "../../src/core/pay.js";
import { scaled } from "../../src/core/scaled.js";
import { call } from "../../src/functions/declare.js";
import { hivePayFunction, lotPayFunction } from "../../src/functions/pay.js";
import { whatIf } from "../../src/functions/what-if.js";
import { shown, terms } from "../functions/sheet.js";

type Rows = readonly (readonly [string, unknown])[];
const contract = (rows: Rows): Contract => readContract(terms(...rows), null);
const DEAD = { low: 0, middle: 0, high: 0, dead: true, note: "" };
/** Hives by their frames; null is dead. */
const looks = (frames: readonly (number | null)[]): Look[] =>
  frames.map((count, i) => ({
    id: `H${i}`,
    pallet: null,
    day: null,
    hive: {
      frames: count === null ? DEAD : exactly(count),
      brood: null,
      queen: null,
      stores: null,
    },
  }));
const settle = (
  rows: Rows,
  frames: readonly (number | null)[],
  size = frames.length,
  delivered: number | null = null,
) => lotPay(contract(rows), lotOf(contract(rows), looks(frames), size), delivered);

const part = fc.constantFrom("down", "nearest", "as it is", "between");
const frames = fc.oneof(
  fc.integer({ min: 0, max: 80 }).map((quarters) => quarters / 4),
  fc.integer({ min: 0, max: 60 }).map((thirds) => thirds / 3),
);
const opened = fc.array(fc.oneof({ weight: 9, arbitrary: frames }, fc.constant(null)), {
  minLength: 1,
  maxLength: 25,
});
const money = fc.integer({ min: 1, max: 40_000 }).map((cents) => cents / 100);
/** A schedule by frames whose fees fall by a dollar or more with its frames. */
const schedule = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 5 }),
    fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 5, maxLength: 5 }),
  )
  .map(([halves, steps]) => {
    const levels = halves.sort((a, b) => b - a).map((half) => half / 2);
    return levels.flatMap((level, i): Rows => [
      [`grade ${i + 1} name`, `class ${i + 1}`],
      [`grade ${i + 1} frames`, level],
      [`grade ${i + 1} fee`, steps.slice(i).reduce((sum, step) => sum + step, 0)],
    ]);
  });
const fees = fc.oneof(
  schedule,
  money.map((fee): Rows => [["base fee", fee]]),
);
const rest = fc
  .record({
    minimum: fc.nat(6),
    under: fc.constantFrom("left out", "counted", "rejects the load"),
    part,
    bonus: fc.oneof(fc.constant(0), money),
    by: fc.constantFrom("lot", "hive"),
    ceiling: fc.oneof(fc.constant(0), money),
    proRata: fc.constantFrom("yes", "no"),
    round: fc.constantFrom(0, 0.01, 0.05, 0.25, 1, 10),
    hives: fc.constantFrom("exact", "whole"),
    short: fc.constantFrom("paid as delivered", "pro rata", "refused"),
  })
  .map((t): Rows => [
    ["average frames", 8],
    ["minimum frames", t.minimum],
    ["under minimum", t.under],
    ["share under minimum forgiven", 50],
    ["part frame", t.part],
    ["bonus a frame", t.bonus],
    ["bonus by", t.by],
    ["bonus ceiling", t.bonus === 0 ? 0 : t.ceiling],
    ["pro rata", t.proRata],
    ["round money", t.round],
    ["round hives", t.hives],
    ["short delivery", t.short],
  ]);
/** A minimum over what the best class asks is refused: no class would be left to be in. */
const terms_ = fc
  .tuple(fees, rest)
  .map(([some, more]): Rows => [...some, ...more])
  .filter((rows) => {
    const best = new Map(rows).get("grade 1 frames");
    return best === undefined || Number(new Map(rows).get("minimum frames")) <= Number(best);
  });
const lot = fc.record({ opened, more: fc.nat(300), missing: fc.nat(20) }).map((l) => {
  const size = l.opened.length + l.more;
  return { frames: l.opened, size, delivered: Math.max(l.opened.length, size - l.missing) };
});
const roundingOf = (rows: Rows) => Number(new Map(rows).get("round money")) || 0.01;
/** How many of the smallest sum an amount is, which must be a whole number. */
const unitsOf = (amount: number, unit: number): number => {
  const units = Math.round(amount / unit);
  expect(amount).toBe(Number((units * unit).toFixed(2)));
  return units;
};

describe("a settlement", () => {
  it("has lines that add up to the total in the smallest sum, with nothing left over", () => {
    fc.assert(
      fc.property(terms_, lot, (rows, { frames, size, delivered }) => {
        const unit = roundingOf(rows);
        const { lines, total } = settle(rows, frames, size, delivered);
        const units = lines.map(({ amount }) => unitsOf(amount, unit));
        expect(unitsOf(total, unit)).toBe(units.reduce((sum, n) => sum + n, 0));
      }),
      { numRuns: 500 },
    );
  });

  it("has amounts that are quantity times rate, rounded", () => {
    fc.assert(
      fc.property(terms_, lot, (rows, { frames, size, delivered }) => {
        for (const line of settle(rows, frames, size, delivered).lines) {
          const off = Math.abs(line.amount - line.quantity * line.rate);
          expect(off).toBeLessThanOrEqual(roundingOf(rows) / 2 + 1e-6);
        }
      }),
    );
  });

  it("is the same in whatever order the rows stand", () => {
    const shuffled = lot.chain((l) =>
      fc.tuple(
        fc.constant(l),
        fc.shuffledSubarray(l.frames, { minLength: l.frames.length, maxLength: l.frames.length }),
      ),
    );
    fc.assert(
      fc.property(terms_, shuffled, (rows, [{ frames, size, delivered }, other]) => {
        expect(settle(rows, other, size, delivered)).toEqual(settle(rows, frames, size, delivered));
      }),
      { numRuns: 500 },
    );
  });

  it("never pays less for more frames under a falling schedule paid exactly", () => {
    const rest = fc.tuple(part, fc.constantFrom(0, 2.5)).map(([as, bonus]): Rows => [
      ["part frame", as],
      ["average frames", bonus === 0 ? 0 : 8],
      ["bonus a frame", bonus],
      ["bonus by", "hive"],
    ]);
    const hives = fc.array(fc.tuple(frames, frames), { minLength: 1, maxLength: 25 });
    fc.assert(
      fc.property(schedule, rest, hives, fc.nat(300), (rows, more, pairs, extra) => {
        const all = [...rows, ...more];
        const size = pairs.length + extra;
        const weak = settle(
          all,
          pairs.map(([some]) => some),
          size,
        );
        const strong = settle(
          all,
          pairs.map(([some, on]) => some + on),
          size,
        );
        // Each line is rounded by half a cent at most.
        const rounded = 0.005 * (weak.lines.length + strong.lines.length);
        expect(strong.total).toBeGreaterThanOrEqual(weak.total - rounded - 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it("never pays less for more frames where a lot under the average is paid in proportion", () => {
    const rows: Rows = [
      ["average frames", 8],
      ["minimum frames", 2],
      ["under minimum", "counted"],
      ["base fee", 150],
      ["pro rata", "yes"],
      ["bonus a frame", 5],
    ];
    const hives = fc.array(fc.tuple(frames, frames), { minLength: 1, maxLength: 25 });
    fc.assert(
      fc.property(hives, fc.nat(300), (pairs, extra) => {
        const [weak, strong] = [0, 1].map((on) =>
          settle(
            rows,
            pairs.map(([some, more]) => some + on * more),
            pairs.length + extra,
          ),
        );
        expect(strong!.total).toBeGreaterThanOrEqual(weak!.total - 0.02);
      }),
    );
  });

  it("keeps the bonus within the ceiling for each hive that is paid", () => {
    fc.assert(
      fc.property(terms_, lot, (rows, { frames, size }) => {
        const values = new Map(rows);
        const most = Number(values.get("bonus ceiling")) || Infinity;
        const { lines } = settle([...rows], frames, size);
        const paid = lines.filter(({ label, rate }) => /^(class|hives)/.test(label) && rate > 0);
        const hives = paid.reduce((sum, { quantity }) => sum + quantity, 0);
        const bonus = lines.filter(({ label }) => label.startsWith("bonus"));
        expect(bonus.length).toBeLessThanOrEqual(1);
        // In whole hives a grade may have a hive more or less than its share.
        const whole = values.get("round hives") === "whole" ? paid.length : 0;
        for (const { amount } of bonus) {
          const limit = (hives + whole) * most + roundingOf(rows) / 2 + 1e-6;
          expect(amount).toBeLessThanOrEqual(limit);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("pays nothing for dead hives and for those that are not accepted", () => {
    fc.assert(
      fc.property(terms_, fc.integer({ min: 1, max: 9 }), (rows, hives) => {
        const dead = settle(rows, Array<null>(hives).fill(null));
        expect(dead.total).toBe(0);
        for (const { rate } of dead.lines) expect(rate).toBe(0);
        // A hive of no bees is not dead, and no contract here accepts it.
        expect(settle(rows, Array<number>(hives).fill(0)).total).toBe(0);
      }),
    );
  });

  it("leaves as the balance what the deposit does not cover", () => {
    fc.assert(
      fc.property(lot, money, fc.nat(100), ({ frames, size }, fee, percent) => {
        const rows: Rows = [
          ["minimum frames", 4],
          ["base fee", fee],
          ["deposit", percent],
        ];
        const { total, deposit, balance } = settle(rows, frames, size);
        expect(unitsOf(deposit, 0.01) + unitsOf(balance, 0.01)).toBe(unitsOf(total, 0.01));
        expect(Math.abs(deposit - (size * fee * percent) / 100)).toBeLessThanOrEqual(0.005 + 1e-6);
      }),
    );
  });

  it("of a lot that is all opened is the pay of its hives, where nothing hangs on the lot", () => {
    fc.assert(
      fc.property(schedule, opened, (rows, frames) => {
        const all: Rows = [...rows, ["part frame", "down"], ["round hives", "whole"]];
        const hives = lotOf(contract(all), looks(frames), frames.length).hives;
        const alone = hives.map((hive) => hivePay(contract(all), hive));
        expect(settle(all, frames).total).toBe(alone.reduce((sum, pay) => sum + pay, 0));
      }),
    );
  });
});

describe("hives scaled to the lot", () => {
  const counts = fc
    .array(fc.nat(30), { minLength: 1, maxLength: 12 })
    .filter((c) => c.some(Boolean));

  it("add up to it, whole hives within one of their share", () => {
    fc.assert(
      fc.property(counts, fc.nat(1000), (opened, extra) => {
        const all = opened.reduce((sum, n) => sum + n, 0);
        const whole = scaled(opened, all + extra, "whole").map(toNumber);
        const shares = scaled(opened, all + extra, "exact").map(toNumber);
        expect(whole.reduce((sum, n) => sum + n, 0)).toBe(all + extra);
        expect(shares.reduce((sum, n) => sum + n, 0)).toBeCloseTo(all + extra, 9);
        whole.forEach((n, i) => {
          expect(Number.isInteger(n)).toBe(true);
          expect(Math.abs(n - shares[i]!)).toBeLessThan(1);
          expect(shares[i]).toBeCloseTo((opened[i]! * (all + extra)) / all, 9);
        });
      }),
    );
  });

  it("give what is left to the largest remainders, and of equals to the better class", () => {
    // 10 hives by 3, 3 and 1 of 7 opened: 4.29, 4.29, 1.43.
    expect(scaled([3, 3, 1], 10, "whole").map(toNumber)).toEqual([4, 4, 2]);
    // 3 hives by 1 and 1 of 2: 1.5 each.
    expect(scaled([1, 1], 3, "whole").map(toNumber)).toEqual([2, 1]);
  });
});

describe("a sum of money", () => {
  it("has its half rounded away from zero", () => {
    const rounded = (value: number, unit: number) => Number(inUnits(exact(value), exact(unit)));
    expect([0.005, 0.015, 1.005, -0.005].map((n) => rounded(n, 0.01))).toEqual([1, 2, 101, -1]);
    expect([0.0049999, -0.0049999].map((n) => rounded(n, 0.01))).toEqual([0, 0]);
    expect([0.5, 1.5, 2.5, -2.5].map((n) => rounded(n, 1))).toEqual([1, 2, 3, -3]);
    expect([0.024, 0.025, 0.075].map((n) => rounded(n, 0.05))).toEqual([0, 1, 2]);
  });

  it("is the same number in whatever terms its fraction stands, and the nearest there is", () => {
    const size = fc.bigInt(-(10n ** 40n), 10n ** 40n);
    const scale = fc.bigInt(1n, 10n ** 40n);
    fc.assert(
      fc.property(size, scale, scale, (top, bottom, by) => {
        const plain = toNumber({ top, bottom });
        expect(toNumber({ top: top * by, bottom: bottom * by })).toBe(plain);
      }),
      { numRuns: 1000 },
    );
    // 1 + 2^-53 lies halfway to the next number, and the even one is taken; past it, the upper.
    const half = 2n ** 53n;
    expect(toNumber({ top: half + 1n, bottom: half })).toBe(1);
    const past = { top: (half + 1n) * 10n ** 30n + 1n, bottom: half * 10n ** 30n };
    expect(toNumber(past)).toBe(1 + Number.EPSILON);
  });

  it("is read by its digits, however a number is written", () => {
    for (const n of [0, 182.5, 1e-7, 1.5e-9, 1e21, 2.5e22, -3.25, 0.1]) {
      expect(toNumber(exact(n))).toBe(n);
    }
  });

  it("is shown to the contract's smallest sum", () => {
    const rows = (round: number): Rows => [
      ["minimum frames", 4],
      ["base fee", 33.33],
      ["round money", round],
    ];
    // 3 x 33.33 = 99.99.
    expect([0.01, 0.05, 0.25, 1, 10].map((unit) => settle(rows(unit), [6, 6, 6]).total)).toEqual([
      99.99, 100, 100, 100, 100,
    ]);
  });

  it("does not hang on a sum of thirds", () => {
    const rows: Rows = [
      ["average frames", 8],
      ["minimum frames", 1],
      ["base fee", 100],
      ["bonus a frame", 3],
      ["pro rata", "yes"],
    ];
    // 7 1/3 + 8 2/3 = 16: just the average. 8 1/3 thrice: a third of a frame over, 1 dollar each.
    expect(settle(rows, [22 / 3, 26 / 3]).total).toBe(200);
    expect(settle(rows, [25 / 3, 25 / 3, 25 / 3]).total).toBe(303);
  });
});

describe("a part frame", () => {
  const graded = (...more: Rows): Rows => [
    ["grade 1 name", "Prime"],
    ["grade 1 frames", 10],
    ["grade 1 fee", 220],
    ["grade 2 name", "Standard"],
    ["grade 2 frames", 7.5],
    ["grade 2 fee", 190],
    ["grade 3 name", "Light"],
    ["grade 3 frames", 6],
    ["grade 3 fee", 150],
    ["part frame", "between"],
    ...more,
  ];
  const fee = (rows: Rows, frames: number, grade: string) =>
    hivePay(contract(rows), {
      id: "H",
      pallet: null,
      frames,
      counted: frames,
      grade,
      accepted: true,
      dead: false,
    });

  it("is paid the fee of its grade where no more is said", () => {
    // 7 to 10 frames at 70, 4 to 7 at 40: 56 of 10, 64 of 7 and 24 of 6.5 hives (common practice, no source).
    const rows: Rows = [
      ["grade 1 name", "Gold"],
      ["grade 1 frames", 10],
      ["grade 1 fee", 95],
      ["grade 2 name", "Silver"],
      ["grade 2 frames", 7],
      ["grade 2 fee", 70],
      ["grade 3 name", "Bronze"],
      ["grade 3 frames", 4],
      ["grade 3 fee", 40],
    ];
    const hives = (count: number, frames: number) => Array<number>(count).fill(frames);
    const lot = [...hives(56, 10.5), ...hives(64, 9.9), ...hives(24, 6.5)];
    expect(settle(rows, lot).total).toBe(56 * 95 + 64 * 70 + 24 * 40);
  });

  it("is paid between only next to a better class, and a whole frame as its class", () => {
    // 9 to 10: 190 + 30 x the part. 7 to 7.5: 150 + 40 x the part / 0.5.
    expect(fee(graded(), 9, "Standard")).toBe(190);
    expect(fee(graded(), 8.5, "Standard")).toBe(190);
    expect(fee(graded(), 9.5, "Standard")).toBe(205);
    expect(fee(graded(), 7.25, "Light")).toBe(170);
    expect(fee(graded(), 7.5, "Standard")).toBe(190);
    expect(fee(graded(), 6.5, "Light")).toBe(150);
    expect(fee(graded(), 12.5, "Prime")).toBe(220);
  });

  it("is not paid between where the better class asks for more brood as well", () => {
    expect(fee(graded(["grade 1 brood", 3]), 9.5, "Standard")).toBe(190);
    expect(fee(graded(["grade 1 brood", 3], ["brood", 3]), 9.5, "Standard")).toBe(205);
  });

  it("stands in a line of its own, best first", () => {
    const { lines } = settle(graded(), [9.5, 6, 9.5, 9, 9.75, 10, 2, null]);
    expect(lines.map(({ label, quantity, rate }) => [label, quantity, rate])).toEqual([
      ["Prime", 1, 220],
      ["Standard (9.75 frames)", 1, 212.5],
      ["Standard (9.5 frames)", 2, 205],
      ["Standard", 1, 190],
      ["Light", 1, 150],
      ["hives not accepted", 1, 0],
      ["dead-out", 1, 0],
    ]);
  });
});

describe("a figure with a rounding of the machine's in it", () => {
  const rows: Rows = [
    ["average frames", 8],
    ["bonus a frame", 0.01],
    ["grade 1 name", "A"],
    ["grade 1 frames", 9],
    ["grade 1 fee", 200],
    ["grade 2 name", "B"],
    ["grade 2 frames", 8],
    ["grade 2 fee", 100],
  ];

  it("is a whole frame where it was one", () => {
    const { lines } = settle(rows, [8 - 1e-15, 8, 8 + 2e-15]);
    expect(lines[0]).toEqual({ label: "B", quantity: 3, rate: 100, amount: 300 });
  });

  it("is its class at a threshold of thirds", () => {
    const thirds: Rows = [
      ...rows.slice(0, 6),
      ["grade 2 frames", 25 / 3],
      ["grade 2 fee", 100],
      ["part frame", "between"],
    ];
    expect(settle(thirds, [25 / 3, 25 / 3 - 5e-10]).lines[0]).toMatchObject({
      quantity: 2,
      rate: 100,
    });
    // From 8 1/3 to 9 at 100 to 200: half way at 8 2/3.
    expect(settle(thirds, [26 / 3]).total).toBe(150.01);
  });

  it.each(["lot", "hive"])("has the half cent that it had, bonus by %s", (by) => {
    // Half a frame over at 0.01 is half a cent, rounded up.
    const base = [...rows.slice(0, 2), ["base fee", 1], ["minimum frames", 4], ["bonus by", by]];
    expect(settle(base as Rows, [8.5 - 2e-15]).total).toBe(1.01);
  });
});

describe("a bonus", () => {
  const rows: Rows = [
    ["average frames", 8],
    ["bonus a frame", 5],
    ["grade 1 name", "A"],
    ["grade 1 frames", 5],
    ["grade 1 fee", 100],
    ["grade 2 name", "unpaid"],
    ["grade 2 frames", 0],
    ["grade 1 brood", 3],
  ];
  const looked = (combs: number): Look => {
    const [look] = looks([10]);
    const brood = { combs: null, fullFrames: exactly(combs), cover: null };
    return { ...look!, id: `B${combs}`, hive: { ...look!.hive, brood } };
  };

  it.each([
    ["lot", 20, 100],
    ["hive", 20, 110],
  ])("by the %s is for paid hives alone, and by the lot not a hive's own", (by, paid, alone) => {
    const under = contract([...rows, ["bonus by", by]]);
    const lot = lotOf(under, [looked(3), looked(1)], 4);
    // 2 of 4 hives are paid, 2 frames over at 5.
    const { lines } = lotPay(under, lot, null);
    expect(lines.map(({ label, quantity }) => [label, quantity]).slice(0, 2)).toEqual([
      ["A", 2],
      ["unpaid", 2],
    ]);
    expect(lines[2]!.amount).toBe(paid);
    expect(lot.hives.map((hive) => hivePay(under, hive))).toEqual([alone, 0]);
  });
});

it("hives of equal frames are kept apart by what they lack and by being dead", () => {
  const hive = (frames: number, queen: boolean): Look => {
    const [look] = looks([frames]);
    return { ...look!, id: `${frames} ${queen}`, hive: { ...look!.hive, queen } };
  };
  const lines = (frames: number, rows: Rows) => {
    const under = contract([["laying queen", "yes"], ["base fee", 100], ...rows]);
    const sample = [hive(frames, true), hive(frames, false), ...looks([null])];
    const { lines } = lotPay(under, lotOf(under, sample, 3), null);
    return lines.map(({ label, quantity }) => [label, quantity]);
  };
  const apart = [
    ["hives accepted", 1],
    ["hives not accepted", 1],
    ["dead-out", 1],
  ];
  expect(lines(1, [])).toEqual(apart);
  // Over the minimum and under the only grade: neither has one, and the queen decides.
  const graded: Rows = [
    ["minimum frames", 4],
    ["grade 1 name", "A"],
    ["grade 1 frames", 6],
  ];
  expect(lines(5, graded)).toEqual(apart);
});

describe("what hangs on the average", () => {
  const labels = (frames: (number | null)[], ...more: Rows): string[] =>
    settle(
      [["average frames", 8], ["minimum frames", 4], ["base fee", 150], ...more],
      frames,
    ).lines.map(({ label }) => label);

  it("is told where something is paid that hangs on it, and else not", () => {
    const bonus: Rows[number] = ["bonus a frame", 5];
    expect(labels([9])).toEqual(["hives accepted"]);
    expect(labels([9], ["bonus by", "hive"])).toEqual(["hives accepted"]);
    expect(labels([9], bonus)).toEqual(["hives accepted", "bonus: average 9 of 8 frames"]);
    expect(labels([9], bonus, ["bonus ceiling", 3])).toEqual([
      "hives accepted",
      "bonus: average 9 of 8 frames, at most 3 a hive",
    ]);
    expect(labels([9], bonus, ["bonus by", "hive"], ["bonus ceiling", 3])).toEqual([
      "hives accepted",
      "bonus hive by hive: frames over 8, at most 3 a hive",
    ]);
    expect(labels([7], bonus)).toEqual([
      "hives accepted",
      "average 7 of 8 frames: no pro rata is agreed",
    ]);
    expect(labels([3, null])).toEqual(["hives not accepted", "dead-out"]);
  });
});

describe("a short delivery", () => {
  const rows = (short: string): Rows => [
    ["minimum frames", 4],
    ["base fee", 150],
    ["short delivery", short],
  ];
  const lines = (short: string) =>
    settle(rows(short), [6, 6], 100, 80).lines.map(({ label, amount }) => [label, amount]);

  it("is paid as delivered", () => {
    expect(lines("paid as delivered")).toEqual([
      ["hives accepted", 12000],
      ["short delivery: 20 of 100 hives did not come", 0],
    ]);
  });

  it("is settled as agreed, less the part that did not come", () => {
    expect(lines("pro rata")).toEqual([
      ["hives accepted", 15000],
      ["short delivery: 20 of 100 hives did not come, pro rata", -3000],
    ]);
  });

  it("is none where every hive came, whatever was agreed of one", () => {
    for (const short of ["paid as delivered", "pro rata", "refused"]) {
      expect(settle(rows(short), [6, 6], 100, 100).total).toBe(15000);
    }
  });

  it("is refused, and the deposit to be paid back", () => {
    expect(lines("refused")).toEqual([
      ["short delivery: 20 of 100 hives did not come, and the lot is refused", 0],
    ]);
    const { deposit, balance } = settle([...rows("refused"), ["deposit", 20]], [6], 100, 80);
    // 20 % of 100 x 150.
    expect([deposit, balance]).toEqual([3000, -3000]);
  });

  it("is judged by what came where the forgiven share is of the lot", () => {
    const all: Rows = [
      ...rows("paid as delivered"),
      ["under minimum", "rejects the load"],
      ["share under minimum forgiven", 1],
      ["forgiven against", "hives in the lot"],
    ];
    // 1 % of 100 forgives the one hive that is under, 1 % of 80 does not.
    expect(settle(all, [6, 3], 100).total).toBe(7500);
    expect(settle(all, [6, 3], 100, 80).total).toBe(0);
  });
});

describe("what a contract leaves open", () => {
  const refusal = (rows: Rows, ...more: [number?, (number | null)?]) => {
    try {
      return settle(rows, [8, 7], ...more).total;
    } catch (error) {
      return (error as Error).message;
    }
  };

  it("is asked for by name: any fee, one grade's fee, what a deposit is of", () => {
    expect(refusal([["minimum frames", 4]])).toBe(
      'contract "Cherry" gives no fee: give "base fee" or the grades\' own ("grade 1 fee") in a Terms table',
    );
    const grades: Rows = [
      ["grade 1 name", "A"],
      ["grade 1 frames", 8],
      ["grade 2 name", "B"],
      ["grade 2 frames", 6],
      ["grade 2 fee", 100],
    ];
    expect(refusal(grades)).toBe(
      'contract "Cherry" gives no fee for "A" and one for "B" below it: give "grade 1 fee"',
    );
    const paid: Rows = [...grades, ["grade 1 fee", 200], ["deposit", 10]];
    expect(refusal(paid)).toMatch(
      /does not say of what fee its deposit is a part: give "base fee"/,
    );
    // Without an average no hive is as agreed, though every hive would be a C.
    const every: Rows = [
      ...paid,
      ["grade 3 name", "C"],
      ["grade 3 frames", 0],
      ["grade 3 fee", 50],
    ];
    expect(refusal(every)).toMatch(/does not say of what fee its deposit is a part/);
    // 10 % of 2 x 100, a hive at the average of 7 being a B.
    expect(settle([...paid, ["average frames", 7]], [8, 8]).deposit).toBe(20);
    // A hive as agreed has all that is asked of it.
    const asks: Rows = [
      ["laying queen", "yes"],
      ["brood", 3],
      ["stores", 2],
    ];
    for (const measure of ["combs", "full frames"]) {
      const all: Rows = [...paid, ...asks, ["average frames", 8], ["brood counted as", measure]];
      expect(settle(all, [null, null]).deposit).toBe(40);
    }
  });

  it("may be the fee of the lowest grades, which are then unpaid", () => {
    const rows: Rows = [
      ["grade 1 name", "A"],
      ["grade 1 frames", 8],
      ["grade 1 fee", 200],
      ["grade 2 name", "B"],
      ["grade 2 frames", 0],
    ];
    expect(refusal(rows)).toBe(200);
  });

  it("is no negative fee: the terms refuse one", () => {
    expect(refusal([["base fee", -1]])).toMatch(/base fee: "-1" stands where a number from 0/);
    expect(
      refusal([
        ["grade 1 name", "A"],
        ["grade 1 fee", -5],
      ]),
    ).toMatch(/grade 1 fee: "-5" stands where a number from 0/);
  });

  it("is no number of hives that cannot be", () => {
    const rows: Rows = [
      ["minimum frames", 4],
      ["base fee", 150],
    ];
    expect(refusal(rows, 10, 1)).toBe("a delivery of 1 hive cannot have 2 opened");
    expect(refusal(rows, 10, 9.5)).toBe("a delivery of 9.5 hives: give a whole number");
    expect(refusal(rows, 10, 11)).toMatch(/^11 hives delivered, and 10 agreed/);
  });
});

describe("WHAT_IF", () => {
  const yard = [
    ["Hive", "Bees"],
    ["A1", 9.5],
    ["A2", 8],
    ["A3", 7],
    ["A4", 4],
    ["A5", "dead"],
  ];
  const rows: Rows = [
    ["average frames", 8],
    ["minimum frames", 5],
    ["base fee (USD):", 150],
    ["bonus a frame", 5],
    ["pro rata", "yes"],
  ];
  const sheet = (fn: typeof whatIf, ...values: unknown[]) =>
    call(fn, values, 1e6).map((row) => row.map(shown));
  const payOf = (statement: unknown[][]) => statement.find(([label]) => label === "total")![3];

  it.each([
    ["minimum frames", [3, 4, 5, 6, 7.5, 8, 0]],
    ["average frames", [5, 7, 8, 8.5, 9.25]],
    ["base fee", [100, 149.99, 150]],
    ["Bonus a frame", [0, 5, 12.5]],
    ["pro rata", ["yes", "no"]],
    ["most frames a hive", [8, 9, 10]],
    ["round money", [0.05, 1, 100]],
    ["under minimum", ["left out", "counted", "rejects the load"]],
  ])("has in each row what LOT_PAY gives with that value: %s", (label, values) => {
    const columns = sheet(whatIf, yard, label, [values], 64, terms(...rows));
    expect(columns).toHaveLength(values.length + 1);
    const pay = columns[0]!.indexOf("Pay");
    values.forEach((value, i) => {
      const own = label.toLowerCase();
      const changed: Rows = [...rows.filter(([name]) => !name.startsWith(own)), [own, value]];
      const total = payOf(sheet(lotPayFunction, yard, 64, terms(...changed)));
      expect(columns[i + 1]![pay]).toBe(total);
    });
  });

  it.each([
    ["average frames", [6, 9]],
    ["grade 1 frames", [8, 9, 10]],
    ["grade 1 fee", [200, 250]],
    ["grade 2 name", ["Low", "Lower"]],
    ["part frame", ["down", "nearest", "as it is", "between"]],
  ])("does so under grades: %s", (label, values) => {
    const graded: Rows = [
      ["average frames", 8],
      ["bonus a frame", 5],
      ["grade 1 name", "High"],
      ["grade 1 frames", 9],
      ["grade 1 fee", 200],
      ["grade 2 name", "Low"],
      ["grade 2 frames", 7],
      ["grade 2 fee", 120],
    ];
    const [head, ...out] = sheet(
      whatIf,
      yard,
      label,
      values.map((v) => [v]),
      9,
      terms(...graded),
    );
    out.forEach((row, i) => {
      const changed: Rows = [...graded.filter(([name]) => name !== label), [label, values[i]]];
      const total = payOf(sheet(lotPayFunction, yard, 9, terms(...changed)));
      expect(row[head!.indexOf("Pay")]).toBe(total);
    });
  });

  it("takes a column as it takes a row, and marks where the pay changes", () => {
    const values = [[150], [150], [160], ["x"], [160]];
    const [head, ...out] = sheet(whatIf, yard, "base fee", values, 5, terms(...rows));
    expect(head).toEqual([
      "base fee",
      "Verdict",
      "Average frames",
      "at average",
      "at minimum",
      "no grade",
      "dead-out",
      "Pay",
      "Change",
      "Note",
    ]);
    // (9.5 + 8 + 7) / 3 = 8 1/6: a sixth of a frame at 5 for 3 hives is 2.50.
    expect(out.map((row) => row.slice(7, 9))).toEqual([
      [452.5, ""],
      [452.5, ""],
      [482.5, 30],
      [expect.stringMatching(/^#VALUE! .*"x" stands where/), expect.stringMatching(/^#VALUE!/)],
      [482.5, ""],
    ]);
    expect(out[3]![0]).toBe("x");
    expect(out[3]![9]).toMatch(/base fee: "x" stands where a number/);
  });

  it("marks a change to the cent", () => {
    const cents = [
      ["Hive", "Bees"],
      ["A1", 8],
    ];
    const block = terms(["minimum frames", 5], ["base fee", 1]);
    const [, ...out] = sheet(whatIf, cents, "base fee", [[0.1, 0.3]], null, block);
    expect(out[1]!.at(-2)).toBe(0.2);
  });

  it("says once what no value can mend", () => {
    const once = (...values: unknown[]) => {
      const out = sheet(whatIf, ...values);
      expect(out).toHaveLength(1);
      return out[0]![0];
    };
    expect(once(yard, "hive price", [[1, 2]], null, terms(...rows))).toMatch(
      /"hive price" is no term that is known/,
    );
    expect(once(yard, "base fee", [[1, 2]], 3, terms(...rows))).toMatch(
      /a lot of 3 hives cannot have 5/,
    );
    expect(once(yard, "", [[1]], null, terms(...rows))).toMatch(/^#VALUE! term: blank/);
  });

  it("takes a standard's name, and asks for its fee in the note", () => {
    const almond = "Almond Board of California";
    const [, ...out] = sheet(whatIf, yard, "average frames", [[7, 9]], null, null, almond);
    // Minimum 6: the average of 9.5, 8 and 7 is 8 1/6.
    expect(out.map((row) => row[1])).toEqual(["met", "not met"]);
    for (const row of out) expect(row.at(-1)).toMatch(/gives no fee: give "base fee"/);
    const [, priced] = sheet(whatIf, yard, "base fee", [[100]], null, null, almond);
    expect(priced!.at(-3)).toBe(300);
  });

  it("keeps two contracts apart whose names differ in brackets", () => {
    const block = [
      ["Term", "Cherry (2025)", "Cherry (2026)"],
      ["minimum frames", 5, 9],
      ["base fee", 1, 2],
    ];
    const pay = (name: string) =>
      sheet(whatIf, yard, "base fee", [[7]], null, block, name)[1]!.at(-3);
    expect([pay("Cherry (2025)"), pay("cherry (2026)")]).toEqual([21, 7]);
  });
});

describe("HIVE_PAY", () => {
  it("agrees with the settlement of its row, and says what is not judged", () => {
    const block = terms(["minimum frames", 5], ["laying queen", "yes"], ["base fee", 150]);
    const column = (...queens: string[]) =>
      call(
        hivePayFunction,
        [[[8], [4], ["dead"], [8], [8], [""]], block, null, null, null, queens.map((q) => [q])],
        1e6,
      ).map(([cell]) => shown(cell));
    expect(column("yes", "yes", "", "no", "", "")).toEqual([
      150,
      0,
      0,
      0,
      "#N/A row 5: hive in this row: queen is asked for and is not judged",
      "",
    ]);
  });
});
