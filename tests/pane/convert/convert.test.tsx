import { describe, expect, it, vi } from "vitest";
import { Convert } from "../../../src/pane/convert.js";
import { BEE_COLOURS, DEEP_COMB, paintedShare } from "../../raster.js";
import { MemoryWorkbook } from "../memory.js";
import { draw, type Drawn } from "../render.js";

function change(view: Drawn, id: string, value: string, event = "input"): void {
  const field = view.page.querySelector<HTMLInputElement>(`#convert-${id}`)!;
  field.value = value;
  field.dispatchEvent(new view.window.Event(event, { bubbles: true }));
}

const answers = (page: Document) =>
  [...page.querySelectorAll(".answers dd")].map((dd) => ({
    result: dd.querySelector("output")?.textContent,
    range: dd.querySelector(".quiet")?.textContent,
    formula: dd.querySelector("code")?.textContent,
  }));

async function on(conversion: string, sign: "." | "," = "."): Promise<Drawn> {
  const workbook = new MemoryWorkbook({ Yard: [["Hive"]] });
  workbook.sign = sign;
  const view = await draw(Convert, workbook);
  change(view, "what", conversion, "change");
  await vi.waitFor(() => expect(view.page.querySelector("code")).not.toBeNull());
  return view;
}

describe("each conversion", () => {
  it("part of a side: half a deep side holds 1,712 worker cells or 600 bees", async () => {
    // Half of 134 in2 (8 x 16.75) is 432.26 cm2, at 3.96 cells a cm2 counted on managed comb (Ohio
    // State / EPA 2015) 1,711.7; a well-covered side has 1,200 bees (Sagili & Burgett 2011).
    const { page, violations } = await on("cover");
    expect(answers(page)).toEqual([
      { result: "1,712", range: "", formula: '=COMB.CELLS("half")' },
      { result: "600", range: "", formula: '=COMB.COVER_TO_BEES("half")' },
    ]);
    expect(await violations()).toEqual([]);
  });

  it("a range keeps its ends, and the picture shows its middle", async () => {
    const view = await on("cover");
    change(view, "cover", "40-60");
    await vi.waitFor(() => expect(answers(view.page)[1]!.range).toBe("480 to 720"));
    const comb = view.page.querySelector(".comb")!;
    expect(comb.getAttribute("aria-label")).toContain("50 percent");
    expect(Math.abs(paintedShare(comb.innerHTML, BEE_COLOURS, DEEP_COMB) - 50)).toBeLessThan(1);
  });

  it("a patch of 10 by 6 inches is an ellipse of 47.1 in2, 35 % of the side", async () => {
    // pi/4 x 10 x 6 = 47.12 in2 of 134 in2; 304.02 cm2 at 3.96 cells a cm2 are 1,203.9.
    const { page, violations } = await on("patch");
    const [cells, percent] = answers(page);
    expect(cells).toEqual({ result: "1,204", range: "", formula: "=COMB.PATCH(10,6)" });
    expect(percent!.result).toBe("35.17");
    expect(percent!.formula).toBe('=COMB.PATCH(10,6,,"percent")');
    expect(await violations()).toEqual([]);
  });

  it("7-8 frames hold 18,000 bees, 16,800 to 19,200", async () => {
    // 2,400 bees on a deep covered well on both sides (Sagili & Burgett 2011).
    const { page, violations } = await on("frames");
    expect(answers(page)).toEqual([
      { result: "18,000", range: "16,800 to 19,200", formula: '=COMB.BEES("7-8")' },
    ]);
    expect(await violations()).toEqual([]);
  });

  it("12+ frames hold 28,800 bees or more", async () => {
    const view = await on("frames");
    change(view, "frames", "12+");
    await vi.waitFor(() => expect(answers(view.page)[0]!.range).toBe("28,800 or more"));
  });

  it("just-capped worker brood of 20 March 2026 emerges about 1 April and was laid about 11 March", async () => {
    // Life table: 3 days egg, 6 larva, 12 capped; half a day since capping.
    const view = await on("stage");
    change(view, "day", "2026-03-20");
    change(view, "stage", "just capped", "change");
    await vi.waitFor(() =>
      expect(answers(view.page)).toEqual([
        {
          result: "1 Apr 2026",
          range: "29 Mar 2026 to 3 Apr 2026",
          formula: '=COMB.EMERGE_DATE(DATE(2026,3,20),"just capped")',
        },
        {
          result: "11 Mar 2026",
          range: "10 Mar 2026 to 11 Mar 2026",
          formula: '=COMB.EGG_DATE(DATE(2026,3,20),"just capped")',
        },
      ]),
    );
    expect(await view.violations()).toEqual([]);
  });

  it("3 lb hold 10,500 bees, of 3,000 to 5,000 a pound", async () => {
    const { page, violations } = await on("weight");
    const [bees] = answers(page);
    expect(bees).toEqual({
      result: "10,500",
      range: "9,000 to 15,000",
      formula: "=COMB.BEE_WEIGHT(3)",
    });
    expect(await violations()).toEqual([]);
  });
});

it("says what a figure should be where it is not understood", async () => {
  const view = await on("frames");
  change(view, "frames", "lots");
  await vi.waitFor(() => expect(answers(view.page)[0]!.result).toMatch(/"lots" is not understood/));
  expect(view.page.querySelector(".answers button")).toBeNull();
});

it("takes the decimal comma where the user types one", async () => {
  const view = await on("frames", ",");
  change(view, "frames", "7,5");
  await vi.waitFor(() => expect(answers(view.page)[0]!.result).toBe("18.000"));
  expect(answers(view.page)[0]!.formula).toBe('=COMB.BEES("7,5",,,,,"decimal comma")');
});

describe("the formula of an answer", () => {
  async function put(entry: string) {
    const workbook = new MemoryWorkbook({ Yard: [["Hive", entry]] });
    workbook.activePlace = { sheet: "Yard", row: 0, column: 1, rows: 3, columns: 2 };
    const view = await draw(Convert, workbook);
    view.page.querySelector<HTMLButtonElement>(".answers button")!.click();
    await vi.waitFor(() => expect(view.said).toHaveLength(1));
    return { workbook, said: view.said[0]! };
  }

  it("goes into the chosen cell, and is taken back", async () => {
    const { workbook, said } = await put("");
    expect(workbook.entry("Yard", 0, 1)).toBe('=COMB.CELLS("half")');
    expect(said.sentence).toBe("The formula is in B1.");
    await workbook.write(said.undo);
    expect(workbook.entry("Yard", 0, 1)).toBe("");
  });

  it("never goes over what stands there", async () => {
    const { workbook, said } = await put("mine");
    expect(workbook.entry("Yard", 0, 1)).toBe("mine");
    expect(said.sentence).toBe("B1 holds “mine”, and is left as it is. Choose an empty cell.");
  });
});
