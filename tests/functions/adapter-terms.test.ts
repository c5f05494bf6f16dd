import { describe, expect, it } from "vitest";
import { TERMS } from "../../src/core/terms.js";
import { comb, one, terms } from "./sheet.js";

type Row = readonly [string, unknown];
const graded = (...rows: readonly Row[]) => one("GRADE", 9, terms(...rows));
/** Grades as rows of the Terms table: name, frames, and brood where it is given. */
const grades = (...list: readonly (readonly [unknown, number, number?])[]): Row[] =>
  list.flatMap(([name, frames, brood], i): Row[] => [
    [`grade ${i + 1} name`, name],
    [`grade ${i + 1} frames`, frames],
    [`grade ${i + 1} brood`, brood ?? ""],
  ]);
const average: Row = ["average frames", 8];

describe.each<[string, readonly Row[], string]>([
  [
    "a term that is not known",
    [average, ["average framse", 8]],
    '"average framse" is no term that is known; did you mean "average frames"?',
  ],
  [
    "an unknown term that is like none",
    [average, ["honey", 8]],
    '"honey" is no term that is known',
  ],
  [
    "a part that no grade has",
    [average, ["grade 1 colour", "red"]],
    '"grade 1 colour" is no term that is known',
  ],
  [
    "a term that stands twice",
    [average, ["Average  Frames (frames)", 8]],
    'the term "average frames" stands twice',
  ],
  [
    "a text where a number belongs",
    [["average frames", "eight"]],
    'average frames: "eight" stands where a number from 0 to 60 frames was expected',
  ],
  [
    "yes or no where a number belongs",
    [["average frames", true]],
    'average frames: "true" stands where a number from 0 to 60 frames was expected',
  ],
  [
    "a number out of range",
    [["average frames", 61]],
    'average frames: "61" stands where a number from 0 to 60 frames was expected',
  ],
  [
    "a number below nought",
    [average, ["bonus a frame", -5]],
    'bonus a frame: "-5" stands where a number from 0 to 1000000 money was expected',
  ],
  [
    "no finite number",
    [["average frames", Infinity]],
    'average frames: "Infinity" stands where a number from 0 to 60 frames was expected',
  ],
  [
    "another decimal sign than the contract's",
    [["average frames", "7,5"]],
    'average frames: "7,5" stands where a number from 0 to 60 frames was expected',
  ],
  [
    "a word that is no choice",
    [average, ["comb rule", "half"]],
    'comb rule: "half" stands where two-thirds or three-quarters or sum of parts or cluster count was expected',
  ],
  [
    "a number where yes or no belongs",
    [average, ["laying queen", 3]],
    'laying queen: "3" stands where yes or no was expected',
  ],
  [
    "a frame that is not known",
    [average, ["frame size", "huge"]],
    'frame size: "huge" is no frame that is known: give deep, medium, shallow, national deep, national shallow, national 14x12, dadant, zander, or the comb\'s size inside the frame with its unit, such as 42 x 27 cm',
  ],
  [
    "a percent written as a fraction",
    [average, ["share under minimum forgiven", 0.1]],
    'share under minimum forgiven: "0.1" stands where a percent (is it 10 %? or "percents written as": fraction) was expected',
  ],
  [
    "a grade without a name",
    [...grades(["A", 8]), ["grade 2 frames", 6]],
    'grade 2 has no name: fill "grade 2 name"',
  ],
  [
    "a grade left out between two",
    [...grades(["A", 8]), ["grade 3 name", "C"], ["grade 3 frames", 4]],
    'grade 2 has no name: fill "grade 2 name"',
  ],
  [
    "grades out of order",
    grades(["A", 6], ["B", 8]),
    'grade 2 "B" does not ask less than grade 1 "A": put the best grade first',
  ],
  [
    "grades that ask the same",
    grades(["A", 8], ["B", 8]),
    'grade 2 "B" does not ask less than grade 1 "A": put the best grade first',
  ],
  [
    "a lower grade that asks more brood",
    grades(["A", 8, 3], ["B", 6, 4]),
    'grade 2 "B" does not ask less than grade 1 "A": put the best grade first',
  ],
  ["two grades of one name", grades(["A", 8], ["a", 6]), 'two grades are named "a"'],
  [
    "a grade named as what has no grade",
    grades(["No grade", 8]),
    'grade 1 is named "No grade", which means none: rename it',
  ],
  [
    "a grade named as a dead hive",
    grades(["A", 8], ["Dead-out", 6]),
    'grade 2 is named "Dead-out", which means none: rename it',
  ],
  [
    "a minimum over the average",
    [average, ["minimum frames", 9]],
    "minimum frames 9 is over average frames 8",
  ],
  [
    "a cap under the average",
    [average, ["most frames a hive", 7]],
    "most frames a hive is 7, and the contract asks 8",
  ],
  [
    "a cap under the minimum",
    [
      ["minimum frames", 6],
      ["most frames a hive", 5],
    ],
    "most frames a hive is 5, and the contract asks 6",
  ],
  [
    "a bonus over no average",
    [
      ["minimum frames", 6],
      ["bonus a frame", 5],
    ],
    "bonus a frame goes by average frames, which are not given",
  ],
  [
    "pro rata of no average",
    [
      ["minimum frames", 6],
      ["pro rata", "yes"],
    ],
    "pro rata goes by average frames, which are not given",
  ],
  [
    "a ceiling for no bonus",
    [average, ["bonus ceiling", 20]],
    "bonus ceiling stands without a bonus a frame",
  ],
  [
    "a cover for combs where full frames are counted",
    [average, ["brood comb covered", 50]],
    'brood comb covered is only read where brood is counted as "combs"',
  ],
  [
    "a base fee beside the grades' own",
    [["base fee", 100], ...grades(["A", 8]), ["grade 1 fee", 120]],
    "base fee and the grades' own fees stand side by side: give one of them",
  ],
  [
    "hours that end before they begin",
    [average, ["inspect from hour", 14], ["inspect to hour", 9]],
    "inspect from hour 14 is not before inspect to hour 9",
  ],
  [
    "hours that begin at midnight's end",
    [average, ["inspect from hour", 24]],
    "inspect from hour 24 is not before inspect to hour 24",
  ],
])("%s", (_, rows, says) => {
  it("is refused by the contract's name and the term's", () => {
    expect(graded(...rows)).toBe(`#VALUE! contract "Cherry": ${says}`);
  });

  it("is refused once for a whole column of hives", () => {
    const rowsOfHives = comb("GRADE", [[9], [8], [7]], terms(...rows));
    expect(rowsOfHives).toEqual([[`#VALUE! contract "Cherry": ${says}`]]);
  });

  it("is refused of the contract that has it, and of no other beside it", () => {
    const block = terms(...rows).map((row, i) => [row[0], i === 0 ? "Pear" : "", row[1]]);
    const sound = [...block, ["deposit", 10, ""]];
    expect(one("GRADE", 9, sound, "Cherry")).toBe(`#VALUE! contract "Cherry": ${says}`);
    expect(one("GRADE", 9, sound, "Pear")).not.toMatch(/Cherry/);
  });
});

