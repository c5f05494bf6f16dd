import { read, utils, type CellObject } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { Refusal } from "../../../src/core/refusal.js";
import { layoutOf } from "../../../src/functions/statement-layout.js";
import { excelWorkbook } from "../../../src/pane/excel.js";
import type { Handed } from "../../../src/pane/port.js";
import { gridOf } from "../../../src/pane/statement/grid.js";
import { saveWorkbook } from "../../../src/workbook/save.js";
import { statementFile } from "../../../src/workbook/statement-file.js";
import { FakeExcel } from "../fake-excel.js";
import { SHEETS } from "../port-contract.js";
import { statementOf } from "./sample.js";

const STATEMENT = statementOf();
const LAYOUT = layoutOf(STATEMENT);
/** The row of a text in the first column, counted from 1 as Excel does. */
const rowOf = (text: string) =>
  LAYOUT.rows.findIndex(({ cells }) => {
    const cell = cells[0]?.cell;
    return cell?.kind === "text" && cell.value === text;
  }) + 1;

const open = () => {
  const excel = new FakeExcel(SHEETS);
  excel.install();
  return { excel, workbook: excelWorkbook() };
};
const made = async () => {
  const opened = open();
  const handed = await opened.workbook.statement("Statement Shed", STATEMENT);
  return { ...opened, handed, sheet: opened.excel.sheets.get("Statement Shed")! };
};
const refusal = async (promise: Promise<unknown>): Promise<string> => {
  const error: unknown = await promise.catch((e: unknown) => e);
  expect(error).toBeInstanceOf(Refusal);
  return (error as Refusal).message;
};

