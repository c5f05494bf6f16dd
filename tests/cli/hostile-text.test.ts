import type { Workbook } from "@cj-tech-master/excelts";
import { describe, expect, it } from "vitest";
import { folder } from "./folder.js";
import { bytesOf, yardBook } from "./yard.js";

/** Texts that are something else to a spreadsheet, a page, a pattern, a header or a file. */
const HOSTILE = [
  '=HYPERLINK("http://example.invalid","x")',
  "+1+1",
  "@SUM(A1)",
  "-2+3",
  "<img src=x onerror=alert(1)>",
  "&P&N&D",
  "$& $1 \\0",
  "(a+)+$",
  "__proto__",
  "]]></v><f>1+1</f>",
];
const terms = (name: string): (string | number)[][] => [
  ["Term", name],
  ["average frames", 8],
  ["minimum frames", 6],
  ["grade 1 name", name],
  ["grade 1 frames", 6],
];
const yard = (text: string): (string | number)[][] => [
  ["Hive", "Lot", "Frames of bees", "Notes"],
  [text, text, "7-8", text],
  ["B", text, text, ""],
];

const formulas = (book: Workbook): string[] => {
  const found: string[] = [];
  for (const sheet of book.worksheets)
    sheet.eachRow((row) => row.eachCell((cell) => cell.formula && found.push(cell.formula)));
  return found;
};

it("refuses a contract whose name is longer than a text in a formula may be", async () => {
  // 255 signs are what Excel takes (from memory).
  const graded = async (length: number) => {
    const name = "x".repeat(length);
    const book = yardBook(yard("S"), terms(name));
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    return { ...(await test.run("grade", "yard.xlsx")), files: await test.names() };
  };
  expect((await graded(255)).files).toContain("yard-graded.xlsx");
  const refused = await graded(256);
  expect(refused.err).toContain("a formula can name one of up to 255 signs");
  expect([refused.code, refused.files]).toEqual([1, ["yard.xlsx"]]);
});

describe.each(HOSTILE)("the text %s, as hive, lot, count, note, contract and grade", (text) => {
  it("stays a text in a workbook that is graded", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard(text), terms(text))) });
    const { code, out } = await test.run("grade", "yard.xlsx");
    expect([code, out.includes("Lot")]).toEqual([3, true]);
    const book = await test.open("yard-graded.xlsx");
    const sheet = book.worksheets[0]!;
    expect(formulas(book)).toEqual([
      `_xldudf_COMB_YARD_COLUMNS($A$1:$D$3,Terms,"${text.replaceAll('"', '""')}")`,
    ]);
    expect(["A2", "B2", "D2", "C3", "J2"].map((at) => sheet.getCell(at).value)).toEqual([
      text,
      text,
      text,
      text,
      text,
    ]);
  });

  it("is no formula in a text of cells", async () => {
    const quoted = `"${text.replaceAll('"', '""')}"`;
    const test = await folder({
      "yard.csv": `Hive,Bees\n${quoted},8\n`,
      "terms.xlsx": await bytesOf(yardBook([], terms(text))),
    });
    const { code } = await test.run("grade", "yard.csv", "--contract", "terms.xlsx");
    expect(code).toBe(0);
    const [, row = ""] = (await test.bytes("yard-graded.csv")).toString().split("\n");
    const added = row.slice(`${quoted},8,`.length);
    expect(added).toContain(
      /^[=+\-@]/.test(text) ? `'${quoted.slice(1, -1)}` : quoted.slice(1, -1),
    );
    expect(added.split(",").filter((cell) => /^"?[=+\-@]/.test(cell))).toEqual([]);
  });

  it("stays a text in a statement, and is no code in its footer", async () => {
    const whole = [...yard(text).slice(0, 2), ["B", text, 9, ""]];
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(whole, terms(text))) });
    const { code, err } = await test.run(
      "statement",
      "yard.xlsx",
      `--lot=${text}`,
      `--contract=${text}`,
    );
    expect([code, err]).toEqual([0, ""]);
    const book = await test.open("yard-statement.xlsx");
    expect(formulas(book)).toEqual([]);
    const footer = book.worksheets[0]!.headerFooter.oddFooter ?? "";
    expect(footer.replaceAll("&&", "").match(/&[A-Z]/g)).toEqual(["&L", "&R", "&P", "&N"]);
  });
});
