import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellsOf, column, comb, one } from "./sheet.js";

const ALMOND = "Almond Board of California";
const HEADINGS = ["Hive", "Lot", "Pallet", "Frames of bees"];
const TWO_ON_A_PALLET = [null, null, null, null, null, 2];
const SINGLY = [null, null, null, null, null, 1];
const yardOf = (rows: readonly unknown[][]): unknown[][] => [HEADINGS, ...rows];

/** Whole pallets of four in up to three lots, each with an opened hive, some hives not opened. */
const lot = (name: string) =>
  fc
    .array(
      fc.array(fc.option(fc.integer({ min: 1, max: 15 }), { nil: "" }), {
        minLength: 4,
        maxLength: 4,
      }),
      {
        minLength: 1,
        maxLength: 6,
      },
    )
    .filter((pallets) => typeof pallets[0]![0] === "number")
    .map((pallets) =>
      pallets.flatMap((hives, p) =>
        hives.map((bees, h) => [`${name}${p}-${h}`, name, `${name}${p}`, bees]),
      ),
    );
const sheet = fc
  .tuple(lot("A"), lot("B"), lot("C"))
  .map((lots) => ({ rows: lots.flat(), pallets: lots.flat().length / 4 }));

describe("DROPS", () => {
  it("places every hive exactly once, and its totals add up, mixed or apart", () => {
    fc.assert(
      fc.property(sheet, fc.boolean(), ({ rows, pallets }, apart) => {
        const sizes = apart
          ? ["A", "B", "C"].map((name) => rows.filter((row) => row[1] === name).length)
          : [4, 4 * (pallets - 1)];
        const args = [yardOf(rows), column(...sizes), null, ALMOND, null, null, null, null];
        const list = cellsOf("DROPS", [...args, apart ? "lots apart" : null]).slice(1);
        const lines = list.filter((row) => row[1] !== "in all");
        expect(lines.map((row) => row[1]).sort()).toEqual(
          [...new Set(rows.map((row) => row[2]))].sort(),
        );
        const drops = list.filter((row) => row[1] === "in all" && row[0] !== "All drops");
        for (const [name, , , hives, average] of drops) {
          const own = lines.filter((row) => row[0] === name);
          const sum = own.reduce((total, row) => total + (row[3] as number), 0);
          const frames = own.reduce(
            (total, row) => total + (row[3] as number) * (row[4] as number),
            0,
          );
          expect(hives).toBe(sum);
          if (sum > 0) expect(average).toBeCloseTo(frames / sum, 9);
          if (apart) expect(new Set(own.map((row) => row[2])).size).toBeLessThanOrEqual(1);
        }
        const [, , , all] = list.at(-1)!;
        expect(all).toBe(rows.length);
      }),
      { numRuns: 60 },
    );
  });

  it("places the hives of a lot that are not listed, at the average of those opened", () => {
    const rows = [
      ["A1", "A", "P1", 6],
      ["A2", "A", "P1", 10],
    ];
    const list = comb("DROPS", yardOf(rows), column(12), null, ALMOND, "A", 12);
    expect(list.at(-1)!.slice(0, 5)).toEqual(["All drops", "in all", "", 12, 8]);
    expect(list.map((row) => row[1])).toContain("any 2 not listed");
    expect(list.find((row) => row[1] === "P1")).toEqual(["1", "P1", "A", 4, 8, "2 of 4 opened"]);
  });

  it("names the dead, the hives that were not opened, and the lots that stay", () => {
    const rows = [
      ["A1", "A", "P1", "dead"],
      ["A2", "A", "P1", 8],
      ["A3", "A", "P2", ""],
      ["A4", "A", "P2", 8],
      ["B1", "B", "P3", 8],
    ];
    const list = comb(
      "DROPS",
      yardOf(rows),
      column(2, 2),
      null,
      ALMOND,
      "A",
      null,
      null,
      null,
      null,
      2,
    );
    expect(list.at(-1)![5]).toBe(
      "weakest to strongest drop 2.667 frames: no list is more even; hives not opened are at their lot's average; listed and not opened: 1; dead: A1 (pallet P1); counted as 0, take them out or replace them before loading; not placed: B",
    );
  });

  it("counts a hive that stands twice by its latest look, and refuses one that has no later day", () => {
    const twice = [
      [...HEADINGS, "Date"],
      ["A1", "A", "P1", 4, 46100],
      ["A1", "A", "P1", 8, 46110],
    ];
    const list = comb("DROPS", twice, column(1), null, ALMOND, null, null, null, null, null, 1);
    expect(list.at(-1)!.slice(3, 5)).toEqual([1, 8]);
    const undated = twice.map((row) => row.slice(0, 4));
    expect(one("DROPS", undated, column(1), null, ALMOND, null, null, null, null, null, 1)).toBe(
      '#VALUE! hive A1 of lot "A" stands twice: give each of its looks its own date, so that the later one counts',
    );
  });

  it("takes the same number in another lot for another hive, and says which of them is dead", () => {
    const rows = [
      ["1", "N", "P1", 8],
      ["1", "S", "P2", 6],
      ["2", "N", "P1", 8],
      ["2", "s ", "P2", "dead"],
    ];
    const list = comb("DROPS", yardOf(rows), column(2, 2), null, ALMOND, ...TWO_ON_A_PALLET);
    // By hand: (8 + 6 + 8 + 0) / 4.
    expect(list.at(-1)!.slice(3, 5)).toEqual([4, 5.5]);
    expect(list.at(-1)![5]).toMatch(/; dead: 2 \(pallet P2\); /);
    const singly = comb("DROPS", yardOf(rows), column(2, 2), null, ALMOND, ...SINGLY);
    expect(singly.at(-1)![5]).toMatch(/; dead: 2 \(lot "S"\); /);
    const again = [...rows, ["2", "S", "P2", 4], ["1", "n", "P1", 4]];
    expect(one("DROPS", yardOf(again), column(3, 3), null, ALMOND, ...SINGLY)).toBe(
      '#VALUE! hive 1 of lot "N" stands twice (and so do 2 of lot "S"): give each of its looks its own date, so that the later one counts',
    );
  });

  it("keeps a drop's least, or says that it cannot be or was not kept", () => {
    const rows = [4, 6, 8, 10].map((bees, i) => [`A${i}`, "A", `P${i}`, bees]);
    const of = (least: number) =>
      comb(
        "DROPS",
        yardOf(rows),
        column(2, 2),
        null,
        ALMOND,
        null,
        null,
        null,
        column(least, ""),
        null,
        1,
        "drops",
      );
    expect(of(9)[1]!.slice(1, 6)).toEqual([2, 9, 9, "A: A2, A3", ""]);
    expect(of(9.5)[1]!.slice(1, 6)).toEqual([
      2,
      9,
      9.5,
      "A: A2, A3",
      "9 a hive, under the 9.5 asked: not all drops' least can be kept",
    ]);
  });

  it("shows an average under the least with the digits that tell them apart", () => {
    // By hand: 8 and 7.998 come to 7.999.
    const rows = [
      ["A1", "A", "P1", 8],
      ["A2", "A", "P1", 7.998],
    ];
    const list = comb(
      "DROPS",
      yardOf(rows),
      column(2),
      null,
      ALMOND,
      null,
      null,
      null,
      column(8),
      null,
      2,
    );
    expect(list[1]![5]).toBe("7.999 a hive, under the 8 asked: not all drops' least can be kept");
  });

  it("gives the same list twice", () => {
    const rows = Array.from({ length: 48 }, (_, i) => [
      `A${i}`,
      "A",
      `P${Math.floor(i / 4)}`,
      1 + ((i * 7) % 13),
    ]);
    const args = [yardOf(rows), column(16, 16, 16), null, ALMOND];
    expect(comb("DROPS", ...args)).toEqual(comb("DROPS", ...args));
  });

  const YARD = yardOf([
    ["A1", "A", "P1", 8],
    ["A2", "A", "P1", 8],
  ]);
  const drops = (sizes: unknown, ...rest: unknown[]) =>
    one("DROPS", YARD, sizes, null, ALMOND, ...rest);
  it.each([
    [
      "drops that hold fewer hives",
      drops(column(1), null, null, null, null, null, 1),
      "the drops hold 1 hive, and there are 2",
    ],
    [
      "no whole pallets",
      drops(column(4, 6)),
      'drop "2" takes 6 hives, which whole pallets of 4 do not make',
    ],
    [
      "part of a hive",
      drops(column(4.5)),
      "sizes: 4.5 stands where a whole number of hives was expected",
    ],
    [
      "a negative size",
      drops(column(4, -4)),
      'sizes, row 2: "-4" stands where a number over 0 was expected',
    ],
    ["no drop", drops(column("", "")), "sizes: no drop is given"],
    [
      "a name twice",
      drops(column(4, 4), null, null, column("Gate", "Gate")),
      'names: two drops are named "Gate"',
    ],
    [
      "too many on a pallet",
      one(
        "DROPS",
        [...YARD, ["A3", "A", "P1", 8]],
        column(4),
        null,
        ALMOND,
        null,
        null,
        null,
        null,
        null,
        2,
      ),
      'pallet "P1" holds 3 hives, and not 2',
    ],
    [
      "a lot too small",
      drops(column(4), "A", 1),
      'lot "A" has 2 hives listed, more than its size of 1',
    ],
  ])("refuses %s by name", (_, got, message) => {
    expect(got).toBe(`#VALUE! ${message}`);
  });

  it("needs to know the pallets", () => {
    const bare = YARD.map((row) => [row[0], row[1], row[3]]);
    expect(one("DROPS", bare, column(4), null, ALMOND)).toMatch(/no pallet column/);
  });
});

