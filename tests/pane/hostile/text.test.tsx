import { beforeAll, describe, expect, it } from "vitest";
import type { Entry } from "../../../src/pane/port.js";
import { texts } from "../../../src/pane/texts.js";
import { FakeExcel } from "../fake-excel.js";
import { button, formulas, open, press, set, soon, standsIn, type Opened } from "./opened.js";
import { asSheet, TEXTS, type Kept } from "./texts.js";

const MARCH_28 = 46109;
const YARD = [
  [1, 0],
  [1, 1],
  [2, 1],
  [3, 1],
  [1, 6],
  [0, 7],
  [1, 7],
] as const;
const TERMS = [0, 4, 6] as const;

/** The text as hive, lot, note, heading, sheet, contract, grade and currency. */
function book(text: string, kept: Kept): FakeExcel {
  const sheet = asSheet(text);
  const cell: Entry = kept === "mark" ? `'${text}` : "";
  const excel = new FakeExcel(
    {
      [sheet]: [
        ["Hive", "Lot", "Date", "Frames of bees", "Brood combs", "Brood %", "Notes", cell],
        [cell, cell, MARCH_28, 10, 4, 50, cell, cell],
        ["H2", cell, MARCH_28, 8, 4, 50, "", ""],
        ["H3", cell, MARCH_28, 7, 4, 50, "", ""],
      ],
      Terms: [
        ["Term", cell],
        ["average frames", 8],
        ["minimum frames", 6],
        ["observer error", 10],
        ["grade 1 name", cell],
        ["grade 1 frames", 6],
        ["currency", cell],
      ],
    },
    new Map([
      [
        "Terms",
        { kind: "name", place: { sheet: "Terms", row: 0, column: 0, rows: 7, columns: 2 } },
      ],
    ]),
  );
  if (kept === "@") {
    for (const [row, column] of YARD) excel.type(sheet, row, column, text, "@");
    for (const row of TERMS) excel.type("Terms", row, 1, text, "@");
  }
  return excel;
}

function valuesIn(within: Element): string[] {
  return [...within.querySelectorAll("input")].map(({ value }) => value);
}

/** Elements and their attributes, each once. */
function made(page: Document): Set<string> {
  const all = [...page.querySelectorAll("*")];
  return new Set(
    all.flatMap(({ localName, attributes }) => [
      localName,
      ...[...attributes].map(({ name }) => `${localName} ${name}`),
    ]),
  );
}

const ofEveryObject = Object.getOwnPropertyNames(Object.prototype).sort();
let ofPlainWords: Set<string>;

beforeAll(async () => {
  const plain = await open(book("Shed", "mark"));
  await soon(() => expect(plain.view("whatIf").querySelector(".verdict")).not.toBeNull());
  ofPlainWords = made(plain.page);
});

