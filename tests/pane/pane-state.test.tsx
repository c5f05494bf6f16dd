import { describe, expect, it, vi } from "vitest";
import { Refusal } from "../../src/core/refusal.js";
import { CombTally } from "../../src/pane/pane.js";
import { texts } from "../../src/pane/texts.js";
import { MemoryWorkbook } from "./memory.js";
import { draw, type Drawn } from "./render.js";
import { hold } from "./slow.js";

const TERMS = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 7],
  ["minimum frames", 6, 5],
] as const;
const YARD = [
  ["Hive", "Frames of bees"],
  ["H1", 10],
  ["H2", 8],
  ["H3", 7],
] as const;

const workbook = () =>
  new MemoryWorkbook(
    { Yard: YARD, Terms: TERMS },
    new Map([
      [
        "Terms",
        { kind: "name", place: { sheet: "Terms", row: 0, column: 0, rows: 3, columns: 3 } },
      ],
    ]),
  );

type ViewId = keyof typeof texts.views;

interface Opened extends Drawn {
  readonly view: (id: ViewId) => HTMLElement;
  readonly show: (id: ViewId, shows: string) => Promise<HTMLElement>;
}

/** The whole pane, with the contract's view read. */
async function open(book: MemoryWorkbook): Promise<Opened> {
  const host = { workbook: book, version: "0.0.0", functions: Promise.resolve([]) };
  const drawn = await draw(() => <CombTally {...host} />, book);
  const view = (id: ViewId) => drawn.page.getElementById(`view-${id}`)!;
  const show = async (id: ViewId, shows: string) => {
    drawn.page.getElementById(`tab-${id}`)!.click();
    await vi.waitFor(() => expect(view(id).querySelector(shows)).not.toBeNull());
    return view(id);
  };
  await show("contract", "#contract");
  return { ...drawn, view, show };
}

const labelled = (view: Element, label: string) => {
  const found = [...view.querySelectorAll("label")].find((one) => one.textContent === label)!;
  return view.querySelector<HTMLInputElement>(`[id="${found.htmlFor}"]`)!;
};
const button = (view: Element, name: string) =>
  [...view.querySelectorAll("button")].find((one) => one.textContent === name)!;
const typeInto = async ({ window }: Drawn, field: HTMLInputElement, text: string) => {
  const event = field.localName === "select" ? "change" : "input";
  field.value = text;
  field.dispatchEvent(new window.Event(event, { bubbles: true }));
  await vi.waitFor(() => expect(field.value).toBe(text));
  await new Promise((drawn) => setTimeout(drawn));
};
const status = ({ page }: Drawn) => page.querySelector("footer [role=status]")!.textContent;
const review = (view: Element) =>
  [...view.querySelectorAll(".review li")].map((li) => li.textContent);
const says = (drawn: Drawn, text: string) =>
  vi.waitFor(() => expect(status(drawn)).toBe(text), { timeout: 3000 });

/** The pane while an average of 9 is being written into the sheet, until it is let go. */
async function saving(book = workbook()) {
  const opened = await open(book);
  const view = opened.view("contract");
  await typeInto(opened, labelled(view, "average frames"), "9");
  const write = hold(book, "write");
  button(view, "Save to the sheet").click();
  return { opened, view, write };
}

