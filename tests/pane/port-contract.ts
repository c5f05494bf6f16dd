import { describe, expect, it, vi } from "vitest";
import { Refusal } from "../../src/core/refusal.js";
import type { Entry, Place, Step, Workbook } from "../../src/pane/port.js";
import type { Named } from "./memory.js";
import { statementOf } from "./statement/sample.js";

/** A workbook with a hand on it that is not the pane's. */
export interface Opened {
  readonly workbook: Workbook;
  type(sheet: string, row: number, column: number, entry: Entry, format?: string): void;
  protect(sheet: string): void;
  merge(place: Place): void;
  snapshot(): unknown;
  choose(place: Place): void;
}

export type Open = (
  sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
  named?: Map<string, Named>,
) => Opened;

export function at(
  sheet: string,
  row: number,
  column: number,
  rows: number,
  columns: number,
): Place {
  return { sheet, row, column, rows, columns };
}

/** A yard sheet, with a table of terms that has the name `Terms` over it. */
export const SHEETS = {
  "North yard": [
    ["Hive", "Bees", "Brood"],
    ["S01", "'7-8", 4],
    ["S02", 6, ""],
    ["S03", "=B3", true],
  ],
  Terms: [
    ["term", "Cherry"],
    ["average frames", 8],
    ["grade 1 name", "Standard"],
  ],
};

export function named(): Map<string, Named> {
  return new Map([
    ["Hives", { kind: "table", place: at("North yard", 0, 0, 4, 3) }],
    ["Terms", { kind: "name", place: at("Terms", 0, 0, 3, 2) }],
  ]);
}

const put = (
  place: Place,
  expected: readonly (readonly Entry[])[],
  entries: readonly (readonly Entry[])[],
  formats?: string,
): Step => ({
  kind: "put",
  place,
  expect: expected,
  put: entries,
  ...(formats === undefined ? {} : { formats }),
});

/** A change of every kind, which makes room for what comes after it. */
export const WHOLE_CHANGE: readonly Step[] = [
  put(at("Terms", 1, 1, 2, 1), [[8], ["Standard"]], [[9], ["Full"]]),
  put(at("Terms", 0, 2, 3, 1), [[""], [""], [""]], [["Pear"], [7], ["Light"]]),
  { kind: "cover", region: "name", name: "Terms", place: at("Terms", 0, 0, 3, 3) },
  put(at("North yard", 0, 3, 2, 1), [[""], [""]], [["Frames"], ["=sum(C2)"]], "General"),
  { kind: "cover", region: "table", name: "Hives", place: at("North yard", 0, 0, 4, 4) },
  { kind: "add sheet", name: "Start" },
  put(at("Start", 0, 0, 1, 2), [["", ""]], [["Hive", "7-8"]], "@"),
  { kind: "cover", region: "name", name: "NewTerms", place: at("Start", 0, 0, 1, 2) },
  { kind: "blank", place: at("North yard", 0, 5, 4, 2) },
];

