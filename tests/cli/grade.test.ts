import { link, readFile, symlink } from "node:fs/promises";
import type { ConditionalFormattingOptions } from "@cj-tech-master/excelts";
import { describe, expect, it } from "vitest";
import { textOf } from "../../src/workbook/workbook.js";
import { partsOf } from "./parts.js";
import { excelFile, sheetData } from "./excel-file.js";
import { folder } from "./folder.js";
import { bytesOf, fill, TERMS, YARD, yardBook } from "./yard.js";

const HEADINGS = ["Frames of bees", "Bees", "Brood, full frames", "Brood, combs", "Grade"];

describe("a workbook without formulas", () => {
  it("gets one formula beside its yard sheet, with an empty column between", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    expect(await test.run("grade", "yard.xlsx", "--for", "cherry")).toMatchObject({
      code: 0,
      err: "",
    });
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect(sheet.getCell("F1").value).toBeNull();
    expect(sheet.getCell("G1").value).toMatchObject({
      formula: '_xldudf_COMB_YARD_COLUMNS($A$1:$E$5,Terms,"Cherry")',
      isDynamicArray: true,
      ref: "G1:M5",
      result: "Frames of bees",
    });
    expect(HEADINGS.map((_, i) => sheet.getCell(1, 8 + i - 1).text)).toEqual(HEADINGS);
    expect(sheet.getCell("G2").value).toBe(7.5);
    expect(["K2", "K3", "K4", "K5"].map((a) => sheet.getCell(a).value)).toEqual([
      "fair",
      "strong",
      "no grade",
      "no grade",
    ]);
  });

  it("names its block of terms, and marks the formula as one that spills", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await test.run("grade", "yard.xlsx", "--for", "Pear");
    const parts = await partsOf(await test.bytes("yard-graded.xlsx"));
    expect(textOf(parts, "xl/workbook.xml")).toContain(
      '<definedName name="Terms">Contracts!$A$1:$C$7</definedName>',
    );
    const formula =
      '<f t="array" ref="G1:M5">_xldudf_COMB_YARD_COLUMNS($A$1:$E$5,Terms,&quot;Pear&quot;)</f>';
    expect(textOf(parts, "xl/worksheets/sheet1.xml")).toMatch(
      /<c r="G1"( s="\d+")? cm="1" t="str">/,
    );
    expect(textOf(parts, "xl/worksheets/sheet1.xml")).toContain(formula);
    expect(textOf(parts, "xl/metadata.xml")).toContain('fDynamic="1"');
  });

  it("is graded under the contract that each row names", async () => {
    const yard = YARD.map((row, i) => [...row, i === 0 ? "Contract" : i < 3 ? "Cherry" : "Pear"]);
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard)) });
    const { out } = await test.run("grade", "yard.xlsx");
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect(sheet.getCell("H1").value).toMatchObject({
      formula: "_xldudf_COMB_YARD_COLUMNS($A$1:$F$5,Terms)",
    });
    expect(["L2", "L3", "L4", "L5"].map((a) => sheet.getCell(a).value)).toEqual([
      "fair",
      "strong",
      "light",
      "no grade",
    ]);
    expect(out).toMatch(/B1 +Coast +5 +12,000 +\S* +2 +Pear +light/);
    // (7.5 + 9) / 2 of 8 asked; 5 alone of 6 asked, since 3 is under the minimum and left out.
    expect(out).toMatch(/Shed +Cherry +2 +8.25 +met/);
    expect(out).toMatch(/Coast +Pear +2 +5 +not met/);
  });

  it("with several contracts, and none named, is refused with their names", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    const { code, err } = await test.run("grade", "yard.xlsx");
    expect(code).toBe(1);
    expect(err).toBe(
      'The terms hold several contracts: "Cherry", "Pear". Say which with --for, or give the sheet "Yard" a column Contract.\n',
    );
    expect((await test.run("grade", "yard.xlsx", "--for", "Plum")).err).toContain(
      '"Cherry", "Pear"',
    );
    expect(await test.names()).toEqual(["yard.xlsx"]);
  });

  it("shows its results as numbers, whatever the format of the columns", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getColumn(7).numFmt = "d-mmm";
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry");
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect([sheet.getCell("G2").value, sheet.getCell("H2").value]).toEqual([7.5, 18000]);
  });

  it("is never written over: a filled cell in the way is named", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getCell("J4").value = "mine";
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { code, err } = await test.run("grade", "yard.xlsx", "--for", "Cherry");
    expect(code).toBe(1);
    expect(err).toContain('sheet "Yard" would stand in G1:M5, but cell J4 is filled');
  });

  it("with a column that adds up those beside it is refused, for bees would be counted twice", async () => {
    const book = yardBook();
    const sheet = book.getWorksheet("Yard")!;
    sheet.getCell("F1").value = "Bees 1 and 2";
    for (let r = 2; r <= 5; r++) sheet.getCell(r, 6).value = { formula: `C${r}*1`, result: 7 };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { code, err } = await test.run("grade", "yard.xlsx", "--for", "Cherry");
    expect([code, err]).toEqual([1, expect.stringContaining('The column "Bees 1 and 2"')]);
    sheet.getCell("F1").value = "Sum";
    const named = await folder({ "yard.xlsx": await bytesOf(book) });
    expect(await named.run("grade", "yard.xlsx", "--for", "Cherry")).toMatchObject({ code: 0 });
  });

  it("leaves a total out that is the sum of its boxes, typed or calculated, and says so", async () => {
    const typed = "Hive,Bees top,Bees bot,Bees\n1,4,5,9\n2,3,4,7\n";
    const book = yardBook([
      ["Hive", "Bees top", "Bees bot", "Bees"],
      ["1", 4, 5, ""],
      ["2", 3, 4, ""],
    ]);
    const sheet = book.getWorksheet("Yard")!;
    for (const [r, result] of [
      [2, 9],
      [3, 7],
    ] as const)
      sheet.getCell(r, 4).value = { formula: `B${r}+C${r}`, result };
    const test = await folder({
      "typed.csv": typed,
      "yard.xlsx": await bytesOf(book),
      "terms.xlsx": await bytesOf(yardBook([], TERMS)),
    });
    for (const args of [["yard.xlsx"], ["typed.csv", "--contract", "terms.xlsx"]]) {
      const { code, out } = await test.run("grade", ...args, "--for", "Cherry");
      expect(code).toBe(0);
      expect(out).toContain('"Bees" is the sum of the other columns of bees, and is not added');
      // 4 + 5 and 3 + 4
      expect(out).toMatch(/^ +1 +9 /m);
      expect(out).toMatch(/^ +2 +7 /m);
    }
  });

  it("may keep its yard sheet in a table, under a title and beside its terms", async () => {
    const book = yardBook([], null);
    const sheet = book.getWorksheet("Yard")!;
    sheet.getCell("A1").value = "Spring";
    fill(sheet, TERMS, 3, 20);
    const [headings, ...rows] = YARD;
    sheet.addTable({
      name: "Hives",
      ref: "A3",
      headerRow: true,
      columns: headings!.map((name) => ({ name: String(name) })),
      rows,
    });
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    expect(await test.run("grade", "yard.xlsx", "--for", "Cherry")).toMatchObject({
      code: 0,
      err: "",
    });
    const graded = await test.open("yard-graded.xlsx");
    expect(graded.getWorksheet("Yard")!.getCell("G3").value).toMatchObject({
      formula: '_xldudf_COMB_YARD_COLUMNS(Hives[#All],Terms,"Cherry")',
      ref: "G3:M7",
    });
    expect(graded.definedNames.getRanges("Terms").ranges).toEqual(["Yard!$T$3:$V$9"]);
  });

  it("keeps the result when it is graded again", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "one.xlsx");
    const again = await test.run("grade", "one.xlsx", "--out", "two.xlsx");
    expect(again).toMatchObject({ code: 0, err: "" });
    expect(again.out).toContain("Calculated: 1 formula with functions of Comb Tally");
    const [one, two] = [await test.open("one.xlsx"), await test.open("two.xlsx")];
    expect(two.getWorksheet("Yard")!.getSheetValues()).toEqual(
      one.getWorksheet("Yard")!.getSheetValues(),
    );
  });

  it("gives a package in which every part that is spoken of is there", async () => {
    const cells = { A1: "Hive", B1: "Bees", A2: "1", B2: 7 };
    const withoutTheme = excelFile({ sheets: { Yard: sheetData(cells) } });
    const test = await folder({ "yard.xlsx": withoutTheme });
    await test.run("grade", "yard.xlsx", "--contract", "Almond Board of California");
    const parts = await partsOf(await test.bytes("yard-graded.xlsx"));
    const types = textOf(parts, "[Content_Types].xml") ?? "";
    const named = [...types.matchAll(/PartName="\/([^"]+)"/g)].map((match) => match[1]!);
    expect(named).toContain("xl/theme/theme1.xml");
    expect(named.filter((name) => !parts.has(name))).toEqual([]);
  });

  it("keeps fills that leave out their pattern, and data bars, the same each time", async () => {
    const book = yardBook();
    const rules = [
      {
        type: "expression",
        priority: 1,
        formulae: ["C2>7"],
        style: { fill: { type: "pattern", bgColor: { argb: "FFFFC7CE" } } },
      },
      { type: "dataBar", priority: 2, cfvo: [{ type: "min" }, { type: "max" }] },
    ];
    book
      .getWorksheet("Yard")!
      .addConditionalFormatting({ ref: "C2:C5", rules } as ConditionalFormattingOptions);
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "one.xlsx");
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "two.xlsx");
    const styles = textOf(await partsOf(await test.bytes("one.xlsx")), "xl/styles.xml");
    expect(styles).toContain('<patternFill><bgColor rgb="FFFFC7CE"/></patternFill>');
    expect((await test.bytes("one.xlsx")).equals(await test.bytes("two.xlsx"))).toBe(true);
  });

  it("gives the same bytes each time", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "one.xlsx");
    await new Promise((resolve) => setTimeout(resolve, 1100));
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "two.xlsx");
    expect((await test.bytes("one.xlsx")).equals(await test.bytes("two.xlsx"))).toBe(true);
  });
});