describe("FEED", () => {
  it("says how an open target was counted, as it does of open stores", () => {
    const note = (stores: string, target: string) =>
      one("FEED", stores, "lb", target, "lb", null, null, ...Array<null>(5).fill(null), "note");
    expect(note("20", "50+")).toContain("50 or more, counted as 50");
    expect(note("20+", "50")).toContain("20 or more, counted as 20");
  });

  it("is never more for more stores, nor less for a higher target", () => {
    const amounts = fc.double({ min: 0.1, max: 90, noNaN: true });
    fc.assert(
      fc.property(amounts, amounts, amounts, amounts, (stores, more, target, higher) => {
        const of = (there: number, wanted: number) =>
          one("FEED", there, "lb", wanted, "lb") as number;
        expect(of(stores + more, target)).toBeLessThanOrEqual(of(stores, target));
        expect(of(stores, target + higher)).toBeGreaterThanOrEqual(of(stores, target));
        expect(of(stores, target)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("has its low and high around its middle, and brings the stores to the target", () => {
    const frames = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(frames, fc.integer({ min: 1, max: 120 }), (there, target) => {
        const [[feed, low, high, short]] = cellsOf("FEED", [
          there,
          null,
          target,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          "all",
        ]) as number[][] as [number[]];
        expect(low).toBeLessThanOrEqual(feed!);
        expect(high).toBeGreaterThanOrEqual(feed!);
        expect(short! + 7 * there).toBeGreaterThanOrEqual(target - 1e-9);
      }),
    );
  });

  it("says of syrup typed into a cell as a time which it is", () => {
    expect(one("FEED", 1, null, null, null, 121 / 1440)).toBeCloseTo(13 / 7, 9);
    expect(one("FEED", 1, null, null, null, 0.5)).toMatch(/stands where "2:1" or "1:1"/);
  });

  it.each([
    ["a target and bees", [1, null, 30, null, null, null, 8, null, 30], /both given/],
    ["days without bees", [1, null, null, null, null, null, null, null, 30], /without bees/],
    ["brood without bees", [1, null, null, null, null, null, null, null, null, 3], /without bees/],
    ["dry sugar by the gallon", [1, null, null, null, "dry", "gallons"], /"lb" or "kg"/],
    ["syrup by the pound", [1, null, null, null, "1:1", "lb"], /"gallons" or "litres"/],
    ["a dead hive's stores", ["dead"], /stores were expected/],
  ])("refuses %s", (_, args, message) => {
    expect(one("FEED", ...args)).toMatch(message);
  });
});

describe("HIVES_NEEDED and LOADS", () => {
  it("reckon a hectare as 2.471 acres of the same crop", () => {
    // 100 acres are 40.46856 ha.
    expect(one("HIVES_NEEDED", 40.468564224, "pear", "hectares")).toBe(
      one("HIVES_NEEDED", 100, "pear"),
    );
  });

  it("carry every hive, none of the loads over what a truck takes", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 440, max: 60000 }),
        (hives, payload) => {
          const rows = comb("LOADS", hives, 110, payload);
          const [aLoad, space, weight, loads, last] = rows.map((row) => row[1] as number);
          expect(aLoad).toBe(Math.min(space!, weight!));
          expect(aLoad! * 110).toBeLessThanOrEqual(payload);
          expect(aLoad! % 4).toBe(0);
          expect((loads! - 1) * aLoad! + last!).toBe(hives);
          expect(last).toBeGreaterThan(0);
          expect(last).toBeLessThanOrEqual(aLoad!);
        },
      ),
    );
  });
});

