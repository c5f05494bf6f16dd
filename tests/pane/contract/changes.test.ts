import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readContract } from "../../../src/core/contract-reading.js";
import { TERMS } from "../../../src/core/terms.js";
import { changesOf, columnOf, stepsOf } from "../../../src/pane/contract/changes.js";
import { draftOf, entriesOf, faultsOf, type Draft } from "../../../src/pane/contract/draft.js";
import { GROUPS } from "../../../src/pane/contract/groups.js";
import { readTables } from "../../../src/pane/contract/tables.js";
import type { Entry } from "../../../src/pane/port.js";
import { termsOf, termsSheet, USABLE } from "../../../src/pane/start/terms-sheet.js";
import { MemoryWorkbook } from "../memory.js";

const ROWS: readonly (readonly Entry[])[] = [
  ["Term", "Cherry", "Pear", "Meaning"],
  ["average frames", 8, 7, "of the lot"],
  ["minimum frames", "6", 5, "of a hive"],
  ["", "", "", "a line of one's own"],
  ["Laying queen:", true, "no", ""],
  ["grade 1 name", "Prime", "", ""],
  ["grade 1 frames", 10, "", ""],
];

function terms(kind: "name" | "table" = "name", rows = ROWS): MemoryWorkbook {
  const place = { sheet: "Terms", row: 0, column: 0, rows: rows.length, columns: 4 };
  return new MemoryWorkbook({ Terms: rows }, new Map([["Terms", { kind, place }]]));
}
const draftIn = async (workbook: MemoryWorkbook, name = "Cherry") => {
  const { tables } = await readTables(workbook);
  const table = tables[0]!;
  const column = columnOf(table, name);
  return { table, column, draft: draftOf(name, table.block, column, ".") };
};
const withTerm = (draft: Draft, label: string, text: string): Draft => ({
  ...draft,
  terms: new Map(draft.terms).set(label, text),
});

it("every term has its place in one fold of the view", () => {
  const labels = Object.values(GROUPS).flat();
  expect([...labels].sort()).toEqual(TERMS.map(({ label }) => label).sort());
});

describe("a contract read from its table", () => {
  it("changes nothing as long as nothing is changed, whatever form its cells have", async () => {
    const { table, column, draft } = await draftIn(terms());
    expect(changesOf(table, column, entriesOf(draft, "."))).toEqual([]);
  });

  it("is read by the pane as every function reads it", async () => {
    const { draft } = await draftIn(terms());
    expect(faultsOf(draft, ".").contract).toEqual(readContract(ROWS as unknown[][], "Cherry"));
  });
});

