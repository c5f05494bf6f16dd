import { expect, it, vi } from "vitest";
import { Start } from "../../../src/pane/start.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

async function started(workbook: MemoryWorkbook): Promise<Drawn> {
  const view = await draw(Start, workbook);
  await vi.waitFor(() => expect(view.page.querySelector("button")).not.toBeNull());
  return view;
}

const buttons = (page: Document) => [...page.querySelectorAll("button")];
const labels = (page: Document) => buttons(page).map((b) => b.textContent);

it("offers a yard sheet, terms and the demo, and says where terms come from", async () => {
  const { page, violations } = await started(new MemoryWorkbook({ Sheet1: [["x"]] }));
  expect(labels(page)).toEqual([
    "Add the sheet Yard",
    "Add the sheet Contracts",
    "Add the sheets Yard, Contracts, Lots",
  ]);
  expect(page.body.textContent).toMatch(/Source: Almond Board of California, Honey Bee Best/);
  expect(page.body.textContent).toMatch(/contract you signed and local rules come first/);
  expect(await violations()).toEqual([]);
});

it("adds a sheet in one step, and the next one under another name", async () => {
  const workbook = new MemoryWorkbook({ Sheet1: [["x"]] });
  const before = workbook.snapshot();
  const { page, said } = await started(workbook);
  buttons(page)[0]!.click();
  await vi.waitFor(() => expect(said).toHaveLength(1));
  expect(said[0]!.sentence).toBe("The sheet Yard is added at the end.");
  expect(workbook.entry("Yard", 2, 0)).toBe("Hive");
  await vi.waitFor(() => expect(labels(page)[0]).toBe("Add the sheet Yard 2"));
  await workbook.write(said[0]!.undo);
  expect(workbook.snapshot()).toEqual(before);
});

it("leaves Terms that are there as they are, and says so", async () => {
  const { page } = await started(new MemoryWorkbook({ Terms: [["Term", "Cherry"]] }));
  expect(labels(page)[1]).toBe("Add the sheet Contracts");
  expect(page.body.textContent).toMatch(/has Terms already.*will be called Terms_2/);
});

it("takes another name where the sheet turned out to be there, hidden or empty", async () => {
  const workbook = new MemoryWorkbook({ Sheet1: [["x"]] });
  workbook.write = () => Promise.reject(new Error("a sheet Yard is there"));
  const { page, said } = await started(workbook);
  buttons(page)[0]!.click();
  await vi.waitFor(() => expect(said).toHaveLength(1));
  await vi.waitFor(() => expect(labels(page)[0]).toBe("Add the sheet Yard 2"));
});

it("begins terms from the demo's invented contracts", async () => {
  const workbook = new MemoryWorkbook({ Sheet1: [["x"]] });
  const { page, window, said } = await started(workbook);
  const select = page.querySelector("select")!;
  select.value = "demo";
  select.dispatchEvent(new window.Event("change", { bubbles: true }));
  await vi.waitFor(() => expect(page.body.textContent).toMatch(/made up for the demo/));
  buttons(page)[1]!.click();
  await vi.waitFor(() => expect(said).toHaveLength(1));
  expect(workbook.entry("Contracts", 0, 2)).toBe("Pear");
  // Some spreadsheets refuse a name that a sheet has too.
  expect(workbook.names.get("Terms")?.place.sheet).toBe("Contracts");
});
