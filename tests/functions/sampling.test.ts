import { describe, expect, it } from "vitest";
import { call, type SheetFunction } from "../../src/functions/declare.js";
import { lotChanceFunction, toOpenFunction } from "../../src/functions/sampling.js";
import { observerErrorFunction, quickLookFunction } from "../../src/functions/second-look.js";
import { column, shown, terms } from "./sheet.js";

const STANDARD = "Almond Board of California";

function comb(fn: SheetFunction, ...values: unknown[]): unknown[][] {
  return call(fn, values, 250_000).map((row) => row.map(shown));
}

function yard(...frames: unknown[]): unknown[][] {
  return [["Hive", "Frames of bees"], ...frames.map((value, i) => [`H${i}`, value])];
}

describe("LOT_CHANCE", () => {
  it("is a half where the sample's average is what is asked", () =>
    expect(comb(lotChanceFunction, yard(7, 8, 9, 8), 48, null, STANDARD)).toEqual([
      [expect.closeTo(0.5, 12)],
    ]));

  it("is 1 where every hive was opened and they reach it", () =>
    expect(comb(lotChanceFunction, yard("7-8", 9), null, null, STANDARD, null, "all")).toEqual([
      [1, "every hive was opened"],
    ]));

  it("says what it rests on, and warns of few hives", () =>
    expect(comb(lotChanceFunction, yard(6, 8, 11), 48, null, STANDARD, null, "note")).toEqual([
      [
        "opened hives drawn at random, the rest judged by the same eyes; " +
          "only 3 hives count: under 15 the interval may miss more often than it says",
      ],
    ]));

  it("is not known of one hive", () =>
    expect(comb(lotChanceFunction, yard(9), 48, null, STANDARD)).toEqual([
      ["#N/A fewer than two hives count in the average, and one shows no spread"],
    ]));

  it("is refused for a lot smaller than its sample", () =>
    expect(comb(lotChanceFunction, yard(7, 9, 8), 2, null, STANDARD)).toEqual([
      [
        "#VALUE! a lot of 2 hives cannot have 3 in the sheet: give all of its hives, or write gone where one is no longer in it",
      ],
    ]));
});

describe("TO_OPEN", () => {
  it("goes by a given spread", () => {
    // 2.0930 x 2.4 x sqrt((1 - 20/96) / 20) = 0.9994; 19 give 1.036.
    expect(comb(toOpenFunction, 1, 96, 2.4)).toEqual([
      ["Hives to open", 20, "in all, of 96 in the lot"],
      ["Still to open", 20, "0 opened so far"],
      ["Margin, frames", expect.closeTo(0.9994, 4), "either way, at 95 %; 1 asked"],
      ["Spread, frames", 2.4, "given"],
      ["Note", "", "wider if the hives differ more than that"],
    ]);
  });

  it("goes by the hives that are opened", () => {
    const rows = comb(toOpenFunction, 1, 96, null, yard(4, 6, 8, 10, 12), null, STANDARD);
    expect(rows[3]).toEqual([
      "Spread, frames",
      // The standard leaves the hive under its minimum of 6 out: 6, 8, 10 and 12.
      expect.closeTo(Math.sqrt(20 / 3), 12),
      "seen in the 5 hives opened",
    ]);
    expect(rows[1]).toEqual(["Still to open", (rows[0]![1] as number) - 5, "5 opened so far"]);
    expect(rows[4]![2]).toContain("80 % of the hives counting in the average");
  });

  it("goes by a typical spread and says where it is from", () =>
    expect(comb(toOpenFunction, 1, 96, null, null, null, STANDARD)[3]).toEqual([
      "Spread, frames",
      2.4,
      "typical: 30 % of the average (Schmolke et al. 2020 data)",
    ]));

  it("counts whole pallets where the contract opens them", () => {
    const sheet = [
      ["Hive", "Pallet", "Frames of bees"],
      ...[9, 9, 9, 9, 7, 7, 7, 7, 5, 5, 5, 5].map((n, i) => [`H${i}`, `P${i >> 2}`, n]),
    ];
    const table = terms(["average frames", 8], ["opened by", "pallets"]);
    const rows = comb(toOpenFunction, 1, 96, null, sheet, table, "Cherry");
    expect(rows[1]).toEqual([
      "Pallets to open",
      (rows[0]![1] as number) / 4,
      "of 24, 4 hives each",
    ]);
    expect(rows[4]).toEqual([
      "Spread, frames",
      2,
      "seen in the 12 hives opened, of the pallets' averages",
    ]);
  });

  it.each([
    [[0, 96], "#VALUE! margin: blank, and the function needs it"],
    [[1, 96.5, 2], "#VALUE! lot_size: 96.5 is no whole number of hives"],
    [
      [1, 96],
      "#VALUE! no spread to go by: give it, the yard sheet, or a contract that asks an average",
    ],
    [
      [1, 96, null, yard(7, 9)],
      "#VALUE! give the Terms table, or a published standard's name as the contract",
    ],
    [
      [0.2, 96, 2, null, terms(["average frames", 8], ["observer error", 10])],
      "#VALUE! the observers' error alone is 1.11 frames either way at 95 %: no number of hives brings the margin to 0.2",
    ],
  ])("refuses %j", (values, message) =>
    expect(comb(toOpenFunction, ...values)).toEqual([[message]]),
  );
});

