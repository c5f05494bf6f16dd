import { describe, expect, it } from "vitest";
import { beesOnSide, framesOf, weighBees } from "../../src/core/bees.js";
import { between, exactly } from "../../src/core/estimate.js";

it("takes a comb for well covered where nothing is said: 2,400 bees on both sides", () => {
  // Sagili & Burgett 2011.
  expect(framesOf(exactly(19_200)).middle).toBe(8);
  expect(beesOnSide(exactly(50)).middle).toBe(600);
});

describe("bees by weight", () => {
  // A pound holds 3,500 bees, 3,000 to 5,000 are found (see SOURCES); a kilogram is 2.20462 lb.
  it("carry the range of what a pound holds", () => {
    expect(weighBees(exactly(3), "lb", "bees", null)).toEqual({
      ...between(9000, 15_000),
      middle: 10_500,
    });
    const kilogram = weighBees(exactly(1), "kg", "bees", null);
    expect(kilogram.low).toBeCloseTo(6613.9, 1);
    expect(kilogram.middle).toBeCloseTo(7716.2, 1);
    expect(kilogram.high).toBeCloseTo(11_023.1, 1);
  });

  it("weigh least where a pound holds most", () => {
    // 10,500 by 5,000, 3,500 and 3,000 a pound; the kilograms of 3 lb are 1.3608.
    const pounds = weighBees(exactly(10_500), "bees", "lb", null);
    expect(pounds).toMatchObject({ low: 2.1, middle: 3, high: 3.5 });
    expect(weighBees(exactly(10_500), "bees", "kg", null).middle).toBeCloseTo(1.3608, 4);
  });

  it("have no range by a figure of the user's own", () => {
    expect(weighBees(exactly(3), "lb", "bees", 4000)).toEqual(exactly(12_000));
  });

  it("are open where what was weighed is", () => {
    const open = { ...exactly(3), high: null };
    expect(weighBees(open, "lb", "bees", null)).toMatchObject({ low: 9000, high: null });
  });

  it("need no figure a pound from one weight to another, nor from bees to bees", () => {
    expect(weighBees(exactly(1), "kg", "lb", null).middle).toBeCloseTo(2.20462, 5);
    expect(weighBees(exactly(7), "bees", "bees", null)).toEqual(exactly(7));
    expect(weighBees(exactly(7), "lb", "lb", null)).toEqual(exactly(7));
  });
});
