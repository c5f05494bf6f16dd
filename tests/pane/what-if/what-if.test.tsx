import { describe, expect, it, vi } from "vitest";
import { LOT } from "../../../src/functions/lot.js";
import { LOT_CHANCE } from "../../../src/functions/sampling.js";
import { LOT_PAY } from "../../../src/functions/pay.js";
import { WhatIf } from "../../../src/pane/what-if.js";
import { binsOf } from "../../../src/pane/what-if/judging.js";
import { LineWithBand } from "../../../src/pane/what-if/line-with-band.js";
import { MemoryWorkbook, type Named } from "../memory.js";
import { draw, type Drawn } from "../render.js";

const TERMS = [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ["grade 1 name", "Prime"],
  ["grade 1 frames", 10],
  ["grade 1 fee", 68],
  ["grade 2 name", "Light"],
  ["grade 2 frames", 6],
  ["grade 2 fee", 45],
  ["currency", "dollars"],
];
const MARCH_28 = 46109;
const FRAMES = [10, 9, 8, 8, 7, 7, 6, 11, 5, 9];
const YARD = [
  ["Hive", "Lot", "Date", "Frames of bees", "Brood combs", "Brood %"],
  ...FRAMES.map((frames, i) => [`H${i + 1}`, "Shed", MARCH_28, frames, 4, 50]),
];
const workbook = () =>
  new MemoryWorkbook(
    { Yard: YARD, Terms: TERMS },
    new Map([
      [
        "Terms",
        { kind: "name", place: { sheet: "Terms", row: 0, column: 0, rows: 10, columns: 2 } },
      ],
    ]),
  );
const named = (rows: number) =>
  new Map<string, Named>([
    ["Terms", { kind: "name", place: { sheet: "Terms", row: 0, column: 0, rows, columns: 2 } }],
  ]);
const open = async (book = workbook()) => {
  const drawn = await draw(WhatIf, book);
  await vi.waitFor(() => expect(drawn.page.querySelector(".verdict")).not.toBeNull());
  return drawn;
};
const verdict = ({ page }: Drawn) => page.querySelector(".verdict")!.textContent!;
const slider = ({ page }: Drawn, label: string) =>
  page.querySelector<SVGElement>(`[role=slider][aria-label="${label}"]`)!;
const type = ({ window, page }: Drawn, id: string, text: string) => {
  const input = page.getElementById(id) as HTMLInputElement;
  input.value = text;
  input.dispatchEvent(new window.Event("input", { bubbles: true }));
};
const row = (cells: unknown[][], label: string) =>
  cells.find(([name]) => name === label)?.[1] as number;

describe("lots whose hives name their contract", () => {
  const TWO = TERMS.map((row, i) => [...row, ["Pear", 7, 5, "", "", "", "", "", "", ""][i]!]);
  const BY_LOT = [
    ["Hive", "Lot", "Contract", "Frames of bees"],
    ["1", "North", "Cherry", 9],
    ["2", "South", "Pear", 8],
    ["3", "South", "pear", 8],
  ];
  const book = () => {
    const place = { sheet: "Terms", row: 0, column: 0, rows: 10, columns: 3 };
    return new MemoryWorkbook(
      { Yard: BY_LOT, Terms: TWO },
      new Map<string, Named>([["Terms", { kind: "name", place }]]),
    );
  };
  const shown = ({ page }: Drawn) =>
    page.querySelector<HTMLSelectElement>("#what-if-contract")!.selectedOptions[0]!.textContent;
  const choose = ({ window, page }: Drawn, id: string, option: string) => {
    const select = page.getElementById(id) as HTMLSelectElement;
    select.value = [...select.options].find(({ text }) => text.includes(option))!.value;
    select.dispatchEvent(new window.Event("change", { bubbles: true }));
  };

  it("are shown under it, and another that is chosen is told apart", async () => {
    const drawn = await open(book());
    expect(shown(drawn)).toContain("Cherry");
    choose(drawn, "what-if-lot", "South");
    await vi.waitFor(() => expect(shown(drawn)).toContain("Pear"));
    expect(drawn.page.body.textContent).not.toContain("the hives name the contract");
    choose(drawn, "what-if-contract", "Cherry");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain('the hives name the contract "Pear"'),
    );
  });
});

