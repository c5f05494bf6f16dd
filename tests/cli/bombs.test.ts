import { open } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { excelFile, sheetData, spill, table, type FileParts } from "./excel-file.js";
import { isDeeper } from "../../src/workbook/nesting.js";
import { folder } from "./folder.js";

const YARD = sheetData({ A1: "Hive", B1: "Bees", A2: "S1", B2: 7 });
const withParts = (parts: Record<string, string>): Uint8Array =>
  excelFile({ sheets: { Yard: YARD }, parts });

async function refused(file: Uint8Array): Promise<string> {
  const test = await folder({ "yard.xlsx": file });
  const { code, out, err } = await test.run("grade", "yard.xlsx");
  expect([code, out, await test.names()]).toEqual([1, "", ["yard.xlsx"]]);
  expect(Buffer.from(file).equals(await test.bytes("yard.xlsx"))).toBe(true);
  return err;
}

/** The central directory of a zip says how large each part is: at byte 24 of its entry. */
function declaring(file: Uint8Array, path: string, size: number): Uint8Array {
  const bytes = Buffer.from(file);
  for (let at = bytes.indexOf("PK\x01\x02"); at >= 0; at = bytes.indexOf("PK\x01\x02", at + 4)) {
    const length = bytes.readUInt16LE(at + 28);
    if (bytes.toString("utf8", at + 46, at + 46 + length) === path)
      bytes.writeUInt32LE(size, at + 24);
  }
  return bytes;
}

describe("a file that unpacks to more than it should is refused", () => {
  const picture = "xl/media/image1.png";

  it("where it is packed too tightly", async () => {
    // 12 MB of one sign: deflate packs at most 258 of them into 2 bits, so about 1 to 1,030.
    expect(await refused(withParts({ [picture]: "0".repeat(12e6) }))).toMatch(
      /^\/yard\.xlsx would unpack to 12 MB from 0 MB, and is not opened: at most 400 MB are, and at most 200 times/,
    );
  });

  it("where many parts make it up together", async () => {
    const names = Array.from({ length: 45 }, (_, i) => `xl/media/image${i}.png`);
    const file = withParts(Object.fromEntries(names.map((name) => [name, "0"])));
    const large = names.reduce((bytes, name) => declaring(bytes, name, 9.9e6), file);
    expect(await refused(large)).toContain("would unpack to 445.5 MB");
  });

  it("where a part is larger than it declares, before it is unpacked whole", async () => {
    const lying = declaring(withParts({ [picture]: "0".repeat(1e6) }), picture, 1000);
    expect(await refused(lying)).toMatch(
      /^\/yard\.xlsx is not a workbook, or is damaged: the part xl\/media\/image1\.png is larger than the file says\.\n$/,
    );
  });

  it("or than it is, or is not what it was when it was packed", async () => {
    const short = declaring(withParts({ [picture]: "00000" }), picture, 6);
    expect(await refused(short)).toContain("image1.png is not what it was when it was packed");
    const changed = Buffer.from(excelFile({ sheets: { Yard: YARD } }));
    changed[changed.indexOf("xl/workbook.xml") + 40]! ^= 1;
    expect(await refused(changed)).toContain("is not a workbook, or is damaged");
  });
});

describe("a file of more than 100 MB is refused before it is read", () => {
  it.each(["yard.xlsx", "yard.csv"])("as %s", async (name) => {
    const test = await folder({ [name]: "" });
    const file = await open(test.path(name), "r+");
    await file.truncate(200e6);
    await file.close();
    const { code, err } = await test.run("grade", name, "--contract", "Almond Board of California");
    expect([code, err]).toEqual([
      1,
      `/${name} has 200 MB, and at most 100 MB are read. ` +
        "Save the yard sheet and its terms in a workbook of their own.\n",
    ]);
    const terms = await test.run("grade", name, "--contract", "yard.xlsx");
    expect(terms.code).toBe(1);
  });
});

