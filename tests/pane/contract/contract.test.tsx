import { describe, expect, it, vi } from "vitest";
import { ContractView } from "../../../src/pane/contract.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

const TERMS = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 7],
  ["minimum frames", 6, 5],
  ["grade 1 name", "Prime", "Full"],
  ["grade 1 frames", 10, 8],
  ["grade 2 name", "Light", ""],
  ["grade 2 frames", 6, ""],
  ["base fee", "", "=40+20"],
] as const;
/** Each threshold with its limit, by the terms' handbook, and the unit that a beekeeper would name. */
const THRESHOLDS: readonly (readonly [label: string, most: number, unit: string])[] = [
  ["average frames", 60, "frames"],
  ["minimum frames", 60, "frames"],
  ["share under minimum forgiven", 100, "%"],
  ["most frames a hive", 60, "frames"],
  ["brood", 60, "frames"],
  ["brood comb covered", 100, "%"],
  ["stores", 200, "frames"],
  ["feed under", 200, "frames"],
  ["combine under", 60, "frames"],
  ["bees for brood", 10, "frames"],
  ["base fee", 1_000_000, "in your currency"],
  ["bonus a frame", 1_000_000, "in your currency"],
  ["bonus ceiling", 1_000_000, "in your currency"],
  ["round money", 1000, "in your currency"],
  ["share opened", 100, "%"],
  ["observer error", 100, "%"],
  ["inspect from day", 365, "days"],
  ["inspect above temperature", 130, "degrees F"],
  ["inspect from hour", 24, "hour of the day"],
  ["inspect to hour", 24, "hour of the day"],
  ["deposit", 100, "%"],
  ["balance due", 365, "days"],
];

const workbook = () =>
  new MemoryWorkbook(
    { Terms: TERMS },
    new Map([
      [
        "Terms",
        { kind: "name", place: { sheet: "Terms", row: 0, column: 0, rows: 8, columns: 3 } },
      ],
    ]),
  );

const field = ({ page }: Drawn, label: string) => {
  const found = [...page.querySelectorAll("label")].find((l) => l.textContent === label);
  if (!found) throw new Error(`no field ${label}`);
  return page.getElementById(found.htmlFor) as HTMLInputElement;
};
const type = ({ window }: Drawn, input: HTMLInputElement, text: string) => {
  input.value = text;
  input.dispatchEvent(new window.Event("input", { bubbles: true }));
};
const choose = ({ window }: Drawn, select: HTMLInputElement, value: string) => {
  select.value = value;
  select.dispatchEvent(new window.Event("change", { bubbles: true }));
};
const button = ({ page }: Drawn, name: string) => {
  const all = [...page.querySelectorAll("button")];
  const found = all.find((b) => (b.getAttribute("aria-label") ?? b.textContent) === name);
  if (!found) throw new Error(`no button ${name}`);
  return found;
};
const review = ({ page }: Drawn) =>
  [...page.querySelectorAll(".review li")].map((li) => li.textContent);
const text = ({ page }: Drawn) => page.body.textContent;
const open = async (book: MemoryWorkbook) => {
  const drawn = await draw(ContractView, book);
  await vi.waitFor(() => expect(drawn.page.querySelector("select")).not.toBeNull());
  return drawn;
};