describe("the view of what if", () => {
  it("says of the lot what the functions say of it, and is accessible", async () => {
    const drawn = await open();
    type(drawn, "what-if-size", "40");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("95 %"));
    const lot = LOT(YARD, 40, TERMS, "Cherry", "Shed");
    const low = row(lot, "Average of the whole lot, low");
    const high = row(lot, "Average of the whole lot, high");
    expect(verdict(drawn)).toContain(`from ${low.toFixed(2)} to ${high.toFixed(2)} frames`);
    const chance = LOT_CHANCE(YARD, 40, TERMS, "Cherry", "Shed")[0]![0] as number;
    expect(verdict(drawn)).toContain(`${Math.round(100 * chance)} %`);
    const total = LOT_PAY(YARD, 40, TERMS, "Cherry", "Shed").find(([name]) => name === "total");
    expect(verdict(drawn)).toContain(`${(total!.at(-1) as number).toLocaleString("en")} dollars`);
    for (const fold of drawn.page.querySelectorAll("details")) fold.open = true;
    expect(await drawn.violations()).toEqual([]);
  });

  it("moves a threshold by arrow keys, judges at once and writes nothing", async () => {
    const book = workbook();
    const before = book.snapshot();
    const drawn = await open(book);
    // Mean of the nine of 6 and over, (10+9+8+8+7+7+6+11+9)/9 = 8.33: met at 8, not met at 8.5.
    expect(verdict(drawn)).toContain("met: average 8.33 of 8 frames asked");
    // An attribute of SVG counts only in small letters, and without it no key reaches the handle.
    expect(slider(drawn, "average").getAttribute("tabindex")).toBe("0");
    for (const _ of [1, 2]) {
      const key = new drawn.window.KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true });
      const now = slider(drawn, "average").getAttribute("aria-valuenow");
      slider(drawn, "average").dispatchEvent(key);
      await vi.waitFor(() =>
        expect(slider(drawn, "average").getAttribute("aria-valuenow")).not.toBe(now),
      );
    }
    await vi.waitFor(() => expect(verdict(drawn)).toContain("not met: average 8.33 of 8.5"));
    expect(slider(drawn, "average").getAttribute("aria-valuetext")).toBe("8.5 frames");
    expect(book.snapshot()).toEqual(before);
  });

  it("saves what was moved, old to new, and can take it back", async () => {
    const book = workbook();
    const before = book.snapshot();
    const drawn = await open(book);
    type(drawn, "what-if-grade-1-frames", "9");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("4 Prime"));
    expect(drawn.page.querySelector(".review li")!.textContent).toBe("grade 1 frames: 10 → 9");
    [...drawn.page.querySelectorAll("button")]
      .find((button) => button.textContent === "Save to the sheet")!
      .click();
    await vi.waitFor(() => expect(drawn.said).toHaveLength(1));
    expect(book.entry("Terms", 4, 1)).toBe(9);
    await book.write(drawn.said.at(-1)!.undo);
    expect(book.snapshot()).toEqual(before);
  });

  it("tells handles on one place apart, by name and by where they are taken hold of", async () => {
    const drawn = await open();
    type(drawn, "what-if-grade-1-frames", "8");
    await vi.waitFor(() => expect(slider(drawn, "Prime").getAttribute("aria-valuenow")).toBe("8"));
    const knobOf = (name: string) => slider(drawn, name).querySelector("circle")!;
    expect(knobOf("Prime").getAttribute("cx")).toBe(knobOf("average").getAttribute("cx"));
    const heights = ["average", "Prime"].map((name) => Number(knobOf(name).getAttribute("cy")));
    expect(heights[0]).toBeLessThan(heights[1]!);
  });

  it("says what is wrong where a threshold or the lot's size is none", async () => {
    const drawn = await open();
    type(drawn, "what-if-size", "5");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain("a lot of 5 hives cannot have 10 in the sheet"),
    );
    type(drawn, "what-if-size", "");
    type(drawn, "what-if-minimum-frames", "many");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain("One term cannot be read."),
    );
    const input = drawn.page.getElementById("what-if-minimum-frames")!;
    expect(input.getAttribute("aria-invalid")).toBe("true");
    const fault = drawn.page.getElementById(input.getAttribute("aria-describedby")!);
    expect(fault!.textContent).toContain('"many" stands where a number from 0 to 60 frames');
    expect(await drawn.violations()).toEqual([]);
  });

  it("keeps the field that is being emptied to type another figure", async () => {
    const drawn = await open();
    type(drawn, "what-if-average-frames", "");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("none asked"));
    type(drawn, "what-if-average-frames", "9");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("of 9 frames asked"));
  });

  it("moves thresholds of the terms as they stand, not as they stood", async () => {
    const book = workbook();
    const drawn = await open(book);
    type(drawn, "what-if-grade-1-frames", "9");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("4 Prime"));
    book.type("Terms", 2, 1, 5);
    await vi.waitFor(() => expect(verdict(drawn)).toContain("0 of 10 hives under the minimum"));
    const listed = [...drawn.page.querySelectorAll(".review li")].map((li) => li.textContent);
    expect(listed).toEqual(["grade 1 frames: 10 → 9"]);
  });

  it("shows the weeks ahead with their band", async () => {
    const drawn = await open();
    expect(drawn.page.querySelector(".ahead")!.getAttribute("aria-label")).toMatch(
      /18 Apr 2026, nine in ten from [\d.]+ to [\d.]+/,
    );
    expect(drawn.page.body.textContent).toMatch(
      /4 Apr 2026: [\d.]+ frames .* chance of the average asked/,
    );
  });

  it("reads the sheet anew for another contract that counts brood otherwise", async () => {
    const terms = [
      ["Term", "Frames", "Combs"],
      ["average frames", 8, 8],
      ["brood", 3, 3],
      ["brood counted as", "full frames", "combs"],
    ];
    const yard = [
      ["Hive", "Frames of bees", "Brood"],
      ["H1", 9, 4],
      ["H2", 7, 3],
    ];
    const place = { sheet: "Terms", row: 0, column: 0, rows: 4, columns: 3 };
    const drawn = await open(
      new MemoryWorkbook(
        { Yard: yard, Terms: terms },
        new Map([["Terms", { kind: "name", place }]]),
      ),
    );
    const which = drawn.page.getElementById("what-if-contract") as HTMLSelectElement;
    which.value = "name Terms / Combs";
    which.dispatchEvent(new drawn.window.Event("change", { bubbles: true }));
    await vi.waitFor(() => expect(which.value).toBe("name Terms / Combs"));
    // 4 and 3 combs with brood of 3 asked: both count, (9 + 7) / 2 = 8.
    expect(drawn.page.querySelector(".error")?.textContent).toBeUndefined();
    expect(verdict(drawn)).toContain("met: average 8 of 8 frames asked");
  });

  it("reads the lot's size as a number of hives, and nothing else", async () => {
    const drawn = await open();
    for (const size of ["1,200", "1e2", "-40"]) {
      type(drawn, "what-if-size", size);
      await vi.waitFor(() =>
        expect(drawn.page.body.textContent).toContain(
          `Hives in the lot: a whole number from 1 on was expected, not “${size}”.`,
        ),
      );
      expect(drawn.page.querySelector(".verdict")).toBeNull();
    }
  });

  it("says a threshold with the sign that the user types", async () => {
    const book = workbook();
    book.sign = ",";
    const drawn = await open(book);
    type(drawn, "what-if-average-frames", "8,5");
    await vi.waitFor(() =>
      expect(slider(drawn, "average").getAttribute("aria-valuetext")).toBe("8,5 frames"),
    );
  });

  it("tells contracts of one name by their tables, and says where the chosen one is gone", async () => {
    const place = (row: number) => ({ sheet: "Terms", row, column: 0, rows: 2, columns: 2 });
    const book = new MemoryWorkbook(
      {
        Yard: YARD,
        Terms: [
          ["Term", "Cherry"],
          ["average frames", 8],
          [],
          ["Term", "Cherry"],
          ["average frames", 9],
        ],
      },
      new Map([
        ["Early", { kind: "name", place: place(0) }],
        ["Late", { kind: "name", place: place(3) }],
      ]),
    );
    const drawn = await open(book);
    const which = drawn.page.getElementById("what-if-contract") as HTMLSelectElement;
    expect([...which.options].map(({ text }) => text)).toEqual(["Cherry (Early)", "Cherry (Late)"]);
    which.value = which.options[1]!.value;
    which.dispatchEvent(new drawn.window.Event("change", { bubbles: true }));
    // (10+9+8+8+7+7+6+11+5+9)/10 = 8 frames.
    await vi.waitFor(() =>
      expect(verdict(drawn)).toContain("not met: average 8 of 9 frames asked"),
    );
    book.type("Terms", 3, 1, "Plum");
    await vi.waitFor(() =>
      expect(drawn.page.body.textContent).toContain(
        "The contract that was chosen is no longer there",
      ),
    );
  });

  it("names the chance as the average's alone where the hives under the minimum reject the load", async () => {
    const terms = [
      ["Term", "Load"],
      ["average frames", 8],
      ["minimum frames", 6],
      ["under minimum", "rejects the load"],
      ["share under minimum forgiven", 10],
    ];
    const yard = [
      ["Hive", "Frames of bees"],
      ...Array.from({ length: 16 }, (_, i) => [`H${i + 1}`, i < 2 ? 5 : 10]),
    ];
    const drawn = await open(new MemoryWorkbook({ Yard: yard, Terms: terms }, named(5)));
    type(drawn, "what-if-size", "100");
    // (2 x 5 + 14 x 10) / 16 = 9.375 frames; 10 % of 16 hives are 1.6, under 2.
    await vi.waitFor(() => expect(verdict(drawn)).toContain("whole lot’s average reaches"));
    expect(verdict(drawn)).toContain(
      "not met: average 9.38 of 8 frames asked; 2 of 16 hives under the minimum: too many",
    );
    expect(verdict(drawn)).toContain("the load is rejected over 10 % of hives opened");
    expect(verdict(drawn)).toMatch(
      /Chance that the whole lot’s average reaches what is asked: (over )?\d+ %\. It is of the average alone: by the hives opened the load is rejected for those under the minimum\./,
    );
    type(drawn, "what-if-minimum-frames", "5");
    await vi.waitFor(() => expect(verdict(drawn)).toContain("under the minimum: forgiven"));
    expect(verdict(drawn)).toContain("It is of the average alone, not of the hives under");
  });

  it("says that hives which lack more than frames are under the minimum too", async () => {
    const terms = [
      ["Term", "Cherry"],
      ["average frames", 8],
      ["minimum frames", 6],
      ["brood", 1],
    ];
    const yard = [
      ["Hive", "Frames of bees", "Brood"],
      ["H1", 9, 3],
      ["H2", 9, 3],
      ["H3", 9, "none"],
    ];
    const drawn = await open(new MemoryWorkbook({ Yard: yard, Terms: terms }, named(4)));
    expect(verdict(drawn)).toContain(
      "1 of 3 hives under the minimum (dead-outs and hives that lack what is asked of every hive among them; left out of the average)",
    );
  });

  it("says which rows are sums and no hives", async () => {
    const yard = [...YARD.map((row) => [...row]), ["Total", ...YARD[1]!.slice(1).map(() => "")]];
    yard.at(-1)![3] = 80;
    const book = new MemoryWorkbook({ Yard: yard, Terms: TERMS }, named(10));
    const drawn = await draw(WhatIf, book);
    await vi.waitFor(() => expect(verdict(drawn)).toContain("met"));
    expect(drawn.page.body.textContent).toContain('no hive: row 12, "Total"');
  });

  it("says how a row is counted that cannot be read", async () => {
    const yard = [["North"], ...YARD.map((row) => [...row])];
    yard[2]![3] = "often";
    const book = new MemoryWorkbook({ Yard: yard, Terms: TERMS }, named(10));
    const drawn = await draw(WhatIf, book);
    await vi.waitFor(() =>
      expect(drawn.page.querySelector(".error")?.textContent).toMatch(
        /row 2: .*counted from the headings as row 1, which stand in row 2 of the sheet\.\)/,
      ),
    );
  });

  it("follows the sheet", async () => {
    const book = workbook();
    const drawn = await open(book);
    book.type("Yard", 9, 3, 12);
    await vi.waitFor(() => expect(verdict(drawn)).toContain("0 of 10 hives under the minimum"));
  });
});

it("a histogram counts each hive once, the last bin holding what is over", () => {
  expect(binsOf([0, 0.5, 1, 2.99, 12], 4)).toEqual([2, 1, 1, 1]);
});

it("a forecast's line lies within its band", () => {
  const points = [1, 2, 3].map((day) => ({ date: 46109 + day, low: 6, middle: 8, high: 11 }));
  const drawn = JSON.stringify(LineWithBand({ points, threshold: 8, sign: ".", system: 1900 }));
  expect(drawn).toContain("nine in ten from 6 to 11");
  // By the calendar the day 46110 is 29 March 2026, and 30 March 2030 where days count from 1904.
  expect(drawn).toContain("29 Mar 2026");
  const from1904 = LineWithBand({ points, threshold: 8, sign: ".", system: 1904 });
  expect(JSON.stringify(from1904)).toContain("30 Mar 2030");
});