describe("a workbook with formulas", () => {
  it("is calculated, and gets nothing added", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getCell("G2").value = {
      formula: 'COMB.GRADE(C2,Contracts!$A$1:$C$7,"Pear")',
    };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    expect(await test.run("grade", "yard.xlsx")).toMatchObject({ code: 0, err: "" });
    const graded = await test.open("yard-graded.xlsx");
    expect(graded.getWorksheet("Yard")!.getCell("G2").value).toEqual({
      formula: '_xldudf_COMB_GRADE(C2,Contracts!$A$1:$C$7,"Pear")',
      result: "good",
    });
    expect(graded.getWorksheet("Yard")!.columnCount).toBe(7);
    expect(graded.definedNames.getAllNames()).toEqual([]);
  });

  it("prints its hives by what was written, not also by what was worked out from it", async () => {
    const book = yardBook();
    const sheet = book.getWorksheet("Yard")!;
    sheet.getCell("F1").value = "Frames of bees";
    for (let r = 2; r <= 5; r++) sheet.getCell(r, 6).value = { formula: `COMB.READING(C${r})` };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { out } = await test.run("grade", "yard.xlsx");
    expect(out).toMatch(/A1 +Shed +7.5 +18,000/);
  });

  it("is refused where --for names no contract", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getCell("G2").value = { formula: "COMB.BEES(C2)" };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    expect(await test.run("grade", "yard.xlsx", "--for", "Plum")).toMatchObject({ code: 1 });
  });
});