/** What every workbook must do for the pane. */
export function contract(name: string, open: Open): void {
  describe(name, () => {
    const refused = async (opened: Opened, steps: readonly Step[]): Promise<string> => {
      const before = opened.snapshot();
      const error: unknown = await opened.workbook.write(steps).catch((e: unknown) => e);
      expect(error).toBeInstanceOf(Refusal);
      expect(opened.snapshot()).toEqual(before);
      return (error as Refusal).message;
    };

    it("lists tables, names and filled parts of sheets, in this order", async () => {
      const { workbook } = open({ ...SHEETS, Empty: [] }, named());
      expect(await workbook.regions()).toEqual([
        { kind: "table", name: "Hives", place: at("North yard", 0, 0, 4, 3) },
        { kind: "name", name: "Terms", place: at("Terms", 0, 0, 3, 2) },
        { kind: "sheet", name: "North yard", place: at("North yard", 0, 0, 4, 3) },
        { kind: "sheet", name: "Terms", place: at("Terms", 0, 0, 3, 2) },
      ]);
    });

    it("reads values, entries and formats; a text that would turn has its apostrophe", async () => {
      const { workbook, type } = open(SHEETS);
      type("North yard", 2, 1, "6-7", "@");
      const [yard, terms] = await workbook.read([
        at("North yard", 1, 0, 3, 3),
        at("Terms", 2, 1, 2, 1),
      ]);
      expect(yard!.entries).toEqual([
        ["S01", "'7-8", 4],
        ["S02", "6-7", ""],
        ["S03", "=B3", true],
      ]);
      expect(yard!.values[0]).toEqual(["S01", "7-8", 4]);
      expect(yard!.values[1]).toEqual(["S02", "6-7", ""]);
      expect(yard!.formats.map((row) => row[1])).toEqual(["General", "@", "General"]);
      expect(terms!.values).toEqual([["Standard"], [""]]);
    });

    it("refuses to read a sheet that is not there", async () => {
      const { workbook } = open(SHEETS);
      await expect(workbook.read([at("Away", 0, 0, 1, 1)])).rejects.toThrow(
        "there is no sheet Away",
      );
    });

    it("answers the chosen range", async () => {
      const opened = open(SHEETS);
      opened.choose(at("North yard", 1, 1, 3, 2));
      expect(await opened.workbook.active()).toEqual(at("North yard", 1, 1, 3, 2));
    });

    it("puts a number of more digits than Excel keeps, and takes it back", async () => {
      const opened = open(SHEETS);
      const before = opened.snapshot();
      const undo = await opened.workbook.write([put(at("Terms", 1, 1, 1, 1), [[8]], [[125 / 12]])]);
      const [written] = await opened.workbook.read([at("Terms", 1, 1, 1, 1)]);
      expect(written!.values[0]![0]).toBeCloseTo(10.4166666666667, 12);
      await opened.workbook.write(undo);
      expect(opened.snapshot()).toEqual(before);
    });

    it("makes a change of every kind, and takes it back exactly", async () => {
      const opened = open(SHEETS, named());
      const before = opened.snapshot();
      const undo = await opened.workbook.write(WHOLE_CHANGE);
      const [terms, frames, start] = await opened.workbook.read([
        at("Terms", 0, 0, 3, 3),
        at("North yard", 0, 3, 1, 1),
        at("Start", 0, 0, 1, 2),
      ]);
      expect(terms!.entries).toEqual([
        ["term", "Cherry", "Pear"],
        ["average frames", 9, 7],
        ["grade 1 name", "Full", "Light"],
      ]);
      expect(frames!.entries).toEqual([["Frames"]]);
      expect(start!.values).toEqual([["Hive", "7-8"]]);
      expect(start!.formats).toEqual([["@", "@"]]);
      const places = (await opened.workbook.regions()).map(({ name, place }) => [name, place]);
      expect(places).toContainEqual(["Terms", at("Terms", 0, 0, 3, 3)]);
      expect(places).toContainEqual(["Hives", at("North yard", 0, 0, 4, 4)]);
      expect(places).toContainEqual(["NewTerms", at("Start", 0, 0, 1, 2)]);
      await opened.workbook.write(undo);
      expect(opened.snapshot()).toEqual(before);
    });

    it("takes the taking back back", async () => {
      const opened = open(SHEETS, named());
      const undo = await opened.workbook.write(WHOLE_CHANGE);
      const after = opened.snapshot();
      await opened.workbook.write(await opened.workbook.write(undo));
      expect(opened.snapshot()).toEqual(after);
    });

    it("puts a text back as the text it was, and a serial as its date", async () => {
      const opened = open(SHEETS);
      opened.type("North yard", 2, 1, 46_211, "d-mmm");
      const before = opened.snapshot();
      const undo = await opened.workbook.write([
        put(at("North yard", 1, 1, 2, 1), [["'7-8"], [46_211]], [["=1+1"], ["7-8"]], "@"),
      ]);
      expect((await opened.workbook.read([at("North yard", 2, 1, 1, 1)]))[0]!.values).toEqual([
        ["7-8"],
      ]);
      await opened.workbook.write(undo);
      expect(opened.snapshot()).toEqual(before);
    });

    it("refuses to write where another hand has typed, and names the cell", async () => {
      const opened = open(SHEETS);
      opened.type("North yard", 2, 1, 5);
      expect(
        await refused(opened, [
          put(at("Terms", 1, 1, 1, 1), [[8]], [[9]]),
          put(at("North yard", 1, 1, 2, 1), [["'7-8"], [6]], [[7], [7]]),
        ]),
      ).toBe(`'North yard'!B3 holds "5" where "6" stood when it was read: nothing was written`);
    });

    it("refuses to take back over what was typed since", async () => {
      const opened = open(SHEETS);
      const undo = await opened.workbook.write([put(at("Terms", 1, 1, 1, 1), [[8]], [[9]])]);
      opened.type("Terms", 1, 1, 10);
      expect(await refused(opened, undo)).toMatch(/^Terms!B2 holds "10" where "9" stood/);
    });

    it("refuses a place for a spill that is filled", async () => {
      const message = await refused(open(SHEETS), [
        put(at("Terms", 0, 2, 1, 1), [[""]], [["=SPILL(1,1)"]]),
        { kind: "blank", place: at("Terms", 2, 1, 3, 3) },
      ]);
      expect(message).toBe(`Terms!B3 holds "Standard" and must be blank: nothing was written`);
    });

    it("refuses to let a spill into a table", async () => {
      const message = await refused(open(SHEETS, named()), [
        { kind: "blank", place: at("North yard", 2, 2, 1, 1) },
      ]);
      expect(message).toMatch(/^'North yard'!C3 lies in the table Hives/);
    });

    it("refuses a count that would become a date", async () => {
      const message = await refused(open(SHEETS), [
        put(at("North yard", 2, 1, 1, 1), [[6]], [["6-7"]]),
      ]);
      expect(message).toMatch(/^'North yard'!B3 would hold .* where "6-7" was put: nothing was w/);
    });

    it("refuses a protected sheet and merged cells by name", async () => {
      const change = [put(at("Terms", 1, 1, 1, 1), [[8]], [[9]])];
      const guarded = open(SHEETS);
      guarded.protect("Terms");
      expect(await refused(guarded, change)).toBe("Terms!B2 is protected: nothing was written");
      const merged = open(SHEETS);
      merged.merge(at("Terms", 1, 1, 1, 2));
      expect(await refused(merged, change)).toMatch(/^Terms!B2 has merged cells, Terms!B2:C2/);
    });

    it("refuses what is not there, and a sheet that is there already", async () => {
      const opened = open(SHEETS, named());
      const there = at("Terms", 0, 0, 1, 1);
      for (const [step, message] of [
        [put(at("Away", 0, 0, 1, 1), [[""]], [[1]]), /^there is no sheet Away/],
        [{ kind: "blank", place: at("Away", 0, 0, 1, 1) }, /^there is no sheet Away/],
        [{ kind: "cover", region: "table", name: "Gone", place: there }, /^there is no table Gone/],
        [{ kind: "uncover", name: "Gone" }, /^there is no name Gone/],
        [{ kind: "drop sheet", name: "Away" }, /^there is no sheet Away/],
        [{ kind: "add sheet", name: "Terms" }, /^there is a sheet Terms already/],
      ] as const) {
        expect(await refused(opened, [step])).toMatch(message);
      }
    });

    it("refuses to move a table away from its heading row", async () => {
      const moved = at("North yard", 1, 0, 4, 3);
      expect(
        await refused(open(SHEETS, named()), [
          { kind: "cover", region: "table", name: "Hives", place: moved },
        ]),
      ).toMatch(/^the table Hives keeps its heading row/);
    });

    it("refuses to drop a sheet on which something stands", async () => {
      const opened = open(SHEETS);
      const undo = await opened.workbook.write([
        { kind: "add sheet", name: "Start" },
        put(at("Start", 0, 0, 1, 1), [[""]], [["Hive"]]),
      ]);
      opened.type("Start", 4, 2, "mine");
      expect(await refused(opened, undo)).toMatch(/^Start!C5 holds "mine" and must be blank/);
    });

    it("hands a statement over without touching what is there, and takes it back", async () => {
      const opened = open(SHEETS);
      const before = opened.snapshot();
      const places = [at("North yard", 0, 0, 4, 3), at("Terms", 0, 0, 3, 2)];
      const blocks = await opened.workbook.read(places);
      const { sentence, undo } = await opened.workbook.statement("Terms", statementOf());
      expect(sentence).toMatch(/statement/i);
      expect(await opened.workbook.read(places)).toEqual(blocks);
      if (undo.length > 0) await opened.workbook.write(undo);
      expect(opened.snapshot()).toEqual(before);
    });

    it("will not take a block of another size than its place", async () => {
      const { workbook } = open(SHEETS);
      await expect(workbook.write([put(at("Terms", 1, 1, 2, 1), [[8]], [[9]])])).rejects.toThrow(
        "Terms!B2:B3",
      );
    });

    it("calls those who watch, each once a change, until they no longer do", async () => {
      vi.useFakeTimers();
      const opened = open(SHEETS);
      const [first, second] = [vi.fn(), vi.fn()];
      const stops = [opened.workbook.watch(first), opened.workbook.watch(second)];
      await vi.advanceTimersByTimeAsync(1000);
      opened.type("Terms", 1, 1, 7);
      await vi.advanceTimersByTimeAsync(1000);
      expect([first.mock.calls.length, second.mock.calls.length]).toEqual([1, 1]);
      stops[0]!();
      opened.type("Terms", 1, 1, 6);
      await vi.advanceTimersByTimeAsync(1000);
      expect([first.mock.calls.length, second.mock.calls.length]).toEqual([1, 2]);
      stops[1]!();
      opened.type("Terms", 1, 1, 5);
      await vi.advanceTimersByTimeAsync(1000);
      expect(second).toHaveBeenCalledTimes(2);
      vi.useRealTimers();
    });
  });
}
