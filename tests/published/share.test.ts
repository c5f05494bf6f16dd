import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { shareLimits } from "../../src/core/share.js";

/** Made by r-survey.R with the versions it names. */
const r = JSON.parse(readFileSync(new URL("r-survey.json", import.meta.url), "utf8")) as {
  limits: number[];
};

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let i = 1; i <= k; i++) ways = (ways * BigInt(n - k + i)) / BigInt(i);
  return ways;
}

/**
 * The limits by their definition, in whole numbers: each number of marked hives in the lot is tried,
 * and kept where as few and as many as were found both have a chance over 1 in `odds`.
 */
function limits(found: number, opened: number, size: number, odds: bigint): [number, number] {
  const all = choose(size, opened);
  const kept: number[] = [];
  for (let marked = found; marked <= size - opened + found; marked++) {
    const ways = (x: number) => choose(marked, x) * choose(size - marked, opened - x);
    let [few, many] = [0n, 0n];
    for (let x = 0; x <= opened; x++) {
      if (x <= found) few += ways(x);
      if (x >= found) many += ways(x);
    }
    if (few * odds > all && many * odds > all) kept.push(marked);
  }
  return [kept[0]!, kept.at(-1)!];
}

describe("share under the minimum in a finite lot", () => {
  const cases: [number, number, number][] = [
    [0, 20, 400],
    [20, 20, 400],
    [0, 20, 24],
    [3, 20, 96],
    [1, 6, 48],
    [6, 12, 48],
    [10, 60, 480],
    [0, 1, 24],
    [5, 24, 24],
  ];
  for (const [found, opened, size] of cases) {
    it.each([
      [95, 40n],
      [80, 10n],
      [99, 200n],
    ])(`has the exact limits of ${found} of ${opened} in ${size} at %d %%`, (confidence, odds) => {
      const { share, low, high } = shareLimits(found, opened, size, confidence);
      expect([low * size, high * size].map(Math.round)).toEqual(limits(found, opened, size, odds));
      expect(share).toBe(found / opened);
    });
  }

  it("is known where every hive was opened", () =>
    expect(shareLimits(5, 24, 24, 95)).toEqual({ share: 5 / 24, low: 5 / 24, high: 5 / 24 }));

  it.each([
    [0, 20, 400, r.limits.slice(0, 2)],
    [7, 51, 340, r.limits.slice(2, 4)],
    [10000, 50000, 100000, r.limits.slice(4, 6)],
    [0, 99999, 100000, r.limits.slice(6, 8)],
    [3, 1000, 100000, r.limits.slice(8, 10)],
    [100000, 500000, 1000000, r.limits.slice(10)],
  ])("has R's limits of %d of %d in %d", (found, opened, size, expected) => {
    const { low, high } = shareLimits(found, opened, size, 95);
    expect([low * size, high * size].map(Math.round)).toEqual(expected);
  });
});