describe("a saved change", () => {
  it("writes the cell that changed and no other, and is taken back to the letter", async () => {
    const workbook = terms();
    const before = workbook.snapshot();
    const { table, column, draft } = await draftIn(workbook);
    const changes = changesOf(
      table,
      column,
      entriesOf(withTerm(draft, "average frames", "7.5"), "."),
    );
    expect(changes).toEqual([{ label: "average frames", was: 8, now: 7.5, row: 1 }]);
    const undo = await workbook.write(stepsOf(table, "Cherry", column, changes));
    expect(workbook.entry("Terms", 1, 1)).toBe(7.5);
    expect(workbook.entry("Terms", 1, 2)).toBe(7);
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("adds a row for a term that the table lacks, and the name reaches over it", async () => {
    const workbook = terms();
    const { table, column, draft } = await draftIn(workbook);
    const changes = changesOf(table, column, entriesOf(withTerm(draft, "base fee", "60"), "."));
    await workbook.write(stepsOf(table, "Cherry", column, changes));
    expect(workbook.entry("Terms", 7, 0)).toBe("base fee");
    expect(workbook.entry("Terms", 7, 1)).toBe(60);
    expect(workbook.entry("Terms", 7, 3)).toMatch(/^Fee of a hive/);
    expect(workbook.names.get("Terms")!.place).toMatchObject({ rows: 8, columns: 4 });
  });

  it("adds a column for a new contract, with what its copy says", async () => {
    const workbook = terms();
    const { table, draft } = await draftIn(workbook);
    const copy = { ...draft, name: "Plum" };
    const column = columnOf(table, "Plum");
    expect(column).toBe(4);
    const changes = changesOf(table, column, entriesOf(copy, "."));
    await workbook.write(stepsOf(table, "Plum", column, changes));
    const { tables } = await readTables(workbook);
    expect(tables[0]!.contracts).toEqual(["Cherry", "Pear", "Plum"]);
    const read = (name: string) => readContract(tables[0]!.block.values, name);
    expect({ ...read("Plum"), name: "" }).toEqual({ ...read("Cherry"), name: "" });
  });

  it("is refused, and nothing is written, where the table was changed behind it", async () => {
    const workbook = terms();
    const { table, column, draft } = await draftIn(workbook);
    workbook.type("Terms", 1, 1, 9);
    const before = workbook.snapshot();
    const changes = changesOf(
      table,
      column,
      entriesOf(withTerm(draft, "average frames", "7"), "."),
    );
    await expect(workbook.write(stepsOf(table, "Cherry", column, changes))).rejects.toThrow(/9/);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("adds a grade under the closing line of a Terms sheet that Start made", async () => {
    const workbook = new MemoryWorkbook({ Sheet1: [["x"]] });
    await workbook.write(termsSheet("Terms", "Terms", termsOf(USABLE[0]!, "closing")));
    const name = USABLE[0]!.name;
    const { table, column, draft } = await draftIn(workbook, name);
    const grades = [12, 10, 9, 8].map((frames) => {
      return { name: `from ${frames}`, frames: String(frames), brood: "", fee: "" };
    });
    const changes = changesOf(table, column, entriesOf({ ...draft, grades }, "."));
    await workbook.write(stepsOf(table, name, column, changes));
    const { tables } = await readTables(workbook);
    const read = readContract(tables[0]!.block.values, name);
    expect(read.grades.map(({ frames }) => frames)).toEqual([12, 10, 9, 8]);
  });

  it("does not take in what stands beside the table or under it", async () => {
    for (const [row, column] of [
      [3, 4],
      [7, 2],
    ] as const) {
      const workbook = terms();
      workbook.type("Terms", row, column, "my own note");
      const before = workbook.snapshot();
      const { table, draft } = await draftIn(workbook);
      const plum = withTerm({ ...draft, name: "Plum" }, "base fee", "60");
      const at = columnOf(table, "Plum");
      const changes = changesOf(table, at, entriesOf(plum, "."));
      await expect(workbook.write(stepsOf(table, "Plum", at, changes))).rejects.toThrow(
        /"my own note" and must be blank/,
      );
      expect(workbook.snapshot()).toEqual(before);
    }
  });

  it("leaves the rows of a grade blank that is taken away", async () => {
    const { table, column, draft } = await draftIn(terms());
    const changes = changesOf(table, column, entriesOf({ ...draft, grades: [] }, "."));
    expect(changes.map(({ label, now }) => [label, now])).toEqual([
      ["grade 1 name", ""],
      ["grade 1 frames", ""],
    ]);
  });

  it("puts a name that looks like a date or a formula as the text that it is", async () => {
    const { table, column, draft } = await draftIn(terms());
    const grades = [{ ...draft.grades[0]!, name: "8-9" }];
    const [change] = changesOf(table, column, entriesOf({ ...draft, grades }, "."));
    const [step] = stepsOf(table, "Cherry", column, [change!]);
    expect(step).toMatchObject({ put: [["8-9"]], formats: "@" });
  });

  it("is what the functions read afterwards, whatever is written", async () => {
    const figure = fc.integer({ min: 1, max: 60 });
    await fc.assert(
      fc.asyncProperty(figure, figure, fc.constantFrom("name", "table"), async (a, b, kind) => {
        const workbook = terms(kind as "name");
        const { table, column, draft } = await draftIn(workbook);
        const some = withTerm(withTerm(draft, "brood", String(a)), "stores", String(b));
        const changes = changesOf(table, column, entriesOf(some, "."));
        await workbook.write(stepsOf(table, "Cherry", column, changes));
        const { tables } = await readTables(workbook);
        const read = readContract(tables[0]!.block.values, "Cherry");
        expect([read.brood, read.stores]).toEqual([a, b]);
        expect(read).toEqual(faultsOf(some, ".").contract);
      }),
      { numRuns: 30 },
    );
  });
});

describe("what is wrong", () => {
  const fault = async (label: string, text: string, sign: "." | "," = ".") => {
    const { draft } = await draftIn(terms());
    return faultsOf(withTerm(draft, label, text), sign);
  };

  it("is said at the field, in the words of the functions", async () => {
    expect((await fault("average frames", "eight")).at.get("average frames")).toBe(
      'average frames: "eight" stands where a number from 0 to 60 frames was expected',
    );
    expect((await fault("comb rule", "half")).at.get("comb rule")).toContain("two-thirds");
  });

  it("is a figure with the other decimal sign, and not with the user's own", async () => {
    expect((await fault("average frames", "7,5")).contract).toBeNull();
    expect((await fault("average frames", "7,5", ",")).contract?.averageFrames).toBe(7.5);
  });

  it.each([
    ["minimum frames", "9", ["minimum frames", "average frames"]],
    ["most frames a hive", "5", ["most frames a hive", "average frames"]],
    ["bonus ceiling", "5", ["bonus ceiling", "bonus a frame"]],
    ["brood comb covered", "50", ["brood comb covered", "brood counted as"]],
    ["inspect from hour", "24", ["inspect from hour", "inspect to hour"]],
  ])("is said of %s at every term that it contradicts", async (label, text, labels) => {
    const { at, whole } = await fault(label, text);
    expect([...at.keys()]).toEqual(labels);
    expect([...at.values()].every((why) => why === whole)).toBe(true);
  });

  it("is a minimum over what the best grade asks, said at both", async () => {
    const { draft } = await draftIn(terms());
    const high = withTerm(withTerm(draft, "average frames", "12"), "minimum frames", "11");
    const { at, whole } = faultsOf(high, ".");
    expect(whole).toBe('minimum frames 11 is over the 10 that the best grade, "Prime", asks');
    expect([...at.keys()]).toEqual(["minimum frames", "grade 1 frames"]);
  });

  it("is a grade that is named after a term, said at the grade and not at the term", async () => {
    const { draft } = await draftIn(terms());
    const twice = { name: "brood", frames: "9", brood: "", fee: "" };
    const { at } = faultsOf({ ...draft, grades: [twice, { ...twice, frames: "7" }] }, ".");
    expect([...at.keys()]).toEqual(["grade 1 name", "grade 2 name"]);
  });
});

describe("figures that stand as text", () => {
  const withText = (decimal: string, text: string) =>
    terms("name", [
      ["Term", "Cherry", "Pear", "Meaning"],
      ["decimal sign", decimal, "", ""],
      ["average frames", `'${text}`, 7, ""],
      ["minimum frames", 6, 5, ""],
    ]);
  const read = async (decimal: string, text: string, sign: "." | ",") => {
    const { tables } = await readTables(withText(decimal, text));
    const table = tables[0]!;
    const draft = draftOf("Cherry", table.block, 1, sign);
    const changes = changesOf(table, 1, entriesOf(draft, sign));
    return { field: draft.terms.get("average frames"), faults: faultsOf(draft, sign), changes };
  };

  it.each([
    [",", "7,5", ",", "7,5"],
    [",", "7,5", ".", "7.5"],
    [".", "7.5", ",", "7,5"],
  ] as const)(
    "with the contract's sign %s, %s typed by %s: shown as %s, no fault and no change",
    async (decimal, text, sign, shown) => {
      const { field, faults, changes } = await read(decimal, text, sign);
      expect(field).toBe(shown);
      expect(faults.at).toEqual(new Map());
      expect(faults.contract?.averageFrames).toBe(7.5);
      expect(changes).toEqual([]);
    },
  );

  it("that no function can read are offered to be saved as figures", async () => {
    const { changes } = await read(".", "7,5", ",");
    expect(changes).toEqual([{ label: "average frames", was: "'7,5", now: 7.5, row: 2 }]);
  });

  it("are written anew where the sign itself is changed", async () => {
    const { tables } = await readTables(withText(",", "7,5"));
    const draft = withTerm(draftOf("Cherry", tables[0]!.block, 1, ","), "decimal sign", ".");
    const changes = changesOf(tables[0]!, 1, entriesOf(draft, ","));
    expect(changes.map(({ label, now }) => [label, now])).toEqual([
      ["average frames", 7.5],
      ["decimal sign", "."],
    ]);
  });

  it("may be percents, in either way of writing them", async () => {
    for (const [percents, kept] of [
      ["percent", 25],
      ["fraction", 0.25],
    ] as const) {
      const { tables } = await readTables(
        terms("name", [
          ["Term", "Cherry", "Pear", "Meaning"],
          ["percents written as", percents, "", ""],
          ["deposit", "'25%", 7, ""],
          ["share opened", kept, "", ""],
        ]),
      );
      const draft = draftOf("Cherry", tables[0]!.block, 1, ".");
      expect(changesOf(tables[0]!, 1, entriesOf(draft, "."))).toEqual([]);
      const { contract } = faultsOf(draft, ".");
      expect([contract?.deposit, contract?.openedShare]).toEqual([25, 25]);
    }
  });
});
