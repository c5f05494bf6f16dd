import { expect, it } from "vitest";
import { one } from "../functions/sheet.js";

const share = (ours: number, theirs: number) => Math.abs(ours - theirs) / theirs;

it("puts 2,400 bees on a deep comb well covered on both sides", () => {
  // Sagili & Burgett 2011, PNW 623 (retold): 2,400 a comb, so 8 combs hold 8 x 2,400.
  expect(one("BEES", 1)).toBe(2400);
  expect(one("BEES", 8)).toBe(19200);
});

it("comes within 2 % of the 2,430 bees that another count found on such a comb", () => {
  // Burgett & Burikam 1985, J Econ Entomol 78:1154-1156 (from memory).
  expect(share(Number(one("BEES", 1)), 2430)).toBeLessThan(0.02);
});

it("comes within 5 % of New Zealand's 30,000 bees on 12 frames, and under it", () => {
  // New Zealand kiwifruit pollination standard (read): 12 well-covered frames, about 30,000 bees.
  const ours = Number(one("BEES", 12));
  expect(share(ours, 30000)).toBeLessThan(0.05);
  expect(ours).toBeLessThan(30000);
});

it("puts 1,100 bees on each side of a fully covered comb", () => {
  // Imdorf, Rickli & Fluri 1996 (read): 1,100 a side of a Langstroth comb.
  expect(one("BEES", 1, "fully covered")).toBe(2 * 1100);
  expect(one("BEES", 5, "fully covered")).toBe(5 * 2 * 1100);
});

it("puts 1,400 bees on an occupied comb that is not full", () => {
  // Simpson 1969, J Apic Res 8:3-8 (abstract, read).
  expect(one("BEES", 1, "average")).toBe(1400);
});

it("stays within the 1.25 to 1.45 bees a cm2 of covered side that counts have found", () => {
  // Worked from the counts above and the Ohio State / EPA 2015 notes; a deep side has 865 cm2.
  for (const basis of ["well covered", "fully covered"]) {
    const density = Number(one("BEES", 1, basis)) / (2 * 865);
    expect(density).toBeGreaterThan(1.25);
    expect(density).toBeLessThan(1.45);
  }
});
