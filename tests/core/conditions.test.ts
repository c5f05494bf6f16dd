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
    [-40, "F", -40],
    [130, "F", 130],
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
    [-40.5, "F"],
    [130.5, "F"],
    ["a 60", "F"],
  ] as const)("%j %s is refused", (cell, unit) => {
    expect(() => temperatureOf(cell, unit)).toThrow(Refusal);
  });

  it("that is none is said to be no number, or to be in another unit", () => {
    expect(() => temperatureOf("60 F", "F")).toThrow(
      '"60 F" stands where degrees F were expected, as a number',
    );
    expect(() => temperatureOf(60, "C")).toThrow(
      "60 C is no temperature of the air: is it in another unit?",
    );
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
    [0, 0],
    ["0", 0],
    ["4:00", 4],
    ["1 pm", 13],
    ["12:59 pm", 12 + 59 / 60],
    ["10:15 AM", 10.25],
  ] as const)("%j is %d", (cell, hour) => expect(hourOf(cell)).toBeCloseTo(hour, 9));

  it.each([
    [2, "2 may be at night or after noon: write 2 am, or 14"],
    [3.5, "write 3.5 am, or 15.5"],
    ["2:30", "write 2:30 am, or 14:30"],
    [1, "write 1 am, or 13"],
    ["3:59", "3:59 may be at night or after noon: write 3:59 am, or 15:59"],
  ] as const)("%j is asked about, as it may be midday", (cell, question) => {
    expect(() => hourOf(cell)).toThrow(question);
  });

  it.each([25, -1, -0.5, "24:30", "13 pm", "0 am", "0:30 pm", "Noonish", "14:75", 46101, NaN])(
    "%j is refused",
    (cell) =>
      expect(() => hourOf(cell)).toThrow(
        `"${cell}" stands where an hour from 0 to 24 or a time was expected`,
      ),
  );

  it.each(["at 14:30", "14:30 sharp", "114"])("%j is not read in part", (cell) =>
    expect(() => hourOf(cell)).toThrow(Refusal),
  );
});

describe("a caution", () => {
  it.each([
    // Common practice, no source: below 57 F a cluster; from 60 F and 10 to 16 hours foragers out.
    [45, null, /cluster/],
    [45, 12, /cluster/],
    [56.9, 8, /cluster/],
    [57, 12, /^$/],
    [59.9, 12, /^$/],
    [60, 12, /foragers/],
    [75, 10, /foragers/],
    [75, 16, /^$/],
    [75, 9.9, /^$/],
    [75, null, /^$/],
  ])("at %d F and %s hours", (temperature, hour, sentence) => {
    expect(caution(temperature, hour)).toMatch(sentence);
  });

  it("says why the count may be low", () => {
    expect(caution(45, null)).toBe(
      "cold: bees draw into a cluster, so fewer combs look covered than in warmth",
    );
    expect(caution(75, 12)).toBe(
      "midday and warm: foragers are out, so fewer bees are seen than the hive has",
    );
  });
});