describe("while a change is under way", () => {
  it("a second press changes nothing, and what was done can still be taken back", async () => {
    const book = workbook();
    const before = book.snapshot();
    const { opened, view, write } = await saving(book);
    button(view, "Save to the sheet").click();
    await vi.waitFor(() => expect(button(view, "Save to the sheet").disabled).toBe(true));
    write.release();
    await says(opened, "Cherry: one term saved.");
    expect(write.asked()).toBe(1);
    await vi.waitFor(() => expect(button(opened.page.body, "Take back").disabled).toBe(false));
    button(opened.page.body, "Take back").click();
    button(opened.page.body, "Take back").click();
    await says(opened, "Taken back: the sheet is as it was.");
    expect(write.asked()).toBe(2);
    expect(book.snapshot()).toEqual(before);
  });

  it("a press between the change and its being read changes nothing either", async () => {
    const book = workbook();
    const opened = await open(book);
    const view = opened.view("contract");
    await typeInto(opened, labelled(view, "average frames"), "9");
    const read = hold(book, "read");
    button(view, "Save to the sheet").click();
    await says(opened, "Cherry: one term saved.");
    button(view, "Save to the sheet").click();
    // What was saved is shown until the sheet is read again.
    expect(labelled(view, "average frames").value).toBe("9");
    read.release();
    await vi.waitFor(() => expect(review(view)).toEqual([]));
    expect(status(opened)).toBe("Cherry: one term saved.");
    expect(labelled(view, "average frames").value).toBe("9");
    expect(view.textContent).not.toContain(texts.contract.behind);
  });

  it("another view can be gone on with, but makes no change of its own", async () => {
    const { opened, write } = await saving();
    const start = await opened.show("start", "h2");
    await vi.waitFor(() => expect(button(start, "Add the sheet Yard 2").disabled).toBe(true));
    write.release();
    await vi.waitFor(() => expect(button(start, "Add the sheet Yard 2").disabled).toBe(false));
  });

  it("a statement is made once", async () => {
    const book = workbook();
    const opened = await open(book);
    const view = await opened.show("statement", "button.main");
    const statement = hold(book, "statement");
    button(view, "Make the statement").click();
    button(view, "Make the statement").click();
    statement.release();
    await says(opened, "The statement is on a new sheet, Statement.");
    expect(statement.asked()).toBe(1);
  });

  it("a formula is put into the chosen cell once", async () => {
    const book = workbook();
    book.activePlace = { sheet: "Yard", row: 9, column: 9, rows: 1, columns: 1 };
    const opened = await open(book);
    const view = await opened.show("convert", ".answers button");
    const write = hold(book, "write");
    const put = view.querySelector<HTMLButtonElement>(".answers button")!;
    put.click();
    put.click();
    await vi.waitFor(() => expect(write.asked()).toBe(1));
    write.release();
    await says(opened, "The formula is in J10.");
    expect(button(opened.page.body, "Take back")).toBeDefined();
  });
});

describe("what is typed while a save is under way", () => {
  it("into another contract stays, and stays chosen", async () => {
    const { opened, view, write } = await saving();
    await typeInto(opened, labelled(view, "Contract"), "name Terms / Pear");
    await typeInto(opened, labelled(view, "average frames"), "6.5");
    write.release();
    await says(opened, "Cherry: one term saved.");
    await vi.waitFor(() =>
      expect([...view.querySelectorAll("#contract option")].map((o) => o.textContent)).toEqual([
        "Cherry",
        "Pear, changes not saved",
      ]),
    );
    expect(labelled(view, "Contract").value).toBe("name Terms / Pear");
    expect(review(view)).toEqual(["average frames: 7 → 6.5"]);
  });

  it("into the same contract goes on from what was saved", async () => {
    const book = workbook();
    const { opened, view, write } = await saving(book);
    // Back to what stood before, and another term too.
    await typeInto(opened, labelled(view, "average frames"), "8");
    await typeInto(opened, labelled(view, "minimum frames"), "4");
    write.release();
    await says(opened, "Cherry: one term saved.");
    await vi.waitFor(() =>
      expect(review(view)).toEqual(["average frames: 9 → 8", "minimum frames: 6 → 4"]),
    );
    expect(view.textContent).not.toContain(texts.contract.behind);
    await vi.waitFor(() => expect(button(view, "Save to the sheet").disabled).toBe(false));
    button(view, "Save to the sheet").click();
    await says(opened, "Cherry: 2 terms saved.");
    expect([1, 2].map((row) => book.entry("Terms", row, 1))).toEqual([8, 4]);
  });

  it("in What if stays", async () => {
    const book = workbook();
    const opened = await open(book);
    const view = await opened.show("whatIf", ".review");
    await typeInto(opened, labelled(view, "minimum"), "5");
    const write = hold(book, "write");
    button(view, "Save to the sheet").click();
    await typeInto(opened, labelled(view, "average"), "8.5");
    write.release();
    await says(opened, "Cherry: one term saved.");
    await vi.waitFor(() => expect(review(view)).toEqual(["average frames: 8 → 8.5"]));
    expect(book.entry("Terms", 2, 1)).toBe(5);
  });
});

/** What a workbook is asked for from now on. */
function counted(book: MemoryWorkbook) {
  const counts = { regions: 0, cells: 0, signs: 0 };
  const [regions, read, sign] = [book.regions, book.read, book.decimalSign].map((call) =>
    call.bind(book),
  ) as [MemoryWorkbook["regions"], MemoryWorkbook["read"], MemoryWorkbook["decimalSign"]];
  book.regions = () => (counts.regions++, regions());
  book.decimalSign = () => (counts.signs++, sign());
  book.read = (places) => {
    for (const { rows, columns } of places) counts.cells += rows * columns;
    return read(places);
  };
  return counts;
}
const paused = () => new Promise((done) => setTimeout(done, 100));

