import { expect, it, vi } from "vitest";
import { About } from "../../src/pane/about.js";
import { MemoryWorkbook } from "./memory.js";
import { draw } from "./render.js";

it("lists every function with its line and its help, and is accessible", async () => {
  const { page, violations } = await draw(About, new MemoryWorkbook({ Yard: [] }));
  await vi.waitFor(() => expect(page.querySelector("dt")?.textContent).toBe("COMB.GRADE"));
  expect(page.querySelector<HTMLAnchorElement>("dt a")!.href).toMatch(/help\.html#GRADE$/);
  expect(page.body.textContent).toMatch(/judged by eye.*signed contract/s);
  expect(await violations()).toEqual([]);
});
