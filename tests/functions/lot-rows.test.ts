import { describe, expect, it } from "vitest";
import { lotStatement } from "../../src/functions/statement.js";
import { comb, one, terms } from "./sheet.js";

const TERMS = terms(["average frames", 8], ["minimum frames", 6], ["base fee", 60]);
const HEADINGS = ["Hive", "Lot", "Bees"];
const SEVERAL = [HEADINGS, ["1", "N", 10], ["2", "n ", 10], ["3", "S", 6], ["4", "S", 6]];
/** As a lot is written once for each truck. */
const ONCE = [HEADINGS, ["1", "T1", 9], ["2", "", 8], ["3", "", 5], ["4", "T2", 9], ["5", "", 6]];

/** Every way in which a lot's hives are read, each with the lot as it is said. */
const WAYS: [string, (yard: unknown[][], lot: string | null) => unknown][] = [
  ["LOT", (yard, lot) => one("LOT", yard, 100, TERMS, "Cherry", lot)],
  ["LOT_PAY", (yard, lot) => one("LOT_PAY", yard, 100, TERMS, "Cherry", lot)],
  ["LOT_CHANCE", (yard, lot) => one("LOT_CHANCE", yard, 100, TERMS, "Cherry", lot)],
  [
    "WHAT_IF",
    (yard, lot) =>
      comb("WHAT_IF", yard, "average frames", [[8]], 100, TERMS, "Cherry", lot)
        .flat()
        .at(-1),
  ],
  ["the statement", (yard, lot) => said(() => statement(yard, lot))],
];

const statement = (yard: unknown[][], lot: string | null) =>
  lotStatement({
    ...{ yard, terms: TERMS, contract: "Cherry", lot, size: 100, delivered: null },
    ...{ grower: null, beekeeper: null, words: null, picked: null, paper: "letter" },
  });

function said(body: () => unknown): string {
  try {
    body();
    return "made";
  } catch (error) {
    return (error as Error).message;
  }
}

describe.each(WAYS)("a sheet of several lots, in %s", (_, read) => {
  it("is refused where none is said, and its lots are named", () => {
    expect(read(SEVERAL, null)).toContain(
      'the column "Lot" holds several lots ("N"; "S"): say which one',
    );
  });

  it("is refused where a lot is written once for several rows, and those are named", () => {
    expect(read(ONCE, "T1")).toContain("rows 3, 4 and 6 have no lot: write it in every row");
  });

  it("is refused for a row with counts and no id, at the end too", () => {
    expect(read([...SEVERAL, ["", "S", 4], ["", "", 4]], "S")).toContain(
      "rows 6 and 7 have counts and no hive id: give each hive its number",
    );
  });
});

describe("a lot", () => {
  const opened = (yard: unknown[][], lot: string | null): unknown =>
    comb("LOT", yard, 100, TERMS, "Cherry", lot).find(([label]) => label === "Hives opened")?.[1];

  it("is the whole sheet where that names one lot, or none", () => {
    expect(opened(SEVERAL.slice(0, 3), null)).toBe(2);
    expect(
      opened([HEADINGS, ...SEVERAL.slice(1).map(([id, , bees]) => [id, "", bees])], null),
    ).toBe(4);
    expect(opened(ONCE.slice(0, 4), null)).toBe(3);
  });

  it("is read although rows of other lots have no id", () => {
    expect(opened([...SEVERAL, ["", "S", 4]], "N")).toBe(2);
  });
});

describe("rows that cannot be read", () => {
  const yard = (...rows: unknown[][]): unknown[][] => [
    ["Hive", "Bees", "Stores", "Queen"],
    ...rows,
  ];
  const bad = yard(["1", "seven-ish?", 3, "yes"], ["2", 8, 3, "yes"], ["3", "lots", 3, "maybe"]);

  it("are all named at once, each cell of them", () => {
    const asked = terms(["average frames", 8], ["laying queen", "yes"]);
    const message = String(one("LOT", bad, 100, asked, "Cherry"));
    expect(message).toMatch(
      /^#VALUE! "Bees", row 2: "seven-ish\?" .*; "Bees", row 4: "lots" .*; "Queen", row 4: "maybe" /,
    );
  });

  it("are the first dozen where there are many, and how many more", () => {
    const many = yard(...Array.from({ length: 20 }, (_, i) => [`${i + 1}`, "lots", 3, "yes"]));
    const message = String(one("LOT_PAY", many, 100, TERMS, "Cherry"));
    expect(message.match(/"Bees", row/g)).toHaveLength(12);
    expect(message).toMatch(/"Bees", row 13: .*; and 8 more$/);
  });

  it("may be hives of which nobody judged what is asked", () => {
    const asked = terms(["laying queen", "yes"]);
    const sheet = yard(["1", 8, 3, "?"], ["2", 8, 3, "yes"], ["3", 8, 3, "?"]);
    expect(one("LOT", sheet, 100, asked, "Cherry")).toBe(
      "#N/A hive 1: queen is asked for and is not judged; hive 3: queen is asked for and is not judged",
    );
  });
});
