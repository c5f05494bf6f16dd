import { expect, it } from "vitest";
import { mean, variance } from "../../src/core/mean.js";

it("the mean is of all values, and none of nothing", () => {
  expect(mean([7, 8, 12])).toBe(9);
  expect(mean([])).toBeNull();
});

it("the variance is of what the values were drawn from: by one less than there are", () => {
  // About 9: 4 + 1 + 9 = 14, by 2.
  expect(variance([7, 8, 12])).toBe(7);
  expect(variance([7])).toBeNull();
});
