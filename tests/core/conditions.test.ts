import { describe, expect, it } from "vitest";
import { caution, hourOf, temperatureOf } from "../../src/core/conditions.js";
import { Refusal } from "../../src/core/refusal.js";

describe("a temperature", () => {
  it.each([
    // Freezing and boiling points by definition; -40 is the same in both.
    [32, "F", 32],
    [0, "C", 32],
    ["0", "C", 32],
    [-40, "C", -40],
    ["−5", "C", 23],
    [10, "C", 50],
    ["59.5", "F", 59.5],
  ] as const)("%j %s is %d F", (cell, unit, fahrenheit) => {
    expect(temperatureOf(cell, unit)).toBeCloseTo(fahrenheit, 9);
  });

  it.each([
    [60, "C"],
    [140, "F"],
    [-45, "F"],
    ["60 F", "F"],
    ["warm", "F"],
    ["12,5", "C"],
    ["", "F"],
    [NaN, "F"],
    [1e21, "F"],
  ] as const)("%j %s is refused", (cell, unit) => {
    expect(() => temperatureOf(cell, unit)).toThrow(Refusal);
  });
});

describe("an hour", () => {
  it.each([
    [0.5, 12],
    ["0.5", 12],
    [0.604166666666667, 14.5],
    [0.0625, 1.5],
    [4, 4],
    [7, 7],
    [14.5, 14.5],
    [24, 24],
    ["14:30", 14.5],
    ["9", 9],
    ["2 pm", 14],
    ["2:30 PM", 14.5],
    ["2am", 2],
    ["12 am", 0],
    ["12:15 pm", 12.25],
    ["0:30", 0.5],
  ] as const)("%j is %d", (cell, hour) => expect(hourOf(cell)).toBeCloseTo(hour, 9));

  it.each([
    [2, "2 may be at night or after noon: write 2 am, or 14"],
    [3.5, "write 3.5 am, or 15.5"],
    ["2:30", "write 2:30 am, or 14:30"],
    [1, "write 1 am, or 13"],
  ] as const)("%j is asked about, as it may be midday", (cell, question) => {
    expect(() => hourOf(cell)).toThrow(question);
  });

  it.each([25, -1, "24:30", "13 pm", "0 am", "noonish", "14:75", 46101, NaN])(
    "%j is refused",
    (cell) => expect(() => hourOf(cell)).toThrow(Refusal),
  );
});

describe("a caution", () => {
  it.each([
    // Common practice, no source: below 57 F a cluster; from 60 F and 10 to 16 hours foragers out.
    [45, null, /cluster/],
    [45, 12, /cluster/],
    [56.9, 8, /cluster/],
    [57, 12, /^$/],
    [60, 12, /foragers/],
    [75, 10, /foragers/],
    [75, 16, /^$/],
    [75, 9.9, /^$/],
    [75, null, /^$/],
  ])("at %d F and %s hours", (temperature, hour, sentence) => {
    expect(caution(temperature, hour)).toMatch(sentence);
  });
});
