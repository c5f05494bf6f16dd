import { describe, expect, it } from "vitest";
import { column, comb, errorCell, one, serial, terms } from "./sheet.js";

const COUNT = "a count such as 7, 7-8, 7½, about 7, 12+, half, none or dead was expected";
const PERCENT = "a percent such as 60, 60%, 55-65, about 60, half or none was expected";
const YES_OR_NO = '"rubbish" stands where yes or no was expected';
const contract = terms(["average frames", 8], ["brood", 2], ["laying queen", "yes"], ["stores", 1]);
/** Three sound hives for the functions that grade, argument by argument as they stand. */
const sound = [
  [[7], [9], [9]],
  contract,
  column("Cherry", "Cherry", "Cherry"),
  column(4, 4, 4),
  column(80, 80, 80),
  column("yes", "yes", "yes"),
  column(2, 2, 2),
  null,
  column(2026, 2026, 2026),
];

interface Case {
  readonly id: string;
  readonly values: readonly unknown[];
  /** The argument whose middle row is spoilt, and what a text that is none makes it say. */
  readonly spoilt: number;
  readonly says: string;
}

const GRADED = [
  [0, `frames, row 2: "rubbish" is not understood: ${COUNT}`],
  [2, 'row 2: no contract is named "rubbish"; here are "Cherry"'],
  [3, `brood, row 2: "rubbish" is not understood: ${COUNT}`],
  [4, `brood_cover, row 2: "rubbish" is not understood: ${PERCENT}`],
  [5, `queen, row 2: ${YES_OR_NO}`],
  [6, `stores, row 2: "rubbish" is not understood: ${COUNT}`],
  [8, 'inspected, row 2: "rubbish" stands where a date or a year was expected'],
] as const;

const CASES: readonly Case[] = [
  ...["GRADE", "SHORT_OF", "HIVE_CHECK"].flatMap((id) =>
    GRADED.map(([spoilt, says]) => ({ id, values: sound, spoilt, says })),
  ),
  ...[
    ["READING", "counts"],
    ["FRAMES_OF_BEES", "bees"],
    ["BEES", "amount"],
  ].map(([id, name]) => ({
    id: id!,
    values: [column(7, 8, 9)],
    spoilt: 0,
    says: `${name}, row 2: "rubbish" is not understood: ${COUNT}`,
  })),
  {
    id: "BROOD_FRAMES",
    values: [column(7, 8, 9), column(60, 60, 60)],
    spoilt: 0,
    says: `brood, row 2: "rubbish" is not understood: ${COUNT}`,
  },
  {
    id: "BROOD_FRAMES",
    values: [column(7, 8, 9), column(60, 60, 60)],
    spoilt: 1,
    says: `cover, row 2: "rubbish" is not understood: ${PERCENT}`,
  },
];

const spoil = ({ values, spoilt }: Case, cell: unknown): unknown[] =>
  values.map((value, k) =>
    k === spoilt ? (value as unknown[][]).map((row, i) => (i === 1 ? [cell] : row)) : value,
  );

describe.each(CASES)("$id with argument $spoilt spoilt in one row", (spoilt) => {
  const { id, values, says } = spoilt;
  const [first, second, third] = comb(id, ...values);

  it("says in every cell of that row which argument, which row and what was expected", () => {
    const rows = comb(id, ...spoil(spoilt, "rubbish"));
    expect(rows[1]).toEqual(second!.map(() => `#VALUE! ${says}`));
    expect([rows[0], rows[2]]).toEqual([first, third]);
  });

  it.each(["#N/A", "#REF!"] as const)("passes an error %s of the sheet on in that row", (code) => {
    const rows = comb(id, ...spoil(spoilt, errorCell(code)));
    expect(rows[1]).toEqual(second!.map(() => code));
    expect([rows[0], rows[2]]).toEqual([first, third]);
  });
});

