import { describe, expect, it } from "vitest";
import { CellError } from "../../src/functions/cells.js";
import { LOT } from "../../src/functions/lot.js";
import { LOT_PAY } from "../../src/functions/pay.js";
import { TO_OPEN } from "../../src/functions/sampling.js";
import { WHAT_IF } from "../../src/functions/what-if.js";
import { YARD_COLUMNS } from "../../src/functions/yard.js";

// Common practice, no source: a hive goes by the contract that its row names. Sums by hand.

const TERMS: unknown[][] = [
  ["Term", "By class", "By average"],
  ["average frames", "", 8],
  ["base fee", "", 205],
  ["grade 1 name", "Gold", ""],
  ["grade 1 frames", 8, ""],
  ["grade 1 fee", 95, ""],
];
const YARD: unknown[][] = [
  ["Hive", "Lot", "Bees", "Contract"],
  ["1", "North", 9, "By class"],
  ["2", "North", 10, "by  class"],
  ["3", "South", 9, "By average"],
  ["4", "South", 9, "By average"],
  ["5", "South", "", "By average"],
  ["6", "Mixed", 9, "By average"],
  ["7", "Mixed", 9, "By class"],
];
const told = (rows: unknown[][]) => {
  const [first] = rows[0]!;
  return first instanceof CellError ? first.message : first;
};
const total = (rows: unknown[][]) => rows.find(([label]) => label === "total")?.at(-1);

describe("a lot whose hives name their contract", () => {
  it("is settled by it where no other is asked for", () => {
    expect(LOT(YARD, null, TERMS, null, "South")[0]).toEqual([
      "Lot",
      "South",
      "under contract By average",
    ]);
    expect(total(LOT_PAY(YARD, null, TERMS, null, "South"))).toBe(3 * 205);
    expect(total(LOT_PAY(YARD, null, TERMS, null, "North"))).toBe(2 * 95);
    expect(told(TO_OPEN(1, 96, null, YARD, TERMS, null, "South"))).toBe("Hives to open");
  });

  it("is settled by the one that is asked for, and it is said that the hives name another", () => {
    const paid = LOT_PAY(YARD, null, TERMS, "By class", "South");
    expect(total(paid)).toBe(3 * 95);
    expect(paid.flat()).toContain('the hives name the contract "By average"');
    const lines = LOT(YARD, null, TERMS, "By class", "South");
    expect(lines.find(([label]) => label === "Hives opened")![2]).toMatch(
      /; the hives name the contract "By average"$/,
    );
    const tried = WHAT_IF(YARD, "grade 1 frames", [[8]], null, TERMS, "By class", "South");
    expect(tried[1]!.at(-1)).toMatch(/the hives name the contract "By average"/);
    expect(LOT(YARD, null, TERMS, "By average", "South").flat().join()).not.toMatch(/name the/);
  });

  it("of several is asked about", () => {
    expect(told(LOT(YARD, null, TERMS, null, "Mixed"))).toBe(
      'the hives go by several contracts ("By average"; "By class"): say which one, or which lot',
    );
    const nameless = YARD.map((row) => row.slice(0, 3));
    expect(told(LOT(nameless, null, TERMS, null, "South"))).toBe(
      'several contracts stand here, say which: "By class", "By average"',
    );
  });

  it("has it beside a hive that was not opened too", () => {
    const columns = YARD_COLUMNS(YARD, TERMS, undefined, [["hive, contract, frames"]]);
    expect(columns[5]).toEqual(["5", "By average", ""]);
  });
});
