import { readFile } from "node:fs/promises";
import { read, type CellObject, type WorkBook, type WorkSheet } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { textOf } from "../../src/workbook/workbook.js";
import { partsOf } from "./parts.js";
import { folder } from "./folder.js";
import { faultsOf } from "./package-faults.js";
import { bytesOf, fill, TERMS, YARD, yardBook } from "./yard.js";

const DEMO = new URL("../../examples/cherry-and-pear.xlsx", import.meta.url);
const SHIPPED = new URL("../../examples/shed-cherry-statement.xlsx", import.meta.url);
const SHED = ["statement", "yard.xlsx", "--lot", "Shed", "--contract", "Cherry", "--size", "160"];

const cells = (sheet: WorkSheet): [string, CellObject][] =>
  Object.entries(sheet).filter(([address]) => !address.startsWith("!")) as [string, CellObject][];

/** The filled cells of the row in which a label stands first. */
function rowOf(book: WorkBook, label: string): CellObject[] {
  const sheet = book.Sheets["Statement"]!;
  const row = cells(sheet).find(([address, { v }]) => /^A\d/.test(address) && v === label)?.[0];
  return cells(sheet)
    .filter(
      ([address, { v }]) =>
        /^[A-H]/.test(address) && address.slice(1) === row?.slice(1) && v !== undefined,
    )
    .map(([, cell]) => cell);
}

const texts = (book: WorkBook): unknown[] => cells(book.Sheets["Statement"]!).map(([, { v }]) => v);

/** The statement on a small yard, read back by a reader that did not write it. */
async function small(more: string[] = [], yard = YARD): Promise<WorkBook> {
  const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard)) });
  const { code, err } = await test.run("statement", "yard.xlsx", "--contract", "Cherry", ...more);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return read(await test.bytes("yard-statement.xlsx"), { cellNF: true, cellStyles: true });
}

describe("the statement on the demo's Shed lot", () => {
  // Added up by hand from examples/yard.mjs: 17 hives count, 152.5 frames of bees between them; S07
  // and S12 are short and S19 has no laying queen. 16 of 20 are Standard and 1 is Light, so 128 and
  // 8 of 160 hives at 60 and 45; the bonus is 2 a frame over 8 for those 136; the deposit 30 % of
  // 160 at 60. 30 days after 27 March is 26 April.
  it("comes to the figures worked by hand, to the cent", async () => {
    const book = read(await readFile(SHIPPED), { cellNF: true });
    const row = (label: string) => rowOf(book, label).map(({ v }) => v);
    expect(row("Average frames")[1]).toBeCloseTo(152.5 / 17, 12);
    expect(row("Standard").slice(1)).toEqual([128, 60, 7680]);
    expect(row("Light").slice(1)).toEqual([8, 45, 360]);
    expect(row("bonus: average 8.97 of 8 frames, at most 8 a hive").at(-1)).toBe(264);
    expect(row("total")).toEqual(["total", 8304]);
    expect(row("balance, due 30 days after the inspection").at(-1)).toBe(5424);
    expect(rowOf(book, "due on").at(-1)).toMatchObject({ w: "26 Apr 2026" });
    expect(rowOf(book, "Hives opened on").at(-1)).toMatchObject({ w: "27 Mar 2026" });
    expect(row("Met or not")[1]).toBe("met");
    expect(row("S19")).toContain("no laying queen");
  });

  it("is shipped as it is written, byte for byte, and what it is read from stays as it was", async () => {
    const test = await folder({ "yard.xlsx": await readFile(DEMO) });
    expect(await test.run(...SHED)).toMatchObject({ code: 0, err: "" });
    expect((await test.bytes("yard-statement.xlsx")).equals(await readFile(SHIPPED))).toBe(true);
    expect((await test.bytes("yard.xlsx")).equals(await readFile(DEMO))).toBe(true);
  });
});

