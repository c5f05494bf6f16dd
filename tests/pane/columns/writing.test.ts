import { describe, expect, it } from "vitest";
import { matchHeadings } from "../../../src/core/headings.js";
import { choicesOf, contractOfChoice } from "../../../src/pane/columns/contracts.js";
import {
  differingRows,
  insidePlace,
  insideSteps,
  MOST_ROWS,
  obstacleTo,
  rowColumns,
  rowResults,
} from "../../../src/pane/columns/row-formulas.js";
import {
  besideOf,
  inTheWay,
  spillArguments,
  spillFormula,
  spillResult,
  spillSteps,
} from "../../../src/pane/columns/spill.js";
import type { Entry } from "../../../src/pane/port.js";
import { MemoryWorkbook } from "../memory.js";
import { DEMO, sheetsOf, workbookOf } from "./sheets.js";

async function asked(workbook: MemoryWorkbook, name: string | null = "Cherry") {
  const { sheets, yard } = await sheetsOf(workbook);
  const choice = choicesOf(sheets.terms, name === null).find((c) => c.name === name)!;
  return { sheets, yard, choice, contract: contractOfChoice(choice) };
}

describe("the formula beside a sheet", () => {
  const COLUMNS = ["frames", "grade"];
  const formulaOf = async (
    workbook: MemoryWorkbook,
    name: string | null = "Cherry",
    on?: string,
  ) => {
    const { yard, choice } = await asked(workbook, name);
    return spillFormula(spillArguments(yard, choice, COLUMNS, on ?? yard.place.sheet));
  };

  it("names Terms as a name", async () => {
    const written = '=COMB.YARD_COLUMNS(A1:K61,Terms,"Cherry","frames,grade")';
    expect(await formulaOf(workbookOf())).toBe(written);
  });

  it("names Terms as a whole table", async () => {
    const written = '=COMB.YARD_COLUMNS(A1:K61,Terms[#All],"Cherry","frames,grade")';
    expect(await formulaOf(workbookOf(DEMO, "table"))).toBe(written);
  });

  it("takes the cells of a sheet of terms that has no name", async () => {
    const workbook = workbookOf();
    workbook.names.clear();
    const written = '=COMB.YARD_COLUMNS(A1:K61,Terms!$A$1:$D$33,"Cherry","frames,grade")';
    expect(await formulaOf(workbook)).toBe(written);
  });

  it("leaves the terms out for a published standard", async () => {
    const written = '=COMB.YARD_COLUMNS(A1:K61,,"Penn State","frames,grade")';
    expect(await formulaOf(workbookOf(), "Penn State")).toBe(written);
  });

  it("leaves the contract out where the sheet has a column for it", async () => {
    const rows = [
      ["Hive", "Bees", "Contract"],
      ["A1", 8, "Pear"],
    ];
    const written = '=COMB.YARD_COLUMNS(A1:C2,Terms,,"frames,grade")';
    expect(await formulaOf(workbookOf(rows), null)).toBe(written);
  });

  it("names the yard's sheet from another", async () => {
    const workbook = new MemoryWorkbook({
      "My yard": [
        ["Hive", "Bees"],
        ["A1", 8],
      ],
    });
    const written = `=COMB.YARD_COLUMNS('My yard'!$A$1:$B$2,,"Penn State","frames,grade")`;
    expect(await formulaOf(workbook, "Penn State", "Lots")).toBe(written);
  });

  it("gives what the demo's contracts say, reading a date back", async () => {
    const { yard, choice } = await asked(workbookOf());
    const result = spillResult(spillArguments(yard, choice, ["frames", "grade", "note"], "Yard"));
    // Worked by hand from the sheet: 4 and 5-6 make 9.5, 4 combs half covered 2 full frames.
    expect(result[1]).toEqual([9.5, "Standard", ""]);
    expect(result[34]).toEqual([
      10.5,
      "Prime",
      expect.stringMatching(/8 Jul 2026: read back as 7-8/),
    ]);
  });
});

