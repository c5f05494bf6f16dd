import { expect, it } from "vitest";
import { atLeast, atMost } from "../../src/core/tolerance.js";

it("what falls short of a number by the machine's rounding alone is that number", () => {
  // Ten tenths added up come to 0.9999999999999999, and 0.1 + 0.2 to 0.30000000000000004.
  const one = Array<number>(10)
    .fill(0.1)
    .reduce((sum, tenth) => sum + tenth, 0);
  expect(one).toBeLessThan(1);
  expect(atLeast(one, 1)).toBe(true);
  expect(atMost(0.1 + 0.2, 0.3)).toBe(true);
});

it("what differs by a millionth is another number", () => {
  expect(atLeast(0.999999, 1)).toBe(false);
  expect(atLeast(1.000001, 1)).toBe(true);
  expect(atMost(1.000001, 1)).toBe(false);
  expect(atMost(0.999999, 1)).toBe(true);
});
