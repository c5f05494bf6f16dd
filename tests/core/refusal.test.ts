import { expect, it } from "vitest";
import { quote, Refusal } from "../../src/core/refusal.js";

it("a text of the user's is quoted whole up to forty signs, and cut from there", () => {
  const forty = "0123456789".repeat(4);
  expect(quote(forty)).toBe(`"${forty}"`);
  expect(quote(`${forty}x`)).toBe(`"${forty}…"`);
});

it("a refusal is a mistake that can be mended, where it does not say that something is not known", () => {
  expect(new Refusal("a lot of 0 hives")).toMatchObject({ name: "Refusal", kind: "wrong" });
  expect(new Refusal("queen is not judged", "unknown")).toMatchObject({ kind: "unknown" });
});
