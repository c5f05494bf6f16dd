import { describe, expect, it } from "vitest";
import { calculate } from "../../src/workbook/calculate.js";
import { settle, type Outcome } from "../../src/workbook/outcome.js";
import { saveWorkbook } from "../../src/workbook/save.js";
import { openWorkbook, textOf } from "../../src/workbook/workbook.js";
import { partsOf } from "./parts.js";
import { CellError } from "../../src/functions/cells.js";
import type { SheetFunction } from "../../src/functions/declare.js";
import { excelFile, formula, sheetData, spill, table, type FileParts } from "./excel-file.js";

/** Tells what it was given, so that a test sees how cells reach a function. */
const seen: SheetFunction = {
  id: "SEEN",
  parameters: [
    { name: "one", optional: true, matrix: false },
    { name: "block", optional: true, matrix: true },
  ],
  evaluate: (one: unknown, block: unknown) => [[JSON.stringify([one, block], showError)]],
};

const twice: SheetFunction = {
  id: "TWICE",
  parameters: [{ name: "block", optional: false, matrix: true }],
  evaluate: (block: unknown[][]) =>
    block.map((row) =>
      row.map((cell) =>
        typeof cell === "number"
          ? cell * 2
          : new CellError("#VALUE!", `${String(cell)} is no number`),
      ),
    ),
};

function showError(_: string, value: unknown): unknown {
  return value instanceof CellError ? value.code : value;
}

async function calculated(
  file: FileParts,
): Promise<{ outcome: Outcome; value: (at: string) => unknown; xml: string }> {
  const { workbook, restore } = await openWorkbook(excelFile(file), "test.xlsx");
  const outcome = settle(calculate(workbook, [seen, twice], () => {}));
  const sheet = workbook.worksheets[0]!;
  const value = (at: string): unknown => {
    const cell = sheet.getCell(at);
    return cell.formula ? cell.result : cell.value;
  };
  restore();
  const parts = await partsOf(await saveWorkbook(workbook));
  return { outcome, value, xml: textOf(parts, "xl/worksheets/sheet1.xml") ?? "" };
}

const one = (cells: Record<string, number | string>): FileParts => ({
  sheets: { Yard: sheetData(cells) },
});

describe("our functions", () => {
  it("get blanks, texts, errors, one cell and a block as they are", async () => {
    const { value } = await calculated(
      one({
        A1: 1,
        A2: "7-8",
        B2: formula("1/0", 0),
        C1: formula("_xldudf_COMB_SEEN(A1,A1:B3)"),
        C2: formula("COMB.SEEN(A9,A1)"),
        C3: formula("COMB.SEEN(,A1:A1)"),
        C4: formula("COMB.SEEN()"),
      }),
    );
    expect(value("C1")).toBe('[1,[[1,null],["7-8","#DIV/0!"],[null,null]]]');
    expect(value("C2")).toBe("[null,[[1]]]");
    expect(value("C3")).toBe("[null,[[1]]]");
    expect(value("C4")).toBe("[null,null]");
  });

  it("are saved as Excel saves them", async () => {
    const { xml } = await calculated(one({ A1: 4, B1: formula('COMB.TWICE(A1)&"COMB.TWICE("') }));
    expect(xml).toContain(
      "<f>_xldudf_COMB_TWICE(A1)&amp;&quot;COMB.TWICE(&quot;</f><v>8COMB.TWICE(</v>",
    );
  });

  it("give their sentence with the cell, and nothing for what is not judged yet", async () => {
    const { outcome } = await calculated(
      one({
        A1: 1,
        A2: "x",
        B1: spill("_xldudf_COMB_TWICE(A1:A2)", "B1:B2"),
        C1: formula("IFERROR(COMB.TWICE(A2),0)"),
      }),
    );
    expect(outcome.notCalculated).toEqual([
      { sheet: "Yard", address: "B2", text: "#VALUE! x is no number" },
    ]);
    expect(outcome.ours).toBe(2);
  });
});

