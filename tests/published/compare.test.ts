import { describe, expect, it } from "vitest";
import { difference } from "../../src/core/compare.js";
import { comb } from "../functions/sheet.js";

// Student's sleep data, as R's own help page of t.test works it with Welch's method (from memory):
// mean 0.75 against 2.33, df 17.776, 95 % interval -3.3654832 to 0.2054832.
const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

describe("a difference of two means", () => {
  it("has the interval of R's worked example", () => {
    const { middle, low, high } = difference(first, second, 95);
    expect(middle).toBeCloseTo(-1.58, 12);
    expect(low).toBeCloseTo(-3.3654832, 7);
    expect(high).toBeCloseTo(0.2054832, 7);
  });
});

describe("COMPARE", () => {
  it("puts each lot against the first", () => {
    const lots = ["Shed", "Shed", "Coast", "Coast"].map((lot) => [lot]);
    const [heading, shed, coast] = comb(
      "COMPARE",
      lots,
      [["7-8"], [8.5], [10], [12]],
      [[2], [3], [5], [6]],
    );
    expect(heading!.length).toBe(coast!.length);
    // By hand: (7.5 + 8.5) / 2 = 8, (10 + 12) / 2 = 11; brood 2.5 and 5.5.
    expect(shed!.slice(0, 6)).toEqual(["Shed", 2, 8, 2.5, "", ""]);
    expect([coast![2], coast![3], coast![5], coast![8]]).toEqual([11, 5.5, 3, 3]);
    expect(coast!.at(-1)).toMatch(/not the regions .*; fewer than 6 hives/);
  });
  it("needs two lots", () => {
    expect(comb("COMPARE", [["Shed"]], [[8]])).toEqual([
      [expect.stringMatching(/^#VALUE! two lots/)],
    ]);
  });
});
