import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { breaks, signatures } from "../../scripts/shipped.mjs";
import record from "./shipped.json" with { type: "json" };

const built = readFileSync(new URL("../../dist/addin/functions.json", import.meta.url), "utf8");

describe("the functions of this build", () => {
  it.runIf(record.released)("break no workbook written for a release", () => {
    expect(breaks(record.functions, signatures(built))).toEqual([]);
  });

  it.runIf(!record.released)("are as recorded, or `node scripts/record-shipped.mjs` is due", () => {
    expect(record.functions).toEqual(signatures(built));
  });
});

describe("what breaks a workbook", () => {
  const hives = { name: "hives", optional: false, matrix: true };
  const rule = { name: "rule", optional: true, matrix: false };
  const shipped = [{ id: "GRADE", parameters: [hives, rule] }];

  it("is not a new function, nor an optional parameter at the end", () => {
    const extra = { name: "day", optional: true, matrix: false };
    const declared = [
      { id: "BEES", parameters: [hives] },
      { id: "GRADE", parameters: [hives, rule, extra] },
    ];
    expect(breaks(shipped, declared)).toEqual([]);
  });

  it("is a function gone or renamed", () => {
    expect(breaks(shipped, [{ id: "GRADES", parameters: [hives, rule] }])).toEqual([
      "GRADE is gone",
    ]);
  });

  it("is a parameter gone", () => {
    expect(breaks(shipped, [{ id: "GRADE", parameters: [hives] }])).toEqual([
      "GRADE: the parameter rule is gone",
    ]);
  });

  it("is a parameter moved", () => {
    expect(breaks(shipped, [{ id: "GRADE", parameters: [rule, hives] }])).toEqual([
      "GRADE: parameter 1 was hives (range), is rule (one cell, optional)",
      "GRADE: parameter 2 was rule (one cell, optional), is hives (range)",
    ]);
  });

  it("is a parameter that was optional and no longer is", () => {
    const parameters = [hives, { ...rule, optional: false }];
    expect(breaks(shipped, [{ id: "GRADE", parameters }])).toEqual([
      "GRADE: parameter 2 was rule (one cell, optional), is rule (one cell)",
    ]);
  });

  it("is a new parameter that every old formula lacks", () => {
    const day = { name: "day", optional: false, matrix: false };
    expect(breaks(shipped, [{ id: "GRADE", parameters: [hives, rule, day] }])).toEqual([
      "GRADE: the parameter day was added, but is not optional",
    ]);
  });
});