describe("spills", () => {
  it("take the place of the values that the file holds of them", async () => {
    const { value, xml } = await calculated(
      one({
        A1: 1,
        B1: spill("_xldudf_COMB_TWICE(A1:A3)", "B1:B4", 7),
        A2: 2,
        B2: 7,
        A3: 3,
        B3: 7,
        B4: 7,
      }),
    );
    expect([value("B1"), value("B2"), value("B3"), value("B4")]).toEqual([2, 4, 6, null]);
    expect(xml).toContain(
      '<c r="B1" cm="1"><f t="array" ref="B1:B3">_xldudf_COMB_TWICE(A1:A3)</f><v>2</v></c>',
    );
  });

  it("are read by other formulas, by their cells and with #", async () => {
    const { value } = await calculated(
      one({
        A1: 1,
        B1: spill("_xldudf_COMB_TWICE(A1:A3)", "B1:B3"),
        C1: formula("SUM(_xlfn.ANCHORARRAY(B1))"),
        D1: formula("B3+1"),
        E1: formula("ROWS(_xlfn.ANCHORARRAY('Yard'!$B$1))"),
        F1: spill("_xlfn.ANCHORARRAY(B1)*10", "F1:F3"),
        G1: formula("SUM(_xlfn.ANCHORARRAY(F1))"),
        A2: 2,
        A3: 3,
      }),
    );
    expect(["C1", "D1", "E1", "G1"].map(value)).toEqual([12, 7, 3, 120]);
  });

  it("that find their cells filled say so", async () => {
    const { value, outcome } = await calculated(
      one({ A1: 1, B1: spill("_xldudf_COMB_TWICE(A1:A2)", "B1", 2), A2: 2, B2: "mine" }),
    );
    expect(value("B1")).toEqual({ error: "#SPILL!" });
    expect(value("B2")).toBe("mine");
    expect(outcome.notCalculated.map((r) => r.text)).toEqual([
      "#SPILL!: the cells it fills must be empty",
    ]);
  });

  it("stay in one cell where the file says so", async () => {
    const { value } = await calculated(
      one({ A1: 1, B1: formula("_xlfn._xlws.SORT(A1:A2)"), A2: 2 }),
    );
    expect([value("B1"), value("B2")]).toEqual([1, null]);
  });
});

