import { describe, expect, it, vi } from "vitest";
import { Columns } from "../../../src/pane/columns.js";
import type { Entry } from "../../../src/pane/port.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";
import { DEMO, workbookOf } from "./sheets.js";

async function drawn(workbook: MemoryWorkbook): Promise<Drawn> {
  const view = await draw(Columns, workbook);
  await vi.waitFor(() => expect(view.page.querySelector("h2")).not.toBeNull());
  return view;
}

const button = (page: Document, text: string | RegExp): HTMLButtonElement =>
  [...page.querySelectorAll("button")].find((b) => (b.textContent ?? "").match(text) !== null)!;

function change(view: Drawn, selector: string, value: string, event = "change"): void {
  const field = view.page.querySelector<HTMLInputElement | HTMLSelectElement>(selector)!;
  field.value = value;
  field.dispatchEvent(new view.window.Event(event, { bubbles: true }));
}

const text = (page: Document) => page.body.textContent ?? "";

describe("a yard sheet as it is kept", () => {
  it("is shown with what each column was taken for and one example", async () => {
    const { page, violations } = await drawn(workbookOf());
    await vi.waitFor(() => expect(button(page, "Write the columns").disabled).toBe(false));
    const rows = [...page.querySelectorAll(".holds tbody tr")].map((row) => [
      row.querySelector("th")!.textContent,
      row.querySelector("select")!.value,
    ]);
    expect(rows).toContainEqual(["Bees bottom boxsuch as 5-6", "bees"]);
    expect(rows).toContainEqual(["Brood %such as 50%", "brood cover"]);
    expect(text(page)).toContain("60 hives are written here.");
    expect(await violations()).toEqual([]);
  });

  it("shows days as the contracts count them", async () => {
    const yard = [
      ["Hive", "Date", "Bees"],
      // 29 March 2026, counted from 1904.
      ["1", 46110 - 1462, 8],
    ];
    const terms = [
      ["Term", "Cherry"],
      ["average frames", 8],
      ["date system", 1904],
    ];
    const { page } = await drawn(new MemoryWorkbook({ Yard: yard, Terms: terms }, new Map()));
    expect(text(page)).toContain("such as 29 Mar 2026");
  });

  it("gets its columns beside it, and gives them back", async () => {
    const workbook = workbookOf();
    const before = workbook.snapshot();
    const { page, said } = await drawn(workbook);
    await vi.waitFor(() => expect(button(page, "Write the columns").disabled).toBe(false));
    expect(text(page)).toContain("They go to M1:S61, where every cell is free.");
    button(page, "Write the columns").click();
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(said[0]!.sentence).toBe("7 columns written to M1:S61.");
    expect(workbook.entry("Yard", 0, 12)).toBe(
      '=COMB.YARD_COLUMNS(A1:K61,Terms,"Cherry","frames,bees,brood full,brood combs,grade,short,note")',
    );
    await vi.waitFor(() => expect(text(page)).toContain("They stand in M1:S61"));
    expect(page.querySelector("#columns-at-about")!.className).toBe("quiet");
    expect(button(page, "Write the columns").disabled).toBe(true);
    await workbook.write(said[0]!.undo);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("shows the first hives as they will be", async () => {
    const { page } = await drawn(workbookOf());
    const first = [...page.querySelectorAll(".scroll tbody tr:first-child > *")];
    // By hand: 4 and 5-6 make 9.5 frames, of 2,400 bees each; 4 combs half covered are 2 full ones.
    const cells = ["S01", "9.5", "22,800", "2", "4", "Standard", "0.5", ""];
    expect(first.map((cell) => cell.textContent)).toEqual(cells);
  });

  it("keeps what stands in the way, and takes another cell", async () => {
    const workbook = workbookOf();
    workbook.type("Yard", 30, 13, "mine");
    const view = await drawn(workbook);
    await vi.waitFor(() =>
      expect(text(view.page)).toContain("They would go to M1:S61, but N31 holds “mine”."),
    );
    expect(button(view.page, "Write the columns").disabled).toBe(true);
    expect(await view.violations()).toEqual([]);
    change(view, "#columns-at", "nowhere", "input");
    await vi.waitFor(() =>
      expect(text(view.page)).toContain("“nowhere” is no cell".replace(/[“”]/g, '"')),
    );
    change(view, "#columns-at", "V1", "input");
    await vi.waitFor(() => expect(text(view.page)).toContain("They go to V1:AB61"));
    workbook.activePlace = { sheet: "Yard", row: 1, column: 25, rows: 2, columns: 1 };
    button(view.page, "Use the chosen cell").click();
    await vi.waitFor(() => expect(text(view.page)).toContain("They go to Z2:AF62"));
    expect(text(view.page)).toContain("not stand in line with their hives");
  });

  it("gets one formula a row inside, and gives them back", async () => {
    const workbook = workbookOf();
    const before = workbook.snapshot();
    const { page, said, violations } = await drawn(workbook);
    page.querySelectorAll<HTMLInputElement>("[name=columns-where]")[1]!.click();
    await vi.waitFor(() => expect(text(page)).toContain("They go to L1:Q61"));
    expect(text(page)).toContain("These come only beside the sheet: Note.");
    expect(text(page)).toMatch(/left blank: row 26\./);
    expect(await violations()).toEqual([]);
    button(page, "Write the columns").click();
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(workbook.entry("Yard", 60, 15)).toBe(
      '=COMB.GRADE($E61:$F61,Terms,"Cherry",$G61,$H61,$I61,$J61,,$D61)',
    );
    await workbook.write(said[0]!.undo);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("gets its ranges back where they became dates, shown before", async () => {
    const workbook = workbookOf();
    const { page, said } = await drawn(workbook);
    await vi.waitFor(() => expect(text(page)).toContain("F358 Jul 20267-8"));
    button(page, "Put it back as text").click();
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(workbook.entry("Yard", 34, 5)).toBe("7-8");
    await vi.waitFor(() => expect(text(page)).not.toContain("8 Jul 2026"));
  });
});

describe("rows that a function names", () => {
  const withNote = (above: readonly (readonly Entry[])[]): readonly (readonly Entry[])[] => [
    ...above,
    ["Hive", "Frames of bees"],
    ["A1", "often"],
    ["A2", 7],
  ];
  const COUNTED = "counted from the headings as row 1, which stand in row 3 of the sheet";

  it("are said to be counted from the headings where the sheet counts otherwise", async () => {
    const title = [
      ["North yard", ""],
      ["", ""],
    ];
    const { page } = await drawn(workbookOf(withNote(title)));
    await vi.waitFor(() => expect(text(page)).toContain(COUNTED));
    const plain = await drawn(workbookOf(withNote([])));
    await vi.waitFor(() => expect(text(plain.page)).toContain("row 2"));
    expect(text(plain.page)).not.toContain("counted from the headings as");
  });
});

describe("a column of brood", () => {
  // As docs/yard-sheet.md and YARD_COLUMNS have it.
  it.each([
    ["Brd", [], "as the contract counts brood: in full frames, or in combs"],
    ["Brood combs", [], "as combs that hold brood; their full frames are not known"],
    ["Brd", ["Brood %"], "as combs that hold brood, with their percent"],
  ] as const)(
    "is said to be counted as the functions count it: %s %s",
    async (brood, more, said) => {
      const cover = more.map(() => 50);
      const yard: readonly (readonly Entry[])[] = [
        ["Hive", "Bees", brood, ...more],
        ["A1", 8, 5, ...cover],
        ["A2", 7, 4, ...cover],
      ];
      const { page, violations } = await drawn(workbookOf(yard, "none"));
      const row = [...page.querySelectorAll(".holds tbody tr")][2]!;
      expect(row.querySelector("select")!.selectedOptions[0]!.textContent).toBe("brood");
      const about = row.querySelector("select")!.getAttribute("aria-describedby")!;
      expect(page.getElementById(about)!.textContent).toContain(said);
      expect(await violations()).toEqual([]);
    },
  );
});

describe("a messy yard sheet", () => {
  const MESSY: readonly (readonly Entry[])[] = [
    ["ID", "Cluster nov", "Bx brood"],
    ["A1", "7-8", 4],
    ["A2", 6, 3],
  ];

  it("is asked about, and made plain by its headings", async () => {
    const workbook = workbookOf(MESSY);
    const view = await drawn(workbook);
    const { page, said } = view;
    expect(text(page)).toContain("“Cluster nov” may hold frames of bees, or something else.");
    expect(text(page)).toMatch(/cannot be worked out yet/);
    expect(await view.violations()).toEqual([]);
    change(view, ".holds tr:nth-child(2) select", "bees");
    await vi.waitFor(() =>
      expect(text(page)).toContain("B1: “Cluster nov” becomes “Frames of bees”"),
    );
    expect(workbook.entry("Yard", 0, 1)).toBe("Cluster nov");
    button(page, "Change the headings").click();
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(workbook.entry("Yard", 0, 1)).toBe("Frames of bees");
    await vi.waitFor(() => expect(button(page, "Write the columns").disabled).toBe(false));
    await workbook.write(said[0]!.undo);
    expect(workbook.entry("Yard", 0, 1)).toBe("Cluster nov");
  });

  it("does not count a sum beside its boxes until somebody says what it is", async () => {
    const workbook = workbookOf([
      ["Hive", "Bees top", "Bees bottom", "Bees"],
      ["A1", 4, 5, "=B2+C2"],
    ]);
    const view = await drawn(workbook);
    expect(text(view.page)).toContain("“Bees” is calculated, and would be added");
    expect(text(view.page)).toContain("First say above what “Bees” holds.");
    change(view, ".holds tr:nth-child(4) select", "yours");
    await vi.waitFor(() =>
      expect(text(view.page)).toContain("D1: “Bees” becomes “Bees, uncounted”"),
    );
    expect(button(view.page, "Write the columns")).toBeUndefined();
    button(view.page, "Change the headings").click();
    await vi.waitFor(() => expect(button(view.page, "Write the columns").disabled).toBe(false));
  });

  it("follows what is typed into the sheet", async () => {
    const workbook = workbookOf(DEMO.slice(0, 3));
    const { page } = await drawn(workbook);
    expect(text(page)).toContain("2 hives are written here.");
    workbook.type("Yard", 3, 0, "S03");
    await vi.waitFor(() => expect(text(page)).toContain("3 hives are written here."));
  });
});

it("says so where the workbook holds no yard sheet", async () => {
  const workbook = workbookOf([]);
  const { page, violations } = await draw(Columns, workbook);
  await vi.waitFor(() => expect(text(page)).toContain("No yard sheet is in this workbook yet."));
  expect(await violations()).toEqual([]);
});
