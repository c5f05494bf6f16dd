import { Workbook, type CellValue } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Place, Step } from "../../src/pane/port.js";
import { at, SHEETS, WHOLE_CHANGE } from "../pane/port-contract.js";
import { becomes, launch, openFile, openPlayground, read } from "./browser.js";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  ({ page } = await openPlayground(browser));
});
afterAll(() => browser.close());
beforeEach(async () => {
  await openFile(page, "port.xlsx", await workbook());
  // Opened as soon as it stands there; its one formula comes later.
  await becomes(page, at("North yard", 3, 1, 1, 1), (value) => value === 6);
  await page.waitForTimeout(500);
});

/** The sheets that every workbook of the pane is tried on, as a file. */
async function workbook(): Promise<Uint8Array> {
  const book = new Workbook();
  for (const [name, rows] of Object.entries(SHEETS)) {
    const sheet = book.addWorksheet(name);
    rows.forEach((row, r) =>
      row.forEach((entry, c) => {
        const text = typeof entry === "string" ? entry.replace(/^'/, "") : entry;
        const isFormula = typeof text === "string" && text.startsWith("=");
        const value = isFormula ? { formula: String(text).slice(1) } : text;
        if (entry !== "") sheet.getCell(r + 1, c + 1).value = value as CellValue;
      }),
    );
  }
  book.definedNames.add("Terms!$A$1:$B$3", "Terms");
  const yard = book.getWorksheet("North yard")!;
  const rows = SHEETS["North yard"].slice(1).map((row) => row.map(() => null));
  const held = SHEETS["North yard"].map((_, r) =>
    [1, 2, 3].map((c) => yard.getCell(r + 1, c).value),
  );
  yard.addTable({
    name: "Hives",
    ref: "A1",
    headerRow: true,
    columns: ["Hive", "Bees", "Brood"].map((name) => ({ name })),
    rows,
  });
  held.forEach((row, r) => row.forEach((value, c) => (yard.getCell(r + 1, c + 1).value = value)));
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const write = (steps: readonly Step[]): Promise<readonly Step[] | string> =>
  page.evaluate(
    (change) =>
      globalThis
        .combTally!.session()!
        .workbook.write(change)
        .catch((error: Error) => error.message),
    steps as Step[],
  );

const regions = () =>
  page.evaluate(async () =>
    (await globalThis.combTally!.session()!.workbook.regions()).map(({ kind, name, place }) => ({
      kind,
      name,
      place,
    })),
  );

const PLACES: readonly Place[] = [at("North yard", 0, 0, 6, 6), at("Terms", 0, 0, 5, 4)];
const everything = async () => ({
  regions: await regions(),
  cells: await Promise.all(PLACES.map(async (place) => read(page, place))),
});

describe("the pane's workbook, in the grid", () => {
  it("lists tables, names and filled parts of sheets, in this order", async () => {
    expect(await regions()).toEqual([
      { kind: "table", name: "Hives", place: at("North yard", 0, 0, 4, 3) },
      { kind: "name", name: "Terms", place: at("Terms", 0, 0, 3, 2) },
      { kind: "sheet", name: "North yard", place: at("North yard", 0, 0, 4, 3) },
      { kind: "sheet", name: "Terms", place: at("Terms", 0, 0, 3, 2) },
    ]);
  });

  it("reads values, entries and formats", async () => {
    const { values, entries } = await read(page, at("North yard", 1, 0, 3, 3));
    expect(entries).toEqual([
      ["S01", "'7-8", 4],
      ["S02", 6, ""],
      ["S03", "=B3", true],
    ]);
    expect(values).toEqual([
      ["S01", "7-8", 4],
      ["S02", 6, ""],
      ["S03", 6, true],
    ]);
  });

  it("makes a change of every kind, and takes it back exactly", async () => {
    const before = await everything();
    const undo = await write(WHOLE_CHANGE);
    expect(undo).toBeInstanceOf(Array);
    expect((await read(page, at("Terms", 0, 0, 3, 3))).entries).toEqual([
      ["term", "Cherry", "Pear"],
      ["average frames", 9, 7],
      ["grade 1 name", "Full", "Light"],
    ]);
    expect((await read(page, at("Start", 0, 0, 1, 2))).formats).toEqual([["@", "@"]]);
    const places = (await regions()).map(({ name, place }) => [name, place]);
    expect(places).toContainEqual(["Terms", at("Terms", 0, 0, 3, 3)]);
    expect(places).toContainEqual(["Hives", at("North yard", 0, 0, 4, 4)]);
    expect(places).toContainEqual(["NewTerms", at("Start", 0, 0, 1, 2)]);
    expect(await write(undo as Step[])).toBeInstanceOf(Array);
    expect(await everything()).toEqual(before);
  });

  it("takes a new sheet away again where the grid refuses it a name, and says why", async () => {
    const before = await everything();
    expect(
      await write([
        { kind: "add sheet", name: "Pears" },
        { kind: "cover", region: "name", name: "Pears", place: at("Pears", 0, 0, 1, 2) },
      ]),
    ).toMatch(/^the name Pears would not be made \(.+\): nothing was written$/);
    expect(await everything()).toEqual(before);
  });

  it("writes nothing where another hand has typed, and names the cell", async () => {
    const before = await everything();
    const place = at("North yard", 1, 1, 2, 1);
    expect(
      await write([
        { kind: "put", place: at("Terms", 1, 1, 1, 1), expect: [[8]], put: [[9]] },
        { kind: "put", place, expect: [["'7-8"], [7]], put: [[1], [1]] },
      ]),
    ).toBe(`'North yard'!B3 holds "6" where "7" stood when it was read: nothing was written`);
    expect(await everything()).toEqual(before);
  });
});