describe("a statement as a sheet of Excel", () => {
  it("takes two syncs, and says where it is", async () => {
    const { excel, handed } = await made();
    expect(excel.office.syncs).toHaveLength(2);
    expect(handed.sentence).toBe("The statement is on a new sheet, Statement Shed.");
    expect([...excel.sheets.keys()]).toEqual([...Object.keys(SHEETS), "Statement Shed"]);
  });

  it("holds values in formats of their own, texts that look like formulas among them", async () => {
    const { excel, sheet } = await made();
    const cell = (text: string, column: number) => sheet.get(rowOf(text) - 1, column);
    // (9 + 8.5) / 2, worked by hand.
    expect(cell("Average frames", 4)).toMatchObject({ value: 8.75, format: "0.0##" });
    expect(cell("Hives opened on", 3)).toMatchObject({ value: 46108, format: "d mmm yyyy" });
    expect(cell("Grower", 3)).toMatchObject({ value: "=1+1", format: "@" });
    // Two of three opened are paid, so 4 of 6 hives at 50.
    expect(cell("total", 6)).toMatchObject({ value: 200, format: "#,##0.00" });
    const long = [...sheet.cells.values()].filter(({ value }) => String(value).length > 255);
    expect(long.map(({ format }) => format)).toEqual(["General"]);
    expect(excel.sheets.get("Terms")!.looks.size).toBe(0);
  });

  it("looks like the file that the command line writes: bold, lines, merged texts, widths", async () => {
    const { sheet } = await made();
    const { looks, merged } = sheet;
    const heading = rowOf("Pay");
    expect(looks.get(`A${heading}:H${heading} format/font/bold`)).toBe(true);
    expect(looks.get(`A${heading}:H${heading} format/font/size`)).toBe(10.5);
    expect(looks.get(`A${heading}:H${heading} format/borders/EdgeBottom/weight`)).toBe("Thin");
    // Eight columns of 9 to 23 characters of 5.25 points.
    expect(looks.get("H1 format/columnWidth")).toBe(23 * 5.25);
    const facts = rowOf("Lot");
    expect(merged).toContainEqual(
      expect.objectContaining({ row: facts - 1, column: 3, columns: 5, rows: 1 }),
    );
    // A line of 12 points and 1.5 about it.
    expect([...looks].filter(([path]) => path.endsWith("rowHeight")).map(([, h]) => h)).toContain(
      13.5,
    );
    expect(looks.get("showGridlines")).toBe(false);
  });

  it("holds what that file holds, cell by cell, merged where it is merged", async () => {
    const { sheet } = await made();
    const file = read(await saveWorkbook(statementFile(STATEMENT)), { cellNF: true });
    const other = file.Sheets["Statement"]!;
    const seen = Object.entries(other).filter(([at]) => /^[A-Z]+\d+$/.test(at));
    const filled = seen.filter(([, cell]) => (cell as CellObject).v !== undefined);
    expect(filled.length).toBeGreaterThan(150);
    for (const [at, cell] of filled) {
      const { r, c } = utils.decode_cell(at);
      const { v, z } = cell as CellObject;
      // Excel keeps 15 digits of a number, where a file holds all of them.
      const value = typeof v === "number" ? Number(v.toPrecision(15)) : v;
      expect(sheet.get(r, c), at).toMatchObject({ value, format: z });
    }
    const ours = [...sheet.cells.values()].filter(({ value }) => value !== "");
    expect(ours).toHaveLength(filled.length);
    const merged = other["!merges"]!.map(({ s, e }) => [s.r, s.c, e.c]);
    const places = sheet.merged.map(({ row, column, columns }) => [
      ...[row, column, column + columns - 1],
    ]);
    expect(places.map(String).sort()).toEqual(merged.map(String).sort());
  });

  it("has its page set, the hives' headings on each further page", async () => {
    const { looks } = (await made()).sheet;
    const hives = rowOf("Hive");
    expect(looks.get("page paperSize")).toBe("Letter");
    expect(looks.get("page zoom")).toEqual({ horizontalFitToPages: 1 });
    expect(looks.get("page setPrintTitleRows")).toBe(`$${hives}:$${hives}`);
    expect(looks.get("page setPrintArea")).toMatch(/!A1:H\d+$/);
    // 0.55 in of 72 points.
    expect(looks.get("page leftMargin")).toBeCloseTo(39.6, 10);
    // The terms begin the second page, under an empty row.
    expect(looks.get("page break")).toBe(`A${rowOf("Terms of contract Cherry") - 1}`);
    const { excel, workbook } = open();
    await workbook.statement("S", statementOf({ paper: "a4" }));
    expect(excel.sheets.get("S")!.looks.get("page paperSize")).toBe("A4");
  });

  it("has a chart of the hives, strongest first, with a line for each threshold", async () => {
    const { sheet } = await made();
    const looks = [...sheet.looks].filter(([path]) => path.startsWith("chart"));
    const said = Object.fromEntries(looks);
    const figures = Object.fromEntries(
      ["chart 0 series 0 setXAxisValues", "chart 0 series 1 setValues"].map((path) => [
        path,
        /!([A-Z]+)(\d+):[A-Z]+(\d+)$/.exec(String(said[path])),
      ]),
    );
    const [, , first, last] = figures["chart 0 series 0 setXAxisValues"]!;
    expect(Number(last) - Number(first) + 1).toBe(3);
    expect(sheet.get(Number(first) - 1, 9).value).toBe("H01");
    expect(sheet.get(Number(first) - 1, 10).value).toBe(9);
    expect(said["chart 0 series 1 name"]).toBe("8: average asked");
    expect(said["chart 0 series 2 name"]).toBe("6: least a hive");
    expect(said["chart 0 series 2 chartType"]).toBe("Line");
    expect(said["chart 0 axes/valueAxis/minimum"]).toBe(0);
  });

  it("gives another name where a sheet has it, even one that is hidden or empty", async () => {
    const { excel, workbook } = open();
    const names = ["A/B's lot", "A/B's lot", "'", "x".repeat(40)];
    for (const name of names) await workbook.statement(name, STATEMENT);
    excel.sheets.get("A B's lot")!.visibility = "Hidden";
    await workbook.statement("a b's LOT", STATEMENT);
    expect([...excel.sheets.keys()].slice(2)).toEqual([
      "A B's lot",
      "A B's lot 2",
      "Statement",
      "x".repeat(27),
      "a b's LOT 3",
    ]);
  });

  it("is taken back whole, unless somebody has changed it since", async () => {
    const { excel, workbook, handed } = await made();
    const sheet = excel.sheets.get("Statement Shed")!;
    const before = new FakeExcel(SHEETS).snapshot();
    excel.type("Statement Shed", 0, 0, "mine");
    expect(await refusal(workbook.write(handed.undo))).toMatch(
      /^'Statement Shed'!A1 holds "mine" where "Statement for lot Shed" stood when it was read: nothing was written$/,
    );
    excel.type("Statement Shed", 0, 0, "Statement for lot Shed");
    excel.type("Statement Shed", 2, 30, "signed");
    expect(await refusal(workbook.write(handed.undo))).toMatch(/AE3 holds "signed" and must be b/);
    sheet.cells.delete("2,30");
    sheet.comments.items.push({ id: "1" });
    expect(await refusal(workbook.write(handed.undo))).toMatch(/^there is a comment on the sheet/);
    sheet.comments.items.pop();
    await workbook.write(handed.undo);
    expect(excel.snapshot()).toEqual(before);
  });

  it("is made without its chart or its page where Excel cannot, and says so", async () => {
    for (const [hasNo, said] of [
      ["charts", /could not draw its chart/],
      ["printer", /could not set up its page/],
    ] as const) {
      const { excel, workbook } = open();
      excel.hasNo = hasNo;
      const { sentence, undo } = await workbook.statement("S", STATEMENT);
      expect(sentence).toMatch(said);
      expect([...excel.sheets.keys()].slice(2)).toEqual(["S"]);
      const paths = [...excel.sheets.get("S")!.looks.keys()];
      expect(paths.some((path) => path.startsWith("chart"))).toBe(hasNo !== "charts");
      expect(paths.some((path) => path.startsWith("page "))).toBe(hasNo !== "printer");
      await workbook.write(undo);
      expect(excel.snapshot()).toEqual(open().excel.snapshot());
    }
  });

  it("is refused where the workbook's structure is protected", async () => {
    const { excel, workbook } = open();
    excel.isStructureProtected = true;
    expect(await refusal(workbook.statement("S", STATEMENT))).toBe(
      "the workbook's structure is protected: nothing was written",
    );
  });

  it("leaves a co-author's sheet of the same name alone", async () => {
    const { excel, workbook } = open();
    excel.coAuthor = (sync) => {
      if (sync === 1) excel.workbookAdd("Statement Shed");
    };
    expect(await refusal(workbook.statement("Statement Shed", STATEMENT))).toMatch(
      /: nothing was written$/,
    );
    expect([...excel.sheets.keys()].slice(2)).toEqual(["Statement Shed"]);
    expect(excel.sheets.get("Statement Shed")!.cells.size).toBe(0);
  });

  it("is not left there where Excel makes something else of what was put", async () => {
    const { excel, workbook } = open();
    excel.coAuthor = (sync) => {
      if (sync === 1) excel.turnsTextsInto = 7;
    };
    expect(await refusal(workbook.statement("S", STATEMENT))).toMatch(
      /would hold "7" where .* was put: nothing was written$/,
    );
    expect(excel.snapshot()).toEqual(open().excel.snapshot());
  });
});

