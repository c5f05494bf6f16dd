import { read, type WorkSheet } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { folder } from "./folder.js";
import { bytesOf, yardBook } from "./yard.js";

/** A sheet as a spreadsheet set to a language of Europe saves it, a hive looked into twice. */
const CSV = [
  "Hive;Lot;Date;Frames of bees;Brood combs;Brood %;Laying queen;Stores (kg)",
  "K1;Hang;27.03.2026;7,5;4;50%;yes;9,5",
  "K2;Hang;27.03.2026;8-9;4;62,5 %;yes;9,25",
  "K3;Hang;05.04.2026;8. Sep;5;half;yes;10,25",
  "K3;Hang;04.05.2026;9½;5;half;yes;10,25",
  "",
].join("\r\n");

const TERMS: (string | number)[][] = [
  ["Term", "Kirsche"],
  ["average frames", "7,5"],
  ["minimum frames", 6],
  ["stores", "9,5"],
  ["stores unit", "kg"],
  ["base fee", "45,50"],
  ["currency", "euro"],
  ["decimal sign", ","],
];

const files = async (csv = CSV, terms = TERMS) =>
  folder({ "yard.csv": csv, "terms.xlsx": await bytesOf(yardBook([], terms)) });
const OF_TERMS = ["yard.csv", "--contract", "terms.xlsx"];

async function statement(csv = CSV, terms = TERMS): Promise<WorkSheet | string> {
  const test = await files(csv, terms);
  const { err } = await test.run("statement", ...OF_TERMS, "--lot", "Hang");
  return err || read(await test.bytes("yard-statement.xlsx")).Sheets["Statement"]!;
}

/** The figures behind a label of a statement. */
function beside(sheet: WorkSheet | string, label: string): unknown[] {
  if (typeof sheet === "string") return [sheet];
  const cells = Object.entries(sheet).filter(([at]) => /^[A-H]\d+$/.test(at));
  const row = cells.find(([at, { v }]) => at.startsWith("A") && v === label)?.[0].slice(1);
  return cells
    .filter(([at]) => at !== `A${row}` && at.slice(1) === row)
    .flatMap(([, { v }]) => v ?? []);
}

describe("a sheet of Europe", () => {
  it("is graded as it is written, with decimal commas again", async () => {
    const test = await files();
    expect(await test.run("grade", ...OF_TERMS)).toMatchObject({ code: 0, err: "" });
    const lines = (await test.bytes("yard-graded.csv")).toString().split("\r\n");
    // 7,5 frames of 2400 bees are 18000; 4 combs at 50 % are 2 full ones, at 62,5 % 2,5.
    expect(lines[1]).toBe(`${CSV.split("\r\n")[1]};7,5;18000;2;4;at average;;`);
    // 9,25 kg are under the 9,5 asked.
    expect(lines[2]).toMatch(/;8,5;20400;2,5;4;no grade;0;stores 9,25 of 9,5$/);
    expect(lines[3]).toMatch(/;8,5;.*8\. Sep"": read back as 8-9"$/);
  });

  it("is settled by its latest looks, days before months, in euro and kilograms", async () => {
    const sheet = await statement();
    // K3 counts by its look of 4 May, 9.5 frames, after that of 5 April; K2 is short of stores: the
    // average is (7.5 + 9.5) / 2. Two of three are paid 45.50.
    expect(beside(sheet, "Average frames")[0]).toBe(8.5);
    expect(beside(sheet, "total")).toEqual([91]);
    // 27 March and 4 May 2026 as a spreadsheet numbers them.
    expect(beside(sheet, "Hives opened from")).toEqual([46108]);
    expect(beside(sheet, "to")).toEqual([46146]);
  });

  it("with dates that may be two days is read by one term, and refused without it", async () => {
    const slashes = CSV.replace(/(\d\d)\.(\d\d)\.(\d{4})/g, "$1/$2/$3");
    const said = (order: string) => statement(slashes, [...TERMS, ["dates written", order]]);
    expect(beside(await said("day first"), "to")).toEqual([46146]);
    // 05/04 is then 4 May, after 04/05, 5 April; 27/03 is no day, so that no day is told.
    expect(beside(await said("month first"), "Average frames")[0]).toBe((7.5 + 8.5) / 2);
    expect(beside(await said("month first"), "Hives opened on")).toEqual([]);
    expect(await statement(slashes)).toContain(
      "hive K3 stands twice: give each of its looks its own date, so that the later one counts",
    );
  });

  it("in kilograms under terms in pounds is refused, and read by the one term where it is said", async () => {
    const pounds = TERMS.map((row) => (row[0] === "stores unit" ? ["stores unit", "lb"] : row));
    expect(await statement(CSV, pounds)).toContain(
      'the heading "Stores (kg)" is in kg, and the term "stores unit" says lb',
    );
    const american = CSV.replace("Stores (kg)", "Stores (lb)");
    expect(beside(await statement(american, pounds), "Average frames")[0]).toBe(8.5);
  });

  it("under terms that do not say its decimal sign is refused cell by cell, with the cure", async () => {
    const points = TERMS.filter(([term]) => term !== "decimal sign").map(([term, value]) => [
      term!,
      String(value).replace(",", "."),
    ]);
    const test = await files(CSV, points);
    const { code, out } = await test.run("grade", ...OF_TERMS);
    expect(code).toBe(3);
    expect(out.replace(/\s+/g, " ")).toMatch(/"7,5" has a ",", and the decimal sign is "."/);
  });
});
