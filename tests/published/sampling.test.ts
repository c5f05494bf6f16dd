import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Contract } from "../../src/core/contract.js";
import type { OpenedHive } from "../../src/core/lot.js";
import { quickLook } from "../../src/core/quick-look.js";
import { ratioOf, standardError, type Unit } from "../../src/core/ratio.js";
import { lotAverage } from "../../src/core/sampling.js";
import { standardContract } from "../../src/core/standards.js";

/** Results of R's survey package, made by r-survey.R with the versions it names. */
const r = JSON.parse(readFileSync(new URL("r-survey.json", import.meta.url), "utf8")) as Record<
  string,
  number[]
> & { "srs stype": string[]; "clus stype": string[] };

const mean = (values: readonly number[], drawn = 0) =>
  ratioOf(
    values.map((total) => ({ total, count: 1 })),
    drawn,
  )!;

/** Digits that agree: NIST's log relative error. */
function digits(found: number, certified: number): number {
  return found === certified ? 15 : -Math.log10(Math.abs(found - certified) / Math.abs(certified));
}

describe("mean and standard deviation, against NIST's certified values", () => {
  // NIST StRD, univariate summary statistics: the certified values retold by public test suites,
  // the sets that a formula makes from memory, Michelso from R's data set morley. A double cannot
  // hold x.1 and x.3 of millions: 8 digits of the last deviation are all that its data carry.
  const about = (base: number): number[] => [
    base + 0.2,
    ...Array.from({ length: 1000 }, (_, i) => base + (i % 2 === 0 ? 0.1 : 0.3)),
  ];
  it.each([
    ["NumAcc1", [10000001, 10000003, 10000002], 10000002, 1, 15, 15],
    ["NumAcc2", about(1), 1.2, 0.1, 14, 14],
    ["NumAcc3", about(1000000), 1000000.2, 0.1, 14, 9],
    ["NumAcc4", about(10000000), 10000000.2, 0.1, 14, 8],
    [
      "Michelso",
      r["michelson"]!.map((speed) => (299000 + speed) / 1000),
      299.8524,
      0.0790105478190518,
      14,
      12,
    ],
  ] as const)("agree on %s", (_, values, average, deviation, ofMean, ofDeviation) => {
    const { ratio, spread } = mean(values);
    expect(digits(ratio, average)).toBeGreaterThanOrEqual(ofMean);
    expect(digits(spread!, deviation)).toBeGreaterThanOrEqual(ofDeviation);
  });
});

describe("a sample from a finite population, against R's survey package", () => {
  it("has the mean of 200 of 6,194 schools and its standard error", () => {
    const found = mean(r["srs api00"]!, 200 / 6194);
    expect(found.ratio).toBeCloseTo(r["srs mean"]![0]!, 10);
    expect(standardError(found)).toBeCloseTo(r["srs mean"]![1]!, 10);
  });

  const parts: [string, Unit[], number, number[]][] = [
    [
      "elementary schools among them",
      r["srs api00"]!.map((total, i) =>
        r["srs stype"][i] === "E" ? { total, count: 1 } : { total: 0, count: 0 },
      ),
      200 / 6194,
      r["srs elementary mean"]!,
    ],
    [
      "elementary schools of 15 of 757 districts",
      byCluster((i) => r["clus stype"][i] === "E"),
      15 / 757,
      r["clus elementary mean"]!,
    ],
  ];
  it.each(parts)("has the mean of the %s", (_, units, drawn, [average, error]) => {
    // R divides by the units drawn less one; here by those that count, which is a little more.
    const found = ratioOf(units, drawn)!;
    const own = found.units / (found.units - 1);
    const all = units.length / (units.length - 1);
    expect(found.ratio).toBeCloseTo(average!, 10);
    expect(standardError(found)! * Math.sqrt(all / own)).toBeCloseTo(error!, 10);
    expect(standardError(found)!).toBeGreaterThanOrEqual(error!);
  });

  it("has the mean of 15 of 757 districts with all their schools, as clusters", () => {
    const found = ratioOf(
      byCluster(() => true),
      15 / 757,
    )!;
    expect(found.ratio).toBeCloseTo(r["clus mean"]![0]!, 10);
    expect(standardError(found)).toBeCloseTo(r["clus mean"]![1]!, 10);
  });

  it("has the ratio of two sums", () => {
    const units = r["srs api00"]!.map((total, i) => ({ total, count: r["srs api99"]![i]! }));
    const found = ratioOf(units, 200 / 6194)!;
    expect(found.ratio).toBeCloseTo(r["srs ratio of api00 to api99"]![0]!, 12);
    expect(standardError(found)).toBeCloseTo(r["srs ratio of api00 to api99"]![1]!, 12);
  });

  function byCluster(counts: (i: number) => boolean): Unit[] {
    const units = new Map<number, Unit>();
    r["clus dnum"]!.forEach((district, i) => {
      const { total, count } = units.get(district) ?? { total: 0, count: 0 };
      const is = counts(i) ? 1 : 0;
      units.set(district, { total: total + is * r["clus api00"]![i]!, count: count + is });
    });
    return [...units.values()];
  }
});