describe("a statement's file", () => {
  it("holds values and no formula, money and dates in formats of their own", async () => {
    const book = await small(["--lot", "Shed", "--size", "10"]);
    expect(book.SheetNames).toEqual(["Statement"]);
    const all = cells(book.Sheets["Statement"]!);
    expect(all.length).toBeGreaterThan(60);
    expect(all.filter(([, { f }]) => f !== undefined)).toEqual([]);
    expect(all.filter(([, { t }]) => t === "e")).toEqual([]);
    expect(rowOf(book, "Share under the minimum")[1]).toMatchObject({ t: "n", z: "0.0 %" });
    expect(rowOf(book, "Average frames")[1]).toMatchObject({ t: "n", z: "0.0##" });
  });

  it.each([
    ["letter", "1"],
    ["a4", "9"],
  ])(
    "is set for %s paper: one page wide, the hives' headings on each further page",
    async (paper, size) => {
      const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
      const run = await test.run(
        "statement",
        "yard.xlsx",
        "--contract",
        "Cherry",
        "--lot",
        "Shed",
        "--paper",
        paper,
      );
      expect(run.code).toBe(0);
      const bytes = await test.bytes("yard-statement.xlsx");
      const parts = await partsOf(bytes);
      const sheet = textOf(parts, "xl/worksheets/sheet1.xml")!;
      expect(/<pageSetup [^>]*>/.exec(sheet)?.[0]).toContain(`paperSize="${size}"`);
      expect(/<pageSetup [^>]*>/.exec(sheet)?.[0]).toContain('fitToHeight="0"');
      expect(sheet).toContain('<pageSetUpPr fitToPage="1"/>');
      const book = read(bytes);
      const names = new Map(book.Workbook?.Names?.map(({ Name, Ref }) => [Name, Ref]));
      const headings = /\$(\d+):\$\1$/.exec(names.get("_xlnm.Print_Titles") ?? "")?.[1];
      expect(book.Sheets["Statement"]![`A${headings}`]).toMatchObject({ v: "Hive" });
      const last = /\$H\$(\d+)$/.exec(names.get("_xlnm.Print_Area") ?? "")?.[1];
      expect(book.Sheets["Statement"]![`A${last}`]).toMatchObject({ v: "A2" });
    },
  );

  it("has a chart of Excel's own, of the hives and the lines asked, and nothing to repair", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await test.run("statement", "yard.xlsx", "--contract", "Cherry", "--lot", "Shed");
    const bytes = await test.bytes("yard-statement.xlsx");
    expect(await faultsOf(bytes)).toEqual([]);
    const chart = textOf(await partsOf(bytes), "xl/charts/chart1.xml")!;
    expect(chart.match(/<c:ser>/g)).toHaveLength(3);
    expect(chart).toContain("<c:v>8: average asked, strong</c:v>");
    expect(chart).toMatch(/<c:v>6: least a hive, fair<\/c:v>/);
  });

  it("has a chart also where nothing is asked that could be drawn as a line", async () => {
    const yard = yardBook(YARD, [
      ["Term", "Free"],
      ["brood", 1],
    ]);
    const test = await folder({ "yard.xlsx": await bytesOf(yard) });
    expect((await test.run("statement", "yard.xlsx", "--lot", "Shed")).err).toBe("");
    expect(await faultsOf(await test.bytes("yard-statement.xlsx"))).toEqual([]);
  });

  it("keeps a text as text, whatever sign it begins with", async () => {
    const signs = ["=1+1", "+1+1", "-1+1", "@SUM(A1)"];
    const yard = [YARD[0]!, ...signs.map((id) => [id, "=HYPERLINK(1)", 9, 4, ""])];
    const book = await small(["--lot", "=HYPERLINK(1)", "--grower", "=cmd|' /C calc'!A0"], yard);
    const all = cells(book.Sheets["Statement"]!);
    for (const text of [...signs, "=HYPERLINK(1)", "=cmd|' /C calc'!A0"]) {
      const found = all.filter(([, { v }]) => v === text);
      expect(found.length, text).toBeGreaterThan(0);
      for (const [, cell] of found) expect(cell).toMatchObject({ t: "s", z: "@" });
      for (const [, cell] of found) expect(cell.f).toBeUndefined();
    }
  });

  it("holds signs that stand for something in a file or in a footer", async () => {
    const yard = [YARD[0]!, ["H1", "A&B <1>", 9, 4, ""]];
    const book = await small(["--lot", "A&B <1>", "--grower", "one\u0007two\n"], yard);
    expect(texts(book)).toContain("one two");
    expect(texts(book)).toContain("A&B <1>");
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard)) });
    await test.run("statement", "yard.xlsx", "--contract", "Cherry", "--lot", "A&B <1>");
    const parts = await partsOf(await test.bytes("yard-statement.xlsx"));
    const footer = /<oddFooter>(.*?)<\/oddFooter>/.exec(
      textOf(parts, "xl/worksheets/sheet1.xml")!,
    )?.[1];
    expect(footer).toContain("lot A&amp;&amp;B &lt;1&gt;&amp;R");
  });

  it("tells how the hives were picked, by words or in the user's own", async () => {
    const book = await small([
      ...["--lot", "Shed", "--picked", "at noon"],
      ...["--seed-one", "apple", "--seed-two", "bloom"],
    ]);
    expect(texts(book)).toContain('"apple" and "bloom"');
    expect(texts(book)).toContain("at noon");
  });
});

