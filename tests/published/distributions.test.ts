import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  hypergeometricCdf,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
} from "../../src/core/distributions.js";

/** Made by distributions.py, to 40 digits, with the version that it names. */
const exact = JSON.parse(
  readFileSync(new URL("distributions.json", import.meta.url), "utf8"),
) as Record<string, number[][]>;

/** How far two chances lie apart, as a part of the exact one. */
function off(found: number, chance: number): number {
  return found === chance ? 0 : Math.abs(found - chance) / chance;
}

// What the library gives: its logarithms of factorials cost a large lot four digits of thirteen.
describe("chances, to 9 digits and more however small they are", () => {
  it.each(exact["normal"]!)("normal: below %d", (z, chance) => {
    expect(off(normalCdf(z!, 0, 1), chance!)).toBeLessThan(1e-12);
  });

  it.each(exact["student"]!)("Student's t: below %d at %d degrees of freedom", (t, df, chance) => {
    expect(off(tCdf(t!, df!), chance!)).toBeLessThan(1e-10);
  });

  it.each(exact["hypergeometric"]!)(
    "hypergeometric: at most %d, of %d in all %d marked and %d drawn",
    (found, size, marked, drawn, chance) => {
      expect(off(hypergeometricCdf(found!, size!, marked!, drawn!), chance!)).toBeLessThan(1e-9);
    },
  );
});

describe("values that a chance lies below", () => {
  const apart = (share: number) => share > 0.001 && share < 0.999;
  it.each(exact["normal"]!.filter(([, chance]) => apart(chance!)))("normal: %d", (z, chance) => {
    expect(normalQuantile(chance!)).toBeCloseTo(z!, 11);
  });

  it.each(exact["student"]!.filter(([, , chance]) => apart(chance!)))(
    "Student's t: %d at %d degrees of freedom",
    (t, df, chance) => {
      expect(off(tQuantile(chance!, df!), t!)).toBeLessThan(t === 0 ? 1 : 1e-9);
    },
  );
});
