import { describe, expect, it } from "vitest";
import { texts } from "../../../src/pane/texts.js";
import { FakeExcel } from "../fake-excel.js";
import { formulas, open, press, set, standsIn } from "./opened.js";

const TERMS = [
  ["Term", "Cherry"],
  ["minimum frames", 6],
];

// Where nothing keeps it a text, each would be a formula, or lose its sign.
describe.each(["=", "+", "-", "@", "'"])("a heading that begins with %s", (sign) => {
  it.each(["mark", "@"] as const)("stays a text as it is renamed, kept by %s", async (kept) => {
    const heading = `${sign}Frames of bees`;
    const written = kept === "mark" ? `'${heading}` : "";
    const yard = [
      ["Hive", "Bees bottom", written],
      ["H1", 8, 3],
    ];
    const excel = new FakeExcel({ Yard: yard, Terms: TERMS });
    if (kept === "@") excel.type("Yard", 0, 2, heading, "@");
    const opened = await open(excel);
    const chosen = () => opened.view("columns").querySelectorAll<HTMLSelectElement>("td select")[2];
    await set(opened, chosen(), "yours", "change");
    const columns = opened.view("columns");
    await press(opened, columns, texts.columns.rename, texts.columns.renamed(1));
    expect(standsIn(excel, "Yard", `${heading}, uncounted`)).toEqual(["0,2"]);
    expect(formulas(excel)).toEqual([]);
  });
});
