import { describe, expect, it } from "vitest";
import { LOT } from "../../src/functions/lot.js";
import { CellError } from "../../src/functions/cells.js";

const HEADINGS = ["Hive", "Lot", "Pallet", "Date", "Bees"];
const TERMS = (...rows: [string, unknown][]): unknown[][] => [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ...rows,
];
const yard = (...rows: unknown[][]): unknown[][] => [HEADINGS, ...rows];
const hive = (id: string, bees: unknown, pallet = "", date: unknown = ""): unknown[] => [
  id,
  "North",
  pallet,
  date,
  bees,
];
/** The figures by label; an error's sentence where the lot is refused. */
function lot(sheet: unknown[][], size: unknown, terms: unknown[][], ...more: unknown[]) {
  const rows = LOT(sheet, size, terms, "Cherry", ...more);
  const [first] = rows[0]!;
  if (first instanceof CellError) return first.message;
  return Object.fromEntries(rows.map(([label, figure, remark]) => [label, [figure, remark]]));
}
const SAMPLE = yard(hive("1", 10), hive("2", "7-8"), hive("3", 4), hive("4", "dead"));

describe("hives of a lot that stand in the sheet and were not opened", () => {
  // 400 listed, 40 of them opened with 9 frames each: common practice, no source.
  const many = yard(
    ...Array.from({ length: 400 }, (_, i) => hive(`${i + 1}`, i % 10 === 0 ? 9 : "")),
  );

  it("are hives of the lot, and no part of its average", () => {
    expect(lot(many, null, TERMS(["base fee", 60]))).toMatchObject({
      "Hives in the lot": [400, ""],
      "Hives opened": [40, "10 % of the lot"],
      "Dead-outs": [0, ""],
      "Average frames": [9, expect.stringMatching(/^of 40 hives/)],
      "Pay in all": [24_000, ""],
    });
  });

  it("are the same by a word as by a blank", () => {
    const worded = many.map((row) => row.map((cell, k) => (k === 4 && cell === "" ? "n/o" : cell)));
    const terms = TERMS(["base fee", 60]);
    expect(lot(worded, null, terms)).toEqual(lot(many, null, terms));
  });

  it("are as many as the user says where that is said", () => {
    expect(lot(many, 420, TERMS())).toMatchObject({ "Hives in the lot": [420, ""] });
  });

  it("stand once where they stand twice, opened on one of two days", () => {
    const twice = yard(hive("1", 9), hive("2", ""), hive("2", ""), hive("1", ""));
    expect(lot(twice, null, TERMS())).toMatchObject({
      "Hives in the lot": [2, ""],
      "Hives opened": [1, "50 % of the lot"],
    });
  });

  it("are gone, and no hives of the lot, where they were combined into others", () => {
    const combined = yard(hive("12", "combined into 13"), hive("13", 9), hive("14", 8));
    expect(lot(combined, null, TERMS())).toMatchObject({
      "Hives in the lot": [2, ""],
      "Average frames": [8.5, expect.anything()],
    });
  });

  it("leave a lot of which none was opened refused", () => {
    expect(lot(yard(hive("1", ""), hive("2", "not opened")), null, TERMS())).toMatch(
      /no hive is opened/,
    );
  });
});

describe("many hives with 0 bees where no cell of the sheet came as a blank", () => {
  const full = (...bees: unknown[]): unknown[][] => [
    ["Hive", "Bees"],
    ...bees.map((frames, i) => [i + 1, frames]),
  ];

  it("may be blanks that the spreadsheet handed on as 0, and are asked about", () => {
    expect(lot(full(9, 8, 0, 0, 0), null, TERMS())).toBe(
      "3 of 5 hives have 0 bees, and their cells may be blank: write none or dead where there are " +
        "no bees, and not opened where nobody looked",
    );
  });

  it("are none where they are said to be, where a blank elsewhere shows that blanks are kept, and where they are few", () => {
    const said = { "Hives opened": [5, expect.anything()] };
    expect(lot(full(9, 8, "none", "none", "dead"), null, TERMS())).toMatchObject(said);
    const noted = full(9, 8, 0, 0, 0).map((row, i) => [...row, i === 0 ? "Notes" : ""]);
    expect(lot(noted, null, TERMS())).toMatchObject(said);
    expect(lot(full(9, 8, 8, 0, 0), null, TERMS())).toMatchObject(said);
  });
});

