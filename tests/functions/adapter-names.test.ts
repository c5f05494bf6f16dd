import { describe, expect, it } from "vitest";
import { comb, one, terms } from "./sheet.js";

/** Words that mean something to the machine and nothing to a beekeeper. */
const ODD = ["__proto__", "constructor", "prototype", "hasOwnProperty", "toString", "valueOf"];
const contract = terms(["average frames", 8]);
const yard = [
  ["Hive", "Bees"],
  ["A1", 8],
];

describe.each(ODD)("%s", (name) => {
  it("may name a contract", () => {
    const block = [
      ["Term", name, "Cherry"],
      ["average frames", 8, 10],
    ];
    expect(one("GRADE", 8, block, name)).toBe("at average");
    expect(one("GRADE", 8, block, "Cherry")).toBe("no grade");
  });

  it("names no contract that is not there, and no standard", () => {
    expect(one("GRADE", 8, contract, name)).toBe(
      `#VALUE! no contract is named "${name}"; here are "Cherry"`,
    );
    expect(one("GRADE", 8, null, name)).toContain(`"${name}" is no published standard`);
  });

  it("may name a grade", () => {
    const graded = terms(["grade 1 name", name], ["grade 1 frames", 8]);
    expect(one("GRADE", 8, graded)).toBe(name);
    expect(comb("SHORT_OF", 6, graded, ...Array(7), "all")).toEqual([[2, 0, name]]);
  });

  it("is no term", () => {
    const label = name.toLowerCase();
    expect(one("GRADE", 8, terms(["average frames", 8], [name, 8]))).toBe(
      `#VALUE! contract "Cherry": "${label}" is no term that is known`,
    );
  });

  it("is no choice of a term", () => {
    expect(one("GRADE", 8, terms(["average frames", 8], ["comb rule", name]))).toContain(
      `comb rule: "${name}" stands where two-thirds or`,
    );
  });

  it("may head a column that is nobody's business, or be a hive's id", () => {
    const sheet = [
      ["Hive", "Bees", name],
      [name, 8, name],
    ];
    expect(comb("YARD_COLUMNS", sheet, contract, null, "hive, grade")[1]).toEqual([
      name,
      "at average",
    ]);
  });

  it("is no column that can be asked for", () => {
    expect(one("YARD_COLUMNS", yard, contract, null, name)).toContain(
      `"${name.toLowerCase()}" is no column that can be asked for`,
    );
  });

  it("is no option and no frame", () => {
    expect(one("READING", 7, name)).toContain(`part: "${name}" stands where`);
    expect(one("BEES", 7, name)).toContain(`per_frame: "${name}" stands where`);
    expect(one("READING", 7, null, null, name)).toMatch(/^#VALUE! written: /);
    expect(one("FRAMES_OF_BEES", 7, null, null, name)).toContain("is no frame that is known");
  });

  it("is no judgement of a queen", () => {
    expect(one("GRADE", 8, contract, null, null, null, name)).toContain(
      `queen: "${name}" stands where yes or no`,
    );
  });

  const counted = name === "constructor" ? it : it;
  counted("is no count, and is said not to be understood", () => {
    expect(one("READING", name)).toMatch(/^#VALUE! counts: .* is not understood: a count such as/);
  });
});
