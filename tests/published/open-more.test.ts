import { describe, expect, it } from "vitest";
import { fixedSample, openMore, usualMost, type SequentialPlan } from "../../src/core/open-more.js";
import { sources } from "../../src/core/sources.js";

const plan = (over: Partial<SequentialPlan>): SequentialPlan => ({
  good: 9,
  bad: 8,
  alpha: 0.1,
  beta: 0.1,
  spread: 2.5,
  most: 1000,
  size: Infinity,
  ...over,
});
/**
 * Wald gives a verdict at (1 - beta) / alpha and beta / (1 - alpha), which errs a little over or
 * under; we at 1 / beta and 1 / alpha, which never errs over. These chances make ours his.
 *
 * @param upper - chance that the lower hypothesis is rejected though it is true
 * @param lower - chance that the upper one is
 */
const asWald = (upper: number, lower: number) => ({
  beta: upper / (1 - lower),
  alpha: lower / (1 - upper),
});
/** As many alike as leave the estimated spread out of play. */
const alike = (strength: number, n: number) => Array.from({ length: n }, () => strength);
const tenths = (...values: number[]) => values.map((value) => value / 10);

describe("Wald's test of a normal mean with known spread", () => {
  // Wald, Sequential Analysis, 1947, 7.4 (from memory): 135 against 150, standard deviation 25,
  // alpha 0.01, beta 0.03. In tenths here, as frames end at 60. By hand: slope (135 + 150) / 2 =
  // 142.5; intercepts 625 / 15 ln(0.97 / 0.01) = 190.6 and 625 / 15 ln(0.03 / 0.99) = -145.7.
  const wald = plan({ bad: 13.5, good: 15, spread: 2.5, ...asWald(0.01, 0.03) });

  it.each([10, 20, 50])("has his parallel lines after %d", (n) => {
    const { failsAt, passesAt, verdict } = openMore(alike(14.25, n), wald);
    expect(verdict).toBe("open more");
    expect(10 * n * passesAt!).toBeCloseTo(190.6 + 142.5 * n, 0);
    expect(10 * n * failsAt!).toBeCloseTo(-145.7 + 142.5 * n, 0);
  });

  it("gives the verdict where a line is reached and not before", () => {
    // 2 each over the slope: 190.6 / 20 = 9.53 and 145.7 / 20 = 7.28 steps of 20 in Wald's unit.
    expect(openMore(alike(16.25, 9), wald).verdict).toBe("open more");
    expect(openMore(alike(16.25, 10), wald).verdict).toBe("pass");
    expect(openMore(alike(12.25, 7), wald).verdict).toBe("open more");
    expect(openMore(alike(12.25, 8), wald).verdict).toBe("fail");
  });

  it("has the boundary of a textbook's exercise: 100 against 110, spread 15, both chances 5 %", () => {
    // The exercise (read; the answer is by hand): the sum of n lies between 105 n - 66.25 and
    // 105 n + 66.25, since 225 / 10 ln 19 = 66.25.
    const exercise = plan({ bad: 10, good: 11, spread: 1.5, ...asWald(0.05, 0.05) });
    const { failsAt, passesAt } = openMore(alike(10.5, 40), exercise);
    expect(400 * passesAt!).toBeCloseTo(40 * 105 + 66.25, 1);
    expect(400 * failsAt!).toBeCloseTo(40 * 105 - 66.25, 1);
    // And the fixed sample: (1.645 + 1.645)2 x 1.52 = 24.4.
    expect(fixedSample(plan({ ...exercise, alpha: 0.05, beta: 0.05 }))).toBeCloseTo(24.35, 1);
  });

  it("comes to the decision of R's package SPRT on its own example", () => {
    // SPRT 1.0 (S. Bottine 2015), example with its output (read): 0 against 1, chances 0.05 and
    // 0.20, log bounds -1.558 and 2.773; "accept H0" at n 10, sum 0.7462564. The ten figures of R's
    // set.seed(123); rnorm(10) are from memory and add to that sum. Five frames are added.
    const drawn = [
      -0.56047565, -0.23017749, 1.55870831, 0.07050839, 0.12928774, 1.71506499, 0.46091621,
      -1.26506123, -0.68685285, -0.44566197,
    ];
    expect(drawn.reduce((sum, x) => sum + x, 0)).toBeCloseTo(0.7462564, 6);
    const example = plan({ bad: 5, good: 6, spread: 1, ...asWald(0.05, 0.2) });
    const frames = drawn.map((x) => 5 + x);
    expect(openMore(frames, example).verdict).toBe("fail");
    // By hand: the sum less n / 2 is -1.06 after one and -1.79 after two, under -1.558.
    expect(openMore(frames, example).opened).toBe(2);
    const { failsAt, passesAt } = openMore(alike(5.5, 4), example);
    expect(4 * (passesAt! - 5.5)).toBeCloseTo(2.773, 3);
    expect(4 * (failsAt! - 5.5)).toBeCloseTo(-1.558, 3);
  });

  it("passes another example of such a package at the seventh figure", () => {
    // 52, 55, 58, 63, 66, 70, 74; 50 against 65, spread 10, chances 0.05 and 0.10 (read; the answer
    // is by hand): 0.15 (sum - 57.5 n) is 2.85 after six and 5.33 after seven; ln(0.9 / 0.05) = 2.89.
    const example = plan({ bad: 5, good: 6.5, spread: 1, ...asWald(0.05, 0.1) });
    const frames = tenths(52, 55, 58, 63, 66, 70, 74);
    expect(openMore(frames.slice(0, 6), example).verdict).toBe("open more");
    expect(openMore(frames, example)).toMatchObject({ verdict: "pass", opened: 7 });
  });
});

