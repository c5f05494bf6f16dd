import { describe, expect, it } from "vitest";
import { readContract, readTerm } from "../../src/core/contract-reading.js";
import type { Contract } from "../../src/core/contract.js";
import { TERMS } from "../../src/core/terms.js";

const PLAIN = { comma: false, fractions: false };
const contract = (...rows: [string, unknown][]) =>
  readContract([["Term", "Cherry"], ...rows], "Cherry");

type Field = keyof Contract;
/** Terms that are a number from 0: the most, of what, and what a contract says that leaves it out. */
const NUMBERS: readonly (readonly [string, Field, number, string, number])[] = [
  ["average frames", "averageFrames", 60, "frames", 0],
  ["minimum frames", "minimumFrames", 60, "frames", 0],
  ["share under minimum forgiven", "forgivenShare", 100, "%", 0],
  ["most frames a hive", "mostFrames", 60, "frames", 0],
  ["brood", "brood", 60, "frames", 0],
  ["brood comb covered", "broodCombCover", 100, "%", 0],
  ["stores", "stores", 200, "as said", 0],
  ["feed under", "feedUnder", 200, "as stores", 0],
  // Common practice, no source, as docs/sources.md says.
  ["combine under", "combineUnder", 60, "frames", 4],
  ["bees for brood", "beesForBrood", 10, "frames", 1],
  ["base fee", "baseFee", 1_000_000, "money", 0],
  ["bonus a frame", "bonus", 1_000_000, "money", 0],
  ["bonus ceiling", "bonusCeiling", 1_000_000, "money", 0],
  ["round money", "moneyRounding", 1000, "money", 0.01],
  ["share opened", "openedShare", 100, "%", 0],
  ["inspect from day", "inspectFromDay", 365, "days", 0],
  ["inspect above temperature", "inspectAbove", 130, "degrees", 0],
  ["inspect from hour", "inspectFromHour", 24, "hour of the day", 0],
  ["inspect to hour", "inspectToHour", 24, "hour of the day", 24],
  ["deposit", "deposit", 100, "%", 0],
  ["balance due", "balanceDays", 365, "days", 0],
  ["observer error", "observerError", 100, "%", 0],
];
/** Terms that are one of some words, and which where the term is left out. */
const CHOICES: readonly (readonly [string, Field, readonly string[], string])[] = [
  ["under minimum", "underMinimum", ["left out", "counted", "rejects the load"], "left out"],
  [
    "forgiven against",
    "forgivenAgainst",
    ["hives opened", "hives in the lot", "hives above the minimum"],
    "hives opened",
  ],
  [
    "comb rule",
    "combRule",
    ["two-thirds", "three-quarters", "sum of parts", "cluster count"],
    "two-thirds",
  ],
  ["part frame", "partFrame", ["down", "nearest", "as it is", "between"], "as it is"],
  ["brood counted as", "broodMeasure", ["full frames", "combs"], "full frames"],
  ["stores unit", "storesUnit", ["frames", "lb", "kg"], "frames"],
  ["bonus by", "bonusBy", ["lot", "hive"], "lot"],
  ["round hives", "hiveRounding", ["exact", "whole"], "exact"],
  ["opened by", "openedBy", ["hives", "pallets"], "hives"],
  ["temperature unit", "temperatureUnit", ["F", "C"], "F"],
  [
    "short delivery",
    "shortDelivery",
    ["paid as delivered", "pro rata", "refused"],
    "paid as delivered",
  ],
  ["decimal sign", "decimal", [".", ","], "."],
  ["percents written as", "percentsAs", ["percent", "fraction"], "percent"],
  ["dates written", "dates", ["one way", "day first", "month first"], "one way"],
  ["date system", "dateSystem", ["1900", "1904"], "1900"],
];
/** Terms that are yes or no; no where they are left out. */
const YES_OR_NO: readonly (readonly [string, Field])[] = [
  ["laying queen", "layingQueen"],
  ["pro rata", "proRata"],
  ["re-inspection", "reinspection"],
  ["replace dead-outs", "replaceDead"],
  ["whole frames", "wholeFrames"],
];
/** Terms that a contract may not have without another. */
const BESIDE: ReadonlyMap<string, [string, unknown]> = new Map<string, [string, unknown]>([
  ["brood comb covered", ["brood counted as", "combs"]],
  ["bonus a frame", ["average frames", 1]],
  ["pro rata", ["average frames", 1]],
]);

