import type { ComponentType } from "preact";
import { expect, it, vi } from "vitest";
import { Columns } from "../../../src/pane/columns.js";
import { StatementView } from "../../../src/pane/statement.js";
import { WhatIf } from "../../../src/pane/what-if.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

const TERMS = [
  ["Term", "Cherry"],
  ["comb rule", "covered combs"],
  ["grade 1 name", "Standard"],
  ["grade 1 frames", 8],
];

const workbook = () =>
  new MemoryWorkbook({
    North: [
      ["Hive", "Bees", "Brood"],
      ["N1", 9, 4],
      ["N2", 8, 3],
    ],
    South: [
      ["Hive", "Bees", "Brood"],
      ["S1", 9, 4],
      ["S2", 8, 3],
    ],
    West: [
      ["Hive", "Bees", "Brood"],
      ["W1", 9, 4],
      ["W2", 8, 3],
    ],
    Terms: TERMS,
  });

const select = ({ page }: Drawn, view: string) =>
  page.querySelector<HTMLSelectElement>(`#${view}-sheet`);

async function southOf(View: ComponentType, view: string, sheets: MemoryWorkbook): Promise<Drawn> {
  const drawn = await draw(View, sheets);
  await vi.waitFor(() => expect(select(drawn, view)).not.toBeNull());
  const field = select(drawn, view)!;
  expect([...field.options].map((option) => option.textContent)).toEqual([
    "North (sheet, A1:C3)",
    "South (sheet, A1:C3)",
    "West (sheet, A1:C3)",
  ]);
  field.value = field.options[1]!.value;
  field.dispatchEvent(new drawn.window.Event("change", { bubbles: true }));
  await vi.waitFor(() => expect(shown(drawn, view)).toContain("South"));
  return drawn;
}

const shown = (drawn: Drawn, view: string) =>
  select(drawn, view)?.selectedOptions[0]?.textContent ?? "";

const VIEWS: readonly (readonly [string, ComponentType])[] = [
  ["columns", Columns],
  ["statement", StatementView],
  ["what-if", WhatIf],
];

it.each(VIEWS)("the sheet that was chosen stays chosen in %s as it grows", async (name, View) => {
  const sheets = workbook();
  const drawn = await southOf(View, name, sheets);
  sheets.type("South", 0, 3, "Truck driver");
  await vi.waitFor(() => expect(shown(drawn, name)).toContain("A1:D3"));
  expect(shown(drawn, name)).toBe("South (sheet, A1:D3)");
});

it.each(VIEWS)("%s says so where the sheet that was chosen is gone", async (name, View) => {
  const sheets = workbook();
  const drawn = await southOf(View, name, sheets);
  await sheets.write([
    {
      kind: "put",
      place: { sheet: "South", row: 0, column: 0, rows: 3, columns: 3 },
      expect: [
        ["Hive", "Bees", "Brood"],
        ["S1", 9, 4],
        ["S2", 8, 3],
      ],
      put: [
        ["", "", ""],
        ["", "", ""],
        ["", "", ""],
      ],
    },
  ]);
  await vi.waitFor(() =>
    expect(drawn.page.body.textContent).toContain(
      "The yard sheet that was chosen is no longer there. Choose another.",
    ),
  );
  expect(drawn.page.querySelector("button.main")).toBeNull();
  expect(await drawn.violations()).toEqual([]);
  const field = select(drawn, name)!;
  field.value = [...field.options].find((o) => o.textContent!.startsWith("North"))!.value;
  field.dispatchEvent(new drawn.window.Event("change", { bubbles: true }));
  await vi.waitFor(() => expect(shown(drawn, name)).toBe("North (sheet, A1:C3)"));
});