describe("--contract", () => {
  it("brings the terms of another workbook along, under the name Terms", async () => {
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook(YARD, null)),
      "terms.xlsx": await bytesOf(yardBook([], TERMS)),
    });
    expect(
      await test.run("grade", "yard.xlsx", "--contract", "terms.xlsx", "--for", "Pear"),
    ).toMatchObject({ code: 0 });
    const graded = await test.open("yard-graded.xlsx");
    expect(graded.getWorksheet("Contracts")!.getCell("C2").value).toBe(6);
    expect(graded.definedNames.getRanges("Terms").ranges).toEqual(["Contracts!$A$1:$C$7"]);
    expect(graded.getWorksheet("Yard")!.getCell("K2").value).toBe("good");
  });

  it("is refused where the workbook has other terms of its own", async () => {
    const other = TERMS.map((row, i) => (i === 1 ? ["average frames", 9, 6] : row));
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook()),
      "same.xlsx": await bytesOf(yardBook([], TERMS)),
      "terms.xlsx": await bytesOf(yardBook([], other)),
    });
    const refused = await test.run(
      "grade",
      "yard.xlsx",
      "--contract",
      "terms.xlsx",
      "--for",
      "Pear",
    );
    expect(refused).toMatchObject({ code: 1 });
    expect(refused.err).toContain("they are not those of /terms.xlsx");
    expect(
      await test.run("grade", "yard.xlsx", "--contract", "same.xlsx", "--for", "Pear"),
    ).toMatchObject({ code: 0 });
  });

  it("takes a published standard by its name", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(YARD, null)) });
    const { code, out } = await test.run(
      "grade",
      "yard.xlsx",
      "--contract",
      "Almond Board of California",
    );
    expect(code).toBe(0);
    expect(out).toContain("at minimum");
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect(sheet.getCell("G1").value).toMatchObject({
      formula: '_xldudf_COMB_YARD_COLUMNS($A$1:$E$5,,"Almond Board of California")',
    });
    expect(
      (await test.run("grade", "yard.xlsx", "--contract", "Almonds", "--out", "x.xlsx")).err,
    ).toContain("Almond Board of California");
  });

  it("is asked for where there are no terms", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(YARD, null)) });
    expect(await test.run("grade", "yard.xlsx")).toMatchObject({
      code: 1,
      err: expect.stringContaining("There are no terms to grade by"),
    });
  });
});

