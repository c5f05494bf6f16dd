import { beforeEach, describe, expect, it, vi } from "vitest";
import { Refusal } from "../../src/core/refusal.js";
import { CellError } from "../../src/functions/cells.js";
import { excelWorkbook } from "../../src/pane/excel.js";
import type { Entry, Place, Step } from "../../src/pane/port.js";
import { FakeExcel } from "./fake-excel.js";
import { OfficeError } from "./fake-office.js";
import { at, named, SHEETS, WHOLE_CHANGE } from "./port-contract.js";

const open = (...args: ConstructorParameters<typeof FakeExcel>) => {
  const excel = new FakeExcel(...args);
  excel.install();
  return { excel, workbook: excelWorkbook() };
};

const refusal = async (promise: Promise<unknown>): Promise<string> => {
  const error: unknown = await promise.catch((e: unknown) => e);
  expect(error).toBeInstanceOf(Refusal);
  return (error as Refusal).message;
};

const put = (
  place: Place,
  expected: readonly (readonly Entry[])[],
  entries: readonly (readonly Entry[])[],
): Step => ({ kind: "put", place, expect: expected, put: entries });

/** Big sheets take a while on a machine that does other things too. */
const PATIENCE = { timeout: 60_000 };

const NINE = [put(at("Terms", 1, 1, 1, 1), [[8]], [[9]])];

const rowsOf = <T>(rows: number, columns: number, cell: (row: number, column: number) => T) =>
  Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => cell(r, c)));

describe("Office.js as it is faked", () => {
  it("shows nothing before a sync, and nothing that was not asked for", async () => {
    open(SHEETS);
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      const range = context.workbook.worksheets.getItem("Terms").getRangeByIndexes(1, 1, 1, 1);
      range.load("values");
      expect(() => range.values).toThrow("values was not loaded");
      const gone = context.workbook.worksheets.getItemOrNullObject("Away");
      gone.load("name");
      expect(() => gone.isNullObject).toThrow("isNullObject was not loaded");
      await context.sync();
      expect(range.values).toEqual([[8]]);
      expect(() => range.formulas).toThrow("formulas was not loaded");
      expect(gone.isNullObject).toBe(true);
      expect(() => gone.name).toThrow("name was not loaded");
    });
  });

  it("writes nothing before a sync, and keeps what was written before a command that fails", async () => {
    const { excel } = open(SHEETS);
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      const cell = (sheet: string, row: number) =>
        context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, 1, 1, 1);
      cell("Terms", 1).formulas = [[9]];
      cell("Away", 1).formulas = [[9]];
      cell("Terms", 2).formulas = [["Full"]];
      expect(excel.entry("Terms", 1, 1)).toBe(8);
      await expect(context.sync()).rejects.toMatchObject({ code: "ItemNotFound" });
    });
    expect([excel.entry("Terms", 1, 1), excel.entry("Terms", 2, 1)]).toEqual([9, "Standard"]);
  });
});

