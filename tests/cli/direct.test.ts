import type { Workbook } from "@cj-tech-master/excelts";
import { expect, it, vi } from "vitest";
import { CellError } from "../../src/functions/cells.js";
import type { SheetFunction } from "../../src/functions/declare.js";
import { calculate } from "../../src/workbook/calculate.js";
import { settle } from "../../src/workbook/outcome.js";
import { openWorkbook } from "../../src/workbook/workbook.js";
import { excelFile, formula, sheetData, spill, table, type FileParts } from "./excel-file.js";

const engine = vi.hoisted(() => ({ runs: 0 }));
vi.mock("@cj-tech-master/excelts/formula", async (original) => {
  const real = await original<typeof import("@cj-tech-master/excelts/formula")>();
  return {
    ...real,
    calculateFormulas: (...args: Parameters<typeof real.calculateFormulas>) => {
      engine.runs++;
      return real.calculateFormulas(...args);
    },
  };
});

const shown = (_: string, value: unknown): unknown =>
  value instanceof CellError ? value.code : value;
const seen: SheetFunction = {
  id: "SEEN",
  parameters: [
    { name: "needed", optional: false, matrix: true },
    { name: "one", optional: true, matrix: false },
    { name: "block", optional: true, matrix: true },
  ],
  evaluate: (...values: unknown[]) => [[JSON.stringify(values, shown)]],
};
const same: SheetFunction = {
  id: "SAME",
  parameters: [{ name: "block", optional: false, matrix: true }],
  evaluate: (block: unknown[][]) => block.map((row) => row.map((cell) => cell ?? "")),
};

async function calculated(
  file: FileParts,
): Promise<{ value: (at: string) => unknown; told: string[]; workbook: Workbook }> {
  const { workbook } = await openWorkbook(excelFile(file), "test.xlsx");
  engine.runs = 0;
  const { notCalculated } = settle(calculate(workbook, [seen, same], () => {}));
  const value = (at: string): unknown => {
    const cell = workbook.worksheets[0]!.getCell(at);
    return cell.formula ? cell.result : cell.value;
  };
  return { value, told: notCalculated.map(({ address, text }) => `${address} ${text}`), workbook };
}

const CELLS = {
  A1: "Hive",
  B1: "Bees",
  A2: 'S"1',
  B2: 7.5,
  A3: " 1,2 ",
  B4: ' t="b"><v>1</v>',
  A5: ' t="e"><v>#N/A</v>',
};
const FILE: FileParts = {
  sheets: { Yard: sheetData(CELLS), "Next, one": sheetData({ A1: 1, B2: "x" }) },
  names:
    '<definedName name="Terms">\'Next, one\'!$A$1:$B$2</definedName><definedName name="One">Yard!$B$2</definedName>',
  tables: [table("Hives", "A1:B5", ["Hive", "Bees"])],
};

// What the engine makes of the same arguments is the oracle: joined to a text, a call needs it.
it.each([
  "B2,B2,A1:B3",
  "A1,,",
  "A1",
  "",
  "A9,A9,A9",
  "A9:B9,A9:B9,A9:B9",
  '"a ""b"", c)",,"x"',
  "12,3.5,0",
  "A5,A4:B5,A5",
  "$B$2,$A$1:$B$5,B$2",
  "Yard!B2,'Next, one'!A1:B2,'Next, one'!$A$1:$B$2",
  "1,Terms,Terms",
  "1,Hives[#All],Hives[Bees]",
  "1,One,One",
  "-1,{1,2},(A1)",
  "A1&B1,A1:B1,A1",
])("a call with the arguments %s is given what the engine gives it", async (args) => {
  const alone = await calculated({
    ...FILE,
    sheets: { ...FILE.sheets, Yard: sheetData({ ...CELLS, D1: formula(`COMB.SEEN(${args})`) }) },
  });
  const joined = await calculated({
    ...FILE,
    sheets: { ...FILE.sheets, Yard: sheetData({ ...CELLS, D1: formula(`COMB.SEEN(${args})&""`) }) },
  });
  expect(alone.value("D1")).toBeDefined();
  expect(alone.value("D1")).toEqual(joined.value("D1"));
});

it("the engine is left out where every formula is such a call, and asked where one is not", async () => {
  const calls = { D1: formula("COMB.SEEN(B2,A1:B3,B2)"), F1: spill("COMB.SAME(A1:B3)", "F1:G3") };
  await calculated({ sheets: { Yard: sheetData({ ...CELLS, ...calls }) } });
  // One run asks which functions are known.
  expect(engine.runs).toBe(1);
  const mixed = await calculated({
    sheets: { Yard: sheetData({ ...CELLS, ...calls, D2: formula("SUM(F1:G3)") }) },
  });
  expect(engine.runs).toBeGreaterThan(1);
  expect(mixed.value("D2")).toBe(7.5);
});

it("a call that reads what is calculated has it as it is now", async () => {
  const { value } = await calculated({
    sheets: {
      Yard: sheetData({
        A1: 2,
        B1: formula("A1*2", 99),
        C1: formula("COMB.SEEN(1,B1)"),
        D1: spill("COMB.SAME(B1:B1)", "D1", 99),
        E1: formula("COMB.SEEN(1,D1)"),
      }),
    },
  });
  expect([value("C1"), value("D1"), value("E1")]).toEqual(["[[[1]],4,null]", 4, "[[[1]],4,null]"]);
});

it("a block that grows into what a call reads is seen by it", async () => {
  const { value } = await calculated({
    sheets: {
      Yard: sheetData({
        A1: 1,
        A2: 2,
        A3: 3,
        D1: spill("COMB.SAME(A1:A3)", "D1"),
        F1: formula("COMB.SEEN(D3:D3)"),
      }),
    },
  });
  expect([value("D3"), value("F1")]).toEqual([3, "[[[3]],null,null]"]);
});

it.each([
  ["a value", { D2: "mine" }, ""],
  ["a merged block", {}, '<mergeCells count="1"><mergeCell ref="D2:E2"/></mergeCells>'],
  ["another formula", { D2: formula("1+1", 2) }, ""],
])("%s in the way of a block stays, and is told", async (_, more, after) => {
  const { value, told } = await calculated({
    sheets: {
      Yard: sheetData({ A1: 1, A2: 2, D1: spill("COMB.SAME(A1:A2)", "D1"), ...more }) + after,
    },
  });
  expect(value("D1")).toEqual({ error: "#SPILL!" });
  expect(told).toEqual(["D1 #SPILL!: the cells it fills must be empty"]);
  if ("D2" in more) expect(value("D2")).not.toBe(2.5);
});

it("a block of more cells than there is room for is refused in a sentence", async () => {
  const { told, value } = await calculated({
    sheets: { Yard: sheetData({ A1: 1, D1: formula("COMB.SEEN($F$1:$XFD$1048576)", "old") }) },
  });
  expect([value("D1"), told]).toEqual([
    "old",
    ['D1 it reads more cells than are calculated here; kept as it was, "old"'],
  ]);
});