describe("a sync that fails", () => {
  it(
    "leaves no statement or a whole one, whichever sync and command it fails at",
    { timeout: 120_000 },
    async () => {
      const clean = await made();
      const after = clean.excel.snapshot();
      const before = open().excel.snapshot();
      let [refused, whole] = [0, 0];
      for (const [sync, commands] of clean.excel.office.syncs.entries()) {
        for (const at of [...Array(commands).keys(), Infinity]) {
          const { excel, workbook } = open();
          excel.office.failure = { sync, after: at };
          const where = `sync ${sync}, command ${at}`;
          const result: unknown = await workbook
            .statement("Statement Shed", STATEMENT)
            .catch((e: unknown) => e);
          if (result instanceof Refusal) {
            refused += 1;
            expect(result.message, where).toMatch(/^Excel did not do it.*: nothing was written$/);
            expect(excel.snapshot(), where).toEqual(before);
          } else {
            whole += 1;
            expect(excel.snapshot(), where).toEqual(after);
            await workbook.write((result as Handed).undo);
            expect(excel.snapshot(), where).toEqual(before);
          }
        }
      }
      expect(refused).toBeGreaterThan(100);
      expect(whole).toBeGreaterThan(0);
    },
  );

  it("and none that works after it: the sheet that may be left is named", async () => {
    for (const offlineFrom of [2, 3]) {
      const { excel, workbook } = open();
      excel.office.failure = { sync: 1, after: 40 };
      excel.office.offlineFrom = offlineFrom;
      const message = await refusal(workbook.statement("S", STATEMENT));
      const [draft] = [...excel.sheets.keys()].slice(2);
      expect(message).toMatch(`not all could be put back: look at the sheet ${draft}`);
    }
  });

  it("leaves the statement whole or takes it away whole when it is taken back", async () => {
    const clean = await made();
    await clean.workbook.write(clean.handed.undo);
    const before = open().excel.snapshot();
    const [, , check, drop] = clean.excel.office.syncs;
    for (const [sync, commands] of [
      [2, check!],
      [3, drop!],
    ] as const) {
      for (const at of [...Array(commands).keys(), Infinity]) {
        const { excel, workbook, handed } = await made();
        const after = excel.snapshot();
        excel.office.failure = { sync, after: at };
        const result: unknown = await workbook.write(handed.undo).catch((e: unknown) => e);
        const wanted = result instanceof Refusal ? after : before;
        expect(excel.snapshot(), `sync ${sync}, command ${at}`).toEqual(wanted);
      }
    }
  });
});

it("a grid holds each piece of the statement in the cell that the layout gives it", () => {
  const { entries, formats } = gridOf(LAYOUT, 2);
  expect(entries[0]![0]).toBe("Statement for lot Shed");
  const pay = entries[rowOf("total") - 1]!;
  expect(pay.slice(0, 8)).toEqual(["total", "", "", "", "", "", 200, ""]);
  expect(formats[rowOf("total") - 1]![6]).toBe("#,##0.00");
  expect(entries.every((row) => row.length === entries[0]!.length)).toBe(true);
});
