import { describe, expect, it } from "vitest";
import { yardColumns } from "../../src/core/yard-columns.js";

// What is a total, a box and a second look is common practice, no source. The sums are in the rows.

type Rows = readonly (readonly unknown[])[];
const rolesOf = (...sheet: Rows) => yardColumns(sheet).roles;
const asked = (...sheet: Rows) =>
  yardColumns(sheet).doubts.map(({ heading, beside }) => [heading, beside?.why, beside?.row]);

describe("a column beside the boxes that it adds up", () => {
  const boxes = ["Hive", "Bees top", "Bees bot", "Bees"];

  it("is their total, and no box, where it is their sum in two rows or more", () => {
    const sheet = [boxes, ["1", 4, 5, 9], ["2", 3, 4, 7], ["3", 5, 5, 10]];
    expect(rolesOf(...sheet)).toEqual(["hive", "bees", "bees", null]);
    expect(yardColumns(sheet)).toMatchObject({
      doubts: [],
      again: [{ column: 3, role: "bees", known: "their sum" }],
    });
  });

  it("is it by any heading that names no box, and of brood too", () => {
    const [a, b] = [
      ["1", 4, 5, 9, 3, 2, 5],
      ["2", 3, 4, 7, 1, 1, 2],
    ];
    const headings = ["Hive", "FOB D1", "FOB D2", "Frames of bees, 2 boxes"];
    const brood = ["Brood deep", "Brood medium", "Brood combs"];
    expect(rolesOf([...headings, ...brood], a!, b!)).toEqual(
      ["hive", "bees", "bees", null, "brood", "brood", null], //
    );
  });

  it.each(["Bees top + bot", "Bees, 2 boxes", "Bees both"])(
    "is it as %s, or asked about",
    (total) => {
      const sheet = [
        ["Hive", "Bees top", "Bees bot", total],
        ["1", 4, 5, 9],
        ["2", 3, 4, 7],
      ];
      const { roles, doubts } = yardColumns(sheet);
      expect(roles).toEqual(["hive", "bees", "bees", null]);
      expect(doubts.map(({ heading }) => heading)).toEqual(total === "Bees both" ? [total] : []);
    },
  );

  it("is it whatever way the counts are written, blanks and unread cells apart", () => {
    const rows = [
      ["1", "4-5", "3", "7-8"],
      ["2", "3,5", "4", "7,5"],
      ["3", "dead", "", "dead"],
      ["4", "", "7", 7],
      ["5", 4, 5, ""],
      ["6", 4, 5, 0],
      ["7", 4, "some", 9],
      ["8", 4, 5, "?"],
      ["9", "", "", ""],
    ];
    expect(yardColumns([boxes, ...rows])).toMatchObject({
      roles: ["hive", "bees", "bees", null],
      doubts: [],
    });
  });

  it("is asked about where one row does not show it, or a row is another sum", () => {
    expect(asked(boxes, ["1", 4, 5, 9])).toEqual([["Bees", "names no box", null]]);
    expect(asked(boxes, ["1", 4, 5, 9], ["2", 0, 0, 0])).toEqual([["Bees", "names no box", null]]);
    const slip = [boxes, ["1", 4, 5, 9], ["2", 3, 4, 7], ["3", 5, 5, 11]];
    expect(asked(...slip)).toEqual([["Bees", "names no box", 4]]);
    const alone = [boxes, ["1", 4, 5, 9], ["2", 3, 4, 7], ["3", "", "", 8]];
    expect(asked(...alone)).toEqual([["Bees", "names no box", 4]]);
  });

  it.each(["", " ", null, undefined])("takes %j in a box for none of it", (blank) => {
    const sheet = [boxes, ["1", 4, 5, 9], ["2", 3, 4, 7]];
    expect(asked(...sheet, ["3", blank, 7, 7])).toEqual([]);
    expect(asked(...sheet, ["3", blank, 7, 8])).toEqual([["Bees", "names no box", 4]]);
  });

  it("reads a count that became a date, 8 July as 7½, and a text, before it adds them", () => {
    const JULY_8 = 46211;
    const sheet = [boxes, ["1", 4, 5, 9], ["2", 3, 4, 7]];
    for (const box of [JULY_8, "7-8", "7,5"]) {
      expect(asked(...sheet, ["3", box, 2, 9.5])).toEqual([]);
      expect(asked(...sheet, ["3", box, 2, 10])).toEqual([["Bees", "names no box", 4]]);
    }
  });

  it("learns nothing of rows whose total is blank, or where yes, no or an error stands", () => {
    const row = ["1", 4, 5, 9];
    for (const other of [
      ["2", 3, 4, ""],
      ["2", true, 4, 9],
      ["2", { code: "#REF!" }, 4, 9],
      ["2", 3, 4, { code: "#REF!" }],
    ]) {
      expect(asked(boxes, row, other)).toEqual([["Bees", "names no box", null]]);
      expect(asked(boxes, row, row, other)).toEqual([]);
    }
  });

  it("is asked about beside one box, which it may hold or not", () => {
    const one = [
      ["Hive", "Bees top", "Bees"],
      ["1", 4, 4],
      ["2", 5, 5],
    ] as const;
    expect(asked(...one)).toEqual([["Bees", "names no box", null]]);
    expect(asked(...one, ["3", 5, 6])).toEqual([["Bees", "names no box", null]]);
    expect(asked(...one, ["3", 5, 6], ["4", 5, 5])).toEqual([["Bees", "names no box", null]]);
  });

  it("is it beside boxes that are numbered", () => {
    const sheet = [
      ["Hive", "Bees", "Bees 1", "Bees 2"],
      ["1", 9, 4, 5],
      ["2", 7, 3, 4],
    ];
    expect(yardColumns(sheet)).toMatchObject({ roles: ["hive", null, "bees", "bees"], doubts: [] });
  });

  it("is asked about where it names a box, and is none where three rows do not show it", () => {
    const three = [
      ["Hive", "Bees 1", "Bees 2", "Bees 3"],
      ["1", 4, 5, 9],
      ["2", 3, 4, 7],
    ];
    expect(asked(...three)).toEqual([]);
    expect(asked(...three, ["3", 5, 5, 10])).toEqual([["Bees 3", "their sum", null]]);
    expect(asked(...three, ["3", 5, 5, 8])).toEqual([]);
  });
});