describe("cells that are to be written", () => {
  it("are free beside a sheet, with one empty column between", async () => {
    const workbook = workbookOf();
    const { yard, sheets } = await asked(workbook);
    const place = { ...besideOf(yard), rows: 61, columns: 2 };
    expect(place).toEqual({ sheet: "Yard", row: 0, column: 12, rows: 61, columns: 2 });
    const [block] = await workbook.read([place]);
    expect(inTheWay(block!, yard, sheets.regions)).toBeNull();
  });

  it.each([
    [(w: MemoryWorkbook) => w.type("Yard", 40, 13, "mine"), "filled", "N41", "mine"],
    [(w: MemoryWorkbook) => w.type("Yard", 40, 13, 0), "filled", "N41", "0"],
    [
      (w: MemoryWorkbook) =>
        w.names.set("Feed", {
          kind: "table",
          place: { sheet: "Yard", row: 60, column: 13, rows: 3, columns: 1 },
        }),
      "table",
      "N61:N63",
      "Feed",
    ],
  ] as const)("are not where something stands in them (%#)", async (put, kind, address, holds) => {
    const workbook = workbookOf();
    put(workbook);
    const { yard, sheets } = await asked(workbook);
    const [block] = await workbook.read([{ ...besideOf(yard), rows: 61, columns: 2 }]);
    expect(inTheWay(block!, yard, sheets.regions)).toEqual({ kind, address, holds });
  });

  it("are made General, written, and taken back exactly", async () => {
    const workbook = workbookOf();
    workbook.type("Yard", 3, 12, "", "yyyy-mm-dd");
    workbook.type("Yard", 0, 12, "", "@");
    const before = workbook.snapshot();
    const { yard } = await asked(workbook);
    const place = { ...besideOf(yard), rows: 61, columns: 2 };
    const [block] = await workbook.read([place]);
    const undo = await workbook.write(spillSteps(block!, "=1+1"));
    const [after] = await workbook.read([place]);
    expect(after!.entries.flat().filter((entry) => entry !== "")).toEqual(["=1+1"]);
    expect(new Set(after!.formats.flat())).toEqual(new Set(["General"]));
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });
});

