import { readFile } from "node:fs/promises";
import { editZip } from "@cj-tech-master/excelts/archive";
import { describe, expect, it } from "vitest";
import { textOf } from "../../src/workbook/workbook.js";
import { partsOf } from "./parts.js";
import { folder } from "./folder.js";
import { faultsOf } from "./package-faults.js";
import { bytesOf, yardBook } from "./yard.js";

const example = (name: string) => readFile(new URL(`../../examples/${name}`, import.meta.url));
const SHEET = "xl/worksheets/sheet1.xml";

describe("the files that are written", () => {
  it.each(["cherry-and-pear.xlsx", "shed-cherry-statement.xlsx"])(
    "%s has nothing to repair",
    async (name) => {
      expect(await faultsOf(await example(name))).toEqual([]);
    },
  );

  it.each([[["--for", "Cherry"]], [["--for", "Cherry", "--values"]]])(
    "a copy with computed columns added has nothing to repair, graded %s",
    async (options) => {
      const test = await folder({ "yard.xlsx": await bytesOf(yardBook()) });
      await test.run("grade", "yard.xlsx", ...options);
      expect(await faultsOf(await test.bytes("yard-graded.xlsx"))).toEqual([]);
    },
  );

  it.each([
    ["the demo with values alone", ["grade", "yard.xlsx", "--values", "--out", "made.xlsx"]],
    [
      "a workbook made of a CSV file",
      ["grade", "yard.csv", "--contract", "Almond Board of California", "--out", "made.xlsx"],
    ],
    [
      "a statement for A4, of all that stand in the lot, under a published standard",
      [
        ...["statement", "yard.xlsx", "--contract", "Almond Board of California", "--lot", "Shed"],
        ...["--paper", "a4"],
      ],
    ],
    [
      "a statement with names and tickets",
      [
        ...["statement", "yard.xlsx", "--lot", "Coast", "--contract", "Pear", "--size", "300"],
        ...["--grower", "A & B <Orchards>", "--seed-one", "apple", "--seed-two", "bloom"],
      ],
    ],
  ])("%s has nothing to repair", async (_, command) => {
    const test = await folder({
      "yard.xlsx": await example("cherry-and-pear.xlsx"),
      "yard.csv": await example("foothill.csv"),
    });
    const options = command.includes("--out") ? [] : ["--out", "made.xlsx"];
    const { code } = await test.run(...command, ...options);
    // 3 where a row of the sheet could not be read.
    expect([0, 3]).toContain(code);
    expect(await faultsOf(await test.bytes("made.xlsx"))).toEqual([]);
  });

  it("a graded copy holds scalar and spilled formulas as Excel saves them, with their values", async () => {
    const parts = await partsOf(await example("cherry-and-pear.xlsx"));
    const yard = textOf(parts, SHEET)!;
    const lots = textOf(parts, "xl/worksheets/sheet3.xml")!;
    // A spill: array formula over its range, cell metadata for a dynamic array, its own value beside.
    expect(yard).toMatch(
      /<c r="M1"[^>]* cm="1" t="str"><f t="array" ref="M1:S61">_xldudf_COMB_YARD_COLUMNS\([^<]*<\/f><v>Frames of bees<\/v><\/c>/,
    );
    // What it fills is plain values.
    expect(yard).toMatch(/<c r="M2"[^>]*><v>9\.5<\/v><\/c>/);
    expect(lots).toMatch(/<c r="B8"[^>]* t="str"><f>_xldudf_COMB_GRADE\([^<]*<\/f><v>Light<\/v>/);
    expect(lots).toMatch(/<c r="C8"[^>]*><f>_xldudf_COMB_BEES\(A8\)<\/f><v>18000<\/v>/);
  });
});

describe("the check of a file", () => {
  const faultsWith = async (path: string, from: string | RegExp, to: string) => {
    const bytes = await example("shed-cherry-statement.xlsx");
    const text = textOf(await partsOf(bytes), path)!;
    expect(text.replace(from, to)).not.toBe(text);
    const editor = await editZip(bytes, {});
    editor.set(path, text.replace(from, to));
    return (await faultsOf(await editor.bytes())).join("\n");
  };

  it.each([
    [
      "a part without a type",
      "[Content_Types].xml",
      /<Override PartName="\/xl\/styles[^>]*>/,
      "no content type of its own",
    ],
    [
      "a relation that leads nowhere",
      "xl/_rels/workbook.xml.rels",
      "styles.xml",
      "which is not there",
    ],
    ["a style that is not there", SHEET, / s="\d+"/, "a style too many", ' s="9999"'],
    ["a string that is not there", SHEET, /t="s"><v>\d+/, "a string too many", 't="s"><v>9999'],
    [
      "a formula without a value",
      SHEET,
      /<c r="A1"([^>]*)>.*?<\/c>/,
      "a formula and no value",
      '<c r="A1"><f>1+1</f></c>',
    ],
    [
      "merged cells that overlap",
      SHEET,
      /<mergeCell ref="[^"]*"\/>/,
      "overlap",
      '<mergeCell ref="A1:H3"/>',
    ],
    [
      "elements in a wrong order",
      SHEET,
      /(<pageMargins[^>]*>)(<pageSetup[^>]*>)/,
      "out of place",
      "$2$1",
    ],
    [
      "a name on no sheet",
      "xl/workbook.xml",
      /'Statement'!|&apos;Statement&apos;!/,
      "not there",
      "Elsewhere!",
    ],
    [
      "a chart that is not as its cells",
      "xl/charts/chart1.xml",
      "<c:v>9.5</c:v>",
      "is not as its cells",
      "<c:v>9.6</c:v>",
    ],
    ["text that is no XML", SHEET, "</worksheet>", "not well-formed"],
  ])("sees %s", async (_, path, from, fault, to = "") => {
    expect(await faultsWith(path, from, to)).toContain(fault);
  });
});
