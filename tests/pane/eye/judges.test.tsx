import { describe, expect, it, vi } from "vitest";
import { Eye } from "../../../src/pane/eye.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

/** 8, 6, 10 by one and 9, 7, 11 by the other: averages 8 and 9, apart by 1 of 8.5, 11.76 %. */
const JUDGED = [
  ["Hive", "Ann", "Ben"],
  ["H1", 8, 9],
  ["H2", 6, 7],
  ["H3", 10, 11],
  ["H4", 7, ""],
] as const;
const TERMS = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 7],
  ["observer error", 10, "=5+5"],
  ["grade 1 name", "Prime", ""],
  ["grade 1 frames", 8, ""],
] as const;

const workbook = (terms: readonly (readonly (string | number)[])[] = TERMS) =>
  new MemoryWorkbook(
    { Judged: JUDGED, Terms: terms },
    new Map([
      [
        "Terms",
        {
          kind: "name",
          place: { sheet: "Terms", row: 0, column: 0, rows: terms.length, columns: 3 },
        },
      ],
    ]),
  );
const open = async (book: MemoryWorkbook): Promise<Drawn> => {
  const drawn = await draw(Eye, book);
  await vi.waitFor(() => expect(drawn.page.querySelector("#eye-from")).not.toBeNull());
  return drawn;
};
const choose = async ({ page, window }: Drawn, id: string, value: string) => {
  await vi.waitFor(() => expect(page.querySelector(`#${id}`)).not.toBeNull());
  const select = page.querySelector<HTMLSelectElement>(`#${id}`)!;
  select.value = value;
  select.dispatchEvent(new window.Event("change", { bubbles: true }));
};
const columns = async (drawn: Drawn) => {
  await choose(drawn, "eye-from", "sheet Judged");
  await vi.waitFor(() =>
    expect(drawn.page.querySelector("#eye-judge-0")?.textContent).toContain("B: Ann"),
  );
  await choose(drawn, "eye-judge-0", "1");
  await choose(drawn, "eye-judge-1", "2");
  await vi.waitFor(() => expect(figures(drawn).length).toBeGreaterThan(0));
};
const figures = ({ page }: Drawn) =>
  [...page.querySelectorAll("table:not(.pairs) tr")].map((row) => [
    row.querySelector("th")!.textContent,
    row.querySelector("td")!.textContent,
  ]);
const save = ({ page }: Drawn) =>
  [...page.querySelectorAll("button")].find((b) => b.textContent === "Save to the sheet")!;

