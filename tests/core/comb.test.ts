import { describe, expect, it } from "vitest";
import { DEEP, deepEquivalent, equivalent, frameOf, sideArea } from "../../src/core/comb.js";

describe("a frame", () => {
  it.each([
    ["Deep", "deep"],
    ["zander frame", "zander"],
    ["National Deep frames", "national deep"],
  ])("called %j is the %s", (text, name) => expect(frameOf(text).name).toBe(name));

  it.each([
    "16.75 x 8.625 in foundation",
    "16.75x8.625in foundation",
    '16.75 × 8.625" foundation',
    "16.75 x 8.625 inches foundation",
  ])("of %s has a deep's foundation", (text) => {
    const { foundation, comb } = frameOf(text);
    expect(foundation).toBeCloseTo(16.75 * 8.625 * 2.54 * 2.54, 9);
    expect(comb).toBeNull();
    expect(deepEquivalent(frameOf(text))).toBeCloseTo(1, 12);
  });

  it.each(["42 x 27 cm", "42 x 27 cm comb", "420 x 270 mm"])(
    "of %s has that comb inside the frame",
    (text) => {
      const { foundation, comb } = frameOf(text);
      expect(foundation).toBeNull();
      expect(comb).toBeCloseTo(42 * 27, 9);
    },
  );

  it("by its comb inside the frame, 8 x 16.75 in, is a deep (Sagili & Burgett 2011)", () => {
    expect(deepEquivalent(frameOf("16.75 x 8 in"))).toBeCloseTo(1, 12);
  });

  it("by name is the same size typed", () => {
    // The sources' sizes: foundation of the National, 1,125 cm2 of Dadant comb, 800 of Zander's.
    expect(deepEquivalent(frameOf("13.4375 x 8 in foundation"))).toBeCloseTo(
      deepEquivalent(frameOf("national deep")),
      12,
    );
    expect(sideArea(frameOf("45 x 25 cm"))).toBeCloseTo(sideArea(frameOf("dadant")), 9);
    expect(deepEquivalent(frameOf("40 x 20 cm"))).toBeCloseTo(
      deepEquivalent(frameOf("zander")),
      12,
    );
  });

  it.each([
    "tall",
    "42 x 27",
    "0 x 27 cm",
    "42 x 27 cm wood",
    "about 42 x 27 cm",
    "42. x 27 cm",
    "national frames deep",
    "",
  ])("%j is refused with the names that are known", (text) => {
    expect(() => frameOf(text)).toThrow(
      `"${text}" is no frame that is known: give deep, medium, shallow, national deep, national shallow, national 14x12, dadant, zander, or the comb's size inside the frame with its unit, such as 42 x 27 cm`,
    );
  });
});

describe("one frame in another", () => {
  it("is by foundation where both are known by it: 5.5 to 4.875 in of the same width", () => {
    expect(equivalent(frameOf("medium"), frameOf("shallow"))).toBeCloseTo(5.5 / 4.875, 12);
  });

  it("is by comb where both are: Dadant 1,125 cm2 to Zander 800", () => {
    expect(equivalent(frameOf("dadant"), frameOf("zander"))).toBeCloseTo(1125 / 800, 12);
  });
});

it("has of a side the comb that is known, or its part of a deep's by foundation", () => {
  expect(sideArea(frameOf("zander"))).toBe(800);
  // 134 in2 are 864.5 cm2 of a deep; a medium is 5.5 of 8.625 in as tall.
  expect(sideArea(DEEP)).toBeCloseTo(134 * 6.4516, 9);
  expect(sideArea(frameOf("medium"))).toBeCloseTo((134 * 6.4516 * 5.5) / 8.625, 9);
});