describe("which contract a statement goes by", () => {
  it("is one of the workbook's own, a published standard, or another workbook's", async () => {
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook(YARD, null)),
      "terms.xlsx": await bytesOf(yardBook([], TERMS)),
    });
    const of = async (...args: string[]) => {
      const { err } = await test.run(
        "statement",
        "yard.xlsx",
        "--lot",
        "Shed",
        "--out",
        "s.xlsx",
        ...args,
      );
      return err || rowOf(read(await test.bytes("s.xlsx")), "Contract")[1]?.v;
    };
    expect(await of("--contract", "terms.xlsx", "--for", "pear")).toBe("Pear");
    expect(await of("--contract", "Almond Board of California")).toBe("Almond Board of California");
    expect(await of("--contract", "terms.xlsx")).toContain('several contracts: "Cherry", "Pear"');
    expect(await of()).toContain("There are no terms to settle by");
    expect(await of("--contract", "Plum")).toContain('"Plum" is no file with terms');
  });

  it("is asked for where the workbook has several, and refused where it has none so named", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    expect((await test.run("statement", "yard.xlsx")).err).toContain('"Cherry", "Pear"');
    expect((await test.run("statement", "yard.xlsx", "--contract", "Plum")).err).toBe(
      'No contract of the terms is named "Plum"; there are "Cherry", "Pear".\n',
    );
    expect(await test.names()).toEqual(["yard.xlsx"]);
  });

  it("is the one that the lot's hives name, and no other", async () => {
    const yard = YARD.map((row, i) => [...row, i === 0 ? "Contract" : i < 3 ? "Cherry" : "Pear"]);
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard)) });
    const run = (...args: string[]) =>
      test.run("statement", "yard.xlsx", "--out", "s.xlsx", ...args);
    expect((await run("--lot", "Shed", "--contract", "Pear")).err).toBe(
      'No statement: the lot\'s hives name the contract "Cherry", and not "Pear". Give the one they name, or mend the column Contract.\n',
    );
    expect(await test.names()).toEqual(["yard.xlsx"]);
    expect((await run("--lot", "Coast")).err).toBe("");
    expect(rowOf(read(await test.bytes("s.xlsx")), "Contract")[1]?.v).toBe("Pear");
    expect((await run("--lot", "Shed", "--contract", "cherry")).err).toBe("");
    expect(rowOf(read(await test.bytes("s.xlsx")), "Contract")[1]?.v).toBe("Cherry");
  });

  it("is read with a yard in a CSV file too", async () => {
    const test = await folder({
      "yard.csv": "Hive,Lot,Frames of bees\nA1,Shed,7-8\nA2,Shed,9\n",
      "terms.xlsx": await bytesOf(yardBook([], TERMS)),
    });
    const args = ["--contract", "terms.xlsx", "--for", "Cherry"];
    expect((await test.run("statement", "yard.csv", ...args)).err).toBe("");
    const book = read(await test.bytes("yard-statement.xlsx"));
    expect(rowOf(book, "Average frames")[1]?.v).toBe((7.5 + 9) / 2);
  });
});

