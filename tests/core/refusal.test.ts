import { expect, it } from "vitest";
import { quote } from "../../src/core/refusal.js";

it("a text of the user's is quoted whole up to forty signs, and cut from there", () => {
  const forty = "0123456789".repeat(4);
  expect(quote(forty)).toBe(`"${forty}"`);
  expect(quote(`${forty}x`)).toBe(`"${forty}…"`);
});