describe("which column of several", () => {
  it("is named", () => {
    expect(
      comb("FRAMES_OF_BEES", [
        [7, 2],
        [7, "x"],
      ])[1],
    ).toEqual([`#VALUE! bees, row 2, column 2: "x" is not understood: ${COUNT}`]);
  });

  it("is the only one spoilt where each cell is read by itself", () => {
    expect(
      comb("READING", [
        ["x", 7],
        [errorCell("#NULL!"), "7-8"],
      ]),
    ).toEqual([
      [`#VALUE! counts, row 1, column 1: "x" is not understood: ${COUNT}`, 7],
      ["#NULL!", 7.5],
    ]);
  });
});

describe("what nobody has judged", () => {
  it("is #N/A with the contract's name, and its row alone", () => {
    const rows = comb(
      "GRADE",
      column(9, 9),
      contract,
      null,
      column(4, ""),
      [[80]],
      [["yes"]],
      [[2]],
    );
    expect(rows).toEqual([
      ["at average"],
      ['#N/A row 2: contract "Cherry" asks for brood, and that is not judged for this hive'],
    ]);
  });

  it("does not keep a hive from a grade that its frames do not reach anyway", () => {
    expect(one("GRADE", 3, contract)).toBe("no grade");
  });

  it("is named for the queen and for stores", () => {
    expect(one("GRADE", 9, contract, null, 4, 80, "?", 2)).toMatch(
      /^#N\/A .*asks for a laying queen/,
    );
    expect(one("GRADE", 9, contract, null, 4, 80, "yes")).toMatch(/^#N\/A .*asks for stores/);
  });

  it("is the upper end of 12+", () => {
    expect(one("READING", "12+", "high")).toBe("#N/A counts: 12+ has no upper end");
  });
});

describe("weights with their unit behind them", () => {
  it("are refused in another unit than the contract's", () => {
    const inKilos = terms(["average frames", 8], ["stores", 10], ["stores unit", "kg"]);
    const graded = (stores: string) => one("GRADE", 9, inKilos, null, null, null, null, stores);
    expect(graded("10 kg")).toBe("at average");
    expect(graded("10 lb")).toBe('#VALUE! stores: "10 lb" is in lb, and the unit given is kg');
  });

  it("are refused in another unit than was said", () => {
    // 3 lb at 3,500 bees a pound.
    expect(one("BEE_WEIGHT", "3 lb")).toBe(10500);
    expect(one("BEE_WEIGHT", "3 kg")).toBe(
      '#VALUE! amount: "3 kg" is in kg, and the unit given is lb',
    );
  });
});

describe("what is wrong with the whole call", () => {
  it("is said once where rows do not fit each other", () => {
    expect(one("GRADE", column(7, 8, 9), contract, null, column(4, 4))).toBe(
      "#VALUE! brood has 2 rows and frames has 3: give the same rows of both",
    );
  });

  it("is said of dates that do not fit, too", () => {
    const years = column(2026, 2026);
    expect(one("FRAMES_OF_BEES", column(7, 8, 9), null, null, null, null, null, null, years)).toBe(
      "#VALUE! inspected has 2 rows and bees has 3: give the same rows of both",
    );
  });

  it("names an option and what may stand there", () => {
    expect(one("READING", 7, "most")).toMatch(
      /^#VALUE! part: "most" stands where "middle" or "low" or "high" or "text" or "note" or "all"/,
    );
    expect(one("FRAMES_OF_BEES", 7, "combs", "half")).toMatch(
      /^#VALUE! rule: "half" stands where "two-/,
    );
    expect(one("BEES", 7, -1)).toMatch(/^#VALUE! per_frame: "-1" stands where .* up to 10,000/);
    expect(one("BEES", 7, null, null, "huge")).toMatch(
      /^#VALUE! .*"huge" is no frame that is known: give deep/,
    );
  });

  it("is an error of the sheet in an option or in Terms, passed on", () => {
    expect(one("READING", column(7, 8), errorCell("#REF!"))).toBe("#REF!");
    const broken = [...contract, ["currency", errorCell("#NAME?")]];
    expect(one("GRADE", column(7, 8), broken)).toBe("#NAME? terms: an error stands in the table");
  });

  it("is an error of the sheet among the columns asked for, passed on", () => {
    const yard = [
      ["Hive", "Bees"],
      ["A1", 8],
    ];
    expect(one("YARD_COLUMNS", yard, contract, null, [[errorCell("#REF!")]])).toBe("#REF!");
  });

  it("is a percent of combs beside a cover of its own", () => {
    expect(one("BROOD_FRAMES", [[60, 70]], 50, null, "combs")).toMatch(
      /^#VALUE! cover goes with the counts of/,
    );
  });
});

describe("several boxes", () => {
  it("may have a frame each", () => {
    // 8 deeps and 4 mediums of 5.5 / 8.625 of a deep: 8 + 2.55 = 10.55.
    expect(one("FRAMES_OF_BEES", [[8, 4]], null, null, [["deep", "medium"]])).toBeCloseTo(
      10.5507,
      4,
    );
  });

  it("want a frame for each or one for all", () => {
    const frames = [["deep", "medium", "medium"]];
    expect(one("FRAMES_OF_BEES", [[8, 4]], null, null, frames)).toBe(
      "#VALUE! box_frames is 1 by 3: give one frame size, or a row of 2",
    );
  });

  it("keep their frames where the brood stands in one column", () => {
    // Bees of a deep and a medium: 8 + 4 x 0.638 = 10.55 of the 10 that are asked.
    const ten = terms(["average frames", 10], ["brood", 2]);
    const grade = one("GRADE", [[8, 4]], ten, null, 3, null, null, null, [["deep", "medium"]]);
    expect(grade).toBe("at average");
  });

  it("never add the percents of two covers to one above 100", () => {
    // 4 combs at 60 % in each box: 8 x 0.60 = 4.8 full frames, under the 5 that are asked.
    const five = terms(["average frames", 8], ["brood", 5]);
    expect(one("GRADE", 12, five, null, [[4, 4]], [[60, 60]])).not.toBe("at average");
  });

  it("never leave a second cover unread", () => {
    // 4 x 0.60 + 4 x 0.20 = 3.2, or a refusal of the second column; never 8 x 0.60.
    expect(one("BROOD_FRAMES", [[4, 4]], [[60, 20]])).not.toBeCloseTo(4.8, 9);
  });

  it("of brood hold some only where a comb has more than none", () => {
    // 60 % and 40 % are two combs and one full frame.
    const combs = [[60, "none", 40, ""]];
    expect(one("BROOD_FRAMES", combs, null, "combs", "combs")).toBe(2);
    expect(one("BROOD_FRAMES", combs, null, "full frames", "combs")).toBe(1);
  });

  it("are dead only together", () => {
    expect(one("GRADE", [["dead", "dead"]], contract)).toBe("dead-out");
    expect(one("GRADE", [["dead", ""]], contract)).toBe("dead-out");
    expect(one("FRAMES_OF_BEES", [["dead", 3]])).toBe(3);
  });
});

describe("a part frame", () => {
  // 5.5 frames read to the nearest are 6, and 6 is the minimum.
  const nearest = terms(["average frames", 8], ["minimum frames", 6], ["part frame", "nearest"]);
  const down = terms(["average frames", 8], ["minimum frames", 6], ["part frame", "down"]);

  it("is read against the grades as the contract says", () => {
    expect(comb("GRADE", column(5.5, 5.4, 7.5), nearest).flat()).toEqual([
      "at minimum",
      "no grade",
      "at average",
    ]);
    expect(comb("GRADE", column(5.9, 6.9, 8), down).flat()).toEqual([
      "no grade",
      "at minimum",
      "at average",
    ]);
  });

  it("is read in the same way where each requirement is checked", () => {
    expect(comb("HIVE_CHECK", 5.5, nearest)[0]![0]).toBe("met");
  });
});

describe("the sides of a comb", () => {
  it("both have their say in the note", () => {
    const note = (sides: unknown[]) =>
      one("FRAMES_OF_BEES", [sides], "sides", "sum of parts", null, null, "note");
    expect(note(["60+", 90])).toBe("60 or more, counted as 60");
    expect(note([90, "60+"])).toBe("60 or more, counted as 60");
  });
});

describe("a column of dates", () => {
  const july = serial(2026, 7, 8);
  it("is no column of counts, however each cell alone would be read", () => {
    const mostly = comb("READING", column(july, july + 1, july + 2, 7));
    expect(mostly.flat()).toEqual([
      ...[1, 2, 3].map(
        (row) =>
          `#VALUE! counts, row ${row}: most of this column is dates: give the column of figures, ` +
          "or, where ranges such as 7-8 became dates, type them again as text",
      ),
      7,
    ]);
  });

  const days = [serial(2026, 7, 8), serial(2026, 8, 9), serial(2026, 6, 7)];

  it("is none either where nothing says that its dates were ranges", () => {
    for (const [cell] of comb("READING", column(...days))) expect(cell).toBeTypeOf("number");
    const [first] = comb("READING", column(...days, 9));
    expect(first).toEqual([expect.stringContaining("most of this column is dates")]);
  });

  const strengths = (heading: string, cells: readonly unknown[]): unknown[] =>
    comb(
      ...([
        "YARD_COLUMNS",
        [["Hive", heading], ...cells.map((cell, i) => [`${i + 1}`, cell])],
      ] as const),
      ...[terms(["average frames", 8]), "Cherry", "frames"],
    )
      .slice(1)
      .flat();

  it("is read where it is headed as counts, and each date may have been a range", () => {
    // 8 July, 9 August and 7 June are 7-8, 8-9 and 6-7 by either order of day and month.
    expect(strengths("Bees", [...days, 9])).toEqual([7.5, 8.5, 6.5, 9]);
  });

  it.each([
    ["one of them was none", [...days, serial(2026, 3, 27)]],
    ["they are days of one month, as those of an inspection", [july, july + 1, july + 2, july + 3]],
  ])("is refused under that heading too where %s", (_, cells) => {
    for (const cell of strengths("Bees", cells))
      expect(cell).toMatch(/most of this column is dates/);
  });

  it("takes four figures to be one", () => {
    // 8 July is 7-8 by either order of day and month; 9 July 7-9; 10 July 7-10.
    expect(comb("READING", column(july, july + 1, july + 2))).toEqual([[7.5], [8], [8.5]]);
    expect(comb("READING", column(july, 7, 8, 9))).toEqual([[7.5], [7], [8], [9]]);
  });
});

describe("a dead hive", () => {
  it("is a dead-out whatever else was judged of it", () => {
    const rest = [contract, null, 4, 80, "yes", 2] as const;
    expect(one("GRADE", "dead", ...rest)).toBe("dead-out");
    expect(one("GRADE", "Dead-out", contract)).toBe("dead-out");
    const check = ["not asked", "met", "met", "met", "dead-out"];
    expect(comb("HIVE_CHECK", "dead", ...rest)).toEqual([check]);
  });

  it("has no bees, and is short of the lowest grade by all of them", () => {
    expect(one("FRAMES_OF_BEES", "dead")).toBe(0);
    expect(one("BEES", "dead")).toBe(0);
    expect(comb("SHORT_OF", "dead", terms(["average frames", 8]), ...Array(7), "all")).toEqual([
      [8, 0, "at average"],
    ]);
  });

  it("is no hive in which no bees were seen", () => {
    expect(one("GRADE", "none", contract)).toBe("no grade");
  });
});