describe("what is read", () => {
  it("takes two syncs for the regions of any workbook, and one for blocks", async () => {
    const many = Object.fromEntries(
      Array.from({ length: 30 }, (_, n) => [`Yard ${n}`, [["Hive"]]]),
    );
    const { excel, workbook } = open({ ...SHEETS, ...many }, named());
    await workbook.regions();
    expect(excel.office.syncs).toHaveLength(2);
    await workbook.read([at("Terms", 0, 0, 3, 2), at("North yard", 0, 0, 4, 3)]);
    expect(excel.office.syncs).toHaveLength(3);
  });

  it("leaves out hidden sheets with what lies on them, and names that are no range", async () => {
    const { excel, workbook } = open({ ...SHEETS, Secret: [[1]] }, named());
    excel.sheets.get("Secret")!.visibility = "Hidden";
    excel.formulas.set("OnSecret", "=Secret!$A$1");
    excel.formulas.set("Rate", "=0.19");
    excel.formulas.set("Broken", "=#REF!");
    excel.formulas.set("Apart", "=Terms!$A$1,Terms!$B$2");
    const names = (await workbook.regions()).map(({ name }) => name);
    expect(names).toEqual(["Hives", "Terms", "North yard", "Terms"]);
  });

  it("leaves out the names that Excel gives itself", async () => {
    const { excel, workbook } = open(SHEETS, named());
    excel.formulas.set("North yard!Print_Area", "='North yard'!$A$1:$B$2");
    excel.formulas.set("Terms!Print_Titles", "=Terms!$1:$1");
    excel.formulas.set("_FilterDatabase", "='North yard'!$A$1:$C$4");
    const names = (await workbook.regions()).map(({ name }) => name);
    expect(names).toEqual(["Hives", "Terms", "North yard", "Terms"]);
  });

  it("finds names over a table, of one sheet, and over whole columns", async () => {
    const { excel, workbook } = open(SHEETS, named());
    excel.formulas.set("All", "=Hives[#All]");
    excel.formulas.set("North yard!Terms", "='North yard'!$A$1:$B$2");
    excel.formulas.set("Columns", "=Terms!$A:$B");
    const regions = (await workbook.regions()).filter(({ kind }) => kind === "name");
    expect(regions.map(({ name, place }) => [name, place])).toEqual([
      ["Terms", at("Terms", 0, 0, 3, 2)],
      ["All", at("North yard", 0, 0, 4, 3)],
      ["Columns", at("Terms", 0, 0, 3, 2)],
      ["'North yard'!Terms", at("North yard", 0, 0, 2, 2)],
    ]);
  });

  it("tells a table's row of totals", async () => {
    const hives = { kind: "table" as const, place: at("North yard", 0, 0, 4, 3), totals: true };
    const { workbook } = open(SHEETS, new Map([["Hives", hives]]));
    expect((await workbook.regions())[0]).toEqual({ name: "Hives", ...hives });
  });

  it("hands errors over as cell errors, and empty cells as empty texts", async () => {
    const { workbook } = open({ Yard: [["#N/A", "", 0, false]] });
    const [block] = await workbook.read([at("Yard", 0, 0, 1, 5)]);
    const [error, ...others] = block!.values[0]!;
    expect(error).toBeInstanceOf(CellError);
    expect((error as CellError).code).toBe("#N/A");
    expect(others).toEqual(["", 0, false, ""]);
    expect(block!.entries[0]![0]).toBe("#N/A");
  });

  it("reads a long sheet in parts of one sync each, in their order", PATIENCE, async () => {
    const { excel, workbook } = open({ Yard: rowsOf(5000, 5, (r, c) => r * 10 + c) });
    const [block, small] = await workbook.read([at("Yard", 0, 0, 5000, 5), at("Yard", 7, 1, 1, 1)]);
    expect(block!.values.map((row) => row[4])).toEqual(rowsOf(5000, 1, (r) => r * 10 + 4).flat());
    expect(small!.values).toEqual([[71]]);
    expect(excel.office.syncs).toHaveLength(2);
  });

  it("reads a wide sheet", PATIENCE, async () => {
    const { workbook } = open({ Yard: rowsOf(2, 16_384, (r, c) => r + c) });
    const [block] = await workbook.read([at("Yard", 0, 0, 2, 16_384)]);
    expect(block!.values[1]![16_383]).toBe(16_384);
  });

  it("reads long texts in smaller parts where Excel passes no more on", PATIENCE, async () => {
    const long = "x".repeat(2_000);
    const { workbook } = open({ Yard: rowsOf(3000, 1, () => long) });
    const [block] = await workbook.read([at("Yard", 0, 0, 3000, 1)]);
    expect(block!.values).toHaveLength(3000);
    expect(block!.values.at(-1)).toEqual([long]);
  });

  it("says what is in the way in words, not in Office's own", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.activeAddress = "Terms!A1,Terms!B2";
    expect(await refusal(workbook.active())).toBe("several ranges are chosen: choose one");
    excel.coAuthor = () => {
      throw new OfficeError("InvalidOperationInCellEditMode");
    };
    const calls = [workbook.regions(), workbook.read([]), workbook.decimalSign()];
    for (const call of [calls[0]!, calls[2]!]) {
      expect(await refusal(call)).toMatch(/press Enter or Esc/);
    }
    expect(await calls[1]).toEqual([]);
  });

  it("tells the decimal sign", async () => {
    const { excel, workbook } = open(SHEETS);
    expect(await workbook.decimalSign()).toBe(".");
    excel.decimalSeparator = ",";
    expect(await workbook.decimalSign()).toBe(",");
  });
});

