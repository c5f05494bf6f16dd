import { describe, expect, it } from "vitest";
import { eyeError } from "../../src/core/eye.js";

describe("bias and spread of an eye", () => {
  it("are the mean and the standard deviation of what was said less what was", () => {
    // Misses +2, +4, +6, +8: mean 5; squares about it 9 + 1 + 1 + 9 = 20, by 3 are 6.6667, root 2.5820.
    // t of 3 degrees of freedom, 97.5 %: 3.1824 (any printed table); 3.1824 x 2.5820 / root 4 = 4.1085.
    // Standard error of the spread: 2.5820 / root 6 = 1.0541.
    const found = eyeError([
      { said: 12, was: 10 },
      { said: 44, was: 40 },
      { said: 56, was: 50 },
      { said: 98, was: 90 },
    ]);
    expect(found.bias).toBeCloseTo(5, 12);
    expect(found.spread).toBeCloseTo(2.582, 3);
    expect(found.low).toBeCloseTo(5 - 4.1085, 3);
    expect(found.high).toBeCloseTo(5 + 4.1085, 3);
    expect(found.spreadError).toBeCloseTo(1.0541, 4);
  });

  it("are those of a published paired sample", () => {
    // Student 1908, The probable error of a mean (Biometrika 6), section IX: hours of sleep gained by
    // ten patients on one drug over another, 1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4; mean 1.58.
    // R's help of t.test on the same data (sleep): 95 % interval 0.7001142 to 2.4598858.
    const gains = [1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4];
    const found = eyeError(gains.map((gain) => ({ said: gain, was: 0 })));
    expect(found.bias).toBeCloseTo(1.58, 12);
    expect(found.low).toBeCloseTo(0.7001142, 6);
    expect(found.high).toBeCloseTo(2.4598858, 6);
  });

  it("have no width where every miss is the same, and none from one comb", () => {
    const same = eyeError([
      { said: 30, was: 20 },
      { said: 60, was: 50 },
    ]);
    expect(same).toMatchObject({ bias: 10, low: 10, high: 10, spread: 0 });
    expect(() => eyeError([{ said: 30, was: 20 }])).toThrow("combs judged: 1, and two are needed");
  });
});
