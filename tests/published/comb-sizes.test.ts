import { describe, expect, it } from "vitest";
import { DEEP, deepEquivalent, frameOf } from "../../src/core/comb.js";
import { sources } from "../../src/core/sources.js";
import { one } from "../functions/sheet.js";

describe("one side of a Langstroth deep", () => {
  it("has 134 in2 of comb inside the frame, which is 865 cm2", () => {
    // Sagili & Burgett 2011, PNW 623 (retold): 8 x 16.75 in = 134 in2 = 865 cm2, rounded.
    expect(sources.deepCombArea.value).toBe(8 * 16.75);
    expect(Math.abs(DEEP.comb - 865)).toBeLessThanOrEqual(0.5);
  });

  it("comes within 2 % of the 880 cm2 that another text gives", () => {
    // Delaplane, van der Steen & Guzman-Novoa 2013, J Apic Res 52(1) (from memory).
    expect(Math.abs(DEEP.comb - 880) / 880).toBeLessThan(0.02);
  });

  it("is 144.5 in2 by the sheet of foundation", () => {
    // Dimension list on a British beekeeping forum (read): 16.75 x 8.625 in = 144.5 in2, rounded.
    expect(Math.abs(DEEP.foundation / (2.54 * 2.54) - 144.5)).toBeLessThanOrEqual(0.05);
  });
});

describe("deep equivalents, foundation to foundation", () => {
  // The same list (read); the medium's height from memory. Deep: 16.75 x 8.625 in.
  it.each([
    ["shallow", (16.75 * 4.875) / (16.75 * 8.625), 0.565],
    ["national deep", (13.4375 * 8) / (16.75 * 8.625), 0.744],
    ["national shallow", (13.4375 * 5) / (16.75 * 8.625), 0.465],
    ["national 14x12", (13.4375 * 11.5) / (16.75 * 8.625), 1.07],
    ["medium", (16.75 * 5.5) / (16.75 * 8.625), 0.638],
  ])("make a %s %d of a deep", (name, exact, rounded) => {
    expect(deepEquivalent(frameOf(name))).toBeCloseTo(exact, 12);
    expect(deepEquivalent(frameOf(name))).toBeCloseTo(rounded, 3);
    expect(one("FRAMES_OF_BEES", 10, null, null, name)).toBeCloseTo(10 * exact, 9);
  });

  it("never divide a sheet of foundation by the comb inside a deep frame", () => {
    // That mixture would make a shallow 0.61 and a National deep 0.80 (worked: 81.7 and 107.5 in2
    // by 134 in2).
    expect(deepEquivalent(frameOf("shallow"))).toBeLessThan(0.58);
    expect(deepEquivalent(frameOf("national deep"))).toBeLessThan(0.76);
  });

  it("take a size of one's own for the comb inside the frame unless it says foundation", () => {
    // 42 x 27 cm is 1134 cm2: over 864.5 cm2 of comb, or 144.47 in2 x 6.4516 = 932.1 of foundation.
    expect(one("FRAMES_OF_BEES", 1, null, null, "42 x 27 cm")).toBeCloseTo(1.3117, 4);
    expect(one("FRAMES_OF_BEES", 1, null, null, "42 x 27 cm foundation")).toBeCloseTo(1.2167, 4);
  });

  it("and its bees and cells are those of that area", () => {
    // 10 combs of 8 x 16.75 in are 10 deeps of 2,400 bees (Sagili & Burgett 2011), 42 x 27 cm at
    // 4 cells a cm2 (400 a dm2, Liebefeld) are 4,536 cells.
    expect(one("BEES", 10, null, null, "16.75 x 8 in")).toBeCloseTo(24_000, 6);
    expect(one("CELLS", 100, null, "liebefeld", "42 x 27 cm")).toBeCloseTo(4536, 6);
    expect(one("CELLS", 100, null, "liebefeld", "dadant")).toBeCloseTo(4500, 6);
  });
});

it("compares a Dadant comb with a deep comb to comb", () => {
  // La conduite du rucher, p. 256 (read): 11.25 dm2 a side; a deep side has 865 cm2 (retold).
  expect(sources.dadantCombArea.value).toBe(1125);
  expect(deepEquivalent(frameOf("dadant"))).toBeCloseTo(1125 / 865, 2);
});