describe("what is written", () => {
  it("takes two syncs, however many steps", async () => {
    const { excel, workbook } = open(SHEETS, named());
    await workbook.write(WHOLE_CHANGE);
    expect(excel.office.syncs).toHaveLength(2);
  });

  it("takes two syncs for each part of a long column", PATIENCE, async () => {
    const { excel, workbook } = open({ Yard: [] });
    const blank = rowsOf(21_000, 1, () => "");
    const undo = await workbook.write([
      put(
        at("Yard", 0, 0, 21_000, 1),
        blank,
        rowsOf(21_000, 1, (r) => r),
      ),
    ]);
    expect(excel.office.syncs.length).toBeLessThanOrEqual(2 * 4);
    expect(excel.entry("Yard", 20_999, 0)).toBe(20_999);
    await workbook.write(undo);
    expect(excel.snapshot()).toEqual(open({ Yard: [] }).excel.snapshot());
  });

  it("writes long texts in parts that Excel passes on, and takes them back", PATIENCE, async () => {
    const old = rowsOf(700, 1, () => "a".repeat(4_000));
    const { excel, workbook } = open({ Yard: old });
    const before = excel.snapshot();
    const longer = rowsOf(700, 1, () => "b".repeat(4_000));
    await workbook.write(await workbook.write([put(at("Yard", 0, 0, 700, 1), old, longer)]));
    expect(excel.snapshot()).toEqual(before);
  });

  it("puts the values of a filtered table into their own rows", async () => {
    const { excel, workbook } = open({ Yard: rowsOf(6, 2, (r, c) => 10 * r + c) });
    excel.sheets.get("Yard")!.hiddenRows.add(2).add(3);
    excel.sheets.get("Yard")!.hiddenColumns.add(1);
    const old = rowsOf(6, 2, (r, c) => 10 * r + c);
    const wanted = rowsOf(6, 2, (r, c) => 100 + 10 * r + c);
    const undo = await workbook.write([put(at("Yard", 0, 0, 6, 2), old, wanted)]);
    expect((await workbook.read([at("Yard", 0, 0, 6, 2)]))[0]!.values).toEqual(wanted);
    await workbook.write(undo);
    expect((await workbook.read([at("Yard", 0, 0, 6, 2)]))[0]!.values).toEqual(old);
  });

  it("puts the values of a sheet with hidden columns into their own columns", async () => {
    const { excel, workbook } = open({ Yard: rowsOf(2, 4, (r, c) => 10 * r + c) });
    excel.sheets.get("Yard")!.hiddenColumns.add(1).add(2);
    const wanted = rowsOf(2, 4, (r, c) => 100 + 10 * r + c);
    await workbook.write([
      put(
        at("Yard", 0, 0, 2, 4),
        rowsOf(2, 4, (r, c) => 10 * r + c),
        wanted,
      ),
    ]);
    expect((await workbook.read([at("Yard", 0, 0, 2, 4)]))[0]!.values).toEqual(wanted);
  });

  it("takes back and says so where a filter set meanwhile sends values into wrong rows", async () => {
    const { excel, workbook } = open({ Yard: rowsOf(6, 1, (r) => r) });
    const before = excel.snapshot();
    excel.coAuthor = (sync) => {
      if (sync === 1) excel.sheets.get("Yard")!.hiddenRows.add(2);
    };
    const change = put(
      at("Yard", 0, 0, 6, 1),
      rowsOf(6, 1, (r) => r),
      rowsOf(6, 1, (r) => 10 + r),
    );
    expect(await refusal(workbook.write([change]))).toMatch(
      /^Yard!A2 would hold "10" where "11" was put: nothing was written$/,
    );
    expect(excel.snapshot()).toEqual(before);
  });

  it("follows a Terms sheet that is renamed, and refuses by its old name", async () => {
    const { excel, workbook } = open(SHEETS, named());
    const terms = excel.sheets.get("Terms")!;
    excel.sheets.delete("Terms");
    Object.assign(terms, { name: "Contracts" });
    excel.sheets.set("Contracts", terms);
    excel.named.set("Terms", { kind: "name", place: at("Contracts", 0, 0, 3, 2) });
    expect(await refusal(workbook.write(NINE))).toBe(
      "there is no sheet Terms: nothing was written",
    );
    const region = (await workbook.regions()).find(({ name }) => name === "Terms")!;
    expect(region.place.sheet).toBe("Contracts");
  });

  it("writes to unlocked cells of a protected sheet, but not their formats", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.protect("Terms");
    excel.sheets.get("Terms")!.unlocked.add("1,1");
    await workbook.write(await workbook.write(NINE));
    expect(excel.entry("Terms", 1, 1)).toBe(8);
    const both = [put(at("Terms", 1, 1, 2, 1), [[8], ["Standard"]], [[9], ["Full"]])];
    expect(await refusal(workbook.write(both))).toMatch(/^Terms!B2:B3 is protected/);
    const formatted = [{ ...NINE[0]!, formats: "@" } as Step];
    expect(await refusal(workbook.write(formatted))).toMatch(/^Terms!B2 is protected against/);
  });

  it("puts back what an Excel that does not tell of merged cells has dropped", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.apiVersion = 12;
    excel.merge(at("Terms", 1, 0, 1, 2));
    const before = excel.snapshot();
    expect(await refusal(workbook.write(NINE))).toBe(
      `Terms!B2 would hold "8" where "9" was put: nothing was written`,
    );
    expect(excel.snapshot()).toEqual(before);
  });

  it("puts back what Excel filled in a table's column past the place asked for", async () => {
    const rows = [
      ["Hive", "Frames"],
      ["S01", ""],
      ["S02", ""],
      ["S03", "=1+1"],
      ["S04", 5],
    ];
    const table = new Map([["Hives", { kind: "table", place: at("Yard", 0, 0, 5, 2) } as const]]);
    const { excel, workbook } = open({ Yard: rows }, table);
    excel.fillsTableColumns = true;
    const before = excel.snapshot();
    const one = [put(at("Yard", 1, 1, 1, 1), [[""]], [["=2+2"]])];
    expect(await refusal(workbook.write(one))).toBe(
      "Excel fills the table's column with the formula, past Yard!B2: nothing was written",
    );
    expect(excel.snapshot()).toEqual(before);
    excel.fillsTableColumns = false;
    await workbook.write(await workbook.write(one));
    expect(excel.snapshot()).toEqual(before);
  });

  it("lets a whole column of a table have one formula, and names it where it will not go back", async () => {
    const rows = [
      ["Hive", "Frames"],
      ["S01", "=1+0"],
      ["S02", "=2+0"],
    ];
    const table = new Map([["Hives", { kind: "table", place: at("Yard", 0, 0, 3, 2) } as const]]);
    const { excel, workbook } = open({ Yard: rows }, table);
    excel.fillsTableColumns = true;
    const column = (now: Entry[][], next: Entry[][]) => put(at("Yard", 1, 1, 2, 1), now, next);
    const same = [["=9+9"], ["=9+9"]];
    // Unlike formulas come back as one, and so they do when they are put back.
    expect(
      await refusal(workbook.write([column([["=1+0"], ["=2+0"]], [["=3+3"], ["=4+4"]])])),
    ).toMatch(/would hold "=4\+4" where .* not all could be put back: look at Yard!B2:B3$/);
    await workbook.write([column([["=2+0"], ["=2+0"]], same)]);
    expect(excel.entry("Yard", 1, 1)).toBe("=9+9");
  });

  it("says how to resize a table where Excel is too old for it", async () => {
    const { excel, workbook } = open(SHEETS, named());
    excel.apiVersion = 12;
    expect(await refusal(workbook.write(WHOLE_CHANGE))).toMatch(
      /drag the lower right corner of Hives so that it covers 'North yard'!A1:D4/,
    );
  });

  it("will not resize a table over a column without a heading", async () => {
    const { workbook } = open(SHEETS, named());
    const wider = at("North yard", 0, 0, 4, 4);
    expect(
      await refusal(
        workbook.write([{ kind: "cover", region: "table", name: "Hives", place: wider }]),
      ),
    ).toMatch(/^the table Hives would get a column without a heading/);
  });

  it("leaves a name over a table to follow the table, and refuses to move it elsewhere", async () => {
    const { excel, workbook } = open(SHEETS, named());
    excel.formulas.set("Yard", "=Hives[#All]");
    const before = excel.snapshot();
    const wider = at("North yard", 0, 0, 4, 4);
    const steps = (place: Place): Step[] => [
      put(at("North yard", 0, 3, 1, 1), [[""]], [["Frames"]]),
      { kind: "cover", region: "table", name: "Hives", place: wider },
      { kind: "cover", region: "name", name: "Yard", place },
    ];
    await workbook.write(await workbook.write(steps(wider)));
    expect(excel.snapshot()).toEqual(before);
    expect(await refusal(workbook.write(steps(at("Terms", 0, 0, 1, 1))))).toMatch(
      /^the name Yard would not cover Terms!A1: nothing was written/,
    );
    expect(excel.snapshot()).toEqual(before);
    expect(await refusal(workbook.write([{ kind: "uncover", name: "Yard" }]))).toMatch(
      /stands for =Hives\[#All\]/,
    );
  });

  it("covers and uncovers a name of one sheet", async () => {
    const { excel, workbook } = open(SHEETS);
    const name = "'North yard'!Local";
    const undo = await workbook.write([
      { kind: "cover", region: "name", name, place: at("North yard", 0, 0, 2, 2) },
    ]);
    expect(excel.formulas.get("North yard!Local")).toBe("='North yard'!$A$1:$B$2");
    await workbook.write(undo);
    expect(excel.formulas.size).toBe(0);
  });

  it("lets a formula spill, and takes it away again", async () => {
    const { excel, workbook } = open(SHEETS, named());
    const before = excel.snapshot();
    const spill = [
      { kind: "blank", place: at("North yard", 0, 4, 4, 2) } as const,
      put(at("North yard", 0, 4, 1, 1), [[""]], [["=SPILL(4,2)"]]),
    ];
    const undo = await workbook.write(spill);
    expect(excel.entry("North yard", 3, 5)).toBe(1);
    expect(await refusal(workbook.write(spill))).toMatch(/^'North yard'!E1 holds/);
    const inside = put(at("North yard", 1, 4, 1, 1), [[1]], [[2]]);
    expect(await refusal(workbook.write([inside]))).toMatch(
      /E2 holds the result of a formula that/,
    );
    await workbook.write(undo);
    expect(excel.snapshot()).toEqual(before);
  });

  it("refuses to overwrite a formula whose cell was made text afterwards", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.sheets.get("North yard")!.setFormat(3, 1, "@");
    const change = put(at("North yard", 3, 1, 1, 1), [["=B3"]], [[5]]);
    expect(await refusal(workbook.write([change]))).toMatch(/holds a formula in a cell with the f/);
  });

  it("refuses new sheets in a workbook whose structure is protected, or by a name unfit", async () => {
    const { excel, workbook } = open(SHEETS);
    for (const name of ["a/b", "x".repeat(32), "'quoted", ""]) {
      expect(await refusal(workbook.write([{ kind: "add sheet", name }]))).toMatch(
        /cannot be call/,
      );
    }
    excel.isStructureProtected = true;
    expect(await refusal(workbook.write([{ kind: "add sheet", name: "Start" }]))).toMatch(
      /^the workbook's structure is protected/,
    );
  });

  it("starts with the workbook from the first change on, and does not mind if it cannot", async () => {
    const { excel, workbook } = open(SHEETS);
    await refusal(workbook.write([put(at("Terms", 1, 1, 1, 1), [[1]], [[9]])]));
    expect(excel.startup).toBeNull();
    const undo = await workbook.write(NINE);
    expect(excel.startup).toBe("Load");
    excel.startup = null;
    await workbook.write(undo);
    expect(excel.startup).toBeNull();
    const other = open(SHEETS);
    Object.assign(globalThis, { Office: { ...Office, addin: undefined } });
    await other.workbook.write(NINE);
    expect(other.excel.entry("Terms", 1, 1)).toBe(9);
  });
});

