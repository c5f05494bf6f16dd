import axeCore from "axe-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser } from "playwright-core";
import {
  becomes,
  choose,
  launch,
  openPlayground,
  read,
  said,
  typeInto,
  type At,
} from "./browser.js";

const cell = (sheet: string, row: number, column: number): At => ({
  sheet,
  row,
  column,
  rows: 1,
  columns: 1,
});

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

describe("the playground, opened from a disk", () => {
  it("opens with the demo calculated, asks nobody for anything, and runs no script of another's", async () => {
    const { page, watch } = await openPlayground(browser);
    // S01: 4 and 5-6 combs of bees are 9½; Cherry's Standard begins at 8 (examples/yard.mjs).
    const { values } = await read(page, { ...cell("Yard", 1, 12), columns: 6 });
    expect(values).toEqual([[9.5, 22800, 2, 4, "Standard", 0.5]]);
    const lots = await read(page, { ...cell("Lots", 1, 0), rows: 3, columns: 2 });
    expect(lots.values).toEqual([
      ["Shed", 20],
      ["Foothill", 20],
      ["Coast", 20],
    ]);
    expect(await page.evaluate(() => "Office" in globalThis)).toBe(false);
    const fetched = await page.evaluate(async () =>
      fetch("https://example.org/").then(
        () => "fetched",
        () => "refused",
      ),
    );
    expect(fetched).toBe("refused");
    // The refusal that was asked for is the one fault.
    expect(watch.faults.filter((fault) => !fault.includes("example.org"))).toEqual([]);
    expect(watch.outside).toEqual([]);
    await page.context().close();
  });

  it("grades anew what is typed into the sheet", async () => {
    const { page, watch } = await openPlayground(browser);
    await typeInto(page, "Yard", "F2", "1-2");
    // 4 and 1½ are 5½ frames: under Cherry's minimum of 6.
    await becomes(page, cell("Yard", 1, 12), (value) => value === 5.5);
    const { values, entries, formats } = await read(page, cell("Yard", 1, 5));
    expect([values, entries, formats]).toEqual([[["1-2"]], [["1-2"]], [["@"]]]);
    expect((await read(page, cell("Yard", 1, 16))).values).not.toEqual([["Standard"]]);
    expect(watch.faults).toEqual([]);
    await page.context().close();
  });

  it("shows what a function is for, and what it takes, while it is typed", async () => {
    const { page } = await openPlayground(browser);
    await choose(page, "Yard", "W3");
    await page.keyboard.type("=COMB.COVER");
    await page.locator("#grid").getByText("COMB.COVER_TO_BEES", { exact: true }).waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await typeInto(page, "Yard", "W3", "=COMB.BEES(E2:F2)");
    // 4 and 5-6 combs at 2,400 bees a well covered deep frame: 9.5 × 2,400.
    expect(await becomes(page, cell("Yard", 2, 22), (value) => value !== "")).toBe(22800);
    await page.context().close();
  });

  it("says in a sentence what an error means", async () => {
    const { page } = await openPlayground(browser);
    await typeInto(page, "Yard", "W4", '=COMB.BEES("lots")');
    await becomes(page, cell("Yard", 3, 22), (value) => JSON.stringify(value).includes("#VALUE!"));
    await choose(page, "Yard", "A1");
    await choose(page, "Yard", "W4");
    expect(await said(page, /^W4: /)).toContain("lots");
    await page.context().close();
  });

  it("lets a threshold be changed by keyboard in the pane: the cells grade anew, and it is taken back", async () => {
    const { page, watch } = await openPlayground(browser);
    const pane = page.locator("#pane");
    const average = pane.getByLabel("minimum frames").first();
    await average.focus();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("10");
    await page.keyboard.press("Tab");
    const before = (await read(page, cell("Yard", 1, 16))).values;
    const save = pane.getByRole("button", { name: /^Save/ });
    await save.focus();
    await page.keyboard.press("Enter");
    await becomes(page, cell("Yard", 1, 16), (value) => value !== before[0]![0]);
    await pane.getByRole("button", { name: "Take back" }).press("Enter");
    await becomes(page, cell("Yard", 1, 16), (value) => value === before[0]![0]);
    expect(watch.faults).toEqual([]);
    await page.context().close();
  });

  it.each([
    [1280, "light"],
    [320, "light"],
    [320, "dark"],
  ] as const)(
    "has no view that axe finds fault with, at %i px in %s",
    async (width, colorScheme) => {
      const { page } = await openPlayground(browser, { width, colorScheme });
      if (width === 320) await page.getByRole("button", { name: "Show the pane" }).click();
      const tabs = page.locator("#pane").getByRole("tab");
      for (let tab = 0; tab < (await tabs.count()); tab++) {
        await tabs.nth(tab).click();
        await page.waitForTimeout(300);
        await page.evaluate(axeCore.source);
        const found = await page.evaluate(async () => {
          const { axe } = globalThis as unknown as { axe: typeof axeCore };
          // The grid is another's, drawn on a canvas; its own parts are not ours to judge.
          const { violations } = await axe.run({ exclude: [["#grid"]] });
          return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(" ")}`);
        });
        expect(found, (await tabs.nth(tab).textContent()) ?? "").toEqual([]);
        const wider = await page.evaluate(() => {
          const pane = document.getElementById("pane")!;
          return pane.scrollWidth - pane.clientWidth;
        });
        expect(wider).toBeLessThanOrEqual(0);
      }
      await page.context().close();
    },
  );
});
