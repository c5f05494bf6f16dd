import { describe, expect, it } from "vitest";
import { readContract } from "../../src/core/contract-reading.js";
import { exactly } from "../../src/core/estimate.js";
import { hivePay } from "../../src/core/fees.js";
import { lotOf, type Look } from "../../src/core/lot.js";
import { lotPay, type LotPay } from "../../src/core/pay.js";
import { standardContract } from "../../src/core/standards.js";
import { terms } from "../functions/sheet.js";

const contract = (...rows: [string, unknown][]) => readContract(terms(...rows), null);
const looks = (frames: readonly number[], combs = 0): Look[] =>
  frames.map((count, i) => ({
    id: `H${i + 1}`,
    pallet: null,
    day: null,
    hive: {
      frames: exactly(count),
      brood: { combs: exactly(combs), fullFrames: null, cover: null },
      queen: true,
      stores: null,
    },
  }));
const many = (hives: number, frames: number): number[] => Array<number>(hives).fill(frames);
const pay = (under: ReturnType<typeof contract>, frames: number[], size = frames.length) =>
  lotPay(under, lotOf(under, looks(frames), size), null);
const lineOf = ({ lines }: LotPay, label: string) => {
  const found = lines.filter((line) => line.label === label);
  expect(found).toHaveLength(1);
  return found[0]!;
};

/** Dollars a hive by whole frames: blog.strombotne.com, pollination contract (read). */
const SCHEDULE = [
  [12, 200],
  [11, 195],
  [10, 190],
  [9, 182.5],
  [8, 175],
  [7, 140],
  [6, 110],
  [5, 90],
  [4, 75],
  [0, 0],
] as const;

describe("a printed schedule of dollars by frames (blog.strombotne.com, pollination contract)", () => {
  const schedule = (...more: [string, unknown][]) =>
    contract(
      ...SCHEDULE.flatMap(([frames, fee], i): [string, unknown][] => [
        [`grade ${i + 1} name`, `class of ${frames}`],
        [`grade ${i + 1} frames`, frames],
        [`grade ${i + 1} fee`, fee],
      ]),
      ...more,
    );
  const fee = (frames: number, partFrame: string) => {
    const under = schedule(["part frame", partFrame]);
    return hivePay(under, lotOf(under, looks([frames]), 1).hives[0]!);
  };

  it("pays each whole frame as printed, however part frames are read", () => {
    const printed = new Map<number, number>([...SCHEDULE, [3, 0], [2, 0], [1, 0], [13, 200]]);
    for (const [frames, dollars] of printed) {
      for (const partFrame of ["down", "nearest", "as it is", "between"]) {
        expect(fee(frames, partFrame), `${frames} frames, ${partFrame}`).toBe(dollars);
      }
    }
  });

  it("pays a part frame as 7, as 8, or between the two as the contract says", () => {
    // 7: 140, 8: 175. (140 + 175) / 2 = 157.50; 140 + 0.25 x 35 = 148.75.
    const ways = ["down", "as it is", "nearest", "between"];
    expect(ways.map((as) => fee(7.5, as))).toEqual([140, 140, 175, 157.5]);
    expect(ways.map((as) => fee(7.25, as))).toEqual([140, 140, 140, 148.75]);
    // 3: 0, 4: 75.
    expect(["down", "nearest", "between"].map((as) => fee(3.5, as))).toEqual([0, 75, 37.5]);
  });

  // 340 hives, 51 opened (15 %), 7 of them in the top class. What the other 44 were is not printed.
  const opened = [...many(7, 12), ...many(20, 8), ...many(24, 3)];

  it("comes to 9,333.33 for 7 of 51 in a lot of 340, where 9,334.00 is printed", () => {
    const top = lineOf(pay(schedule(), opened, 340), "class of 12");
    // 7 / 51 = 13.73 %; 340 x 7 / 51 = 46.67 hives; 340 x 7 x 200 / 51 = 9,333.33.
    expect((100 * 7) / 51).toBeCloseTo(13.73, 2);
    expect(top.quantity).toBeCloseTo(46.67, 2);
    expect(top.rate).toBe(200);
    expect(top.amount).toBe(9333.33);
    // The printed sum rounds the hives to 46.67 first: 46.67 x 200 = 9,334.00.
    expect(Number(top.quantity.toFixed(2)) * top.rate).toBeCloseTo(9334, 9);
  });

  it("comes to 47 hives and 9,400 where hives are paid whole", () => {
    // 46.67, 133.33 and 160: the one hive that is left goes to the largest remainder.
    const whole = pay(schedule(["round hives", "whole"]), opened, 340);
    expect(whole.lines.map(({ quantity }) => quantity)).toEqual([47, 133, 160]);
    // 47 x 200 + 133 x 175 = 9,400 + 23,275.
    expect(whole.total).toBe(32675);
  });
});

