import { describe, expect, it, vi } from "vitest";
import { Eye } from "../../../src/pane/eye.js";
import { BEE_COLOURS, BROOD_COLOURS, DEEP_COMB, paintedShare } from "../../raster.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

const open = async (sign: "." | "," = "."): Promise<Drawn> => {
  const workbook = new MemoryWorkbook({ Yard: [["Hive", "Frames of bees"]] });
  workbook.sign = sign;
  const drawn = await draw(Eye, workbook);
  await vi.waitFor(() => expect(drawn.page.querySelector("#eye-from")).not.toBeNull());
  return drawn;
};
const said = ({ page }: Drawn) => page.querySelector<HTMLInputElement>("#eye-said")!;
const told = ({ page }: Drawn) => page.querySelector("#eye-told")!.textContent;
const step = ({ page }: Drawn) => page.querySelector<HTMLButtonElement>("form button")!;
const type = (drawn: Drawn, text: string) => {
  said(drawn).value = text;
  said(drawn).dispatchEvent(new drawn.window.Event("input", { bubbles: true }));
};
const say = async (drawn: Drawn, text: string) => {
  type(drawn, text);
  await vi.waitFor(() => expect(said(drawn).value).toBe(text));
  step(drawn).click();
};
const svgOf = ({ page }: Drawn) => page.querySelector(".comb svg")!.outerHTML;

describe("train the eye", () => {
  it.each([
    ["bees", BEE_COLOURS],
    ["brood", BROOD_COLOURS],
  ])("%s: tells what a comb was, as its pixels count", async (kind, colours) => {
    const drawn = await open();
    const select = drawn.page.querySelector<HTMLSelectElement>("#eye-kind")!;
    select.value = kind;
    select.dispatchEvent(new drawn.window.Event("change", { bubbles: true }));
    await vi.waitFor(() => expect(drawn.page.body.textContent).toContain(kind));
    await say(drawn, "half");
    await vi.waitFor(() => expect(told(drawn)).toMatch(/^You said 50 %\. It was \d+ %\.$/));
    const was = Number(/was (\d+)/.exec(told(drawn)!)![1]);
    const counted = paintedShare(svgOf(drawn), colours, DEEP_COMB);
    // Rounded to a whole percent.
    expect(Math.abs(counted - was)).toBeLessThan(1.5);
  });

  it("does not tell before it is said, and takes no second answer", async () => {
    const drawn = await open();
    expect(told(drawn)).toBe("Comb 1 of 20.");
    await say(drawn, "40");
    await vi.waitFor(() => expect(step(drawn).textContent).toBe("Next comb"));
    expect(said(drawn).readOnly).toBe(true);
    const before = svgOf(drawn);
    step(drawn).click();
    await vi.waitFor(() => expect(told(drawn)).toBe("Comb 2 of 20."));
    expect(said(drawn).value).toBe("");
    expect(svgOf(drawn)).not.toBe(before);
    expect(drawn.page.activeElement).toBe(said(drawn));
  });

  it.each([
    ["lots", ".", /"lots" is not understood/],
    ["0.5", ".", /may be 50 % or 0.5 %/],
    ["130", ".", /out of range: 0 to 100/],
    ["", ".", /not understood/],
  ] as const)("does not take %s: says why, and asks on", async (text, sign, why) => {
    const drawn = await open(sign);
    await say(drawn, text);
    await vi.waitFor(() => expect(told(drawn)).toMatch(why));
    expect(said(drawn).getAttribute("aria-invalid")).toBe("true");
    expect(step(drawn).textContent).toBe("Say so");
    expect(await drawn.violations()).toEqual([]);
  });

  it("reads the decimal comma where the user types one", async () => {
    const drawn = await open(",");
    await say(drawn, "37,5");
    await vi.waitFor(() => expect(told(drawn)).toMatch(/^You said 37,5 %/));
  });

  it("after twenty tells bias and spread, then starts again and has kept nothing", async () => {
    const drawn = await open();
    const misses: number[] = [];
    for (let comb = 1; comb <= 20; comb++) {
      await vi.waitFor(() => expect(told(drawn)).toBe(`Comb ${comb} of 20.`));
      await say(drawn, "50");
      await vi.waitFor(() => expect(told(drawn)).toMatch(/It was/));
      misses.push(50 - Number(/was (\d+)/.exec(told(drawn)!)![1]));
      if (comb < 20) step(drawn).click();
    }
    const section = drawn.page.querySelector("form section")!;
    const [, much, way] = /you said ([\d.]+) points of percent (more|less)/.exec(
      section.textContent!,
    )!;
    const bias = way === "more" ? Number(much) : -Number(much);
    const spread = Number(/Spread: ([\d.]+) points/.exec(section.textContent!)![1]);
    // By the textbook, from what was told comb by comb, which is rounded to whole percents.
    const mean = misses.reduce((sum, miss) => sum + miss, 0) / 20;
    const squares = misses.reduce((sum, miss) => sum + (miss - mean) ** 2, 0);
    expect(Math.abs(bias - mean)).toBeLessThan(0.6);
    expect(Math.abs(spread - Math.sqrt(squares / 19))).toBeLessThan(0.6);
    expect(drawn.page.querySelectorAll(".eye-plot circle")).toHaveLength(20);
    expect(await drawn.violations()).toEqual([]);
    step(drawn).click();
    await vi.waitFor(() => expect(told(drawn)).toBe("Comb 1 of 20."));
    expect(drawn.page.querySelector("form section")).toBeNull();
    expect(drawn.window.document.cookie).toBe("");
    expect(drawn.said).toEqual([]);
  });
});