describe("a statement is refused", () => {
  const refused = async (args: string[], code: number, message: string | RegExp) => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    const run = await test.run("statement", ...args);
    expect(run.err).toMatch(message);
    expect(run.code).toBe(code);
    expect(await test.names()).toEqual(["yard.xlsx"]);
  };
  const yard = ["yard.xlsx", "--contract", "Cherry"];

  it.each([
    [[], 2, "Say which file"],
    [["yard.xlsx", "other.xlsx"], 2, "Say which file"],
    [[...yard, "--size", "12.5"], 2, "--size 12.5: a whole number of hives"],
    [[...yard, "--delivered", "0"], 2, "--delivered 0: a whole number of hives"],
    [[...yard, "--paper", "legal"], 2, "--paper legal: letter or a4"],
    [[...yard, "--seed-one", "apple"], 2, "--seed-one and --seed-two"],
    [[...yard, "--grower", " "], 2, "--grower is blank"],
    [[...yard, "--values"], 2, "--values"],
    [[...yard, "--size", "1", "--lot", "Shed"], 1, "a lot of 1 hive cannot have 2 in the sheet"],
    [yard, 1, 'the column "Lot" holds several lots ("Shed"; "Coast"): say which one'],
    [[...yard, "--lot", "Hill"], 1, 'no opened hive stands in the lot "Hill"'],
    [[...yard, "--sheet", "Fields"], 1, 'no yard sheet on a sheet "Fields"'],
    [[...yard, "--out", "s.csv"], 1, "A statement is a workbook"],
    [[...yard, "--out", "yard.xlsx"], 1, "never written over"],
    [["gone.xlsx"], 1, "There is no file"],
  ])("for %j", async (args, code, message) => {
    await refused(args, code, message);
  });

  it("where its file is there already and was not named", async () => {
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook()),
      "yard-statement.xlsx": "kept",
    });
    const { code, err } = await test.run("statement", ...yard);
    expect(code).toBe(1);
    expect(err).toContain("is already there");
    expect((await test.bytes("yard-statement.xlsx")).toString()).toBe("kept");
  });

  it("for a row that cannot be read, by its number", async () => {
    const bad = [...YARD, ["B9", "Shed", "a lot", 3, ""]];
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(bad)) });
    const { code, err } = await test.run("statement", ...yard, "--lot", "Shed");
    expect(code).toBe(1);
    expect(err).toMatch(/^No statement: .*row 6.*"a lot"/);
    expect(await test.names()).toEqual(["yard.xlsx"]);
  });

  it("for a count that a formula makes and that cannot be calculated", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getCell("C3").value = { formula: "NOSUCH(1)" };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { code, err } = await test.run("statement", ...yard);
    expect(code).toBe(1);
    expect(err).toContain("Yard!C3");
  });

  it("between two yard sheets, until one is named", async () => {
    const book = yardBook();
    fill(book.addWorksheet("Other"), YARD);
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    expect((await test.run("statement", ...yard)).err).toContain("say on which sheet with --sheet");
    const other = ["--sheet", "other", "--lot", "Shed"];
    expect((await test.run("statement", ...yard, ...other)).code).toBe(0);
  });
});

it("says how it is asked for", async () => {
  const test = await folder({});
  expect((await test.run("statement", "--help")).out).toContain("comb-tally statement FILE --lot");
  expect((await test.run("--help")).out).toContain("comb-tally statement --help");
});
