import { describe, expect, it } from "vitest";
import {
  contractNames,
  fromColumn,
  kindOf,
  labelOf,
  readContract,
  readTerm,
  unknownTerm,
  writtenIn,
} from "../../src/core/contract-reading.js";

const PLAIN = { comma: false, fractions: false };
const FRACTIONS = { comma: false, fractions: true };
const COMMA = { comma: true, fractions: false };

describe("an amount of money among the terms", () => {
  it.each([
    ["$215", PLAIN, 215],
    ["215 $", PLAIN, 215],
    ["€ 12,50", COMMA, 12.5],
    ["£180.25", PLAIN, 180.25],
    [215, PLAIN, 215],
  ])("%j: %d", (cell, written, amount) => {
    expect(readTerm("base fee", cell, written)).toBe(amount);
  });

  it.each(["$", "$ $5", "$1,200", "215 a hive", "-$5"])("%j is refused", (cell) => {
    expect(() => readTerm("base fee", cell, PLAIN)).toThrow("base fee");
  });

  it("is no sign of frames", () => {
    expect(() => readTerm("average frames", "$8", PLAIN)).toThrow("average frames");
  });
});

describe("a percent among the terms", () => {
  it.each([
    [10, PLAIN, 10],
    ["10", PLAIN, 10],
    ["10 %", PLAIN, 10],
    ["10%", PLAIN, 10],
    ["0.5%", PLAIN, 0.5],
    [1, PLAIN, 1],
    // Where percents are written as fractions a cell of text is no other than one of a number.
    [0.1, FRACTIONS, 10],
    ["0.1", FRACTIONS, 10],
    ["10 %", FRACTIONS, 10],
    ["0.5 %", FRACTIONS, 0.5],
    [1, FRACTIONS, 100],
    ["12,5 %", COMMA, 12.5],
    ["12,25 %", COMMA, 12.25],
    ["12", COMMA, 12],
    [12.5, COMMA, 12.5],
    ["12.25", PLAIN, 12.25],
    ["0", PLAIN, 0],
    ["0 %", PLAIN, 0],
  ])("%j, %o: %d", (cell, written, percent) => {
    expect(readTerm("deposit", cell, written)).toBeCloseTo(percent, 12);
  });

  it.each([
    [0.1, PLAIN],
    ["0.1", PLAIN],
    ["0,1", COMMA],
  ])("%j, %o is asked about", (cell, written) => {
    expect(() => readTerm("deposit", cell, written)).toThrow(
      `deposit: "${cell}" stands where a percent (is it 10 %? or "percents written as": fraction) was expected`,
    );
  });

  it.each([
    ["10", FRACTIONS],
    [10, FRACTIONS],
    [101, PLAIN],
    ["-1", PLAIN],
    ["1e1", PLAIN],
    ["10 % of it", PLAIN],
    ["1%0", PLAIN],
    ["12.5", COMMA],
    ["10 in", PLAIN],
  ])("%j, %o is none", (cell, written) => {
    expect(() => readTerm("deposit", cell, written)).toThrow(
      `deposit: "${cell}" stands where a number from 0 to 100 % was expected`,
    );
  });
});

describe("a term read by itself", () => {
  it.each(["", " ", null, undefined, 0])("%j is left out", (cell) => {
    expect(readTerm("average frames", cell, PLAIN)).toBeNull();
    expect(readTerm("no such term", cell, PLAIN)).toBeNull();
  });

  it("is read as what it is", () => {
    expect(readTerm("average frames", "7.5", PLAIN)).toBe(7.5);
    expect(readTerm("comb rule", " Sum of Parts ", PLAIN)).toBe("sum of parts");
    expect(readTerm("frame size", "Medium", PLAIN)).toHaveProperty("name", "medium");
    expect(readTerm("grade 12 name", " Best ", PLAIN)).toBe("Best");
    expect(readTerm("grade 12 frames", 8, PLAIN)).toBe(8);
    for (const yes of [true, "yes", "YES"]) expect(readTerm("laying queen", yes, PLAIN)).toBe(true);
    for (const no of [false, "no", "No "]) expect(readTerm("laying queen", no, PLAIN)).toBe(false);
  });

  it("is of no kind where there is no such term or part of a grade", () => {
    expect(kindOf("average frames")).toMatchObject({ kind: "number", unit: "frames" });
    expect(kindOf("grade 1 name")).toMatchObject({ kind: "text" });
    for (const label of ["grade 0 name", "grade 100 name", "my grade 1 name", "grade 1 names"]) {
      expect(kindOf(label)).toBeNull();
      expect(() => readTerm(label, 8, PLAIN)).toThrow(`"${label}" is no term that is known`);
    }
  });

  it("that is unknown is likened to those that share a longer word, three at most", () => {
    expect(unknownTerm("average")).toBe(
      '"average" is no term that is known; did you mean "average frames"?',
    );
    // A word of three letters likens nothing.
    expect(unknownTerm("fee")).toBe('"fee" is no term that is known');
    expect(unknownTerm("frames")).toMatch(
      /^"frames" is no term that is known; did you mean "[^"]+" or "[^"]+" or "[^"]+"\?$/,
    );
  });
});

