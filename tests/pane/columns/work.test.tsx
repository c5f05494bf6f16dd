import { expect, it, vi } from "vitest";
import { Columns } from "../../../src/pane/columns.js";
import { evaluate } from "../../../src/pane/formula.js";
import { draw } from "../render.js";
import { workbookOf } from "./sheets.js";

vi.mock(import("../../../src/pane/formula.js"), async (original) => {
  const real = await original();
  return { ...real, evaluate: vi.fn(real.evaluate) };
});

it("a keystroke in the place where the columns go works out nothing anew", async () => {
  const { page, window } = await draw(Columns, workbookOf());
  await vi.waitFor(() => expect(page.querySelector("button.main:enabled")).not.toBeNull());
  vi.mocked(evaluate).mockClear();
  const at = page.querySelector<HTMLInputElement>("#columns-at")!;
  at.value = "V1";
  at.dispatchEvent(new window.Event("input", { bubbles: true }));
  await vi.waitFor(() => expect(page.body.textContent).toContain("They go to V1:AB61"));
  expect(evaluate).not.toHaveBeenCalled();
});

it("shows a hive that is called by a number as it is called", async () => {
  const { page } = await draw(
    Columns,
    workbookOf([
      ["Hive", "Lot", "Frames of bees"],
      [1204, 2026, 8],
    ]),
  );
  await vi.waitFor(() => expect(page.querySelector(".scroll tbody th")).not.toBeNull());
  expect(page.querySelector(".scroll tbody th")!.textContent).toBe("1204");
  const held = [...page.querySelectorAll(".holds tbody th")].map((th) => th.textContent);
  expect(held).toEqual(["Hivesuch as 1204", "Lotsuch as 2026", "Frames of beessuch as 8"]);
});