describe("an edit in the sheet", () => {
  const SHOWS: readonly (readonly [ViewId, string])[] = [
    ["whatIf", ".review"],
    ["columns", ".holds"],
    ["statement", "button.main"],
    ["convert", ".answers"],
    ["eye", "#eye-from"],
    ["start", "h2"],
    ["about", "h2"],
    ["contract", "#contract"],
  ];

  it("is read by the view that is shown, and by the others once they are", async () => {
    const book = workbook();
    const opened = await open(book);
    for (const [id, shows] of SHOWS) await opened.show(id, shows);
    await paused();
    const counts = counted(book);
    book.type("Terms", 1, 1, 9);
    const field = labelled(opened.view("contract"), "average frames");
    await vi.waitFor(() => expect(field.value).toBe("9"));
    await paused();
    // A corner of each of three regions, and the nine cells of the Terms, a name and a sheet.
    expect(counts).toEqual({ regions: 1, cells: 3 + 9 + 9, signs: 1 });
    const moved = labelled(opened.view("whatIf"), "average");
    expect(moved.value).toBe("8");
    await opened.show("whatIf", ".review");
    await vi.waitFor(() => expect(moved.value).toBe("9"));
    const { regions } = counts;
    await opened.show("contract", "#contract");
    await paused();
    // Nothing has changed since it was read.
    expect(counts.regions).toBe(regions);
  });

  it("is read once for many that come meanwhile", async () => {
    const book = workbook();
    const opened = await open(book);
    const counts = counted(book);
    const read = hold(book, "read");
    for (const frames of [9, 10, 11, 12, 13]) book.type("Terms", 1, 1, frames);
    await paused();
    read.release();
    const field = labelled(opened.view("contract"), "average frames");
    await vi.waitFor(() => expect(field.value).toBe("13"));
    await paused();
    expect(counts.regions).toBe(2);
  });

  it("is nothing to a view that needs the decimal sign alone", async () => {
    const book = workbook();
    const opened = await open(book);
    await opened.show("convert", ".answers");
    await paused();
    const counts = counted(book);
    book.type("Yard", 1, 1, 9);
    await paused();
    expect(counts).toEqual({ regions: 0, cells: 0, signs: 0 });
  });
});

describe("where the workbook cannot be read again", () => {
  it.each([
    ["contract", "#contract"],
    ["whatIf", ".review"],
    ["columns", ".holds"],
    ["statement", "button.main"],
    ["eye", "#eye-from"],
  ] as const)("the view %s says so, and keeps what it shows", async (id, shows) => {
    const book = workbook();
    const opened = await open(book);
    const view = await opened.show(id, shows);
    await paused();
    const shown = view.querySelector(shows);
    const { read } = book;
    book.read = () => Promise.reject(new Refusal("a cell is being typed into"));
    book.type("Yard", 1, 1, 9);
    await vi.waitFor(() => expect(view.textContent).toContain("a cell is being typed into"));
    expect(view.querySelector(shows)).toBe(shown);
    expect(view.textContent).toContain("as it was read before");
    book.read = read;
    button(view, "Read again").click();
    await vi.waitFor(() => expect(view.textContent).not.toContain("a cell is being typed into"));
    expect(view.querySelector(shows)).toBe(shown);
  });

  it("a view that never was read says why, and can be read again", async () => {
    const book = workbook();
    const opened = await open(book);
    const { regions } = book;
    book.regions = () => Promise.reject(new Refusal("Excel did not do it"));
    const view = await opened.show("start", ".error");
    expect(view.textContent).toBe("Excel did not do itRead again");
    // Here the pane lies within a page that has a main part of its own.
    const violations = await opened.violations();
    expect(violations.filter((one) => !one.startsWith("landmark-"))).toEqual([]);
    book.regions = regions;
    button(view, "Read again").click();
    await vi.waitFor(() => expect(button(view, "Add the sheet Yard 2")).toBeDefined());
  });

  it("what was typed stays, and so does a choice that was made", async () => {
    const book = workbook();
    const opened = await open(book);
    const view = opened.view("contract");
    await typeInto(opened, labelled(view, "Contract"), "name Terms / Pear");
    await typeInto(opened, labelled(view, "Its name"), "Plum");
    await typeInto(opened, labelled(view, "average frames"), "6");
    const { read } = book;
    book.read = () => Promise.reject(new Refusal("Excel did not do it"));
    book.type("Yard", 1, 1, 9);
    await vi.waitFor(() => expect(view.textContent).toContain("Excel did not do it"));
    expect(labelled(view, "Its name").value).toBe("Plum");
    expect(review(view)).toEqual(["average frames: 7 → 6"]);
    book.read = read;
    book.type("Yard", 1, 1, 8);
    await vi.waitFor(() => expect(view.textContent).not.toContain("Excel did not do it"));
    expect(labelled(view, "Its name").value).toBe("Plum");
    expect(review(view)).toEqual(["average frames: 7 → 6"]);
  });
});
