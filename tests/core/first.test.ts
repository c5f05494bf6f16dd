import { expect, it } from "vitest";
import { first } from "../../src/core/first.js";

it("finds the first number for which it holds, and the last where it does for none below", () => {
  for (let wanted = 3; wanted <= 12; wanted++)
    expect(first(3, 11, (n) => n >= wanted)).toBe(Math.min(wanted, 11));
  expect(first(5, 5, () => false)).toBe(5);
});
