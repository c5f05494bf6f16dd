import { describe, expect, it } from "vitest";
import { folder } from "./folder.js";
import { bytesOf, FEE_TERMS, yardBook } from "./yard.js";

const HIVES = [
  ["Hive", "Bees"],
  ["1", 5],
  ["2", 5],
  ["3", 9],
];
const ARGS = ["yard.xlsx", "--contract", "Cherry"];

describe("a total under the hives of a file", () => {
  // By hand: 5 and 5 are under the minimum, so that the average is 9 of one hive, and a third of
  // 100 hives is paid: 33.33 x 60 = 2,000.
  it.each(["typed", "calculated"])("is no hive of the statement: %s", async (how) => {
    const book = yardBook([...HIVES, ["Total", 19]], FEE_TERMS);
    if (how === "calculated") {
      book.getWorksheet("Yard")!.getCell("B5").value = { formula: "SUM(B2:B4)", result: 19 };
    }
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { out, err } = await test.run("statement", ...ARGS, "--size", "100");
    expect(err).toBe("");
    expect(out).toMatch(/Average frames: 9, of 1 hive/);
    expect(out).toMatch(/total: 2,000/);
    expect(out).toContain('no hive: row 5, "Total"');
  });

  it("is graded as none, and its line says so", async () => {
    const book = yardBook([...HIVES, ["Total", 19]], FEE_TERMS);
    const test = await folder({ "yard.xlsx": await bytesOf(book) });
    const { out } = await test.run("grade", "yard.xlsx", "--for", "Cherry");
    expect(out).toContain("not a hive: Total");
    expect(out).toMatch(/\(no lot\) +Cherry +3 +9 +met +1 at average, 2 no grade/);
  });
});