describe("a column that a formula fills", () => {
  const written = [false, false, false];

  it("counts again what was written beside it", () => {
    const sheet = [
      ["Hive", "Bees deep", "Bees medium", "Bees"],
      ["1", 5, 5, 8.2],
    ];
    expect(yardColumns(sheet, [...written, true])).toMatchObject({
      roles: ["hive", "bees", "bees", null],
      doubts: [],
      again: [{ column: 3, role: "bees", known: "calculated" }],
    });
  });

  it("is a box where its heading says so, and the count where nothing is written", () => {
    const bottom = [
      ["Hive", "Total bees", "Bees top", "Bees bottom"],
      ["1", 9, 4, 5],
    ];
    expect(yardColumns(bottom, [...written, true]).roles).toEqual(["hive", null, "bees", "bees"]);
    const formulas = [
      ["Hive", "Bees 1", "Bees 2"],
      ["1", 9, 4],
    ];
    expect(yardColumns(formulas, [false, true, true]).roles).toEqual(["hive", "bees", "bees"]);
    const looks = yardColumns(
      [
        ["Hive", "Bees", "FOB"],
        ["1", 9, 4],
      ],
      [false, true, true],
    );
    expect([looks.again, looks.doubts.length]).toEqual([[], 2]);
  });
});

describe("two looks at one hive", () => {
  it.each([
    ["Bees on arrival", "Bees now"],
    ["Bees", "Bees today"],
    ["Bees", "Bees"],
    ["Bees", "FOB"],
    ["Brood", "Brood combs"],
  ])("%s and %s are asked about, and neither is counted", (first, second) => {
    const { roles, doubts } = yardColumns([
      ["Hive", first, second],
      ["A1", 4, 5],
    ]);
    expect(roles).toEqual(["hive", null, null]);
    expect(doubts).toMatchObject([
      { heading: first, beside: { why: "names no box", headings: [second] } },
      { heading: second, beside: { why: "names no box", headings: [first] } },
    ]);
  });

  it.each([
    ["Bees top now", "Bees top on arrival"],
    ["Bees top", "Bees bottom today"],
    ["Bees top", "Bees top"],
    ["Deep 1 bees", "Bees deep 1"],
  ])("%s and %s are two looks", (first, second) => {
    expect(asked(["Hive", first, second])).toEqual([
      [first, "another look", null],
      [second, "another look", null],
    ]);
  });
});

it("leaves a box that has one look beside one that has two", () => {
  expect(asked(["Hive", "Bees top", "Bees bot", "Bees top"])).toEqual([
    ["Bees top", "another look", null],
    ["Bees top", "another look", null],
  ]);
});

it("takes boxes that hold as many bees in every row for two boxes", () => {
  const rows = [4, 5, 6, 7].map((count, i) => [`${i}`, count, count]);
  expect(asked(["Hive", "Bees top", "Bees bot"], ...rows)).toEqual([]);
});

it("has no column in a sheet of nothing, and a blank heading where an error or nothing stands", () => {
  expect(yardColumns([]).headings).toEqual([]);
  expect(yardColumns([["Hive", { code: "#REF!" }, null, undefined, 7]]).headings).toEqual(
    ["Hive", "", "", "", "7"], //
  );
});

describe("boxes", () => {
  it.each([
    [["Bees top now", "Bees bottom now"]],
    [["Bees top box", "Bees super 1"]],
    [["Deep bees", "Medium bees"]],
    [["Deep bees", "Deep bees"]],
    [["Bees brood box", "Bees super"]],
    [["Bees", "Bees 2"]],
    [["Bees", "Bees2", "Bees3"]],
    [["Frames of bees", "Frames of bees 2"]],
    [["Bees deep 1", "Bees med 1"]],
  ])("%j are added up", (headings) => {
    expect(yardColumns([["Hive", ...headings]])).toMatchObject({
      roles: ["hive", ...headings.map(() => "bees")],
      doubts: [],
    });
  });
});

describe("a column headed as a date that holds yes and no", () => {
  it("says whether hives were opened, and leaves the date to another", () => {
    expect(
      yardColumns([
        ["Hive", "Opened", "Day", "Bees"],
        [1, "Y", 46100, 8],
        [2, " no ", 46100, ""],
        [3, "", 46100, ""],
        [4, false, 46100, ""],
        // Some hosts hand a blank on as 0.
        [5, 0, 46100, ""],
      ]),
    ).toMatchObject({ opened: [1], roles: ["hive", null, "date", "bees"], doubts: [] });
  });

  it("is a date where it is blank or holds anything else", () => {
    for (const cells of [[""], ["Y", 46100], ["N", "27 Mar"], ["yes", 1]]) {
      const rows = cells.map((cell, i) => [i, cell, 8]);
      expect(yardColumns([["Hive", "Opened", "Bees"], ...rows])).toMatchObject({
        opened: [],
        roles: ["hive", "date", "bees"],
      });
    }
  });
});