describe("a lot's average, against R's survey package", () => {
  it("has Student's interval for seven unlike hives of 48", () => {
    const found = lotAverage(contract(), lot([2, 4, 6, 8, 10, 12, 14], 48), 95);
    expect([found.average, found.se]).toEqual(near(r["wide mean"]!));
    expect([found.low, found.high]).toEqual(near(r["wide interval"]!));
  });

  const frames = [8, 9.5, 4, 12, 7, 6, 10, 3.5, 8.5, 7.5, 5, 11];
  const terms = { minimumFrames: 6, mostFrames: 10 };
  const pallets = [..."aaaabbbbcccc"];

  it("leaves hives under the minimum out, as if the others were the sample", () => {
    const found = lotAverage(contract(terms), lot(frames, 96), 95);
    expect([found.average, found.se]).toEqual(near(r["left out mean, own sample"]!));
    expect(found.df).toBe(8);
  });

  it("takes whole pallets as drawn", () => {
    const counted = contract({ ...terms, underMinimum: "counted", openedBy: "pallets" });
    const found = lotAverage(counted, lot(frames, 96, pallets), 95);
    expect([found.average, found.se]).toEqual(near(r["pallets mean"]!));
    expect(found.df).toBe(2);
  });

  it("leaves hives of whole pallets out", () => {
    const found = lotAverage(
      contract({ ...terms, openedBy: "pallets" }),
      lot(frames, 96, pallets),
      95,
    );
    expect([found.average, found.se]).toEqual(near(r["pallets left out mean"]!));
  });

  it("has the ratio estimate of a quick look", () => {
    const quick = [8, 6, 10, 4, 7, 9, 5, 8, 11, 6];
    const full = [7, 5.5, 10, 3, 7.5];
    const hives = quick.map((q, i) => ({ quick: q, full: full[i] ?? null }));
    const [average, error] = r["quick look"]!;
    const found = quickLook(hives, 95);
    const ratio = ratioOf(
      full.map((total, i) => ({ total, count: quick[i]! })),
      0.5,
    )!;
    expect(found.average).toBeCloseTo(average!, 12);
    expect(standardError(ratio)! * found.quickAverage).toBeCloseTo(error!, 12);
  });
});

function near(values: readonly number[]): unknown[] {
  return values.map((value) => expect.closeTo(value, 9));
}

function contract(terms: Partial<Contract> = {}): Contract {
  const standard = standardContract("Almond Board of California");
  return { ...standard, minimumFrames: 0, mostFrames: 0, ...terms };
}

function lot(frames: readonly number[], size: number, pallets: readonly string[] = []) {
  const least = frames.includes(3.5) ? 6 : 0;
  const most = frames.includes(3.5) ? 10 : Infinity;
  const hives = frames.map((value, i): OpenedHive => {
    const counted = Math.min(value, most);
    const pallet = pallets[i] ?? null;
    const accepted = value >= least;
    return { id: `${i}`, pallet, frames: value, counted, grade: "", accepted, dead: false };
  });
  return { hives, size };
}