// Each on the workbook as the one before it has left it.
describe.each(TEXTS)("the text %s, kept by %s", (_, kept, text) => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await open(book(text, kept));
  });

  it("is shown as it is in every view, and makes no element", async () => {
    const { page, view } = opened;
    await soon(() => expect(view("whatIf").querySelector(".verdict")).not.toBeNull());
    expect([...made(page)].filter((one) => !ofPlainWords.has(one))).toEqual([]);
    expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(ofEveryObject);
    const first = (id: Parameters<typeof view>[0], selector: string) =>
      view(id).querySelector(selector)!.textContent;
    // Grade and currency.
    expect(valuesIn(view("contract")).filter((value) => value === text)).toHaveLength(2);
    const options = [...view("contract").querySelectorAll("option")].map(({ value }) => value);
    expect(options.filter((value) => value.includes(text))).toEqual([
      `name Terms / ${text}`,
      `copy: ${text}`,
    ]);
    expect(first("contract", "#grade-about-fee")).toContain(` ${text}.`);
    expect(first("whatIf", "#what-if-lot option")).toBe(text);
    expect(first("whatIf", ".handle:last-child text")).toBe(text);
    expect(first("whatIf", ".verdict")).toContain(`3 ${text}`);
    expect(first("statement", "#statement-lot option")).toBe(text);
    expect(first("eye", "#eye-judge-1 option:last-child")).toBe(`B: ${text}`);
    expect(
      view("columns").querySelector(".holds tbody tr:last-child th")!.firstChild,
    ).toHaveProperty("data", text);
  });

  it("is quoted as it is by Convert, which does not understand it, and makes no element", async () => {
    const { page, view } = opened;
    await set(opened, view("convert").querySelector("#convert-what"), "cover", "change");
    await set(opened, view("convert").querySelector("#convert-cover"), text);
    expect(view("convert").querySelector(".answers")!.textContent).toContain(
      text.length > 40 ? `"${text.slice(0, 40)}…"` : `"${text}"`,
    );
    expect([...made(page)].filter((one) => !ofPlainWords.has(one))).toEqual([]);
  });

  it("is a text within the formula of columns that are written", async () => {
    const { excel, view } = opened;
    if (text.length > 255) {
      expect(view("columns").textContent).toContain("a formula can name one of up to 255 signs");
      return;
    }
    const preview = [...view("columns").querySelectorAll(".scroll tbody tr:first-child > *")];
    // Hive, seven columns from frames to note, of which the fifth is the grade.
    expect([preview[0], preview[5]].map((cell) => cell!.textContent)).toEqual([text, text]);
    await press(opened, view("columns"), texts.columns.write, "7 columns written to J1:P4");
    const quoted = `"${text.replaceAll('"', '""')}"`;
    expect(formulas(excel)).toEqual([
      `=COMB.YARD_COLUMNS(A1:H4,Terms,${quoted},"frames,bees,brood full,brood combs,grade,short,note")`,
    ]);
    expect(standsIn(excel, asSheet(text), text)).toHaveLength(YARD.length);
    excel.type(asSheet(text), 0, 9, "");
  });

  it("is a text in a contract whose threshold is moved, and in one that gets an observers' error", async () => {
    const { excel, view } = opened;
    const saved = texts.contract.saved(text, 1);
    await set(opened, view("whatIf").querySelector("#what-if-minimum-frames"), "5");
    await press(opened, view("whatIf"), texts.contract.save, saved);
    expect(excel.entry("Terms", 2, 1)).toBe(5);
    await set(opened, view("eye").querySelector("#eye-from"), "typed", "change");
    for (const [k, said] of ["8", "9", "6", "8"].entries())
      await set(opened, view("eye").querySelectorAll(".pairs td input")[k], said);
    expect(view("eye").querySelector("#eye-contract option")!.textContent).toBe(text);
    await press(opened, view("eye"), texts.contract.save, saved);
    await soon(() => expect(excel.entry("Terms", 3, 1)).not.toBe(10));
    expect(standsIn(excel, "Terms", text)).toEqual(["0,1", "4,1", "6,1"]);
    expect(formulas(excel)).toEqual([]);
  });

  it("is a text in the Terms that are saved, as grade and as contract", async () => {
    const { excel, view } = opened;
    const contract = view("contract");
    // Read again since the one before was saved, or what is begun here would be on what was.
    const error = String(excel.entry("Terms", 3, 1));
    await soon(() => expect(valuesIn(contract)).toContain(error));
    button(contract, texts.contract.addGrade).click();
    await soon(() => expect(contract.querySelector("#grade-2-name")).not.toBeNull());
    await set(opened, contract.querySelector("#grade-2-name"), `${text}2`);
    await set(opened, contract.querySelector("#grade-2-frames"), "4");
    await press(opened, contract, texts.contract.save, texts.contract.saved(text, 2));
    expect(standsIn(excel, "Terms", `${text}2`)).toEqual(["7,1"]);
    await set(opened, contract.querySelector("#contract-name"), `${text}3`);
    button(contract, texts.contract.begin).click();
    await press(opened, contract, texts.contract.save, `${text}3: `);
    expect(standsIn(excel, "Terms", `${text}3`)).toEqual(["0,2"]);
    expect(standsIn(excel, "Terms", text)).toEqual(["0,1", "4,1", "4,2", "6,1", "6,2"]);
    expect(formulas(excel)).toEqual([]);
    // What was saved can be gone on with.
    await soon(() => expect(contract.textContent).toContain(texts.contract.noChanges));
    expect(contract.querySelector("input:disabled")).toBeNull();
  });

  it("is a text in a statement, and in the name of its sheet", async () => {
    const { excel, view } = opened;
    const statement = view("statement");
    for (const field of ["beekeeper", "grower", "picked"])
      await set(opened, statement.querySelector(`#statement-${field}`), text);
    await press(opened, statement, texts.statement.make, "The statement is on a new sheet");
    const [, , sheet = ""] = excel.sheets.keys();
    expect(sheet).toMatch(/^Statement[^\\/?*[\]:]*$/);
    expect(standsIn(excel, sheet, `Statement for lot ${text}`)).toEqual(["0,0"]);
    expect(standsIn(excel, sheet, text).length).toBeGreaterThanOrEqual(3);
    expect(formulas(excel)).toEqual([]);
  });
});