describe("an action", () => {
  const TERMS = [
    ["Term", "Cherry"],
    ["minimum frames", 6],
  ];
  const of = (headings: string[], ...cells: unknown[]) =>
    comb("YARD_COLUMNS", [headings, cells], TERMS, null, "frames, action, reason")[1];

  it("is refused alone where the stores' unit is not that of the terms, or may be a hive's weight", () => {
    const fed = [...TERMS, ["feed under", 2]];
    const sheet = [
      ["Hive", "Bees", "Stores (lbs)"],
      ["H1", 8, 40],
    ];
    expect(comb("YARD_COLUMNS", sheet, fed, null, "frames, action, reason")[1]).toEqual([
      8,
      '#VALUE! the heading "Stores (lbs)" is in lb, and the term "stores unit" says frames',
      'the heading "Stores (lbs)" is in lb, and the term "stores unit" says frames',
    ]);
    expect(of(["Hive", "Bees", "Hive weight"], "H1", 8, 40)![2]).toMatch(/the whole hive/);
  });

  it("takes the heading's unit where no term says how much there must be", () => {
    // 20 lb need no feed in spring (common practice, no source); 2 kg are 4.4 lb, 12 kg are 26.
    const stores = (heading: string, cell: number) =>
      of(["Hive", "Bees", heading], "H1", 8, cell)!.slice(1);
    expect(stores("Stores (lbs)", 40)).toEqual(["place", ""]);
    expect(stores("Stores (lbs)", 4)![0]).toBe("place, feed");
    expect(stores("Honey kg", 2)![0]).toBe("place, feed");
    expect(stores("Honey kg", 12)).toEqual(["place", ""]);
  });

  it("takes a word for the stores, and says which words where it does not know one", () => {
    const stores = (cell: unknown) => of(["Hive", "Bees", "Stores"], "H1", 8, cell)!.slice(1);
    expect(stores("Light")).toEqual(["place, feed", "stores light"]);
    expect(stores("ok")).toEqual(["place", ""]);
    expect(stores(1)![0]).toBe("place, feed");
    expect(stores("dunno")).toEqual([
      '#VALUE! "Stores", row 2: "dunno" stands where a figure, "light" or "ok" was expected',
      '"Stores", row 2: "dunno" stands where a figure, "light" or "ok" was expected',
    ]);
  });

  it("is to look again where the queen lays drones or there are workers that lay", () => {
    for (const word of ["DL", "drone layer", "laying workers", "Q-"]) {
      expect(of(["Hive", "Bees", "Queen"], "H1", 8, word)![1]).toBe("look again");
    }
    for (const word of ["red 24", "Blue", "marked", "Q+", "cells", "q?"]) {
      expect(of(["Hive", "Bees", "Queen"], "H1", 8, word)![1]).toBe("place");
    }
  });

  it("refuses a heading that may be a sign", () => {
    expect(
      one(
        "YARD_COLUMNS",
        [
          ["Hive", "Bees", "Brood pattern (1-5)"],
          ["H1", 8, 4],
        ],
        TERMS,
        null,
        "action",
      ),
    ).toMatch(/"Brood pattern \(1-5\)" may or may not tell of the brood pattern/);
  });

  it("is blank for a hive that was not opened, and every other column is as without it", () => {
    expect(of(["Hive", "Bees"], "", "")).toEqual(["", "", ""]);
    expect(of(["Hive", "Bees"], "H1", 8)).toEqual([8, "place", "stores not judged"]);
  });
});