describe("formulas of Excel", () => {
  it("that fill a fixed block are calculated in all its cells", async () => {
    const { value } = await calculated(
      one({
        A1: 1,
        B1: ` ><f t="array" ref="B1:B4">A1:A3*10</f><v>1</v>`.trim(),
        A2: 2,
        B2: 1,
        A3: 3,
        B3: 1,
        B4: 1,
        C1: formula("SUM(B1:B3)"),
      }),
    );
    expect([value("B1"), value("B2"), value("B3"), value("B4"), value("C1")]).toEqual([
      10,
      20,
      30,
      { error: "#N/A" },
      60,
    ]);
  });

  it("that are stored once for a column keep the texts and names in them", async () => {
    const { value } = await calculated({
      sheets: {
        Yard: sheetData({
          A1: 1,
          B1: `><f t="shared" ref="B1:B2" si="0">A1&amp;"A1"&amp;'Lot A1'!A1&amp;SUM($A$1:A1)</f><v>0</v>`,
          A2: 2,
          B2: `><f t="shared" si="0"/><v>0</v>`,
        }),
        "Lot A1": sheetData({ A1: "x", A2: "y" }),
      },
    });
    expect([value("B1"), value("B2")]).toEqual(["1A1x1", "2A1y3"]);
  });

  it("refer to tables, with signs in headings, this row and totals", async () => {
    const headings = ["Hive #", "Bees_x000a_top box", "Sum"];
    const { value } = await calculated({
      sheets: {
        Yard: sheetData({
          A1: "Hive #",
          B1: "Bees\ntop box",
          C1: "Sum",
          A2: 1,
          B2: 5,
          C2: formula("SUM(Yard[[#This Row],[Hive '#]:[Bees\ntop box]])"),
          A3: 2,
          B3: 6,
          C3: formula("Yard[[#This Row],[Bees\ntop box]]+1"),
          A4: formula("SUBTOTAL(109,Yard[Hive '#])"),
          B4: "",
          C4: formula("SUM(Yard[[#All],[Bees\ntop box]])"),
          E1: formula("COUNTA(Yard[[#Headers],[#Data]])"),
          E2: formula("SUM(Yard[])"),
          E3: formula("COMB.SEEN(Yard[@[Hive '#]])"),
        }),
      },
      tables: [table("Yard", "A1:C4", headings, 'totalsRowCount="1"')],
    });
    expect(["C2", "C3", "A4", "C4", "E1", "E2", "E3"].map(value)).toEqual([
      6,
      7,
      3,
      11,
      9,
      27,
      "[2,null]",
    ]);
  });

  it("may read their own row of a table of ten thousand", async () => {
    const cells: Record<string, number | string> = { A1: "Bees", B1: "Twice" };
    for (let r = 2; r <= 10001; r++) {
      cells[`A${r}`] = r;
      cells[`B${r}`] = formula("_xldudf_COMB_TWICE(Yard[[#This Row],[Bees]])");
    }
    const { value, outcome } = await calculated({
      ...one(cells),
      tables: [table("Yard", "A1:B10001", ["Bees", "Twice"])],
    });
    expect([value("B2"), value("B10001"), outcome.ours]).toEqual([4, 20002, 10000]);
  }, 30_000);

  it("take the cell of their own row from a column marked @", async () => {
    const { value } = await calculated(
      one({
        A1: 4,
        A2: 5,
        B2: formula("_xlfn.SINGLE(A1:A2)*2"),
        B3: formula("_xlfn.SINGLE(A1:A2)"),
        C2: formula("_xlfn.SINGLE(COMB.TWICE(A1:A2))"),
      }),
    );
    expect(["B2", "B3", "C2"].map(value)).toEqual([10, { error: "#VALUE!" }, 8]);
  });

  it("that cannot be calculated keep what the file held, for others to go on from", async () => {
    const { value, outcome } = await calculated(
      one({
        A1: formula("STOCKPRICE(1)", 42),
        B1: formula("A1+1", 43),
        A2: formula("_xlfn.LAMBDA(_xlpm.x,_xlpm.x+1)(3)", 4),
        A3: ` cm="1"><f t="array" ref="A3:A4">MYARRAY()</f><v>5</v>`,
        B3: formula("SUM(A3:A4)", 11),
        A4: 6,
        A5: formula("'[1]Old yard'!B2&[1]Yard!B3", "from there"),
        B5: formula("LEN(A5)", 10),
        A6: formula("Unheard+1", 7),
        A7: formula("_xldudf_COMB_FUTURE(1)", 8),
        A8: formula("_xlfn._xlws.PIVOTBY(A1)", 9),
      }),
    );
    expect(["A1", "B1", "A2", "A3", "A4", "B3", "A5", "B5", "A6", "A7"].map(value)).toEqual([
      42,
      43,
      4,
      5,
      6,
      11,
      "from there",
      10,
      7,
      8,
    ]);
    expect(outcome.notCalculated.map((r) => `${r.address}: ${r.text}`)).toEqual([
      "A1: STOCKPRICE is not known here; kept as it was, 42",
      "A2: it writes a function and calls it in one; kept as it was, 4",
      "A3: MYARRAY is not known here; kept as it was, 5",
      'A5: it reads another workbook; kept as it was, "from there"',
      "A6: a name in it is not known here; kept as it was, 7",
      "A7: COMB.FUTURE is not known here; kept as it was, 8",
      "A8: PIVOTBY is not known here; kept as it was, 9",
    ]);
    expect(outcome.changed).toEqual([]);
  });

  it("of which the file holds no result show that they are not known", async () => {
    const { value } = await calculated(one({ A1: "><f>STOCKPRICE(1)</f>", A2: "><f>A1+1</f>" }));
    expect([value("A1"), value("A2")]).toEqual([{ error: "#NAME?" }, { error: "#NAME?" }]);
  });

  it("under a link are calculated, and keep the link", async () => {
    const sheet = sheetData({ A1: 3, B1: formula("A1*2", 5), C1: formula("COMB.TWICE(B1)") });
    const links = '<hyperlinks><hyperlink ref="B1" location="Yard!A1"/></hyperlinks>';
    const { value, xml } = await calculated({ sheets: { Yard: sheet + links } });
    expect(value("C1")).toBe(12);
    expect(xml).toContain("<f>A1*2</f><v>6</v>");
    expect(xml).toContain('<hyperlink ref="B1" location="Yard!A1"/>');
  });

  it("that come out otherwise than in the file are told of", async () => {
    const { outcome } = await calculated(
      one({
        A1: 2,
        B1: formula("A1*2", 5),
        B2: formula("A1/3", 0.6666666666666666),
        B3: formula("A9", 0),
      }),
    );
    expect(outcome.changed).toEqual([{ sheet: "Yard", address: "B1", text: "5 → 4" }]);
    expect(outcome.native).toBe(3);
  });
});