describe("the contract view", () => {
  it("shows every term with what it means, and is accessible", async () => {
    const drawn = await open(workbook());
    expect(field(drawn, "average frames").value).toBe("8");
    expect(drawn.page.body.textContent).toContain("Frames of bees that each hive must have.");
    for (const fold of drawn.page.querySelectorAll("details")) fold.open = true;
    expect(await drawn.violations()).toEqual([]);
  });

  it("shows old and new before it saves, saves in one step, and can take it back", async () => {
    const book = workbook();
    const before = book.snapshot();
    const drawn = await open(book);
    type(drawn, field(drawn, "average frames"), "7.5");
    await vi.waitFor(() => expect(review(drawn)).toEqual(["average frames: 8 → 7.5"]));
    expect(book.snapshot()).toEqual(before);
    button(drawn, "Save to the sheet").click();
    await vi.waitFor(() => expect(drawn.said.at(-1)?.sentence).toBe("Cherry: one term saved."));
    expect(book.entry("Terms", 1, 1)).toBe(7.5);
    await book.write(drawn.said.at(-1)!.undo);
    expect(book.snapshot()).toEqual(before);
  });

  it.each([
    ["@", "''Prime", "grade 1 name: 'Prime → Prime"],
    ["General", "'7-8", "grade 1 name: 7-8 → Prime"],
  ])("shows a text of a cell with the format %s as it stands there", async (format, was, says) => {
    const book = workbook();
    book.type("Terms", 3, 1, was, format);
    const drawn = await open(book);
    type(drawn, field(drawn, "Name"), "Prime");
    await vi.waitFor(() => expect(review(drawn)).toEqual([says]));
  });

  it("shows an apostrophe that is typed as a part of a name", async () => {
    const drawn = await open(workbook());
    type(drawn, field(drawn, "Name"), "'Prime");
    await vi.waitFor(() => expect(review(drawn)).toEqual(["grade 1 name: Prime → 'Prime"]));
  });

  it("says what is wrong at the field, and does not save it", async () => {
    const drawn = await open(workbook());
    const minimum = field(drawn, "minimum frames");
    type(drawn, minimum, "many");
    await vi.waitFor(() => expect(minimum.getAttribute("aria-invalid")).toBe("true"));
    const ids = minimum.getAttribute("aria-describedby")!.split(" ");
    const described = ids.map((id) => drawn.page.getElementById(id)!.textContent).join(" ");
    expect(described).toContain('"many" stands where a number from 0 to 60 frames was expected');
    expect(button(drawn, "Save to the sheet").disabled).toBe(true);
    expect(await drawn.violations()).toEqual([]);
  });

  it.each(THRESHOLDS)(
    "says of %s what it means, its unit and its limits, and refuses what is over them",
    async (label, most, unit) => {
      const drawn = await open(workbook());
      const input = field(drawn, label);
      const described = () =>
        (input.getAttribute("aria-describedby") ?? "")
          .split(" ")
          .map((id) => drawn.page.getElementById(id)!.textContent)
          .join(" ");
      expect(described()).toMatch(/[a-z]{3}.*\.\s/);
      expect(described()).toContain(`0 to ${most.toLocaleString("en")} ${unit}`);
      type(drawn, input, String(most + 1));
      await vi.waitFor(() => expect(input.getAttribute("aria-invalid")).toBe("true"));
      expect(described()).toContain(`"${most + 1}" stands where a number from 0 to ${most}`);
    },
  );

  it("says what each part of a grade means and its limits, and what is wrong with it", async () => {
    const drawn = await open(workbook());
    const frames = drawn.page.getElementById("grade-1-frames") as HTMLInputElement;
    const described = () =>
      frames
        .getAttribute("aria-describedby")!
        .split(" ")
        .map((id) => drawn.page.getElementById(id)!.textContent)
        .join(" ");
    expect(described()).toMatch(/least frames of bees.*0 to 60 frames/i);
    type(drawn, frames, "61");
    await vi.waitFor(() => expect(described()).toContain("a number from 0 to 60 frames was"));
    expect(await drawn.violations()).toEqual([]);
  });

  it("orders, adds and takes away grades", async () => {
    const drawn = await open(workbook());
    button(drawn, "Remove grade 1").click();
    await vi.waitFor(() => expect(review(drawn)[0]).toBe("grade 1 name: Prime → Light"));
    button(drawn, "Add a grade").click();
    await vi.waitFor(() => expect(drawn.page.querySelectorAll(".grade")).toHaveLength(2));
    button(drawn, "Move grade 2 up").click();
    await vi.waitFor(() => {
      const names = [...drawn.page.querySelectorAll<HTMLInputElement>(".grade input")];
      expect(names.filter((_, i) => i % 4 === 0).map((input) => input.value)).toEqual([
        "",
        "Light",
      ]);
    });
  });

  it("does not touch a cell that holds a formula", async () => {
    const drawn = await open(workbook());
    choose(drawn, field(drawn, "Contract"), "name Terms / Pear");
    await vi.waitFor(() => expect(field(drawn, "base fee").disabled).toBe(true));
    expect(drawn.page.body.textContent).toContain("A formula stands in this cell");
  });

  it("saves nothing over what was changed behind it, and keeps what is typed on offer", async () => {
    const book = workbook();
    const drawn = await open(book);
    type(drawn, field(drawn, "average frames"), "7");
    await vi.waitFor(() => expect(review(drawn)).toHaveLength(1));
    book.type("Terms", 1, 1, 9);
    await vi.waitFor(() => expect(text(drawn)).toContain("was changed in the sheet"));
    expect(field(drawn, "average frames").value).toBe("7");
    expect(button(drawn, "Save to the sheet").disabled).toBe(true);
    expect(await drawn.violations()).toEqual([]);
    button(drawn, "Read again, keep my changes").click();
    await vi.waitFor(() => expect(review(drawn)).toEqual(["average frames: 9 → 7"]));
    button(drawn, "Save to the sheet").click();
    await vi.waitFor(() => expect(book.entry("Terms", 1, 1)).toBe(7));
  });

  it("reads again without what is typed where that is asked", async () => {
    const book = workbook();
    const drawn = await open(book);
    type(drawn, field(drawn, "average frames"), "7");
    await vi.waitFor(() => expect(review(drawn)).toHaveLength(1));
    book.type("Terms", 1, 1, 9);
    await vi.waitFor(() => expect(text(drawn)).toContain("was changed in the sheet"));
    button(drawn, "Read again, without my changes").click();
    await vi.waitFor(() => expect(field(drawn, "average frames").value).toBe("9"));
    expect(review(drawn)).toEqual([]);
  });

  it("goes on where only another contract was changed, or the table was moved", async () => {
    const book = workbook();
    const drawn = await open(book);
    type(drawn, field(drawn, "average frames"), "7");
    await vi.waitFor(() => expect(review(drawn)).toHaveLength(1));
    // A row is put in above the table: every cell of it is one row lower.
    const rows = [["", "", ""], ...TERMS];
    rows.forEach((row, r) => row.forEach((entry, c) => book.type("Terms", r, c, entry)));
    const { place } = book.names.get("Terms")!;
    book.names.set("Terms", { kind: "name", place: { ...place, row: 1 } });
    book.type("Terms", 2, 2, 6);
    book.type("Terms", 1, 2, "Plum");
    await vi.waitFor(() => expect(text(drawn)).toContain("Plum"));
    button(drawn, "Save to the sheet").click();
    await vi.waitFor(() => expect(book.entry("Terms", 2, 1)).toBe(7));
    expect(book.entry("Terms", 2, 2)).toBe(6);
    expect(book.entry("Terms", 1, 1)).toBe("Cherry");
  });

  it("keeps what is typed when another contract is chosen, and says that it is not saved", async () => {
    const drawn = await open(workbook());
    type(drawn, field(drawn, "average frames"), "7.5");
    await vi.waitFor(() => expect(review(drawn)).toHaveLength(1));
    choose(drawn, field(drawn, "Contract"), "name Terms / Pear");
    await vi.waitFor(() => expect(field(drawn, "average frames").value).toBe("7"));
    const options = [...drawn.page.querySelectorAll("#contract option")].map((o) => o.textContent);
    expect(options).toEqual(["Cherry, changes not saved", "Pear"]);
    choose(drawn, field(drawn, "Contract"), "name Terms / Cherry");
    await vi.waitFor(() => expect(field(drawn, "average frames").value).toBe("7.5"));
    expect(review(drawn)).toEqual(["average frames: 8 → 7.5"]);
  });

  it("tells the contract of a table from that of a sheet with the same name", async () => {
    const place = { sheet: "Other", row: 0, column: 0, rows: 2, columns: 2 };
    const terms = (frames: number) => [
      ["Term", "Cherry"],
      ["average frames", frames],
    ];
    const book = new MemoryWorkbook(
      { Fruit: terms(6), Other: terms(9) },
      new Map([["Fruit", { kind: "table", place }]]),
    );
    const drawn = await open(book);
    const options = [...drawn.page.querySelectorAll<HTMLOptionElement>("#contract option")];
    const [first, second] = options.map(({ value }) => value);
    type(drawn, field(drawn, "average frames"), "7");
    await vi.waitFor(() => expect(review(drawn)).toEqual(["average frames: 9 → 7"]));
    choose(drawn, field(drawn, "Contract"), second!);
    await vi.waitFor(() => expect(field(drawn, "average frames").value).toBe("6"));
    expect(review(drawn)).toEqual([]);
    choose(drawn, field(drawn, "Contract"), first!);
    await vi.waitFor(() => expect(review(drawn)).toEqual(["average frames: 9 → 7"]));
  });

  it("refuses whole what would move a grade over a formula, and names the cell", async () => {
    const book = workbook();
    book.type("Terms", 6, 1, "=5+1");
    const before = book.snapshot();
    const drawn = await open(book);
    button(drawn, "Remove grade 1").click();
    await vi.waitFor(() => expect(text(drawn)).toContain("B7 holds a formula"));
    expect(button(drawn, "Save to the sheet").disabled).toBe(true);
    button(drawn, "Save to the sheet").click();
    expect(book.snapshot()).toEqual(before);
  });

  it("says what no function can read of the table, with its row, at the top", async () => {
    const book = workbook();
    book.type("Terms", 3, 0, "avrage frames");
    book.type("Terms", 5, 0, "Minimum frames");
    const drawn = await open(book);
    const [first, second] = [...drawn.page.querySelectorAll(".problems li")].map(
      (li) => li.textContent,
    );
    expect(first).toMatch(/^A4: "avrage frames" is no term that is known; did you mean "average/);
    expect(second).toMatch(/^A6: .*"minimum frames" stands twice.*A3/);
    expect(await drawn.violations()).toEqual([]);
  });

  it("says why a table with two contracts of one name is not read", async () => {
    const book = workbook();
    book.type("Terms", 0, 2, "cherry");
    const drawn = await draw(ContractView, book);
    await vi.waitFor(() => expect(text(drawn)).toContain('two contracts are named "cherry"'));
    expect(text(drawn)).not.toContain("No Terms table is in this workbook");
  });

  it("shows at once what is typed in the sheet", async () => {
    const book = workbook();
    const drawn = await open(book);
    book.type("Terms", 2, 1, 5);
    await vi.waitFor(() => expect(field(drawn, "minimum frames").value).toBe("5"));
  });

  it("begins a contract from a published standard, with its source and the caution", async () => {
    const book = workbook();
    const drawn = await open(book);
    choose(drawn, field(drawn, "Begin from"), "standard: Almond Board of California");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain("Best Management Practices"),
    );
    expect(drawn.page.body.textContent).toContain(
      "The signed contract and local rules come first.",
    );
    button(drawn, "Begin").click();
    await vi.waitFor(() => expect(drawn.page.body.textContent).toContain("A name is needed"));
    type(drawn, field(drawn, "Its name"), "Almond");
    await vi.waitFor(() => expect(drawn.page.querySelector("#contract-name-fault")).toBeNull());
    button(drawn, "Begin").click();
    await vi.waitFor(() =>
      expect(review(drawn)).toEqual([
        "average frames: left out → 8",
        "minimum frames: left out → 6",
      ]),
    );
    button(drawn, "Save to the sheet").click();
    await vi.waitFor(() => expect(book.entry("Terms", 0, 3)).toBe("Almond"));
    expect(book.names.get("Terms")!.place.columns).toBe(4);
    await vi.waitFor(() => expect(field(drawn, "Contract").value).toBe("name Terms / Almond"));
  });

  it("copies the first contract where the one that was to be copied has another name now", async () => {
    const book = workbook();
    const drawn = await open(book);
    book.type("Terms", 0, 1, "Plum");
    await vi.waitFor(() => expect(field(drawn, "Begin from").value).toBe("copy: Plum"));
    type(drawn, field(drawn, "Its name"), "Almond");
    await new Promise((drawn) => setTimeout(drawn));
    button(drawn, "Begin").click();
    await vi.waitFor(() => expect(review(drawn)).toContain("average frames: left out → 8"));
  });

  it("says the limits with the sign that the user types", async () => {
    const book = workbook();
    book.sign = ",";
    const drawn = await open(book);
    expect(text(drawn)).toContain("0 to 1.000.000 in your currency");
  });

  it("copies a contract that is named as the list names a standard", async () => {
    const book = workbook();
    const name = "standard: Almond Board of California";
    book.type("Terms", 0, 1, name);
    const drawn = await draw(ContractView, book);
    await vi.waitFor(() => field(drawn, "Begin from"));
    expect(drawn.page.body.textContent).not.toContain("Best Management Practices");
    button(drawn, "Begin").click();
    await vi.waitFor(() => expect(drawn.page.body.textContent).toContain("A name is needed"));
    type(drawn, field(drawn, "Its name"), "Almond");
    await vi.waitFor(() => expect(drawn.page.querySelector("#contract-name-fault")).toBeNull());
    button(drawn, "Begin").click();
    await vi.waitFor(() => expect(review(drawn)).toContain("grade 1 name: left out → Prime"));
  });

  it("says where to begin in a workbook without Terms", async () => {
    const drawn = await draw(ContractView, new MemoryWorkbook({ Yard: [["Hive"]] }));
    await vi.waitFor(() => expect(drawn.page.body.textContent).toContain("Start makes one"));
  });
});
