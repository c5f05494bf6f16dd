import { expect, it, vi } from "vitest";
import { SOURCES } from "../../src/functions/tables.js";
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

it("gives every figure with its source and how it is known, as SOURCES does", async () => {
  const { page } = await draw(About, new MemoryWorkbook({ Yard: [] }));
  await vi.waitFor(() => expect(page.querySelector(".sources")).not.toBeNull());
  const items = [...page.querySelectorAll(".sources li")].map((li) => li.textContent);
  expect(items).toHaveLength(SOURCES().length - 1);
  expect(items[0]).toBe(
    "bees on a deep comb well covered on both sides: 2,400 bees" +
      "Sagili & Burgett 2011, Evaluating Honey Bee Colonies for Pollination, PNW 623 (retold by another text)",
  );
});

it("says what can hurt, and that nothing is sent anywhere", async () => {
  const { page } = await draw(About, new MemoryWorkbook({ Yard: [] }));
  const said = page.body.textContent;
  expect(said).toMatch(/sends nothing anywhere/);
  expect(said).toMatch(/sting.*Lift.*smoker.*border.*inspector/s);
  expect(said).toMatch(/Version 0\.0\.0/);
});