describe("one formula a row", () => {
  const ALL = ["frames", "frames low", "frames high", "bees", "brood full", "brood combs"];
  const GRADES = ["grade", "short", "short brood", "next grade"];

  it("is the function of that row under the contract", async () => {
    const { yard, choice, contract } = await asked(workbookOf());
    const columns = rowColumns(yard, choice, contract);
    const [block] = await workbookOf().read([insidePlace(yard, 2)]);
    const [step] = insideSteps(
      yard,
      block!,
      ["frames", "grade"].map((n) => columns.get(n)!),
    );
    const rows = step!.kind === "put" ? step!.put : [];
    expect(rows[0]).toEqual(["Strength: frames of bees (deep)", "Grade"]);
    expect(rows[1]).toEqual([
      "=COMB.FRAMES_OF_BEES($E2:$F2,,,,,,,$D2)",
      '=COMB.GRADE($E2:$F2,Terms,"Cherry",$G2,$H2,$I2,$J2,,$D2)',
    ]);
    expect(rows).toHaveLength(61);
  });

  it.each(["Cherry", "Pear", "Nova Scotia"])(
    "gives what the whole sheet gives, under %s",
    async (name) => {
      const { yard, choice, contract } = await asked(workbookOf(), name);
      const columns = rowColumns(yard, choice, contract);
      const names = [...ALL, "brood cells", ...GRADES];
      const whole = spillResult(spillArguments(yard, choice, names, "Yard"));
      const differing = differingRows(
        yard,
        names.map((n) => columns.get(n)!),
        whole,
      );
      // The dead-out's brood was left blank, which is none beside the sheet and blank in a row;
      // "8+" has no upper end, which is blank beside the sheet and #N/A in a row.
      expect(differing).toEqual([25, 55]);
    },
  );

  it("names the frame that it counts in, and the way that figures are written", async () => {
    const workbook = workbookOf([
      ["Hive", "Bees"],
      ["A1", "7,5"],
      ["A2", 6],
    ]);
    workbook.type("Terms", 5, 1, "medium");
    workbook.type("Terms", 6, 0, "decimal sign");
    workbook.type("Terms", 6, 1, ",");
    const { yard, choice, contract } = await asked(workbook);
    const frames = rowColumns(yard, choice, contract).get("frames")!;
    expect(frames.heading).toBe("Strength: frames of bees (medium)");
    expect(
      frames
        .args(1)
        .map(({ text }) => text)
        .join(","),
    ).toBe('$B2,,,,"medium",,"decimal comma",');
    expect(rowResults(yard, [frames])(1)).toEqual([7.5]);
  });

  it("leaves a row of sums blank, as beside the sheet", async () => {
    const { yard, choice, contract } = await asked(
      workbookOf([
        ["Hive", "Bees"],
        ["A1", 7],
        ["Total", 7],
      ]),
    );
    const columns = [rowColumns(yard, choice, contract).get("frames")!];
    const block = { ...yard, place: insidePlace(yard, 1) };
    const [step] = insideSteps(yard, block, columns);
    expect(step).toMatchObject({ put: [[expect.anything()], [expect.stringMatching("=")], [""]] });
    expect(rowResults(yard, columns)(2)).toEqual([""]);
    const whole = spillResult(spillArguments(yard, choice, ["frames"], "Yard"));
    expect(differingRows(yard, columns, whole)).toEqual([]);
  });

  it("takes the contract from the row where the sheet has a column for it", async () => {
    const rows = [
      ["Hive", "Bees", "Contract"],
      ["A1", 8, "Pear"],
    ];
    const { yard, choice, contract } = await asked(workbookOf(rows), null);
    const columns = rowColumns(yard, choice, contract);
    expect([...columns.keys()]).toEqual(GRADES);
    expect(
      columns
        .get("grade")!
        .args(1)
        .slice(0, 3)
        .map(({ text }) => text),
    ).toEqual(["$B2", "Terms", "$C2"]);
  });

  it("has headings that no function takes for a column of counts", async () => {
    const { yard, choice, contract } = await asked(workbookOf());
    const headings = [...rowColumns(yard, choice, contract).values()].map((c) => c.heading);
    expect(matchHeadings(headings)).toEqual({ roles: headings.map(() => null), doubts: [] });
    const wider = [...yard.headings, ...headings];
    expect(matchHeadings(wider).roles.slice(0, 11)).toEqual(matchHeadings(yard.headings).roles);
  });

  it.each<[string, readonly (readonly Entry[])[]]>([
    [
      "seams",
      [
        ["Hive", "Seams top", "Seams bottom"],
        ["A1", 8, 6],
      ],
    ],
    [
      "apart",
      [
        ["Hive", "Bees top", "Lot", "Bees bottom"],
        ["A1", 8, "x", 6],
      ],
    ],
    [
      "frames",
      [
        ["Hive", "Bees, medium"],
        ["A1", 8],
      ],
    ],
    [
      "headings",
      [
        ["Hive", "Bees", "Queen seen"],
        ["A1", 8, "y"],
      ],
    ],
    [
      "headings",
      [
        ["Hive", "Bees", "Brood combs"],
        ["A1", 8, 3],
      ],
    ],
    ["rows", [["Hive", "Bees"], ...Array.from({ length: MOST_ROWS + 1 }, (_, i) => [`A${i}`, 8])]],
  ])("is not offered where the sheet is not made for it: %s", async (obstacle, rows) => {
    const { yard, contract } = await asked(workbookOf(rows));
    expect(obstacleTo(yard, contract)).toBe(obstacle);
  });

  it("makes a table wider, and gives it back as it was", async () => {
    const workbook = workbookOf();
    const place = { sheet: "Yard", row: 0, column: 0, rows: 61, columns: 11 };
    workbook.names.set("Hives", { kind: "table", place });
    const before = workbook.snapshot();
    const { yard, choice, contract } = await asked(workbook);
    const [block] = await workbook.read([insidePlace(yard, 1)]);
    const grade = rowColumns(yard, choice, contract).get("grade")!;
    const undo = await workbook.write(insideSteps(yard, block!, [grade]));
    expect(workbook.names.get("Hives")!.place.columns).toBe(12);
    expect(workbook.entry("Yard", 0, 11)).toBe("Grade");
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });
});