describe("a few letters that ask for more cells than memory holds are refused", () => {
  const cells = { A1: "Hive", B1: "Bees", A2: "S1", B2: 7 };
  const array = spill("SEQUENCE(2)", "D1:XFD1048576");
  const whole = "A1:XFD1048576";
  it.each<[string, FileParts, string]>([
    [
      "merged",
      { sheets: { Yard: `${YARD}<mergeCells><mergeCell ref="D1:XFD1048576"/></mergeCells>` } },
      "merged blocks",
    ],
    [
      "filled by a formula",
      { sheets: { Yard: sheetData({ ...cells, D1: array }) } },
      "formulas that fill blocks",
    ],
    [
      "a table",
      { sheets: { Yard: YARD }, tables: [table("T", whole, ["Hive", "Bees"])] },
      "tables",
    ],
    [
      "a name",
      {
        sheets: { Yard: YARD },
        names: `<definedName name="Terms">Yard!$A$1:$XFD$1048576</definedName>`,
      },
      "names",
    ],
  ])("as %s", async (_, file, what) => {
    expect(await refused(excelFile(file))).toBe(
      `/yard.xlsx has ${what} of more than 3,000,000 cells together, which is more than is read. ` +
        "Save the yard sheet and its terms in a workbook of their own.\n",
    );
  });

  it("as columns that no sheet has", async () => {
    const sheet = `<cols><col min="1" max="2000000000" width="9"/></cols>${YARD}`;
    expect(await refused(excelFile({ sheets: { Yard: sheet } }))).toContain(
      "no more than 16,384 columns",
    );
  });

  it("as a word in the last row under the hives, and as a table down to there", async () => {
    const far =
      /would go on to row 1,048,576, and at most 200,000 rows are graded\. .* near A1048576\?/;
    expect(
      await refused(excelFile({ sheets: { Yard: sheetData({ ...cells, A1048576: "x" }) } })),
    ).toMatch(far);
    const long = { sheets: { Yard: YARD }, tables: [table("T", "A1:B200002", ["Hive", "Bees"])] };
    expect(await refused(excelFile(long))).toContain(
      "would go on to row 200,002, and at most 200,000",
    );
  });

  it("but a word in the last cell of a sheet is none of them", async () => {
    const test = await folder({
      "yard.xlsx": excelFile({ sheets: { Yard: sheetData({ ...cells, XFD1048576: "x" }) } }),
    });
    const { code } = await test.run(
      "grade",
      "yard.xlsx",
      "--contract",
      "Almond Board of California",
    );
    expect(code).toBe(0);
  });
});

describe("XML within XML", () => {
  const within = (depth: number, inside = "") =>
    "<a>".repeat(depth) + inside + "</a>".repeat(depth);
  const deep = (text: string) => isDeeper(new TextEncoder().encode(text), 3);

  it.each([
    ["xl/sharedStrings.xml", "sst"],
    ["xl/theme/theme1.xml", "theme"],
    ["xl/worksheets/_rels/sheet1.xml.rels", "Relationships"],
  ])("200,000 deep is refused in %s before it is read", async (path, root) => {
    const nested = `<${root}>${within(200_000)}</${root}>`;
    expect(await refused(withParts({ [path]: nested }))).toBe(
      `/yard.xlsx is not opened: its part ${path} is nested more than 1,000 deep, which no ` +
        "spreadsheet writes. Open it in Excel, and save it again.\n",
    );
  });

  // Each by hand: how many elements stand within one another.
  it.each([
    [within(3), false],
    [within(4), true],
    ["<a/>".repeat(9), false],
    [within(3, "<a/>"), false],
    ['<a b="/>">'.repeat(4), true],
    ["<a b='>'/>".repeat(9), false],
    [`<a b="'>"/>`.repeat(9), false],
    [`<?xml version="1.0"?>${within(3)}`, false],
    [within(3, `<!-- ${within(9)} -->`), false],
    [within(3, "<![CDATA[<a><a><a> ]] > <a>]]>"), false],
    ["<a><a><!-- </a></a> --><a><a>", true],
    ["</a></a></a></a>" + within(4), true],
    ["<a>".repeat(3) + "<a", false],
    ["<a>".repeat(3) + '<a b="', false],
    ["text, and no element", false],
    ["", false],
  ])("%s is deeper than three: %s", (text, isSo) => {
    expect(deep(text)).toBe(isSo);
  });
});

it("what a file declares to put into itself, from itself or from elsewhere, is not put in", async () => {
  const strings = (entities: string, text: string) => ({
    "xl/sharedStrings.xml": `<?xml version="1.0"?><!DOCTYPE sst [${entities}]><sst><si><t>${text}</t></si></sst>`,
  });
  const many = `<!ENTITY a "${"x".repeat(999)}"><!ENTITY b "${"&a;".repeat(999)}"><!ENTITY c "${"&b;".repeat(999)}">`;
  expect(await refused(withParts(strings(many, "&c;")))).toContain("undefined entity");
  const other = '<!ENTITY a SYSTEM "file:///etc/hostname">';
  expect(await refused(withParts(strings(other, "&a;")))).toContain("undefined entity");
});

it("a part whose path leads out of the file, or is a word of the language, is nothing special", async () => {
  const file = withParts({
    "../../up.xml": "x",
    "__proto__/a.xml": "x",
    __proto__x: "x",
    constructor: "x",
  });
  const test = await folder({ "yard.xlsx": file });
  const { code } = await test.run("grade", "yard.xlsx", "--contract", "Almond Board of California");
  expect([code, await test.names()]).toEqual([0, ["yard-graded.xlsx", "yard.xlsx"]]);
});
