import { describe, expect, it } from "vitest";
import { readCsv, toWorkbook } from "../../src/cli/csv.js";
import { folder } from "./folder.js";
import { bytesOf, TERMS, yardBook } from "./yard.js";

const CSV = [
  "Spring yard, north",
  "Hive,Lot,Frames of bees,Brood frames,Note",
  'A1,Shed, 7-8 ,4,"fed, ""light"""',
  "007,Shed,8-Jul,5,",
  "",
  "12,Coast,9",
  "",
].join("\r\n");

const cells = (text: string | Uint8Array): unknown[] => {
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  const values = toWorkbook(readCsv(bytes, "x.csv"), "x").worksheets[0]!.getSheetValues();
  return values.slice(1).map((row) => (row as unknown[]).slice(1));
};

async function files(csv: string | Uint8Array = CSV) {
  return folder({ "yard.csv": csv, "terms.xlsx": await bytesOf(yardBook([], TERMS)) });
}

describe("a text of cells", () => {
  it("keeps what is no plain number as it was written", () => {
    expect(cells("7-8,8-Jul,007,7.5,-3,1e3,12345678901234567,7½")).toEqual([
      ["7-8", "8-Jul", "007", 7.5, -3, "1e3", "12345678901234567", "7½"],
    ]);
  });

  it("may be parted by semicolons, with decimal commas as text", () => {
    expect(cells("Hive;Bees\n1;7,5\n")).toEqual([
      ["Hive", "Bees"],
      [1, "7,5"],
    ]);
  });

  it("is read from UTF-8, UTF-16 and the code page of Windows", () => {
    const utf16 = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from("7½,x", "utf16le")]);
    for (const bytes of [Buffer.from("\ufeff7½,x"), utf16, Buffer.from("7½,x", "latin1")]) {
      expect(cells(bytes)).toEqual([["7½", "x"]]);
    }
  });

  it("with a quote that is never closed is refused", async () => {
    const test = await files('Hive,Bees\n1,"7-8\n2,9\n');
    expect(await test.run("grade", "yard.csv", "--contract", "terms.xlsx")).toMatchObject({
      code: 1,
      err: "/yard.csv: the quote opened in line 2 is never closed.\n",
    });
  });
});

describe("a graded CSV file", () => {
  it("has the computed columns behind its own, which stay as they are", async () => {
    const test = await files();
    const { code, err } = await test.run(
      "grade",
      "yard.csv",
      "--contract",
      "terms.xlsx",
      "--for",
      "Cherry",
    );
    expect([code, err]).toEqual([0, ""]);
    const lines = (await test.bytes("yard-graded.csv")).toString().split("\r\n");
    expect(lines[0]).toBe("Spring yard, north");
    expect(lines[1]).toMatch(/^Hive,Lot,Frames of bees,Brood frames,Note,Frames of bees,Bees,/);
    expect(lines[2]).toMatch(/^A1,Shed, 7-8 ,4,"fed, ""light""",7.5,18000,4,,fair,0.5,/);
    expect(lines[3]).toMatch(/^007,Shed,8-Jul,5,,7.5,/);
    expect(lines[4]).toBe("");
    expect(lines[5]).toMatch(/^12,Coast,9,,,9,21600,/);
    expect(lines).toHaveLength(7);
  });

  it("keeps its semicolons and its mark, and writes decimal commas", async () => {
    const test = await files("\ufeffHive;Bees\nA;7-8\nB;8\n");
    await test.run("grade", "yard.csv", "--contract", "Almond Board of California");
    const text = (await test.bytes("yard-graded.csv")).toString();
    expect(text).toMatch(/^\ufeffHive;Bees;Frames of bees;/);
    expect(text).toContain("A;7-8;7,5;18000;;;at minimum;0,5;");
  });

  it("is refused where it has been graded already", async () => {
    const test = await files();
    await test.run("grade", "yard.csv", "--contract", "terms.xlsx", "--for", "Cherry");
    const again = await test.run(
      "grade",
      "yard-graded.csv",
      "--contract",
      "terms.xlsx",
      "--for",
      "Cherry",
    );
    expect(again).toMatchObject({ code: 1, err: expect.stringContaining("in the file already") });
  });

  it("can become a workbook, with the terms and one formula", async () => {
    const test = await files();
    const done = await test.run(
      "grade",
      "yard.csv",
      "--contract",
      "terms.xlsx",
      "--for",
      "Cherry",
      "--out",
      "graded.xlsx",
    );
    expect(done).toMatchObject({ code: 0 });
    const book = await test.open("graded.xlsx");
    expect(book.worksheets.map((sheet) => sheet.name)).toEqual(["yard", "Contracts"]);
    expect(book.worksheets[0]!.getCell("G2").value).toMatchObject({
      formula: '_xldudf_COMB_YARD_COLUMNS($A$2:$E$6,Terms,"Cherry")',
    });
    expect(book.worksheets[0]!.getCell("C3")).toMatchObject({ value: " 7-8 ", numFmt: "@" });
  });

  it("becomes the same workbook each time", async () => {
    const test = await files();
    const terms = ["--contract", "terms.xlsx", "--for", "Cherry"];
    await test.run("grade", "yard.csv", ...terms, "--out", "one.xlsx");
    await new Promise((resolve) => setTimeout(resolve, 1100));
    await test.run("grade", "yard.csv", ...terms, "--out", "two.xlsx");
    expect((await test.bytes("one.xlsx")).equals(await test.bytes("two.xlsx"))).toBe(true);
  });

  it("tells of rows that cannot be read, and ends with 3", async () => {
    const test = await files("Hive,Bees\nA,many\nB,8\n");
    const { code, out } = await test.run(
      "grade",
      "yard.csv",
      "--contract",
      "terms.xlsx",
      "--for",
      "Cherry",
    );
    expect(code).toBe(3);
    expect(out).toContain("Rows with an error, told in their notes: 1");
    expect((await test.bytes("yard-graded.csv")).toString()).toMatch(
      /A,many,#VALUE!,.*is not understood/,
    );
  });
});
