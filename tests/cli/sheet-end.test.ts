import { describe, expect, it } from "vitest";
import { folder } from "./folder.js";
import { bytesOf, FEE_TERMS, yardBook } from "./yard.js";

const HIVES = [
  ["Hive", "Bees"],
  ["1", 9],
  ["2", 8],
];

/** What the command line says of a sheet, changed before it is written. */
async function said(
  rows: (string | number)[][],
  args: string[],
  change: (book: ReturnType<typeof yardBook>) => void = () => {},
) {
  const book = yardBook(rows, FEE_TERMS);
  change(book);
  const test = await folder({ "yard.xlsx": await bytesOf(book) });
  const [command, ...more] = args;
  return test.run(command!, "yard.xlsx", ...more);
}
const STATEMENT = ["statement", "--contract", "Cherry", "--size", "100"];
const GRADE = ["grade", "--for", "Cherry"];

describe("hives without a number at the end of the sheet", () => {
  const stray = [...HIVES, ["", 4], ["", "4,5"]];

  it("refuse the statement, by their rows", async () => {
    expect((await said(stray, STATEMENT)).err).toMatch(/rows 4 and 5 have counts and no hive id/);
  });

  it("by rows counted from the headings, which is said where those stand lower", async () => {
    const { err } = await said([["Spring"], ["", ""], ...stray], STATEMENT);
    expect(err).toMatch(/rows 4 and 5 have .* Rows are counted from the headings in row 3\.\n$/);
  });

  it("are noted where the sheet is graded", async () => {
    const { out } = await said(stray, GRADE);
    // The row above the first of them speaks of it too.
    expect(out.match(/no hive id: not counted/g)).toHaveLength(3);
  });

  // By hand: (9 + 8) / 2.
  it.each<[string, (string | number)[], string | null]>([
    ["a sum that is calculated without a word", ["", ""], "SUM(B2:B3)"],
    ["a remark under the counts", ["", "judged by JB"], null],
    ["a word for a sum", ["Total", 17], null],
  ])("are not taken for it: %s", async (_, row, formula) => {
    const { err, out } = await said([...HIVES, ["", ""], row], STATEMENT, (book) => {
      if (formula) book.getWorksheet("Yard")!.getCell("B5").value = { formula, result: 17 };
    });
    expect(err).toBe("");
    expect(out).toContain("Average frames: 8.5, of 2 hives");
  });
});

describe("a lot that is written once for several hives", () => {
  const rows = [
    ["Lot", "Hive", "Bees"],
    ["T1", "1", 9],
    ["", "2", 8],
    ["", "3", 7],
    ["T2", "4", 9],
  ];

  it("refuses the statement", async () => {
    expect((await said(rows, [...STATEMENT, "--lot", "T1"])).err).toContain(
      "rows 3 and 4 have no lot",
    );
  });

  // By hand: (9 + 8 + 7) / 3 = 8.
  it("counts for all of them where its cell is merged over their rows", async () => {
    const merge = (book: ReturnType<typeof yardBook>) =>
      book.getWorksheet("Yard")!.mergeCells("A2:A4");
    const { err, out } = await said(rows, [...STATEMENT, "--lot", "T1"], merge);
    expect(err).toBe("");
    expect(out).toContain("Average frames: 8, of 3 hives");
    expect((await said(rows, GRADE, merge)).out).toMatch(/T1 +Cherry +3 /);
  });
});

describe("two yards on one sheet", () => {
  const hives = (lot: string, bees: number) => [
    ["Hive", "Lot", "Bees"],
    ["1", lot, bees],
    ["2", lot, bees],
  ];
  const rows = [["Yard 1"], ...hives("Hill", 9), [""], ["Yard 2"], ...hives("River", 10)];

  it("are told apart by the lot", async () => {
    const { err, out } = await said(rows, [...STATEMENT, "--lot", "River"]);
    expect(err).toBe("");
    expect(out).toContain("Average frames: 10, of 2 hives");
  });

  it("or by the cells that the refusal names", async () => {
    const { err } = await said(rows, [...STATEMENT, "--sheet", "Yard"]);
    expect(err).toContain(
      "There are several yard sheets, 'Yard'!A2:C6, 'Yard'!A7:C9: " +
        "say which by its cells with --sheet, such as --sheet A2:C6.",
    );
    for (const place of ["'Yard'!A7:C9", "yard!$A$7:$C$9", "a7:c9"]) {
      const { out } = await said(rows, [...STATEMENT, "--sheet", place]);
      expect(out).toContain("Average frames: 10, of 2 hives");
    }
  });

  it("are both named where both have the lot", async () => {
    const both = [["Yard 1"], ...hives("Hill", 9), [""], ["Yard 2"], ...hives("Hill", 10)];
    const { err } = await said(both, [...STATEMENT, "--lot", "Hill"]);
    expect(err).toContain('There are several yard sheets that hold the lot "Hill", ');
  });
});