describe("--values", () => {
  it("writes what the formulas come to", async () => {
    const book = yardBook();
    book.getWorksheet("Yard")!.getCell("C7").value = { formula: "COUNTA(A2:A5)" };
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    await test.run("grade", "yard.xlsx", "--for", "Cherry", "--values");
    const parts = await partsOf(await test.bytes("yard-graded.xlsx"));
    expect(textOf(parts, "xl/worksheets/sheet1.xml")).not.toContain("<f");
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect([
      sheet.getCell("C7").value,
      sheet.getCell("G1").value,
      sheet.getCell("K3").value,
    ]).toEqual([4, "Frames of bees", "strong"]);
  });
});

describe("--quiet", () => {
  it("prints where the copy is, and writes the same copy", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    const told = await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "told.xlsx");
    const done = await test.run(
      ...["grade", "yard.xlsx", "--for", "Cherry", "--out", "still.xlsx", "--quiet"],
    );
    expect(done).toEqual({ code: 0, out: "Written: /still.xlsx\n", err: "" });
    expect(told.out).toContain("strong");
    expect((await test.bytes("still.xlsx")).equals(await test.bytes("told.xlsx"))).toBe(true);
  });

  it("tells what could not be read all the same", async () => {
    const yard = YARD.map((row, i) =>
      i === 2 ? [row[0]!, row[1]!, "sevn", ...row.slice(3)] : row,
    );
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook(yard)) });
    const { code, out } = await test.run("grade", "yard.xlsx", "--for", "Cherry", "--quiet");
    expect(code).toBe(3);
    expect(out.split("\n")[0]).toBe("Not calculated, or with an error:");
    expect(out).toContain('"sevn"');
    expect(out).not.toContain("Hive");
  });

  it("prints no hives of a CSV file either", async () => {
    const test = await folder({ "yard.csv": "Hive,Frames of bees\n1,7-8\n" });
    const contract = ["--contract", "Almond Board of California"];
    const { out } = await test.run("grade", "yard.csv", ...contract, "--quiet");
    expect(out).toBe("Written: /yard-graded.csv\n");
  });
});

describe("the file that is read", () => {
  it("is never the file that is written, by whatever name", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
    await symlink(test.path("yard.xlsx"), test.path("soft.xlsx"));
    await link(test.path("yard.xlsx"), test.path("hard.xlsx"));
    const before = await readFile(test.path("yard.xlsx"));
    for (const out of ["yard.xlsx", "soft.xlsx", "hard.xlsx"]) {
      const { code, err } = await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", out);
      expect([code, err]).toEqual([1, expect.stringContaining("is the file that is read")]);
    }
    expect((await readFile(test.path("yard.xlsx"))).equals(before)).toBe(true);
  });

  it("may be the terms, which are not written over either", async () => {
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook(YARD, null)),
      "terms.xlsx": await bytesOf(yardBook([], TERMS)),
    });
    const args = ["--contract", "terms.xlsx", "--for", "Pear", "--out", "terms.xlsx"];
    expect((await test.run("grade", "yard.xlsx", ...args)).err).toContain("is never written over");
  });

  it("leaves nothing behind where the copy cannot be written", async () => {
    const test = await folder({ "yard.xlsx": await bytesOf(yardBook()), "x.csv": "" });
    const args = ["--for", "Pear", "--out", "x.csv/graded.xlsx"];
    const { code, err } = await test.run("grade", "yard.xlsx", ...args);
    expect([code, err]).toEqual([1, expect.stringContaining("could not be written")]);
    expect(await test.names()).toEqual(["x.csv", "yard.xlsx"]);
  });

  it("has a graded copy beside it that is not replaced unasked", async () => {
    const test = await folder({
      "yard.xlsx": await bytesOf(yardBook()),
      "yard-graded.xlsx": "mine",
    });
    expect(await test.run("grade", "yard.xlsx", "--for", "Cherry")).toMatchObject({
      code: 1,
      err: expect.stringContaining("already there"),
    });
    expect(
      await test.run("grade", "yard.xlsx", "--for", "Cherry", "--out", "yard-graded.xlsx"),
    ).toMatchObject({ code: 0 });
    expect(await test.names()).toEqual(["yard-graded.xlsx", "yard.xlsx"]);
  });
});