describe("LOT under a contract", () => {
  it("leaves hives under the minimum out of the average", () => {
    // (10 + 7.5) / 2 = 8.75
    const said = lot(SAMPLE, 40, TERMS());
    expect(said).toMatchObject({
      "Hives opened": [4, "10 % of the lot"],
      "Dead-outs": [1, ""],
      "Hives under the minimum": [2, expect.stringMatching(/left out/)],
      "Average frames": [8.75, expect.stringMatching(/^of 2 hives; 8 asked/)],
      "By the contract": ["met", expect.stringMatching(/8.75, at least the 8 asked/)],
    });
  });

  it("takes a hive that was looked into twice for one hive of a lot that was all opened", () => {
    const sheet = yard(hive("1", 9, "", 46108), hive("1", 10, "", 46110), hive("2", 8, "", 46108));
    expect(lot(sheet, null, TERMS())).toMatchObject({
      "Hives in the lot": [2, ""],
      "Hives opened": [2, "every hive of the lot"],
    });
  });

  it("asks for what was not judged in a hive's latest look, and not in one before it", () => {
    const sheet = (first: string, second: string): unknown[][] => [
      [...HEADINGS, "Queen"],
      [...hive("1", 9, "", 46108), first],
      [...hive("1", 10, "", 46110), second],
    ];
    const asked = TERMS(["laying queen", "yes"]);
    expect(lot(sheet("?", "yes"), 40, asked)).toMatchObject({
      "Average frames": [10, expect.anything()],
    });
    expect(lot(sheet("yes", "?"), 40, asked)).toBe("hive 1: queen is asked for and is not judged");
  });

  it("shows an average just under what is asked as under it", () => {
    // (8 + 7.9992) / 2 = 7.9996, which two decimals would make 8.
    expect(lot(yard(hive("1", 8), hive("2", 7.9992)), 40, TERMS())).toMatchObject({
      "By the contract": ["not met", "the sample's average is 7.9996, under the 8 asked"],
    });
  });

  it("counts them where the contract does", () => {
    // (10 + 7.5 + 4 + 0) / 4 = 5.375
    const said = lot(SAMPLE, 40, TERMS(["under minimum", "counted"]));
    expect(said).toMatchObject({ "Average frames": [5.375, expect.anything()] });
    expect(said).toMatchObject({ "By the contract": ["not met", expect.anything()] });
  });

  it("rejects the load by them where the contract does", () => {
    const strict = TERMS(["under minimum", "rejects the load"], ["average frames (of all)", ""]);
    expect(lot(SAMPLE, 40, strict)).toMatch(/stands twice/);
    const rejecting = TERMS(["under minimum", "rejects the load"]);
    const said = lot(yard(hive("1", 12), hive("2", 12), hive("3", 4)), 40, rejecting);
    expect(said).toMatchObject({
      "By the contract": ["not met", expect.stringMatching(/1 of 3 hives .* too many/)],
    });
  });

  it("forgives a tenth below for a tenth above (Rutgers 2015)", () => {
    const bees = ["7", "7", "7", "7", "7", "7", "7", "7", "7", "5"];
    const sheet = yard(...bees.map((count, i) => hive(`${i}`, count)));
    const rows = LOT(sheet, 100, undefined, "Rutgers New Jersey");
    expect(rows[0]![0]).toBeInstanceOf(CellError); // brood and queen are asked for, and not judged
    const forgiving: [string, unknown][] = [
      ["under minimum", "rejects the load"],
      ["share under minimum forgiven", 10],
      ["forgiven against", "hives above the minimum"],
    ];
    const terms = [["Term", "Cherry"], ["minimum frames", 6], ...forgiving];
    expect(lot(sheet, 100, terms)).toMatchObject({ "By the contract": ["met", expect.anything()] });
    const level = yard(
      ...["6", "6", "6", "6", "6", "6", "6", "6", "6", "5"].map((c, i) => hive(`${i}`, c)),
    );
    expect(lot(level, 100, terms)).toMatchObject({
      "By the contract": ["not met", expect.anything()],
    });
  });

  it("caps a strong hive", () => {
    // (12 + 8) / 2 = 10
    const said = lot(yard(hive("1", 20), hive("2", 8)), 40, TERMS(["most frames a hive", 12]));
    expect(said).toMatchObject({
      "Average frames": [10, expect.stringMatching(/each at most 12/)],
    });
  });

  it("has no interval left where every hive was opened", () => {
    const said = lot(yard(hive("1", 10), hive("2", 7)), null, TERMS());
    expect(said).toMatchObject({
      "Average of the whole lot, low": [8.5, expect.anything()],
      "Average of the whole lot, high": [8.5, ""],
    });
  });
});

describe("LOT takes the hives of the sheet", () => {
  it("once each, by the latest look", () => {
    const sheet = yard(hive("1", 4, "", 46100), hive("1", 9, "", 46110), hive("2", 9, "", 46110));
    expect(lot(sheet, 40, TERMS())).toMatchObject({ "Average frames": [9, expect.anything()] });
  });
  it.each([
    ["a hive twice without days", yard(hive("1", 9), hive("1", 8)), 40, /hive 1 stands twice/],
    ["a lot smaller than its sample", SAMPLE, 3, /a lot of 3 hives cannot have 4 in the sheet/],
    ["an empty sample", yard(["", "", "", "", ""]), 40, /no hive is opened/],
    [
      "counts without an id",
      yard(hive("1", 9), hive("", 8)),
      40,
      /row 3 has counts and no hive id/,
    ],
    ["a row that cannot be read", yard(hive("1", "sevn")), 40, /row 2: "sevn"/],
    ["half a hive", SAMPLE, 40.5, /a lot of 40.5 hives/],
  ])("and refuses %s", (_, sheet, size, says) => {
    expect(lot(sheet, size, TERMS())).toMatch(says);
  });
  it("of the lot that is asked for", () => {
    const sheet = yard(hive("1", 9), ["2", "South", "", "", 12]);
    const rows = LOT(sheet, 40, TERMS(), "Cherry", "south");
    expect(rows.find(([label]) => label === "Average frames")![1]).toBe(12);
    expect(lot(sheet, 40, TERMS(), "East")).toMatch(/no opened hive stands in the lot "East"/);
  });
  it("and refuses a confidence of 0 or 100", () => {
    for (const sure of [-1, 100]) {
      expect(lot(SAMPLE, 40, TERMS(), null, null, sure)).toMatch(/confidence/);
    }
  });
});