describe("two judges", () => {
  it("differ by what the function of the sheet says, with how sure that is", async () => {
    const drawn = await open(workbook());
    await columns(drawn);
    // The gap is 1 in each hive: 1 / 8.5 = 11.76 %. About the ratio the residuals are
    // 1 - r x 8.5 = 0, 1 - r x 6.5 = 0.2353, 1 - r x 10.5 = -0.2353: squares 0.11073, by 2 and rooted
    // 0.23529; by 8.5 and the root of 3 it is 1.598 %. Root of both squares: 11.87 %.
    expect(figures(drawn)).toEqual([
      ["Observer error, %", "11.87"],
      ["Hives judged by both", "3"],
      ["First's average", "8"],
      ["Second's average", "9"],
      ["Second over first, %", "11.76"],
      ["Standard error of that, %", "1.6"],
    ]);
    expect(drawn.page.body.textContent).toContain("From 3 hives alone: judge ten or more.");
    expect(await drawn.violations()).toEqual([]);
  });

  it("write the term into the contract in one step that can be taken back", async () => {
    const book = workbook();
    const before = book.snapshot();
    const drawn = await open(book);
    await columns(drawn);
    expect(drawn.page.body.textContent).toContain("observer error: 10 → 11.9");
    expect(book.snapshot()).toEqual(before);
    save(drawn).click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect(drawn.said[0]!.sentence).toBe("Cherry: one term saved.");
    expect(book.entry("Terms", 2, 1)).toBe(11.9);
    expect(book.entry("Terms", 3, 1)).toBe("Prime");
    await book.write(drawn.said[0]!.undo);
    expect(book.snapshot()).toEqual(before);
  });

  it("add the term's row where the table lacks it, and take it back", async () => {
    const book = workbook(TERMS.filter(([label]) => label !== "observer error"));
    const before = book.snapshot();
    const drawn = await open(book);
    await columns(drawn);
    expect(drawn.page.body.textContent).toContain("observer error: left out → 11.9");
    save(drawn).click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect([book.entry("Terms", 4, 0), book.entry("Terms", 4, 1)]).toEqual([
      "observer error",
      11.9,
    ]);
    expect(book.names.get("Terms")!.place.rows).toBe(5);
    await book.write(drawn.said[0]!.undo);
    expect(book.snapshot()).toEqual(before);
  });

  it("write the term as the contract writes its percents", async () => {
    const book = workbook([
      ["Term", "Cherry", "Pear"],
      ["average frames", 8, 7],
      ["percents written as", "Fraction", ""],
      ["observer error", 0.1, 10],
    ]);
    const drawn = await open(book);
    await columns(drawn);
    // 11.87 % to the tenth, as above, is 0.119.
    expect(drawn.page.body.textContent).toContain("observer error: 0.1 → 0.119");
    save(drawn).click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect(book.entry("Terms", 3, 1)).toBe(0.119);
    await vi.waitFor(() => expect(save(drawn).disabled).toBe(true));
    await choose(drawn, "eye-contract", "name Terms / Pear");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain("observer error: 10 → 11.9"),
    );
  });

  it("write into the contract that was chosen, though another comes before it meanwhile", async () => {
    const terms: (string | number)[][] = TERMS.map(([label, cherry]) => [label, cherry, cherry]);
    terms[0]![2] = "Pear";
    const book = workbook(terms);
    const drawn = await open(book);
    await columns(drawn);
    await choose(drawn, "eye-contract", "name Terms / Pear");
    const place = { sheet: "Terms", row: 0, column: 0, rows: 5, columns: 4 };
    book.names.set("Terms", { kind: "name", place });
    terms.forEach(([, cherry, pear], row) => {
      book.type("Terms", row, 3, pear!);
      book.type("Terms", row, 2, cherry!);
    });
    book.type("Terms", 0, 1, "Apple");
    await vi.waitFor(() =>
      expect(drawn.page.querySelectorAll("#eye-contract option")).toHaveLength(3),
    );
    await vi.waitFor(() =>
      expect(drawn.page.querySelector<HTMLSelectElement>("#eye-contract")!.value).toBe(
        "name Terms / Pear",
      ),
    );
    save(drawn).click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect([1, 2, 3].map((column) => book.entry("Terms", 2, column))).toEqual([10, 10, 11.9]);
  });

  it("leave a formula alone", async () => {
    const drawn = await open(workbook());
    await columns(drawn);
    await choose(drawn, "eye-contract", "name Terms / Pear");
    await vi.waitFor(() => expect(save(drawn).disabled).toBe(true));
    expect(drawn.page.body.textContent).toContain("A formula stands in this cell");
  });

  it("write nothing where the cell was changed by another hand meanwhile", async () => {
    const book = workbook();
    const drawn = await open(book);
    await columns(drawn);
    const original = book.write.bind(book);
    book.write = async (steps) => {
      book.write = original;
      book.type("Terms", 2, 1, 12);
      return original(steps);
    };
    save(drawn).click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect(drawn.said[0]!.sentence).toMatch(/holds "12" where "10" stood.*nothing was written/);
    expect(book.entry("Terms", 2, 1)).toBe(12);
  });

  it("leave out a row of totals, and do not take one column twice", async () => {
    const book = new MemoryWorkbook({ Judged: [...JUDGED, ["Total", 31, 27]] });
    const drawn = await open(book);
    await columns(drawn);
    expect(figures(drawn)[1]).toEqual(["Hives judged by both", "3"]);
    await choose(drawn, "eye-judge-1", "1");
    await vi.waitFor(() =>
      expect(drawn.page.querySelector("p.error")?.textContent).toMatch(/the same column/),
    );
    expect(figures(drawn)).toEqual([]);
  });

  it("follow the sheet as it is changed, and forget the columns of a sheet that is gone", async () => {
    const book = workbook();
    const drawn = await open(book);
    await columns(drawn);
    book.type("Judged", 4, 2, 8);
    await vi.waitFor(() => expect(figures(drawn)[1]).toEqual(["Hives judged by both", "4"]));
    for (let row = 0; row < 5; row++)
      for (let column = 0; column < 3; column++) book.type("Judged", row, column, "");
    const second = () => drawn.page.querySelector<HTMLSelectElement>("#eye-judge-1")!;
    await vi.waitFor(() => expect(second().textContent).toContain("C: Pear"));
    expect(second().value).toBe("-1");
    expect(drawn.page.querySelector("p.error")).toBeNull();
  });

  it("can be typed: ten pairs, as they are said", async () => {
    const drawn = await open(workbook());
    await choose(drawn, "eye-from", "typed");
    await vi.waitFor(() => expect(drawn.page.querySelectorAll(".pairs input")).toHaveLength(20));
    const type = async (label: string, text: string) => {
      const input = drawn.page.querySelector<HTMLInputElement>(`[aria-label="${label}"]`)!;
      input.value = text;
      input.dispatchEvent(new drawn.window.Event("input", { bubbles: true }));
      await vi.waitFor(() => expect(input.value).toBe(text));
    };
    expect(await drawn.violations()).toEqual([]);
    await type("Hive 1, First judge", "7-8");
    await type("Hive 1, Second judge", "8½");
    await type("Hive 2, First judge", "6");
    await type("Hive 2, Second judge", "7");
    // Averages (7.5 + 6) / 2 = 6.75 and (8.5 + 7) / 2 = 7.75: 1 of 7.25 is 13.79 %.
    await vi.waitFor(() => expect(figures(drawn)[4]).toEqual(["Second over first, %", "13.79"]));
    await type("Hive 2, Second judge", "many");
    await vi.waitFor(() =>
      expect(drawn.page.querySelector("p.error")!.textContent).toMatch(/"many" is not understood/),
    );
  });

  it("say what is missing where one hive alone was judged by both", async () => {
    const drawn = await open(new MemoryWorkbook({ Judged: JUDGED.slice(0, 2) }));
    await choose(drawn, "eye-judge-0", "1");
    await choose(drawn, "eye-judge-1", "2");
    await vi.waitFor(() =>
      expect(drawn.page.querySelector("p.error")?.textContent).toMatch(/two are needed/),
    );
  });

  it("can be typed in an empty workbook, which has no contract to write into", async () => {
    const drawn = await open(new MemoryWorkbook({ Sheet1: [] }));
    expect(drawn.page.querySelectorAll(".pairs input")).toHaveLength(20);
  });
});