describe("which contract", () => {
  const two = [
    ["Term", "Meaning", "Cherry", "Pear", "Unit", "Notes"],
    ["average frames", "the lot's mean", 8, 10, "frames", "as agreed"],
  ];

  it("is found by its heading, however it is spaced and written", () => {
    expect(one("GRADE", 9, two, "Cherry")).toBe("at average");
    expect(one("GRADE", 9, two, " PEAR ")).toBe("no grade");
  });

  it("must be said where several stand there", () => {
    expect(one("GRADE", 9, two)).toBe(
      '#VALUE! several contracts stand here, say which: "Cherry", "Pear"',
    );
  });

  it("is named with those that are there where it is not among them", () => {
    expect(one("GRADE", 9, two, "Plum")).toBe(
      '#VALUE! no contract is named "Plum"; here are "Cherry", "Pear"',
    );
  });

  it("is not one of the columns that explain", () => {
    expect(one("GRADE", 9, two, "Notes")).toMatch(/^#VALUE! no contract is named "Notes"/);
    expect(
      one("GRADE", 9, [
        ["Term", "Meaning"],
        ["average frames", ""],
      ]),
    ).toBe("#VALUE! no contract stands beside the heading Term");
  });

  it("cannot be told where two have one name", () => {
    const block = [["Term", "Cherry", "cherry "], average];
    expect(one("GRADE", 9, block, "Cherry")).toMatch(/^#VALUE! two contracts are named "cherry/);
  });

  it("may ask nothing, which is said", () => {
    expect(graded(["currency", "$"])).toBe(
      '#VALUE! contract "Cherry" asks nothing of a hive: give it average frames, minimum frames or grades',
    );
  });
});

describe("blanks in a Terms table", () => {
  const block = [
    ["Term", "Cherry", "Pear"],
    ["average frames", 8, ""],
    ["minimum frames", "", 6],
    ["comb rule", "", "sum of parts"],
    ["frame size", "", "deep"],
    ["laying queen", "", "no"],
    ["grade 1 name", "", "A"],
    ["grade 1 frames", "", 6],
    ["inspect to hour", "", 18],
    ["deposit", 10, ""],
  ];
  const blanked = (rows: unknown[][], blank: unknown) =>
    rows.map((row) => row.map((cell) => (cell === "" ? blank : cell)));
  const both = (rows: unknown[][]) => ["Cherry", "Pear"].map((name) => one("GRADE", 9, rows, name));

  it.each([null, undefined, 0, " "])("leave a term out as text and as %j alike", (blank) => {
    expect(both(block)).toEqual(["at average", "A"]);
    expect(both(blanked(block, blank))).toEqual(both(block));
  });

  it("leave out every term there is", () => {
    for (const blank of ["", null, 0]) {
      const all = TERMS.map(({ label }): Row => [label, label === "average frames" ? 8 : blank]);
      expect(graded(...all)).toBe("at average");
    }
  });

  const spaced = [
    ["Term", "Cherry", ""],
    ["average frames", 8, ""],
    ["", "", ""],
    ["", "", ""],
  ];

  it.each(["", null, undefined])(
    "make whole rows and a column that say nothing, as %j",
    (blank) => {
      expect(one("GRADE", 9, blanked(spaced, blank))).toBe("at average");
    },
  );

  it("make whole rows and a column that say nothing, as 0", () => {
    expect(one("GRADE", 9, blanked(spaced, 0))).toBe("at average");
  });
});

describe("how a contract is written", () => {
  it("may be with a comma for decimals", () => {
    // 9 is under 9.5 and over 8.5.
    expect(graded(["decimal sign", ","], ["average frames", "9,5"])).toBe("no grade");
    expect(graded(["decimal sign", ","], ["average frames", "8,5"])).toBe("at average");
  });

  it("may be with percents as fractions, where 0.1 is 10 %", () => {
    const fractions: Row = ["percents written as", "fraction"];
    expect(graded(average, fractions, ["deposit", 0.1])).toBe("at average");
    expect(graded(average, fractions, ["deposit", 10])).toMatch(/deposit: "10" stands where/);
  });

  it("may be with half a percent as a fraction", () => {
    expect(graded(average, ["percents written as", "fraction"], ["deposit", 0.005])).toBe(
      "at average",
    );
  });

  it("may be with percents as texts with their sign", () => {
    expect(graded(average, ["deposit", "10 %"])).toBe("at average");
    expect(graded(average, ["deposit", "0.5%"])).toBe("at average");
  });

  it("may be with a unit or a colon at the label, and in capitals", () => {
    expect(graded(["AVERAGE FRAMES (deep)", 8])).toBe("at average");
    expect(graded(["Average frames:", 8])).toBe("at average");
  });

  it("may be with a unit and a colon at the label", () => {
    expect(graded(["average frames (deep):", 8])).toBe("at average");
  });
});
