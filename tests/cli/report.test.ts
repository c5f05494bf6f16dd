import { Workbook } from "@cj-tech-master/excelts";
import { afterEach, describe, expect, it, vi } from "vitest";
import { progressOn } from "../../src/cli/progress.js";
import { textTable, wrap } from "../../src/cli/text-table.js";
import { folder } from "./folder.js";
import { bytesOf, TERMS, YARD, yardBook } from "./yard.js";

async function printed(yard: (string | number)[][], ...args: string[]): Promise<string> {
  const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard, TERMS)) });
  const { out } = await test.run("grade", "yard.xlsx", ...args);
  expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  return out;
}

describe("what is printed", () => {
  it("is each hive's strength, brood, grade and note, then the grades of each lot", async () => {
    expect(await printed(YARD, "--for", "Cherry")).toBe(`Sheet "Yard", headings in row 1

Hive  Lot    Frames    Bees  Brood  Combs  Cherry    Note
A1    Shed      7.5  18,000      4         fair      fair at the low end, strong
                                                     at the high end
A2    Shed        9  21,600      5         strong
B1    Coast       5  12,000      2         no grade  frames 4.5-5.5 of 6
B2    Coast       3   7,200      1         no grade  frames 3 of 6

Lot    Contract  Hives  Average  Verdict  Grades
Shed   Cherry        2     8.25  met      1 strong, 1 fair
Coast  Cherry        2           not met  2 no grade

Average and verdict are those of the hives opened. How sure they are of a lot
  that was opened in part, LOT and the statement say: they ask how many hives it
  has.

Calculated: 1 formula with functions of Comb Tally, 0 of Excel's own.
Written: /yard-graded.xlsx
`);
  });

  it("says of a lot of which hives were not opened how sure its average is, and what share was asked", async () => {
    const listed = [...YARD, ...[3, 4, 5].map((n) => [`A${n}`, "Shed", "", "", ""])];
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook(listed, [...TERMS, ["share opened", 50, 50]])),
    });
    const { out } = await test.run("grade", "yard.xlsx", "--for", "Cherry");
    expect(out).toMatch(/Shed +Cherry +5 +8.25 +met +1 strong, 1 fair, 3 not opened/);
    expect(out).toContain("\n\nNot opened in Shed: A3-A5\n");
    expect(out).not.toMatch(/^A4/m);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /Lot Shed: 2 of 5 hives are opened, 40 %; contract Cherry asks for 50 %; the whole lot's average lies between [\d.]+ and [\d.]+, 95 times in 100\./,
    );
  });

  it("counts no hive of a lot that was combined into another", async () => {
    const gone = [...YARD, ["A3", "Shed", "combined into A2", "", ""]];
    expect(await printed(gone, "--for", "Cherry")).toMatch(
      /Shed +Cherry +2 +8.25 +met +1 strong, 1 fair, 1 no longer in the\s+lot/,
    );
  });

  it("judges no lot where hives stand without one, and says in which rows", async () => {
    const once = YARD.map((row, i) => row.map((cell, k) => (k === 1 && i === 2 ? "" : cell)));
    const out = await printed(once, "--for", "Cherry");
    expect(out).toMatch(/Shed +Cherry +1 +1 fair/);
    expect(out).toContain("Lot Shed: row 3 has no lot: write it in every row.");
  });

  it("shows each contract of the terms where the workbook has formulas of its own", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "one.xlsx");
    const { out } = await test.run("grade", "one.xlsx", "--out", "two.xlsx");
    expect(out).toMatch(/Hive +Lot +Frames +Bees +Brood +Combs +Cherry +Pear/);
    expect(out).toMatch(/A1 +Shed +7.5 +18,000 +4 +fair +good/);
    expect(out).toMatch(/Coast +Pear +2 +5 +not met +1 light, 1 no grade/);
  });

  it("names the cells with an error and the reason, one a row", async () => {
    const yard = YARD.map((row, i) => (i === 2 ? ["A2", "Shed", "lots", 5, ""] : row));
    const out = await printed(yard, "--for", "Cherry");
    expect(out).toMatch(/A2 +Shed +\? +\? +\? +\? +unreadable/);
    expect(out.match(/Yard!/g)).toHaveLength(1);
    expect(out).toContain('Yard!G3: #VALUE! "Frames of bees", row 3: "lots" is not understood');
  });
});

describe("a table in text", () => {
  it("wraps its last column beside the others, or under them where there is no room", () => {
    const rows = [
      ["Hive", "Note"],
      ["A", "one two three four five six seven"],
      ["B", ""],
    ];
    expect(textTable(rows, 30)).toEqual([
      "Hive  Note",
      "A     one two three four five",
      "      six seven",
      "B",
    ]);
    expect(textTable(rows, 24)).toEqual([
      "Hive",
      "A",
      "      one two three four",
      "      five six seven",
      "B",
    ]);
  });

  it("leaves a long word whole", () => {
    expect(wrap("an unbreakableword here", 8)).toEqual(["an", "unbreakableword", "here"]);
  });
});

describe("progress", () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it("is told after a second, a few times a second, and wiped at the end", () => {
    vi.useFakeTimers({ toFake: ["performance"] });
    let text = "";
    const progress = progressOn((part) => (text += part));
    progress.step("reading");
    vi.advanceTimersByTime(900);
    progress.tick();
    expect(text).toBe("");
    progress.step("calculating");
    vi.advanceTimersByTime(200);
    for (let i = 0; i < 1500; i++) progress.tick();
    expect(text).toBe("\r\x1b[Kcalculating (1)");
    vi.advanceTimersByTime(300);
    progress.tick();
    progress.done();
    expect(text).toBe("\r\x1b[Kcalculating (1)\r\x1b[Kcalculating (1,501)\r\x1b[K");
  });

  it("is silent where nobody watches", () => {
    const progress = progressOn(null);
    progress.step("reading");
    progress.done();
  });
});

it("shows a lot that could not be settled by its error, and why below", async () => {
  const demo = new Workbook();
  await demo.xlsx.readFile("examples/cherry-and-pear.xlsx");
  demo.getWorksheet("Terms")!.getCell("B3").value = "six-ish";
  const test = await folder({ "yard.xlsx": new Uint8Array(await demo.xlsx.writeBuffer()) });
  const { code, out } = await test.run("grade", "yard.xlsx");
  expect(code).toBe(3);
  expect(out).toMatch(/Cherry!A1\n#VALUE!\n/);
  expect(out).toContain('minimum frames: "six-ish"');
  expect(out).not.toContain("CellError");
});
