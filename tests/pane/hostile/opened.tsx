import { expect, vi } from "vitest";
import { excelWorkbook } from "../../../src/pane/excel.js";
import { CombTally } from "../../../src/pane/pane.js";
import { texts } from "../../../src/pane/texts.js";
import type { FakeExcel } from "../fake-excel.js";
import { draw, type Drawn } from "../render.js";

type ViewId = keyof typeof texts.views;

/** The whole pane over a workbook that is open in what plays Excel. */
export interface Opened {
  readonly excel: FakeExcel;
  readonly page: Document;
  readonly window: Drawn["window"];
  /** Shows a view. */
  readonly view: (id: ViewId) => HTMLElement;
}

/** Waits for what is to be drawn, on a machine that does other things too. */
export function soon(body: () => void): Promise<void> {
  return vi.waitFor(body, { timeout: 20_000 });
}

export async function open(excel: FakeExcel): Promise<Opened> {
  excel.install();
  const pane = { workbook: excelWorkbook(), version: "0.0.0", functions: Promise.resolve([]) };
  const { page, window } = await draw(() => <CombTally {...pane} />, pane.workbook);
  // A view is read once it is shown.
  const view = (id: ViewId) => {
    page.getElementById(`tab-${id}`)!.click();
    return page.getElementById(`view-${id}`)!;
  };
  for (const id of Object.keys(texts.views) as ViewId[]) {
    await soon(() => expect(view(id).hidden).toBe(false));
    await soon(() => expect(view(id).textContent).not.toContain(texts.waiting));
  }
  await soon(() => expect(view("columns").querySelector(".holds")).not.toBeNull());
  return { excel, page, window, view };
}

/** Types or chooses, and waits until it is drawn. */
export async function set(
  { window }: Opened,
  field: Element | null | undefined,
  value: string,
  event = "input",
): Promise<void> {
  (field as HTMLInputElement).value = value;
  field!.dispatchEvent(new window.Event(event, { bubbles: true }));
  await new Promise((drawn) => setTimeout(drawn));
}

export function button(within: Element, name: string): HTMLButtonElement {
  return [...within.querySelectorAll("button")].find((one) => one.textContent === name)!;
}

/** Presses a button once it can be, and waits for what is said of it. */
export async function press(
  { page, excel }: Opened,
  within: Element,
  name: string,
  says: string,
): Promise<void> {
  await soon(() => expect(button(within, name)?.disabled).toBe(false));
  button(within, name).click();
  const said = page.querySelector("footer [role=status]")!;
  await soon(() => expect(said.textContent).toContain(says));
  excel.fire("worksheets.onChanged");
}

/** Cells that hold formulas: those whose value is not what stands in them. */
export function formulas(excel: FakeExcel): string[] {
  return [...excel.sheets.values()].flatMap(({ cells }) =>
    [...cells.values()].flatMap(({ formula, value }) =>
      String(formula).startsWith("=") && formula !== value ? [String(formula)] : [],
    ),
  );
}

/** Where a text is what a cell gives, in the order of rows and columns. */
export function standsIn(excel: FakeExcel, sheet: string, text: string): string[] {
  return [...excel.sheets.get(sheet)!.cells]
    .flatMap(([at, { value }]) => (value === text ? [at] : []))
    .sort();
}
