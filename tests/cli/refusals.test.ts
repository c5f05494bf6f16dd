import { mkdir } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { excelFile, sheetData } from "./excel-file.js";
import { folder } from "./folder.js";
import { bytesOf, TERMS, YARD, yardBook } from "./yard.js";

const OLE = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]);

async function refused(
  files: Record<string, Uint8Array | string>,
  ...args: string[]
): Promise<string> {
  const test = await folder(files);
  const { code, out, err } = await test.run("grade", ...args);
  expect([code, out]).toEqual([1, ""]);
  expect(await test.names()).toEqual(Object.keys(files).sort());
  return err;
}

describe("a file that cannot be graded is refused in a sentence", () => {
  it("because it is not there, or a folder", async () => {
    expect(await refused({}, "yard.xlsx")).toBe("There is no file /yard.xlsx.\n");
    const test = await folder({});
    await mkdir(test.path("yard.xlsx"));
    expect((await test.run("grade", "yard.xlsx")).err).toBe(
      "/yard.xlsx is a folder, not a file.\n",
    );
  });

  it.each(["yard.xls", "yard.xlsm", "yard.xlsb", "yard.ods", "yard.txt"])(
    "because it is %s",
    async (name) => {
      expect(await refused({ [name]: OLE }, name)).toMatch(
        /Save it as an Excel Workbook \(\.xlsx\) or as CSV/,
      );
    },
  );

  it("because it is locked, broken, or no workbook", async () => {
    expect(await refused({ "yard.xlsx": OLE }, "yard.xlsx")).toContain("locked with a password");
    expect(await refused({ "yard.xlsx": "Hive,Bees" }, "yard.xlsx")).toContain(
      "is not a workbook, or is damaged",
    );
    const whole = await bytesOf(yardBook());
    expect(await refused({ "yard.xlsx": whole.slice(0, whole.length / 2) }, "yard.xlsx")).toContain(
      "damaged",
    );
    const sheet = { sheets: { Yard: "<sheetData><row" } };
    expect(await refused({ "yard.xlsx": excelFile(sheet) }, "yard.xlsx")).toContain("damaged");
  });

  it("because it holds macros", async () => {
    const file = excelFile({
      sheets: { Yard: sheetData({ A1: "Hive" }) },
      parts: { "xl/vbaProject.bin": "x" },
    });
    expect(await refused({ "yard.xlsx": file }, "yard.xlsx")).toContain("holds macros");
  });

  it("because it holds no yard sheet", async () => {
    const book = yardBook([
      ["Name", "Age"],
      ["x", 1],
    ]);
    expect(await refused({ "yard.xlsx": await bytesOf(book) }, "yard.xlsx")).toContain(
      "There is nothing to grade",
    );
    expect(await refused({ "yard.csv": "Name,Age\n" }, "yard.csv")).toContain(
      "no yard sheet in the file",
    );
  });

  it("because a heading or a term is not understood", async () => {
    const yard = [
      ["Hive", "Bees", "Seams"],
      ["1", 7, 3],
    ];
    expect(
      await refused({ "yard.xlsx": await bytesOf(yardBook(yard)) }, "yard.xlsx", "--for", "Pear"),
    ).toContain('"Seams"');
    const terms = [...TERMS, ["avrage frames", 8, 6]];
    const wrong = await refused(
      { "yard.xlsx": await bytesOf(yardBook(YARD, terms)) },
      "yard.xlsx",
      "--for",
      "Pear",
    );
    expect(wrong).toContain('"avrage frames" is no term that is known');
  });

  it("because a workbook is asked for as CSV", async () => {
    expect(
      await refused({ "yard.xlsx": await bytesOf(yardBook()) }, "yard.xlsx", "--out", "x.csv"),
    ).toContain("A workbook is written as a workbook");
  });
});

describe("a workbook that counts dates from 1904", () => {
  const file = (terms: (string | number)[][]) => {
    const book = yardBook(YARD, terms);
    book.properties.date1904 = true;
    return bytesOf(book);
  };

  it("is refused unless its terms say so", async () => {
    const err = await refused({ "yard.xlsx": await file(TERMS) }, "yard.xlsx", "--for", "Cherry");
    expect(err).toContain("Add a row to the terms: date system, and 1904 under each contract.");
    const test = await folder({ "yard.xlsx": await file([...TERMS, ["date system", 1904, 1904]]) });
    expect(await test.run("grade", "yard.xlsx", "--for", "Cherry")).toMatchObject({ code: 0 });
  });
});

describe("the command line", () => {
  it("that is wrong ends with 2 and points to the help", async () => {
    const test = await folder({});
    for (const args of [
      [],
      ["grade"],
      ["weigh", "yard.xlsx"],
      ["grade", "a.xlsx", "b.xlsx"],
      ["grade", "a.xlsx", "--colour"],
    ]) {
      const { code, err } = await test.run(...args);
      expect([code, err]).toEqual([2, expect.stringContaining("comb-tally --help")]);
    }
  });

  it("tells its help and its version", async () => {
    const test = await folder({});
    const { code, out } = await test.run("--help");
    expect(code).toBe(0);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    expect((await test.run("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
