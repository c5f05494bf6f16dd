import { describe, expect, it } from "vitest";
import { hivesIn, yardReference } from "../../../src/pane/columns/yard.js";
import { MemoryWorkbook, type Named } from "../memory.js";
import { sheetsOf, workbookOf, yardOf } from "./sheets.js";

const HIVES = [
  ["Hive", "Bees", "Brood"],
  ["A1", "7-8", 4],
  ["A2", 6, 3],
] as const;

/** What YARD_COLUMNS gives beside these hives, as far as it matters here. */
const SPILLED = [
  ["Frames of bees", "Bees", "Note"],
  [7.5, 18_000, ""],
  [6, 14_400, ""],
];

describe("a yard sheet is found", () => {
  it("where it begins under a title, and ends with its last hive", async () => {
    const yard = await yardOf([
      ["Spring count", "", "", ""],
      ["", "", "", ""],
      ["", ...HIVES[0]],
      ["", ...HIVES[1]],
      ["", ...HIVES[2]],
      ["", "", "", ""],
      ["", "", "total 2 hives", ""],
    ]);
    expect(yard.place).toEqual({ sheet: "Yard", row: 2, column: 1, rows: 3, columns: 3 });
    expect(yardReference(yard, "Yard")).toBe("B3:D5");
    expect(yardReference(yard, "Lots")).toBe("Yard!$B$3:$D$5");
  });

  it("to its last count, also of a hive without id, and not to a sum that is calculated", async () => {
    const stray = await yardOf([...HIVES, ["", 4, 2], ["", "", ""], ["", "=SUM(B2:B4)", ""]]);
    expect(stray.place.rows).toBe(4);
  });

  // What Office.js gives as the entry of a cell that another fills is not documented.
  it.each([
    ["=COMB.YARD_COLUMNS(A1:C3,Terms)", "nothing"],
    ["=COMB.YARD_COLUMNS(A1:C3,Terms)", "value"],
    ["=COMB.YARD_COLUMNS(A1:C3,Terms)", "formula"],
    ["=SORT(A1:C3)", "nothing"],
    ["=SORT(A1:C3)", "formula"],
  ] as const)("without the columns that %s gives beside it, seen as %s", async (formula, typed) => {
    for (const column of [3, 4]) {
      const workbook = new MemoryWorkbook({ Yard: HIVES });
      workbook.spill("Yard", 0, column, formula, SPILLED, typed);
      const { headings } = (await sheetsOf(workbook)).yard;
      expect(headings).toEqual(["Hive", "Bees", "Brood"]);
    }
  });

  it("without the columns that were computed before and kept as values", async () => {
    // The headings of the columns that come where none are asked for, in docs/functions.md.
    const computed =
      "Frames of bees|Bees|Brood, full frames|Brood, combs|Grade|Frames short|Note".split("|");
    const yard = await yardOf([
      [...HIVES[0], "", ...computed],
      [...HIVES[1], "", 7.5, 18_000, 4, 4, "Full", 0, ""],
      [...HIVES[2], "", 6, 14_400, 3, 3, "Full", 0, ""],
    ]);
    expect(yard.headings).toEqual(["Hive", "Bees", "Brood"]);
  });

  it("with a heading that a formula gives", async () => {
    const workbook = new MemoryWorkbook({ Yard: [["Hive", "", "Brood"], HIVES[1], HIVES[2]] });
    workbook.spill("Yard", 0, 1, '="Be"&"es"', [["Bees"]]);
    const { yard } = await sheetsOf(workbook);
    expect(yard.headings).toEqual(["Hive", "Bees", "Brood"]);
    expect(yard.place.row).toBe(0);
  });

  it("rather than the terms beside it", async () => {
    const yard = await yardOf([
      ["Term", "Cherry", "Pear", "", ...HIVES[0]],
      ["brood", 1, 3, "", ...HIVES[1]],
    ]);
    expect(yard.headings).toEqual(["Hive", "Bees", "Brood"]);
  });

  it("rather than the sheets before it that are none", async () => {
    const workbook = new MemoryWorkbook({
      Notes: [
        ["Truck", "Driver", "Load"],
        ["one", "", 400],
      ],
      Yard: HIVES,
    });
    const { sheets, yard } = await sheetsOf(workbook);
    expect(yard.place.sheet).toBe("Yard");
    expect(sheets.candidates.map(({ region }) => region.name)).toEqual(["Yard", "Notes"]);
  });

  it("once, where a table or a name covers it", async () => {
    const place = { sheet: "Yard", row: 0, column: 0, rows: 3, columns: 3 };
    const named = (kind: Named["kind"]) => new Map([["Hives", { kind, place }]]);
    for (const [kind, reference] of [
      ["table", "Hives[[#Headers],[#Data]]"],
      ["name", "Hives"],
    ] as const) {
      const { sheets, yard } = await sheetsOf(new MemoryWorkbook({ Yard: HIVES }, named(kind)));
      expect(sheets.candidates).toHaveLength(1);
      expect(yardReference(yard, "Yard")).toBe(reference);
    }
  });

  it("whatever names lie over parts of it", async () => {
    const over = (name: string, row: number, column: number, rows: number, columns: number) =>
      new Map([
        [name, { kind: "name" as const, place: { sheet: "Yard", row, column, rows, columns } }],
      ]);
    const titled = [["Spring count", "", ""], ...HIVES];
    for (const [cells, names] of [
      [HIVES, over("Counts", 1, 1, 2, 1)],
      [titled, over("All", 0, 0, 4, 3)],
      [titled, over("Under", 2, 0, 2, 3)],
      // In words of its owner's own.
      [
        [
          ["Nr", "Top", "Low"],
          ["A1", 7, 4],
          ["A2", 6, 3],
        ],
        over("Counts", 1, 1, 2, 2),
      ],
    ] as const) {
      const { sheets, yard } = await sheetsOf(new MemoryWorkbook({ Yard: cells }, names));
      expect(sheets.candidates.map(({ region }) => region.name)).toEqual(["Yard"]);
      expect(yard.headings).toEqual(cells.find((row) => row.length === 3 && row[1] !== ""));
    }
  });

  it.each([
    // As long as what its formula refers to: the row of totals is none of the table's data.
    ["table", true, 3],
    ["table", false, 4],
    ["name", false, 4],
  ] as const)("under a %s, with a row of totals of Excel's own: %s", async (kind, totals, rows) => {
    const place = { sheet: "Yard", row: 0, column: 0, rows: 4, columns: 3 };
    const names = new Map([["Hives", { kind, place, ...(totals && { totals }) }]]);
    const workbook = new MemoryWorkbook({ Yard: [...HIVES, ["Total", 13.5, 7]] }, names);
    expect((await sheetsOf(workbook)).yard.place.rows).toBe(rows);
  });
});

it("counts its hives, and neither sums nor blank rows", async () => {
  const yard = await yardOf([...HIVES, ["", "", ""], ["A3", 5, 2], ["Total", 18.5, 9]]);
  expect(yard.place.rows).toBe(6);
  expect(hivesIn(yard)).toBe(3);
  expect(
    hivesIn(
      await yardOf([
        ["Nr", "Top", "Low"],
        ["A1", 7, 4],
        ["A2", 6, 3],
      ]),
    ),
  ).toBe(2);
});

it("finds no yard sheet in a workbook of terms", async () => {
  const workbook = new MemoryWorkbook({
    Terms: [
      ["Term", "Cherry"],
      ["brood", 1],
    ],
  });
  expect((await sheetsOf(workbook)).yard).toBeNull();
});

it.each(["name", "table"] as const)("finds the contracts of a %s once", async (kind) => {
  const { sheets } = await sheetsOf(workbookOf(undefined, kind));
  expect(sheets.terms.map((t) => [t.region.kind, ...t.contracts])).toEqual([
    [kind, "Cherry", "Pear"],
  ]);
});
