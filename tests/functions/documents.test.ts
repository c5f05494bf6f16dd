import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/index.js";
import { comb, serial } from "./sheet.js";

const folder = new URL("../../src/functions/", import.meta.url);
const source = readdirSync(folder)
  .filter((name) => name.endsWith(".ts"))
  .map((name) => readFileSync(new URL(name, folder), "utf8"))
  .join("\n");

/** The JSDoc of each function, by the id that Excel knows it by. */
const documents = new Map(
  [...source.matchAll(/\/\*\*(?:(?!\*\/)[^])*?@customfunction (\w+)[^]*?\*\//g)].map(
    ([text, id]) => [id!, text.replace(/\n \* ?/g, "\n")],
  ),
);
const tagged = (id: string, tag: string) =>
  [...documents.get(id)!.matchAll(new RegExp(`^@${tag} ([^]*?)(?=\\n@|\\n?/?$)`, "gm"))].map(
    ([, text]) => text!.trim(),
  );

it("every function is documented as one", () => {
  expect([...documents.keys()]).toEqual(expect.arrayContaining(functions.map(({ id }) => id)));
});

describe.each(functions.map((fn) => [fn.id, fn] as const))("%s", (id, fn) => {
  it("has an @param for each parameter that the code reads, in the same order, with a meaning", () => {
    const params = tagged(id, "param").map((text) => text.split(/\s+/));
    expect(params.map(([name]) => name)).toEqual(fn.parameters.map(({ name }) => name));
    for (const [, ...meaning] of params) expect(meaning.length).toBeGreaterThan(2);
  });

  it("begins with a sentence, has an example of itself, and says what it returns", () => {
    expect(documents.get(id)).toMatch(/^\/\*\*\n[A-Z][^\n]+/);
    expect(tagged(id, "example").join(" ")).toContain(`=COMB.${id}(`);
    expect(tagged(id, "returns")).toEqual([expect.stringMatching(/\S/)]);
  });
});

interface Example {
  readonly formula: string;
  /** What the line says that it gives, and what it gives by hand, unrounded. */
  readonly says: string;
  readonly gives: readonly unknown[];
  readonly values: readonly unknown[];
}

const example = (
  formula: string,
  values: unknown[],
  says: string,
  ...gives: unknown[]
): Example => ({
  formula,
  values,
  says,
  gives,
});
const ALMOND = "Almond Board of California";

/** The examples that need no cells, and one whose line says what stands in its cells. */
const EXAMPLES: readonly Example[] = [
  // (7 + 8) / 2
  example('READING("7-8")', ["7-8"], "gives 7.5", 7.5),
  example(
    'READING("7-8","all")',
    ["7-8", "all"],
    'gives 7, 7.5, 8, "7-8", ""',
    7,
    7.5,
    8,
    "7-8",
    "",
  ),
  // 7.5 + 5
  example("FRAMES_OF_BEES(B2:C2)", [[["7-8", 5]]], "with 7-8 and 5 gives 12.5", 12.5),
  // (10 + 6) / 2; 8 x 630 cm2 / (2 x 134 x 6.4516 cm2)
  example("SEAMS(10,6)", [10, 6], "gives 8", 8),
  example(
    'SEAMS(10,6,"frames","april")',
    [10, 6, "frames", "april"],
    "gives 2.91",
    5040 / 1729.0288,
  ),
  // 10 x 5.5 / 8.625
  example('DEEP_EQUIVALENT(10,"medium")', [10, "medium"], "gives 6.38", 55 / 8.625),
  // 8 x 2,400, and back
  example("BEES(8)", [8], "gives 19200", 19200),
  example('BEES(19200,,"frames")', [19200, null, "frames"], "gives 8", 8),
  // Half of 1,200 a side; 2 x 125
  example("COVER_TO_BEES(50)", [50], "gives 600", 600),
  example(
    'COVER_TO_BEES(2,,"eighths","liebefeld","zander")',
    [2, null, "eighths", "liebefeld", "zander"],
    "gives 250",
    250,
  ),
  // 3 x 3,500; 3 lb x 0.45359237 kg
  example("BEE_WEIGHT(3)", [3], "gives 10500", 10500),
  example('BEE_WEIGHT(10500,"bees","kg")', [10500, "bees", "kg"], "gives 1.36", 1.36077711),
  // 134 x 6.4516 cm2 x 3.96 = 3,423.477 cells a side; 400 an eighth
  example("CELLS(50)", [50], "gives 1712", 3423.477024 / 2),
  example(
    'CELLS(1,,"liebefeld","zander",,"eighths")',
    [1, null, "liebefeld", "zander", null, "eighths"],
    "gives 400",
    400,
  ),
  example("COVER(1712)", [1712], "gives 50", 171200 / 3423.477024),
  // pi / 4 x 10 x 6; 30 x 6.4516
  example('PATCH(10,6,"in","in2")', [10, 6, "in", "in2"], "gives 47.1", 15 * Math.PI),
  example('PATCH(30,,"sq in","cm2")', [30, null, "sq in", "cm2"], "gives 193.5", 193.548),
  // 7 x 0.60
  example("BROOD_FRAMES(7,60)", [7, 60], "gives 4.2", 4.2),
  example('BROOD_FRAMES(7,60,"combs")', [7, 60, "combs"], "gives 7", 7),
  // 21 - (9 + 21) / 2; 24 + 2 - 10
  example('DAYS_TO_EMERGE("capped")', ["capped"], "gives 6", 6),
  example(
    'DAYS_TO_EMERGE("capped","drone","latest")',
    ["capped", "drone", "latest"],
    "gives 16",
    16,
  ),
  // 3,000 / 3 over what lives to mid-stage, 0.97 ^ 1.5
  example("EGGS_PER_DAY(3000,6000,12000)", [3000, 6000, 12000], "gives 1047", 1000 / 0.97 ** 1.5),
  example(
    'EGGS_PER_DAY(1000,2000,2000,"verdict")',
    [1000, 2000, 2000, "verdict"],
    "gives growing",
    "growing",
  ),
  // 5 x 2.45 / (5 x 2.45 + 95 x 3.96)
  example('DRONE_SHARE(5,95,"area")', [5, 95, "area"], "gives 5", 5),
  example(
    'DRONE_SHARE(5,95,"area",,,"by cells")',
    [5, 95, "area", null, null, "by cells"],
    "gives 3.15",
    1225 / 388.45,
  ),
  // 10 and 30 % empty, of 20 from memory
  example("PATTERN(90)", [90], "gives solid", "solid"),
  example("PATTERN(70)", [70], "gives spotty", "spotty"),
  // 2 x 7 lb; 35 lb x 0.45359237
  example("STORES(2)", [2], "gives 14", 14),
  example('STORES(95,"lb","kg",,60)', [95, "lb", "kg", null, 60], "gives 15.9", 35 * 0.45359237),
  // (20 - 7) / 7; 20 / 5 x 3.785411784
  example("FEED(1)", [1], "gives 1.86", 13 / 7),
  example(
    'FEED(10,"lb",30,"lb","1:1","litres")',
    [10, "lb", 30, "lb", "1:1", "litres"],
    "gives 15.1",
    4 * 3.785411784,
  ),
  // 40 x (2 + 3) / 2; 40 x 16 / 8
  example('HIVES_NEEDED(40,"cherry")', [40, "cherry"], "gives 100", 100),
  example("HIVES_NEEDED(40,,,,16,8)", [40, null, null, null, 16, 8], "gives 80", 80),
  // 7.5 is between 6 and 8
  example(`GRADE("7-8",,"${ALMOND}")`, ["7-8", null, ALMOND], 'gives "at minimum"', "at minimum"),
  example(`SHORT_OF("7-8",,"${ALMOND}")`, ["7-8", null, ALMOND], "gives 0.5", 0.5),
  example(
    `HIVE_CHECK(5,,"${ALMOND}")`,
    [5, null, ALMOND],
    'gives "not met", "not asked", "not asked", "not asked", "frames 5 of 6"',
    ...["not met", "not asked", "not asked", "not asked", "frames 5 of 6"],
  ),
];
const idOf = (formula: string) => formula.slice(0, formula.indexOf("("));

describe.each(EXAMPLES)("=COMB.$formula", ({ formula, values, says, gives }) => {
  it("stands in the documentation with what it gives", () => {
    expect(tagged(idOf(formula), "example").join(" ")).toContain(`=COMB.${formula} ${says}`);
  });

  it("gives that", () => {
    const [row, ...others] = comb(idOf(formula), ...values);
    expect(others).toEqual([]);
    expect(row!.length).toBe(gives.length);
    gives.forEach((value, k) => {
      if (typeof value === "number") expect(row![k]).toBeCloseTo(value, 9);
      else expect(row![k]).toBe(value);
    });
    // One number is said rounded, to the figures that the line shows.
    const [, digits = ""] = /gives \d+\.?(\d*)$/.exec(says) ?? [];
    if (gives.length === 1 && typeof gives[0] === "number") {
      expect(says).toMatch(new RegExp(`gives ${gives[0].toFixed(digits.length)}$`));
    }
  });
});

const [MARCH_20, MARCH_28] = [serial(2026, 3, 20), serial(2026, 3, 28)];
/** A clock's part; `null` for what comes before it in the call. */
const part = (id: string, date: number, stage: string, ...args: unknown[]) =>
  comb(id, date, stage, ...args)[0]![0];
const rounded = (value: unknown, decimals = 2) => Number((value as number).toFixed(decimals));

/** Examples that spill, or give dates: what the line says, and the same of what comes out. */
const TOLD: readonly (readonly [
  id: string,
  says: string,
  gives: () => unknown,
  wanted: unknown,
])[] = [
  [
    "EMERGE_DATE",
    '(DATE(2026,3,20),"just capped") gives 1 April 2026; its earliest is 29 March, its latest 3 April.',
    () =>
      ["expected", "earliest", "latest"].map((p) =>
        part("EMERGE_DATE", MARCH_20, "just capped", null, p),
      ),
    [serial(2026, 4, 1), serial(2026, 3, 29), serial(2026, 4, 3)],
  ],
  [
    "EGG_DATE",
    '(DATE(2026,3,20),"just capped") gives 11 March 2026; its earliest is 10 March, its latest 11 March.',
    () =>
      ["expected", "earliest", "latest"].map((p) =>
        part("EGG_DATE", MARCH_20, "just capped", null, p),
      ),
    [serial(2026, 3, 11), serial(2026, 3, 10), serial(2026, 3, 11)],
  ],
  // Capped from day 9 on, and until 22.2 days at the most: 5.8 March, rounded down.
  [
    "BROOD_START",
    '(DATE(2026,3,28),"capped") gives 19 March 2026, with 5 March as its earliest.',
    () =>
      ["latest", "earliest"].map((p) =>
        part("BROOD_START", MARCH_28, "capped", null, null, null, p),
      ),
    [serial(2026, 3, 19), serial(2026, 3, 5)],
  ],
  [
    "CONDITIONS",
    "(45) gives a caution that the bees draw into a cluster; =COMB.CONDITIONS(70,9) gives a blank.",
    () => [comb("CONDITIONS", 45)[0]![0], comb("CONDITIONS", 70, 9)[0]![0]],
    [expect.stringContaining("bees draw into a cluster"), ""],
  ],
  // 1,200 cells over the 12 days that they are capped.
  [
    "EMERGENCE",
    '(1200,,,DATE(2026,3,28),"cells",,,,100) gives 100 bees on each of the first 12 days.',
    () =>
      comb("EMERGENCE", 1200, null, null, MARCH_28, "cells", null, null, null, 100)
        .slice(1, 14)
        .map((row) => row[2]),
    [...Array<number>(12).fill(100), 0],
  ],
  // 4 eighths of 125 g
  [
    "FOOD",
    '(4,"g","zander","eighths") gives 500.',
    () => comb("FOOD", 4, "g", "zander", "eighths"),
    [[500]],
  ],
  [
    "FORECAST",
    '(8,DATE(2026,3,28),DATE(2026,4,11),4) gives 9.26, with "low" 4.94 and "high" 14.3.',
    () =>
      ["middle", "low", "high"].map((p, k) => {
        const nine = Array<null>(9).fill(null);
        return rounded(
          comb("FORECAST", 8, MARCH_28, MARCH_28 + 14, 4, ...nine, p)[0]![0],
          k === 2 ? 1 : 2,
        );
      }),
    [9.26, 4.94, 14.3],
  ],
  [
    "FORECAST_DAYS",
    "(8,DATE(2026,3,28),14,4) gives fifteen rows under a heading, from 28 March to 11 April.",
    () => {
      const [, ...rows] = comb("FORECAST_DAYS", 8, MARCH_28, 14, 4);
      return [rows.length, rows[0]![0], rows.at(-1)![0]];
    },
    [15, MARCH_28, serial(2026, 4, 11)],
  ],
  // 17 x 2 x 3 pallets of 4; 100 pallets of 4 x 110 lb are 44,000 lb
  [
    "LOADS",
    "(960) spills 3 loads of up to 408 by space; =COMB.LOADS(960,110,44000) reckons 400 by weight.",
    () => [
      comb("LOADS", 960)[0]![1],
      comb("LOADS", 960)[3]![1],
      comb("LOADS", 960, 110, 44_000)[2]![1],
    ],
    [408, 3, 400],
  ],
  [
    "OPEN_MORE",
    "(B2:B4,9,7,,,,2.4) with 12, 11 and 12 gives pass, 0, 11.67, 5.79, 10.21 and a sentence.",
    () => {
      const [row = []] = comb("OPEN_MORE", [[12], [11], [12]], 9, 7, null, null, null, 2.4);
      return [...row.slice(0, 2), ...row.slice(2, 5).map((value) => rounded(value)), typeof row[5]];
    },
    ["pass", 0, 11.67, 5.79, 10.21, "string"],
  ],
  [
    "PICK_HIVES",
    '(A2:A4,2,"Apple","Bloom") with H01, H02 and H03 spills a heading line, then H02 and H03.',
    () =>
      comb("PICK_HIVES", [["H01"], ["H02"], ["H03"]], 2, "Apple", "Bloom")
        .slice(1)
        .map(([id]) => id),
    ["H02", "H03"],
  ],
  [
    "TO_OPEN",
    "(1,96,2.4) gives 20 hives of 96.",
    () => comb("TO_OPEN", 1, 96, 2.4)[0]!.slice(0, 2),
    ["Hives to open", 20],
  ],
];

it.each(TOLD)("the example of %s gives what it says, %s", (id, says, gives, wanted) => {
  expect(tagged(id, "example").join(" ").replace(/\s+/g, " ")).toBe(`=COMB.${id}${says}`);
  expect(gives()).toEqual(wanted);
});

it("no example that says a figure is left unchecked", () => {
  const checked = new Set([
    ...EXAMPLES.map(({ formula }) => idOf(formula)),
    ...TOLD.map(([id]) => id),
  ]);
  const figures = functions.filter(({ id }) =>
    tagged(id, "example").some((text) => /(?:gives|spills|reckons) [^.]*?\d/.test(text)),
  );
  expect(figures.map(({ id }) => id).filter((id) => !checked.has(id))).toEqual([]);
  expect(figures.length).toBeGreaterThan(25);
});

it("no example of these functions is left unchecked", () => {
  for (const id of new Set(EXAMPLES.map(({ formula }) => idOf(formula)))) {
    const written =
      tagged(id, "example")
        .join(" ")
        .match(/=COMB\.\w+\([^)]*\)/g) ?? [];
    const checked = EXAMPLES.filter(({ formula }) => idOf(formula) === id);
    expect(written).toEqual(checked.map(({ formula }) => `=COMB.${formula}`));
  }
});