describe("a spread that is estimated", () => {
  it("widens the bounds to Hall's", () => {
    // Hall 1962 (from memory): with v degrees of freedom v/2 (alpha^(-2/v) - 1) stands for
    // ln(1/alpha). Frames 4, 6, 8, 10, 12: s2 = 10, v 4: 2 (0.1^-0.5 - 1) = 4.3246, and the average
    // passes from 8 + 4.3246 x 10 / (2 x 5) = 12.3246 on, good 9 and bad 7.
    const wide = openMore([4, 6, 8, 10, 12], plan({ good: 9, bad: 7, spread: 0.1 }));
    expect(wide.passesAt).toBeCloseTo(12.3246, 4);
    expect(wide.failsAt).toBeCloseTo(3.6754, 4);
  });

  it("makes the chance over all estimates the one that is stated", () => {
    // E exp(-h s2 / sigma2) = alpha, and s2 v / sigma2 is chi-square with v degrees: its moment
    // generating function is (1 - 2t)^(-v/2), at t = -h/v. Two hives of 0 and 2: s2 = 2, v 1.
    const { passesAt } = openMore([0, 2], plan({ good: 2, bad: 0, spread: 0.1 }));
    const h = ((passesAt! - 1) * 2 * 2) / 2;
    expect((1 + 2 * h) ** -0.5).toBeCloseTo(0.1, 12);
  });
});

describe("a finite lot", () => {
  it("lets n opened of N weigh as n / (1 - n/N), as they do in the variance of their mean", () => {
    // Cochran, Sampling Techniques, 3rd ed. (from memory): V = S2 / n (1 - n/N). 12 of 48 weigh 16:
    // the average passes from 8.5 + ln 10 x 6.25 / 16 = 9.3995 on.
    const { passesAt, verdict } = openMore(alike(8.5, 12), plan({ size: 48 }));
    expect(verdict).toBe("open more");
    expect(passesAt).toBeCloseTo(8.5 + (2.302585 * 6.25) / 16, 5);
  });

  it("takes the smaller fixed sample n / (1 + n/N)", () => {
    // (1.2816 x 2)2 x 6.25 = 41.06 in a large lot (printed z table); in one of 48 22.13.
    expect(fixedSample(plan({}))).toBeCloseTo(41.06, 1);
    // 5 % and 20 %: (1.6449 + 0.8416)2 x 6.25 = 38.64.
    expect(fixedSample(plan({ alpha: 0.05, beta: 0.2 }))).toBeCloseTo(38.64, 1);
    expect(fixedSample(plan({ size: 48 }))).toBeCloseTo(41.06 / (1 + 41.06 / 48), 1);
  });
});

it("opens three fixed samples at the most, as is the rule of thumb", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.2.6 (read): "three times".
  expect(sources.sequentialMost).toMatchObject({ value: 3, known: "read" });
  expect(usualMost(plan({}))).toBe(Math.ceil(3 * 41.06));
});
