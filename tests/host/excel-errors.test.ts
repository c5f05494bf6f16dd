import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { CellError, isBlank } from "../../src/functions/cells.js";
import type { SheetFunction } from "../../src/functions/declare.js";
import { associateAll } from "../../src/functions/excel.js";
import { startRuntime } from "./microsoft-runtime.js";

/** Functions made up to show how values and errors pass between Excel and a function. */
const range = { name: "cells", optional: false, matrix: true };
const option = { name: "option", optional: true, matrix: false };
const made: SheetFunction[] = [
  { id: "ECHO", parameters: [range, option], evaluate: (cells: unknown[][]) => cells },
  {
    id: "SEEN",
    parameters: [range, option],
    evaluate: (cells: unknown[][], given: unknown) => [
      [cells.flat().map(describe).join(" "), describe(given)],
    ],
  },
  {
    id: "FAULTY",
    parameters: [],
    evaluate: () => {
      throw new TypeError("x is undefined");
    },
  },
];

function describe(value: unknown): string {
  if (value instanceof CellError) return value.code;
  return isBlank(value) ? "blank" : typeof value;
}

const runtime = startRuntime();
beforeAll(() => {
  vi.stubGlobal("CustomFunctions", runtime.CustomFunctions);
  associateAll(made);
});
afterAll(() => {
  vi.unstubAllGlobals();
});

it("passes numbers, text and yes or no unchanged both ways", async () => {
  const cells = [
    [7.5, "7-8"],
    [true, ""],
  ];
  expect(await runtime.call("ECHO", [cells, null])).toEqual(cells);
});

it("hands an error in a range to the function as an error", async () => {
  const cells = [[1, { error: "#N/A" }, { error: "#REF!" }, null]];
  expect(await runtime.call("SEEN", [cells, null])).toEqual([["number #N/A #REF! blank", "blank"]]);
});

it("never takes Excel's invocation for an argument, even called by an older functions.json", async () => {
  expect(await runtime.call("SEEN", [[[1]]])).toEqual([["number", "blank"]]);
});

it("puts an error beside sound cells with its text", async () => {
  const cells = [[1, { error: "#N/A" }]];
  expect(await runtime.call("ECHO", [cells, null])).toEqual([[1, { error: "#N/A", message: "" }]]);
});

it("says in words what error came in where Excel takes no such error back", async () => {
  const message = "#REF! stands in the cells given";
  const shown = { error: "#VALUE!", message };
  expect(await runtime.call("ECHO", [[[{ error: "#REF!" }]], null])).toEqual(shown);
  expect(await runtime.call("ECHO", [[[1, { error: "#REF!" }]], null])).toEqual([[1, shown]]);
});

it("shows a refusal with its sentence", async () => {
  expect(await runtime.call("ECHO", [null, null])).toEqual({
    error: "#VALUE!",
    message: "cells: left out, and ECHO needs it",
  });
});

it("refuses more cells than Excel on the web can carry", async () => {
  const column = Array.from({ length: 250_001 }, () => [0]);
  expect(await runtime.call("ECHO", [column, null])).toMatchObject({
    error: "#VALUE!",
    message: expect.stringMatching(/^250,00\d cells in one call; at most 250,000 fit/),
  });
});

it("owns up to a fault of its own", async () => {
  expect(await runtime.call("FAULTY", [])).toEqual({
    error: "#VALUE!",
    message: "a fault in Comb Tally: x is undefined",
  });
});

it("associates nothing where there is no Excel", () => {
  vi.stubGlobal("CustomFunctions", undefined);
  expect(() => associateAll(made)).not.toThrow();
  vi.stubGlobal("CustomFunctions", runtime.CustomFunctions);
});
