import { describe, expect, it } from "vitest";
import { hivesIn, yardReference } from "../../../src/pane/columns/yard.js";
import { MemoryWorkbook, type Named } from "../memory.js";
import { sheetsOf, workbookOf, yardOf } from "./sheets.js";

const HIVES = [
  ["Hive", "Bees", "Brood"],
  ["A1", "7-8", 4],
  ["A2", 6, 3],
] as const;

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

  it("without the columns that a formula gives beside it, though they hold hives too", async () => {
    const yard = await yardOf([
      [...HIVES[0], "", "=COMB.YARD_COLUMNS(A1:C3,Terms)"],
      [...HIVES[1], "", ""],
      [...HIVES[2], "", ""],
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