describe("a contract for 8 frames of which 6 come is paid six eighths", () => {
  // Traynor, letter of 28 Apr 2006 (read). A base fee of 150 and 100 hives are made up.
  const rows: [string, unknown][] = [
    ["average frames", 8],
    ["minimum frames", 4],
    ["base fee", 150],
  ];

  it("where it is paid pro rata", () => {
    const settled = pay(contract(...rows, ["pro rata", "yes"]), [4, 6, 8], 100);
    // 100 x 150 x 6 / 8 = 11,250.
    expect(settled.total).toBe(11250);
    expect(lineOf(settled, "pro rata: average 6 of 8 frames")).toMatchObject({
      quantity: -0.25,
      rate: 15000,
      amount: -3750,
    });
  });

  it("and in full where no pro rata is agreed, which a line says", () => {
    const settled = pay(contract(...rows), [4, 6, 8], 100);
    expect(settled.total).toBe(15000);
    expect(lineOf(settled, "average 6 of 8 frames: no pro rata is agreed").amount).toBe(0);
  });
});

describe("5 dollars a frame over the contract, and nothing for a hive under the minimum", () => {
  // Shook, Grading Bees for California Almond Pollination (read): 8 on average, 5 at least, each
  // hive under 5 unpaid. The base fee of 150 is made up.
  const shook = (...more: [string, unknown][]) =>
    contract(
      ["average frames", 8],
      ["minimum frames", 5],
      ["base fee", 150],
      ["bonus a frame", 5],
      ...more,
    );

  it("by the lot: two frames over are 10 dollars for each hive that is paid", () => {
    const settled = pay(shook(), [9, 11, 4]);
    // (9 + 11) / 2 = 10; 2 x 150 + 2 x 10 = 320; the hive of 4 gets nothing.
    expect(lineOf(settled, "bonus: average 10 of 8 frames")).toMatchObject({
      quantity: 2,
      rate: 10,
      amount: 20,
    });
    expect(lineOf(settled, "hives not accepted")).toMatchObject({ quantity: 1, amount: 0 });
    expect(settled.total).toBe(320);
  });

  it("by the hive: a strong hive does not make up for a weak one", () => {
    const settled = pay(shook(["bonus by", "hive"]), [7, 11, 4]);
    // 11 - 8 = 3 frames at 5; the hive of 7 adds nothing and takes nothing away.
    expect(lineOf(settled, "bonus hive by hive: frames over 8")).toMatchObject({
      quantity: 3,
      rate: 5,
      amount: 15,
    });
    expect(settled.total).toBe(315);
  });

  it("up to the ceiling", () => {
    const settled = pay(shook(["bonus ceiling", 7]), [9, 11, 4]);
    expect(settled.total).toBe(2 * 150 + 2 * 7);
    const byHive = pay(shook(["bonus by", "hive"], ["bonus ceiling", 7]), [9, 11, 4]);
    // 5 for the hive of 9; 15 for the hive of 11, cut to 7.
    expect(byHive.total).toBe(2 * 150 + 5 + 7);
  });
});

describe("10 % below the standard, forgiven where 10 % are above", () => {
  // Rutgers, New Jersey Commercial Vegetable Recommendations 2015 (read): 6 frames of bees, 4 of
  // brood. A base fee of 100 is made up.
  const rutgers = contract(
    ["minimum frames", 6],
    ["under minimum", "rejects the load"],
    ["share under minimum forgiven", 10],
    ["forgiven against", "hives above the minimum"],
    ["brood", 4],
    ["brood counted as", "combs"],
    ["laying queen", "yes"],
    ["base fee", 100],
  );
  const paid = (frames: number[]) =>
    lotPay(rutgers, lotOf(rutgers, looks(frames, 4), frames.length), null);

  it("takes the load with 2 of 20 below and 2 above, and pays the 18", () => {
    expect(paid([...many(2, 5), ...many(2, 7), ...many(16, 6)]).total).toBe(1800);
  });

  it.each([
    ["3 of 20 below", [...many(3, 5), ...many(3, 7), ...many(14, 6)], 3],
    ["2 of 20 below and 1 above", [...many(2, 5), ...many(1, 7), ...many(17, 6)], 2],
  ])("rejects it with %s, and pays nothing", (_, frames, under) => {
    const settled = paid(frames);
    expect(settled.lines.map(({ label }) => label)).toEqual([
      `load rejected: ${under} of 20 hives under the minimum`,
    ]);
    expect(settled.total).toBe(0);
  });

  it("asks for a fee, which no standard gives", () => {
    const standard = standardContract("Rutgers New Jersey");
    expect(() => lotPay(standard, lotOf(standard, looks([6], 4), 1), null)).toThrow(
      'contract "Rutgers New Jersey" gives no fee: give "base fee" or the grades\' own',
    );
  });
});