describe("a co-author", () => {
  it("who types between the check and the writing keeps what he typed", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.coAuthor = (sync) => {
      if (sync === 1) excel.type("Terms", 1, 1, 10);
    };
    const steps = [...NINE, put(at("Terms", 2, 1, 1, 1), [["Standard"]], [["Full"]])];
    expect(await refusal(workbook.write(steps))).toBe(
      `Terms!B2 holds "10" where "8" stood when it was read: nothing was written`,
    );
    expect([excel.entry("Terms", 1, 1), excel.entry("Terms", 2, 1)]).toEqual([10, "Standard"]);
  });

  it("who types while a change is taken back keeps it too, and the pane names the cell", async () => {
    const { excel, workbook } = open(SHEETS);
    excel.office.failure = { sync: 1, after: Infinity };
    excel.coAuthor = (sync) => {
      if (sync === 2) excel.type("Terms", 1, 1, 10);
    };
    const steps = [...NINE, put(at("Terms", 2, 1, 1, 1), [["Standard"]], [["Full"]])];
    expect(await refusal(workbook.write(steps))).toMatch(
      /not all could be put back: look at Terms!B2$/,
    );
    expect([excel.entry("Terms", 1, 1), excel.entry("Terms", 2, 1)]).toEqual([10, "Standard"]);
  });

  it("is heard by those who watch, also when a calculation ends or a sheet comes", async () => {
    vi.useFakeTimers();
    const { excel, workbook } = open(SHEETS);
    const heard = vi.fn();
    const stop = workbook.watch(heard);
    await vi.advanceTimersByTimeAsync(1000);
    for (const event of ["worksheets.onCalculated", "worksheets.onAdded", "tables.onDeleted"]) {
      heard.mockClear();
      // A burst is one change.
      for (let n = 0; n < 20; n += 1) excel.fire(event);
      await vi.advanceTimersByTimeAsync(1000);
      expect(heard, event).toHaveBeenCalledTimes(1);
    }
    stop();
    await vi.advanceTimersByTimeAsync(1000);
    expect(excel.handlers).toEqual([]);
    vi.useRealTimers();
  });

  it("is registered for once, and no more where the watch ended before it began", async () => {
    vi.useFakeTimers();
    const { excel, workbook } = open(SHEETS);
    excel.apiVersion = 12;
    const stops = Array.from({ length: 5 }, () => workbook.watch(() => undefined));
    await vi.advanceTimersByTimeAsync(10);
    expect(excel.handlers).toHaveLength(6);
    for (const stop of stops) stop();
    workbook.watch(() => undefined)();
    await vi.advanceTimersByTimeAsync(1000);
    expect(excel.handlers).toEqual([]);
    vi.useRealTimers();
  });
});

