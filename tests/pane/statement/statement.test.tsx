import { describe, expect, it, vi } from "vitest";
import { Refusal } from "../../../src/core/refusal.js";
import { StatementView } from "../../../src/pane/statement.js";
import { workbookOf } from "../columns/sheets.js";
import type { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

const open = async (workbook: MemoryWorkbook): Promise<Drawn> => {
  const drawn = await draw(StatementView, workbook);
  await vi.waitFor(() => expect(drawn.page.querySelector("button")).not.toBeNull());
  return drawn;
};
const button = ({ page }: Drawn) => page.querySelector<HTMLButtonElement>("button.main")!;
const preview = ({ page }: Drawn) => page.querySelector("dl")?.textContent ?? "";
const set = ({ page, window }: Drawn, field: string, value: string, event = "input") => {
  const control = page.getElementById(`statement-${field}`) as HTMLInputElement;
  control.value = value;
  control.dispatchEvent(new window.Event(event, { bubbles: true }));
};
const press = async (view: Drawn) => {
  const before = view.said.length;
  button(view).click();
  await vi.waitFor(() => expect(view.said.length).toBe(before + 1));
  return view.said.at(-1)!;
};
const column = (workbook: MemoryWorkbook, sheet: string, c: number) =>
  Array.from({ length: 120 }, (_, r) => workbook.entry(sheet, r, c));

describe("the view of the statement", () => {
  // As tests/cli/statement.test.ts has them worked by hand: 152.5 frames on 17 hives that count, and
  // 128 hives at 60, 8 at 45, a bonus of 264.
  it("says what the statement will say, and is accessible", async () => {
    const view = await open(workbookOf());
    set(view, "size", "160");
    await vi.waitFor(() => expect(preview(view)).toContain("Hives not opened: 140"));
    expect(preview(view)).toMatch(
      /^By the contractHives opened: 20; .*Average frames: 8.97; .*Met or not: met; .*average is 8.97/,
    );
    expect(preview(view)).toContain("How sureHives not opened: 140");
    expect(preview(view)).toContain("Chance that the whole lot's average is met");
    expect(preview(view)).toContain("Paytotal: 8,304.00");
    expect(await view.violations()).toEqual([]);
  });

  it("makes a sheet of it, tells its name, and can take it back", async () => {
    const workbook = workbookOf();
    const before = workbook.snapshot();
    const view = await open(workbook);
    set(view, "size", "160");
    set(view, "grower", "Ann Orchard");
    set(view, "picked", "every third pallet");
    await vi.waitFor(() => expect(preview(view)).toContain("Hives not opened: 140"));
    const { sentence, undo } = await press(view);
    expect(sentence).toBe("The statement is on a new sheet, Statement Shed.");
    expect(column(workbook, "Statement Shed", 3)).toContain("Ann Orchard");
    expect(column(workbook, "Statement Shed", 3)).toContain("every third pallet");
    expect(column(workbook, "Statement Shed", 6)).toContain(8304);
    expect((await press(view)).sentence).toContain("Statement Shed 2");
    await workbook.write(view.said.at(-1)!.undo);
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("is for the lot and the contract that are chosen, a published standard among them", async () => {
    const workbook = workbookOf();
    const view = await open(workbook);
    set(view, "lot", "Coast", "change");
    set(view, "contract", "terms / name Terms / Pear", "change");
    await vi.waitFor(() => expect(preview(view)).toContain("Paytotal"));
    await press(view);
    expect(column(workbook, "Statement Coast", 3)).toContain("Pear");
    expect(view.page.body.textContent).not.toContain("all hives of the sheet");
    set(view, "contract", "standard /  / Almond Board of California", "change");
    await vi.waitFor(() => expect(preview(view)).toContain("The contract gives no fee"));
    expect(preview(view)).toMatch(/^By the contractHives opened: 20/);
    expect(view.page.body.textContent).toContain("your signed contract comes first");
    expect((await press(view)).sentence).toContain(", Statement Coast 2.");
  });

  it("shows figures with the sign that the user types", async () => {
    const workbook = workbookOf();
    workbook.sign = ",";
    const view = await open(workbook);
    set(view, "size", "160");
    await vi.waitFor(() => expect(preview(view)).toContain("total: 8.304,00"));
  });

  it("says why there is none, and makes none", async () => {
    const workbook = workbookOf();
    const before = workbook.snapshot();
    const view = await open(workbook);
    const says = (text: string | RegExp) =>
      vi.waitFor(() => expect(view.page.querySelector(".error")?.textContent).toMatch(text));
    set(view, "size", "some");
    await says("Hives in the lot: a whole number from 1 on was expected, not “some”.");
    expect(button(view).disabled).toBe(true);
    set(view, "size", "5");
    await says("a lot of 5 hives cannot have 20 in the sheet");
    set(view, "size", "");
    set(view, "delivered", "30");
    await says("delivered: give the size of the lot too");
    set(view, "delivered", "");
    set(view, "one", "apple");
    await says("a seed is blank");
    set(view, "other", "bloom");
    await vi.waitFor(() => expect(button(view).disabled).toBe(false));
    workbook.type("Yard", 1, 4, "often");
    await says(/row 2: "often" is not understood/);
    workbook.type("Yard", 1, 4, 4);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("says what the workbook's host says where it makes none", async () => {
    const workbook = workbookOf();
    workbook.statement = () => Promise.reject(new Refusal("the structure is protected"));
    const view = await open(workbook);
    expect(await press(view)).toEqual({ sentence: "the structure is protected", undo: [] });
    await vi.waitFor(() => expect(button(view).disabled).toBe(false));
  });
});
