import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/index.js";
import { cellsOf, column, comb, one, shown, terms } from "./sheet.js";
import { USES, withCells, YARD, type Use } from "./uses.js";

const rowsOf = ({ id, values }: Use) => comb(id, ...values);
/** Messages of a column name the row; those of a cell have none to name. */
const withoutRow = (cell: unknown) =>
  typeof cell === "string" ? cell.replace(/, row \d+(?=[:,])|row \d+: /, "") : cell;

describe.each(USES.map((use) => [use.title, use] as const))("%s", (_, use) => {
  const { id, values, byRow } = use;
  const hives = (values[0] as unknown[][]).length;

  it("gives a row for each row", () => {
    const rows = rowsOf(use);
    expect(rows.length).toBe(hives);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  it("gives for each row what it gives for that row alone", () => {
    rowsOf(use).forEach((row, i) => {
      const alone = comb(
        id,
        ...values.map((v, k) => (byRow.includes(k) ? [(v as unknown[][])[i]] : v)),
      );
      // What is wrong with the only contract is said once, in one cell.
      const once = alone[0]!.length < row.length;
      expect(alone).toEqual([row.map(withoutRow).slice(0, once ? 1 : row.length)]);
      if (once) expect(alone[0]![0]).toMatch(/^#VALUE! no contract is named/);
    });
  });

  it.each([
    ["null", null],
    ["undefined", undefined],
    ["0", 0],
  ])("takes a blank for a blank whether it comes as a text or as %s", (_, blank) => {
    const blanked = withCells(values, (cell) => (cell === "" ? blank : cell));
    expect(comb(id, ...blanked)).toEqual(rowsOf(use));
  });

  it("takes options that are null or undefined for options left out", () => {
    const given = values.reduce<number>((last, value, k) => (value === null ? last : k + 1), 0);
    const { length } = functions.find((fn) => fn.id === id)!.parameters;
    for (const nothing of [null, undefined]) {
      const filled = Array.from({ length }, (_, k) => (k < given ? values[k] : nothing) ?? nothing);
      expect(comb(id, ...filled)).toEqual(rowsOf(use));
    }
    expect(comb(id, ...values.slice(0, given))).toEqual(rowsOf(use));
  });

  it("lets out only finite numbers, texts, yes or no, and errors with a code", () => {
    for (const cell of rowsOf(use).flat()) {
      expect(["number", "string", "boolean"]).toContain(typeof cell);
      if (typeof cell === "number") expect(cell).toSatisfy(Number.isFinite);
    }
  });
});

describe("a yard sheet", () => {
  const contracts = (USES.find(({ id }) => id === "GRADE")!.values[1] ?? null) as unknown[][];
  const all = "hive, contract, frames, bees, brood full, brood combs, grade, short, note";

  it.each([
    ["null", null],
    ["undefined", undefined],
    ["0", 0],
  ])("takes a blank for a blank whether it comes as a text or as %s", (_, blank) => {
    const [yard, terms] = withCells([YARD, contracts], (cell) => (cell === "" ? blank : cell));
    expect(comb("YARD_COLUMNS", yard, terms, null, all)).toEqual(
      comb("YARD_COLUMNS", YARD, contracts, null, all),
    );
  });

  it("gives for each row what it gives for that row alone", () => {
    const [heading, ...rows] = comb("YARD_COLUMNS", YARD, contracts, null, all);
    const plain = (cell: unknown) =>
      typeof cell === "string" ? cell.replace(/row \d+/, "row") : cell;
    rows.forEach((row, i) => {
      // Beside a row that was not opened, for a sheet of one hive has its faults as a whole.
      const yard = [YARD[0], YARD[i + 1], YARD[2]];
      const [top, alone] = comb("YARD_COLUMNS", yard, contracts, null, all);
      expect(top).toEqual(heading);
      expect(alone!.map(plain)).toEqual(row.map(plain));
    });
  });
});

describe("one cell", () => {
  const contract = terms(["average frames", 8]);
  it.each([
    ["READING", ["7-8"], 7.5],
    ["READING", [7], 7],
    ["FRAMES_OF_BEES", ["7-8"], 7.5],
    ["BEES", [2], 4800],
    ["BROOD_FRAMES", [7, 60, "combs"], 7],
    ["GRADE", [8, contract], "at average"],
    ["SHORT_OF", ["7-8", contract], 0.5],
  ])("%s of %j gives one cell, given bare or as a range of one", (id, values, expected) => {
    const ranges = values.map((value) => (Array.isArray(value) ? value : [[value]]));
    expect(comb(id, ...values)).toEqual([[expected]]);
    expect(comb(id, ...ranges)).toEqual([[expected]]);
  });

  it("gives one blank for a blank", () => {
    for (const id of ["READING", "FRAMES_OF_BEES", "BEES", "BROOD_FRAMES"]) {
      for (const blank of ["", 0, " "]) expect(comb(id, blank)).toEqual([[""]]);
    }
    expect(comb("GRADE", "", contract)).toEqual([[""]]);
    expect(comb("HIVE_CHECK", "", contract)).toEqual([["", "", "", "", ""]]);
  });

  it("serves every hive where it stands beside a column", () => {
    // 4 x 0.60 = 2.4 and 5 x 0.60 = 3.
    expect(comb("BROOD_FRAMES", column(4, 5), [[60]])).toEqual([[2.4], [3]]);
  });
});

describe("what is left out", () => {
  it.each(functions.flatMap((fn) => (fn.parameters.some((p) => !p.optional) ? [[fn.id, fn]] : [])))(
    "%s: is named where the function needs it",
    (id, fn) => {
      const { name } = (fn as (typeof functions)[number]).parameters[0]!;
      for (const values of [[], [null], [undefined], [null, 5]]) {
        expect(comb(id as string, ...values)).toEqual([
          [`#VALUE! ${name}: left out, and ${id as string} needs it`],
        ]);
      }
    },
  );

  it("is the contract's name where Terms holds only one contract", () => {
    expect(one("GRADE", 8, terms(["average frames", 8]))).toBe("at average");
  });

  it("cannot be both Terms and a standard's name", () => {
    expect(one("GRADE", 8)).toBe(
      "#VALUE! give the Terms table, or a published standard's name as the contract",
    );
  });

  it.each([null, "", 0])("is the same as a blank %j for the frame in the boxes", (blank) => {
    const sizes = comb("FRAMES_OF_BEES", 7, null, null, null, "medium");
    expect(comb("FRAMES_OF_BEES", 7, null, null, [[blank]], "medium")).toEqual(sizes);
  });
});

describe("more cells than may be given", () => {
  const seven = Array.from({ length: 7 }, () => [1]);
  it("are refused in a sentence that says how many fit", () => {
    expect(cellsOf("READING", [seven], 6).map((row) => row.map(shown))).toEqual([
      [expect.stringMatching(/^#VALUE! 7 cells in one call; at most 6 fit: give the rows/)],
    ]);
  });

  it("are counted with the cells that come out", () => {
    // 7 in and 7 out are 14; in five parts 7 and 1 in, 35 out.
    expect(cellsOf("READING", [seven], 14)).toEqual(seven);
    expect(shown(cellsOf("READING", [seven], 13)[0]![0])).toMatch(/^#VALUE! 14 cells/);
    expect(shown(cellsOf("READING", [seven, "all"], 42)[0]![0])).toMatch(/^#VALUE! 43 cells/);
  });
});

describe("a block that is no rectangle", () => {
  it.each([
    ["nothing", [], [[""]]],
    ["an empty row", [[]], [[""]]],
    [
      "rows of other lengths",
      [[7], [7, 8]],
      [
        [7, ""],
        [7, 8],
      ],
    ],
    [
      "an empty row first",
      [[], [7, 8]],
      [
        ["", ""],
        [7, 8],
      ],
    ],
    [
      "an empty row last",
      [[7, 8], []],
      [
        [7, 8],
        ["", ""],
      ],
    ],
    ["a flat list", [7, 8], [[7], [8]]],
    ["a hole", [null, [7]], [[""], [7]]],
  ])("%s is filled up with blanks", (_, block, expected) => {
    expect(comb("READING", block)).toEqual(expected);
  });

  it("adds boxes in the same way", () => {
    expect(comb("FRAMES_OF_BEES", [[7], [7, 8], []])).toEqual([[7], [15], [""]]);
  });

  it("gives a yard sheet or Terms without a heading a sentence", () => {
    for (const block of [[], [[]], [[""]]]) {
      expect(one("YARD_COLUMNS", block, terms(["average frames", 8]))).toMatch(
        /^#VALUE! the first row needs a heading such as "Hive"/,
      );
      expect(one("GRADE", 8, block)).toMatch(/^#VALUE! the first cell must be the heading "Term"/);
    }
  });
});