describe("the heading row of a Terms table", () => {
  it("names the contracts that stand beside Term or Terms", () => {
    expect(contractNames([["Terms", "Meaning", "Cherry", "", "Pear", "Unit", "Notes"]])).toEqual([
      "Cherry",
      "Pear",
    ]);
    expect(contractNames([[" TERM "]])).toEqual([]);
  });

  it.each([[[]], [[[]]], [[["Cherry", "Term"]]], [[[1, "Cherry"]]], [[[null, "Cherry"]]]])(
    "%j is none",
    (block) => {
      expect(() => contractNames(block)).toThrow(
        'the first cell must be the heading "Term", with the contracts\' names beside it',
      );
    },
  );

  it("is no contract where its first cell and a contract have one name", () => {
    const block = [
      ["Term", "term"],
      ["average frames", 8],
    ];
    expect(readContract(block, "Term").averageFrames).toBe(8);
  });
});

it("knows a label in capitals, spaced, with its unit in brackets, a colon, or both", () => {
  for (const label of [
    "average frames",
    " Average  FRAMES ",
    "average frames:",
    "average frames :",
    "average frames (deep)",
    "average frames(deep)",
    "average frames (deep):",
    "average frames: (deep)",
  ]) {
    expect(labelOf(label)).toBe("average frames");
  }
  for (const other of ["average (deep) frames", "average: frames", "average: frames:: (deep)"]) {
    expect(labelOf(other)).not.toBe("average frames");
  }
  expect(labelOf("average: frames (deep):")).toBe("average: frames");
  expect(labelOf(null)).toBe("");
});

describe("a column of terms", () => {
  const read = (...rows: [string, unknown][]) => fromColumn("Cherry", new Map(rows));

  it("says by two of its terms how the others are written", () => {
    expect(writtenIn(new Map([["decimal sign", ","]]))).toEqual(COMMA);
    expect(writtenIn(new Map([["percents written as", "fraction"]]))).toEqual(FRACTIONS);
    const both = read(["percents written as", "fraction"], ["deposit", 0.1], ["average frames", 8]);
    expect([both.percentsAs, both.deposit]).toEqual(["fraction", 10]);
    const comma = read(["average frames", "7,5"], ["decimal sign", ","]);
    expect([comma.decimal, comma.averageFrames]).toEqual([",", 7.5]);
  });

  it("knows those two by whatever spelling their own cells are read in", () => {
    // 1 as a fraction is 100 %, and 100 times too little as a percent.
    for (const fraction of ["Fraction", "FRACTION", " fraction "]) {
      const { percentsAs, openedShare } = read(
        ["percents written as", fraction],
        ["share opened", 1],
        ["average frames", 8],
      );
      expect([percentsAs, openedShare]).toEqual(["fraction", 100]);
    }
    const comma = read(["average frames", "7,5"], ["decimal sign", " , "]);
    expect([comma.decimal, comma.averageFrames]).toEqual([",", 7.5]);
  });

  it("has as many grades as its last one that is filled", () => {
    const { grades } = read(
      ["grade 1 name", "Best"],
      ["grade 1 frames", 8],
      ["grade 2 name", "Good"],
      ["grade 3 name", ""],
      ["grade 3 frames", null],
    );
    expect(grades).toEqual([
      { name: "Best", frames: 8, brood: 0, fee: 0 },
      { name: "Good", frames: 0, brood: 0, fee: 0 },
    ]);
  });

  it("is told of a grade without a name which cell to fill", () => {
    const nameless = () =>
      read(["grade 1 name", "Best"], ["grade 1 frames", 8], ["grade 2 fee", 9]);
    expect(nameless).toThrow('grade 2 has no name: fill "grade 2 name"');
    expect(nameless).toThrow(expect.objectContaining({ terms: ["grade 2 name"] }));
  });

  it("counts boxes in the frame of the contract where theirs is not said", () => {
    expect(read(["frame size", "medium"], ["average frames", 8]).boxFrame.name).toBe("medium");
    const apart = read(["frame size", "medium"], ["box frames", "deep"], ["average frames", 8]);
    expect([apart.frame.name, apart.boxFrame.name]).toEqual(["medium", "deep"]);
  });

  it("has its date system as a number", () => {
    expect(read(["date system", "1904"], ["average frames", 8]).dateSystem).toBe(1904);
    expect(read(["average frames", 8]).dateSystem).toBe(1900);
  });
});
