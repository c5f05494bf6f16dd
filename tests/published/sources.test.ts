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
  // How each was found; a value that has no row here is held by the test of its own family.
  expect(
    Object.fromEntries(Object.entries(sources).map(([key, row]) => [key, row.known])),
  ).toMatchObject({
    beesWellCovered: "retold", // Sagili & Burgett 2011, quoted in another text
    beesFullyCovered: "read", // Imdorf, Rickli & Fluri 1996
    beesAverageOccupied: "read", // Simpson 1969, abstract
    deepCombArea: "retold", // Sagili & Burgett 2011, quoted in another text
    deepFoundationWidth: "read", // dimension list on a British beekeeping forum, and the next six
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
    droneCellWidth: "retold", // the same
    workerCellsPerEighth: "read", // Liebefeld method as taught, and the next three
    droneCellsPerEighth: "read",
    beesPerEighth: "read",
    foodPerEighth: "read",
    beesPerPound: "read", // common extension figure, 3,500 of 3,000 to 5,000
    poundsPerKilogram: "read", // definition of the international pound, 1959
    twoThirdsCover: "practice", // no source
    threeQuartersCover: "practice",
    workerEggDays: "retold", // life table of Winston 1987 and Jay 1963
    workerOpenDays: "retold",
    workerCappedDays: "retold",
    solidEmpty: "memory", // recalled
    spottyEmpty: "memory",
  });
});

it("takes a pound for 0.45359237 kg", () => {
  // Definition of the international pound, 1959: 1 / 0.45359237 = 2.2046226218.
  expect(sources.poundsPerKilogram.value).toBeCloseTo(2.2046226218, 10);
});