describe("a sync that fails", () => {
  const steps = WHOLE_CHANGE;
  let clean: { syncs: readonly number[]; before: unknown; after: unknown };

  beforeEach(async () => {
    const { excel, workbook } = open(SHEETS, named());
    const before = excel.snapshot();
    await workbook.write(steps);
    clean = { syncs: [...excel.office.syncs], before, after: excel.snapshot() };
  });

  it(
    "leaves the workbook as before or as asked, whichever sync and command it fails at",
    PATIENCE,
    async () => {
      let [refused, made] = [0, 0];
      for (const [sync, commands] of clean.syncs.entries()) {
        for (const after of [...Array(commands).keys(), Infinity]) {
          const { excel, workbook } = open(SHEETS, named());
          excel.office.failure = { sync, after };
          const where = `sync ${sync}, command ${after}`;
          const result: unknown = await workbook.write(steps).catch((e: unknown) => e);
          if (result instanceof Refusal) {
            refused += 1;
            expect(result.message, where).toMatch(/^Excel did not do it.*: nothing was written$/);
            expect(excel.snapshot(), where).toEqual(clean.before);
          } else {
            made += 1;
            expect(excel.snapshot(), where).toEqual(clean.after);
            await workbook.write(result as Step[]);
            expect(excel.snapshot(), where).toEqual(clean.before);
          }
        }
      }
      expect(refused).toBeGreaterThan(50);
      expect(made).toBeGreaterThan(0);
    },
  );

  it("leaves the workbook whole when a change is taken back, too", PATIENCE, async () => {
    const { excel, workbook } = open(SHEETS, named());
    const undo = await workbook.write(steps);
    await workbook.write(undo);
    const [, , , commands] = excel.office.syncs;
    for (const after of [...Array(commands).keys(), Infinity]) {
      const again = open(SHEETS, named());
      const back = await again.workbook.write(steps);
      again.excel.office.failure = { sync: 3, after };
      const result: unknown = await again.workbook.write(back).catch((e: unknown) => e);
      const wanted = result instanceof Refusal ? clean.after : clean.before;
      expect(again.excel.snapshot(), `command ${after}`).toEqual(wanted);
    }
  });

  it("does not take formats, or a formula of before, for what was asked", async () => {
    const formats: Step = {
      kind: "put",
      place: at("Terms", 1, 1, 2, 1),
      expect: [[8], ["Standard"]],
      put: [[8], ["Standard"]],
      formats: "0.0",
    };
    const formula = put(at("North yard", 3, 1, 1, 1), [["=B3"]], [["=B2"]]);
    for (const step of [formats, formula]) {
      const { excel, workbook } = open(SHEETS);
      excel.office.failure = { sync: 1, after: 0 };
      expect(await refusal(workbook.write([step]))).toMatch(/: nothing was written$/);
      expect(excel.snapshot()).toEqual(open(SHEETS).excel.snapshot());
      excel.office.failure = { sync: excel.office.syncs.length + 1, after: Infinity };
      await workbook.write(await workbook.write([step]));
      expect(excel.snapshot()).toEqual(open(SHEETS).excel.snapshot());
    }
  });

  it("and none that works after it: the pane names what may be half written", async () => {
    for (const offlineFrom of [2, 3, 4]) {
      const { excel, workbook } = open(SHEETS, named());
      excel.office.failure = { sync: 1, after: Math.floor(clean.syncs[1]! / 2) };
      excel.office.offlineFrom = offlineFrom;
      const message = await refusal(workbook.write(steps));
      expect(message).toMatch(/not all could be put back: look at /);
      for (const name of ["Terms!B2:B3", "the name Terms", "the table Hives", "the sheet Start"]) {
        expect(message).toContain(name);
      }
    }
  });

  it("names the part that is left of a long column", PATIENCE, async () => {
    const { excel, workbook } = open({ Yard: [] });
    const blank = rowsOf(21_000, 1, () => "");
    const column = put(
      at("Yard", 0, 0, 21_000, 1),
      blank,
      rowsOf(21_000, 1, (r) => r),
    );
    excel.office.failure = { sync: 3, after: 3 };
    excel.office.offlineFrom = 4;
    expect(await refusal(workbook.write([column]))).toMatch(
      /look at Yard!A1:A\d+, Yard!A\d+:A\d+$/,
    );
    const again = open({ Yard: [] });
    const before = again.excel.snapshot();
    again.excel.office.failure = { sync: 3, after: 3 };
    expect(await refusal(again.workbook.write([column]))).toMatch(/: nothing was written$/);
    expect(again.excel.snapshot()).toEqual(before);
  });
});
