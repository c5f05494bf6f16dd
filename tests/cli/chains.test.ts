import { readFile } from "node:fs/promises";
import { Workbook } from "@cj-tech-master/excelts";
import { describe, expect, it } from "vitest";
import { chainsIn } from "./chains.js";

/** A made-up sheet: addresses and their formulas, with the name Later over C1:C9. */
function book(formulas: Readonly<Record<string, string>>, spills = ""): Workbook {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet("Hive yard");
  for (const [address, formula] of Object.entries(formulas)) {
    sheet.getCell(address).value =
      address === spills.split(":")[0]
        ? { formula, ref: spills, shareType: "array", isDynamicArray: true }
        : { formula };
  }
  workbook.definedNames.add("'Hive yard'!$C$1:$C$9", "Later");
  return workbook;
}

describe("formulas of ours that wait for each other", () => {
  // Each chain is in the formulas by reading them.
  it.each([
    ["one cell", book({ B1: "COMB.BEES(A1)", C1: "COMB.BEES(B1)" }), ["C1 waits for B1"]],
    [
      "through the spreadsheet's own",
      book({ B1: "COMB.BEES(A1)", C1: "B1*2", D1: "COMB.BEES(C1)" }),
      ["D1 waits for B1"],
    ],
    [
      "a cell that another fills",
      book({ B1: "COMB.BEES(A1:A5)", D1: "COMB.BEES($B$4)" }, "B1:B5"),
      ["D1 waits for B1"],
    ],
    [
      "a whole column of a sheet that is named",
      book({ B7: "COMB.BEES(A1)", D1: "COMB.BEES('Hive yard'!$B:B)" }),
      ["D1 waits for B7"],
    ],
    ["a name", book({ C3: "COMB.BEES(A1)", D1: "COMB.BEES(LATER)" }), ["D1 waits for C3"]],
    ["none", book({ B1: "COMB.BEES(A1)", C1: 'B1&" C1"', D1: 'COMB.BEES("B1",A1)' }), []],
  ])("are found: %s", (_, workbook, chains) => {
    const inSheet = chains.map((chain) => chain.replace(/\b(?=[A-Z]\d)/g, "Hive yard!"));
    expect(chainsIn(workbook)).toEqual(inSheet);
  });

  // Excel takes about half a second for each level of add-in functions that wait for each other.
  it("are none in the demo, until one is put there", async () => {
    const workbook = new Workbook();
    const demo = new URL("../../examples/cherry-and-pear.xlsx", import.meta.url);
    await workbook.xlsx.load(await readFile(demo));
    expect(chainsIn(workbook)).toEqual([]);
    // Row 5 of the columns that M1 fills beside the yard sheet.
    workbook.getWorksheet("Lots")!.getCell("Z1").value = { formula: "COMB.BEES(Yard!M5)" };
    expect(chainsIn(workbook)).toEqual(["Lots!Z1 waits for Yard!M1"]);
  });
});
