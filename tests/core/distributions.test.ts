import { describe, expect, it } from "vitest";
import {
  hypergeometricCdf,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
} from "../../src/core/distributions.js";

describe("distributions", () => {
  // SciPy 1.17.1: t.ppf(.975, 9)
  it("has SciPy's t quantile", () =>
    expect(tQuantile(0.975, 9)).toBeCloseTo(2.262157162798205, 12));
  // NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values of Student's t, 0.975
  it.each([
    [1, 12.706],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [60, 2.0],
  ])("has the printed table's t at %d degrees of freedom", (df, t) =>
    expect(tQuantile(0.975, df)).toBeCloseTo(t, 3),
  );
  it("goes back from the t quantile", () =>
    expect(tCdf(tQuantile(0.9, 7), 7)).toBeCloseTo(0.9, 12));
  // NIST/SEMATECH e-Handbook 1.3.6.7.1: 1.96 leaves 0.97500
  it("has the printed table's normal", () => expect(normalCdf(1.96, 0, 1)).toBeCloseTo(0.975, 4));
  it("has the normal's quantiles to both sides of its middle", () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 12);
    expect(normalQuantile(0.025)).toBeCloseTo(-1.959963984540054, 12);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 12);
  });
  // By hand: 2 of 4 drawn, none of 2 marked: C(2,2) / C(4,2) = 1/6
  it("has the hypergeometric by hand", () =>
    expect(hypergeometricCdf(0, 4, 2, 2)).toBeCloseTo(1 / 6, 12));
});