describe("QUICK_LOOK", () => {
  it("spills the ratio estimate", () => {
    // By hand: 12 full frames to 14 quick ones; quick looks 8 on average.
    const rows = comb(quickLookFunction, column("8", 6, "9-11", ""), column(7, "5", "", null));
    expect(rows.map((row) => row.slice(0, 2))).toEqual([
      ["Hives looked at", 3],
      ["Counted in full", 2],
      ["Quick look's average", 8],
      ["Full frames to one quick", expect.closeTo(12 / 14, 12)],
      ["Average of the lot", expect.closeTo(48 / 7, 12)],
      ["Average, low", expect.any(Number)],
      ["Average, high", expect.any(Number)],
      ["Note", ""],
    ]);
    expect(rows[7]![2]).toContain("only 2 full counts");
  });

  it.each(["", null, 0])("takes a blank full count handed over as %j for none", (blank) =>
    expect(comb(quickLookFunction, column(8, 6), column(7, blank))[1]).toEqual([
      "Counted in full",
      1,
      "50 % of the lot",
    ]),
  );

  it("counts a hive written none", () =>
    expect(comb(quickLookFunction, column(8, 6, "none"), column(7, 5, "dead"))[1]![1]).toBe(3));

  it.each([
    [
      column(8, ""),
      column(7, 5),
      "#VALUE! row 2 is counted in full and has no quick look: write none where it saw no bees",
    ],
    [column("", ""), column("", ""), "#VALUE! quick: no hive is looked at"],
    [column(8, 6), column("", ""), "#VALUE! no hive is counted in full"],
    [column(8, 6), column(7), "#VALUE! full has 1 row and quick has 2: give the same rows of both"],
    [column(8, "lots"), column(7, ""), expect.stringMatching(/^#VALUE! quick, row 2: "lots"/)],
  ])("refuses what it cannot answer", (quick, full, message) =>
    expect(comb(quickLookFunction, quick, full)).toEqual([[message]]),
  );
});

describe("OBSERVER_ERROR", () => {
  it("spills the gap of two people, over rows that both judged", () => {
    // By hand in tests/core/sampling.test.ts.
    expect(comb(observerErrorFunction, column(8, 6, 10, 7), column(9, 7, 11, ""))).toEqual([
      ["Observer error, %", expect.closeTo(11.873, 3), 'the term "observer error"'],
      ["Hives judged by both", 3, ""],
      ["First's average", 8, ""],
      ["Second's average", 9, ""],
      ["Second over first, %", expect.closeTo(11.765, 3), "of the mean of both"],
      [
        "Standard error of that, %",
        expect.closeTo(1.598, 3),
        "less with more hives judged by both",
      ],
    ]);
  });

  it("is refused for one hive", () =>
    expect(comb(observerErrorFunction, column(8, 6), column(9, ""))).toEqual([
      ["#VALUE! hives that both judged: 1, and two are needed, better twenty"],
    ]));
});
