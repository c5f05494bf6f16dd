import { describe, expect, it } from "vitest";
import { sources } from "../../src/core/sources.js";
import { comb } from "../functions/sheet.js";

const [heading, ...rows] = comb("SOURCES") as string[][];
const MARKS = ["read", "retold", "worked", "practice", "memory", "fitted"];

it("shows a heading row and each constant once", () => {
  expect(heading).toEqual(["Constant", "Value", "Unit", "Source", "Known"]);
  expect(rows.length).toBe(Object.keys(sources).length);
  expect(new Set(rows.map(([name]) => name)).size).toBe(rows.length);
});

describe.each(rows.map((row) => [row[0]!, row] as const))("%s", (_, row) => {
  const [, value, unit, source, known] = row;

  it("has a number, a unit and a source, and says how it is known", () => {
    expect(value).toEqual(expect.any(Number));
    expect(unit).toMatch(/\S/);
    expect(source).toMatch(/\S/);
    expect(MARKS).toContain(known);
  });

  it("names no source for what is practice, and calls memory what is recalled", () => {
    expect(known === "practice").toBe(source === "common practice, no source");
    expect(known === "memory").toBe(source === "from memory");
  });
});

it("marks each value as it is known", () => {
  // The marks of the places where each value was found; whatever is not here is practice.
  const marks = {
    beesWellCovered: "retold", // Sagili & Burgett 2011, quoted in another text
    beesFullyCovered: "read", // Imdorf, Rickli & Fluri 1996
    beesAverageOccupied: "read", // Simpson 1969, abstract
    deepCombArea: "retold", // Sagili & Burgett 2011, quoted in another text
    deepFoundationWidth: "read", // dimension list on a British beekeeping forum, and the next five
    deepFoundationHeight: "read",
    shallowFoundationHeight: "read",
    nationalFoundationWidth: "read",
    nationalDeepHeight: "read",
    nationalShallowHeight: "read",
    national14x12Height: "read",
    mediumFoundationHeight: "memory", // recalled
    dadantCombArea: "read", // La conduite du rucher, p. 256
    workerCellsPerCm2: "read", // Ohio State / EPA 2015 field data notes
    workerCellWidth: "retold", // Seeley & Morse 1976, quoted in another text
    poundsPerKilogram: "read", // definition of the international pound, 1959
  };
  const others = Object.entries(sources).filter(([key]) => !(key in marks));
  const known = Object.entries(sources).map(([key, { known }]) => [key, known]);
  expect(Object.fromEntries(known)).toEqual({
    ...marks,
    ...Object.fromEntries(others.map(([key]) => [key, "practice"])),
  });
});

it("takes a pound for 0.45359237 kg", () => {
  // Definition of the international pound, 1959: 1 / 0.45359237 = 2.2046226218.
  expect(sources.poundsPerKilogram.value).toBeCloseTo(2.2046226218, 10);
});
