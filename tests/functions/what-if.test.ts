import { describe, expect, it } from "vitest";
import type { Contract } from "../../src/core/contract.js";
import { standardContract } from "../../src/core/standards.js";
import { TERMS } from "../../src/core/terms.js";
import { leavesReading } from "../../src/core/what-if.js";
import { lotInSheet } from "../../src/functions/lot-sheet.js";
import { comb, terms } from "./sheet.js";

describe("WHAT_IF reads the sheet as the changed contract would", () => {
  const yard = [
    ["Hive", "Bees", "Stores kg"],
    ["1", 8, 10],
  ];
  const inFrames = '"Stores kg" is in kg, and the term "stores unit" says frames';

  it("refuses stores that a contract begins to ask for and the sheet has in another unit", () => {
    expect(comb("WHAT_IF", yard, "stores", [[5]], null, terms(["average frames", 8]))).toEqual([
      [expect.stringContaining(inFrames)],
    ]);
  });

  it("counts again where a contract no longer asks for them", () => {
    const asking = terms(["average frames", 8], ["stores", 5]);
    const rows = comb("WHAT_IF", yard, "stores", [[5], [0]], null, asking);
    expect(rows.map((row) => row[1])).toEqual(["Verdict", expect.stringContaining("#"), "met"]);
    expect(rows[1]!.at(-1)).toContain(inFrames);
  });
});

it("every term by which a sheet's cells are read is known for one", () => {
  const asked = new Set<string | symbol>();
  const noting = (contract: Contract) =>
    new Proxy(contract, {
      get: (of, field) => {
        asked.add(field);
        return Reflect.get(of, field) as unknown;
      },
    });
  const combs = standardContract("Rutgers New Jersey");
  const sheets: [string[], unknown[], Contract][] = [
    [["Bees", "Brood", "Stores"], [8, "3-4", 2], { ...combs, stores: 1 }],
    [["Bees", "Brood", "Brood %", "Queen"], [8, 4, 60, "yes"], combs],
    [["Bees 1", "Bees 2"], ["1-2", "7.5"], combs],
    [["Seams from above", "Seams from below"], [8, 7], { ...combs, combRule: "cluster count" }],
  ];
  for (const [headings, cells, contract] of sheets) {
    const yard = [
      ["Hive", "Date", ...headings],
      ["A1", 46109, ...cells],
    ];
    expect(lotInSheet(yard, noting(contract), null).looks).toHaveLength(1);
  }
  const read = TERMS.filter(({ field }) => asked.has(field)).map(({ label }) => label);
  expect(read).toContain("comb rule");
  expect(read.filter(leavesReading)).toEqual([]);
});
