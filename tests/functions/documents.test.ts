import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/index.js";
import { comb } from "./sheet.js";

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

it("every function is documented, and nothing else is documented as one", () => {
  expect([...documents.keys()].sort()).toEqual(functions.map(({ id }) => id).sort());
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

/** The examples that stand for themselves, with what their line says they give. */
const EXAMPLES: Readonly<
  Record<string, readonly [id: string, values: unknown[], gives: unknown[]]>
> = {
  '=COMB.READING("7-8")': ["READING", ["7-8"], [7.5]],
  '=COMB.READING("7-8","all")': ["READING", ["7-8", "all"], [7, 7.5, 8, "7-8", ""]],
  "=COMB.BEES(8)": ["BEES", [8], [19200]],
  "=COMB.BROOD_FRAMES(7,60)": ["BROOD_FRAMES", [7, 60], [4.2]],
  '=COMB.BROOD_FRAMES(7,60,"combs")': ["BROOD_FRAMES", [7, 60, "combs"], [7]],
  '=COMB.GRADE("7-8",,"Almond Board of California")': [
    "GRADE",
    ["7-8", null, "Almond Board of California"],
    ["at minimum"],
  ],
  '=COMB.SHORT_OF("7-8",,"Almond Board of California")': [
    "SHORT_OF",
    ["7-8", null, "Almond Board of California"],
    [0.5],
  ],
  '=COMB.HIVE_CHECK(5,,"Almond Board of California")': [
    "HIVE_CHECK",
    [5, null, "Almond Board of California"],
    ["not met", "not asked", "not asked", "not asked", "frames 5 of 6"],
  ],
};
/** Those that need cells, with what stands in the cells of the line. */
const WITH_CELLS = {
  "=COMB.FRAMES_OF_BEES(B2:C2)": ["FRAMES_OF_BEES", [[["7-8", 5]]], [12.5]],
} as const;
/** Those that say nothing of what they give. */
const TABLES = [
  '=COMB.YARD_COLUMNS(A1:H61,Terms,"Cherry")',
  "=COMB.STANDARDS()",
  "=COMB.SOURCES()",
];

describe("the examples", () => {
  const written = functions.flatMap(({ id }) => tagged(id, "example")).join("\n");

  it("are all checked here", () => {
    const formulas = [...written.matchAll(/=COMB\.\w+\([^)]*\)/g)].map(([formula]) => formula);
    const checked = [...Object.keys(EXAMPLES), ...Object.keys(WITH_CELLS), ...TABLES];
    expect(formulas.sort()).toEqual(checked.sort());
  });

  it.each(Object.entries({ ...EXAMPLES, ...WITH_CELLS }))(
    "%s gives what it says",
    (formula, example) => {
      const [id, values, gives] = example;
      expect(comb(id, ...values)).toEqual([gives]);
      const line = written.split("\n").find((text) => text.includes(formula))!;
      const says = line.slice(line.indexOf(formula)).split(/;|\(average/)[0]!;
      for (const value of gives) expect(says).toContain(`${value}`);
    },
  );
});