const holding = (label: string, value: unknown): Contract => {
  const beside = BESIDE.get(label);
  return contract([label, value], ...(beside ? [beside] : []));
};
const refused = (label: string, value: unknown, expected: string) =>
  expect(() => readTerm(label, value, PLAIN)).toThrow(
    `${label}: "${String(value)}" stands where ${expected} was expected`,
  );

describe("a term of a contract", () => {
  it.each(NUMBERS)("%s is a number up to what can be", (label, field, most, unit, left) => {
    expect(contract()[field]).toBe(left);
    expect(readTerm(label, most, PLAIN)).toBe(most);
    for (const value of [-1, most + 1, "?"])
      refused(label, value, `a number from 0 to ${most} ${unit}`);
    // 1 goes with every other term as it is left out, but for the ceiling of a bonus.
    if (label !== "bonus ceiling") expect(holding(label, 1)[field]).toBe(1);
  });

  it("has a ceiling of the bonus beside a bonus", () => {
    const both = contract(["bonus ceiling", 9], ["bonus a frame", 2], ["average frames", 8]);
    expect([both.bonusCeiling, both.bonus]).toEqual([9, 2]);
  });

  it.each(CHOICES)("%s is one of its words", (label, field, choices, left) => {
    expect(String(contract()[field])).toBe(left);
    for (const choice of choices) expect(String(contract([label, choice])[field])).toBe(choice);
    refused(label, "?", choices.join(" or "));
  });

  it.each(YES_OR_NO)("%s is yes or no", (label, field) => {
    expect(contract()[field]).toBe(false);
    expect(holding(label, "yes")[field]).toBe(true);
    refused(label, "?", "yes or no");
  });

  it.each([
    ["frame size", "frame"],
    ["box frames", "boxFrame"],
  ] as const)("%s is a frame, and a deep where it is left out", (label, field) => {
    expect(contract()[field].name).toBe("deep");
    expect(contract([label, "zander"])[field].name).toBe("zander");
    expect(() => readTerm(label, "?", PLAIN)).toThrow(`${label}: "?" is no frame that is known`);
  });

  it("has a currency that is any text, and none where it is left out", () => {
    expect(contract().currency).toBe("");
    expect(contract(["currency", "kr."]).currency).toBe("kr.");
  });

  it("is one of these, each with its meaning in a sentence", () => {
    const labels = [...NUMBERS, ...CHOICES, ...YES_OR_NO].map(([label]) => label);
    expect(TERMS.map((term) => term.label).sort()).toEqual(
      [...labels, "frame size", "box frames", "currency"].sort(),
    );
    for (const { meaning } of TERMS) expect(meaning).toMatch(/^[A-Z].*\.$/);
  });
});

describe("a part of a grade", () => {
  it.each([
    ["frames", 60, "frames"],
    ["brood", 60, "frames"],
    ["fee", 1_000_000, "money"],
  ] as const)("%s is a number up to what can be", (part, most, unit) => {
    const label = `grade 2 ${part}`;
    expect(readTerm(label, most, PLAIN)).toBe(most);
    for (const value of [-1, most + 1]) refused(label, value, `a number from 0 to ${most} ${unit}`);
  });

  it("called its name is any text", () => {
    expect(readTerm("grade 2 name", "8-frame", PLAIN)).toBe("8-frame");
  });
});
