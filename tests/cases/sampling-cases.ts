import type { Case, Input } from "./cases.js";

const DEFINITION = "by definition of the function";
const WALD = "Wald's SPRT with bounds 1/alpha and 1/beta (from memory), by hand";
const SHA = "tickets by GNU sha256sum";
const VALUE = { error: "#VALUE!" } as const;
/** 8 July 2026 as a 1900 workbook numbers it. */
const JULY_8 = 46211;

const column = (...cells: Input[]): Input[][] => cells.map((cell) => [cell]);
const OWN_CHECK =
  "for your own check alone: pay needs the fixed sample, since stopping when ahead flatters";
const STRONG = column(12, 11, 12);
const SIX = column("H01", "H02", "H03", "H04", "H05", "H06");
const PALLETS = column("P1", "P1", "P2", "P2", "P3", "P3");

/** Arguments of OPEN_MORE up to part, the rest left out. */
const openMore = (
  frames: Input[][],
  good: Input,
  bad: Input,
  {
    alpha = null,
    beta = null,
    most = null,
    spread = null,
    pallets = null,
    size = null,
    part = null,
  }: {
    alpha?: Input;
    beta?: Input;
    most?: Input;
    spread?: Input;
    pallets?: Input[][] | null;
    size?: Input;
    part?: Input;
  } = {},
): Case["args"] => [frames, good, bad, alpha, beta, most, spread, pallets, size, part];

/** Cases of the sequential check and of the drawing of hives. */
export const cases: readonly Case[] = [
  {
    id: "OPEN_MORE",
    args: openMore(STRONG, 9, 7, { spread: 2.4 }),
    gives: [
      [
        "pass",
        0,
        35 / 3,
        8 - (Math.log(10) * 2.4 ** 2) / (2 * 3),
        8 + (Math.log(10) * 2.4 ** 2) / (2 * 3),
        `pass after 3 hives: a lot that averages only 7 would pass all the same in 10 % of such checks at most; ${OWN_CHECK}`,
      ],
    ],
    known: `${WALD}: 8 and ln 10 x 2.4^2 / (2 x 3); for the spread seen, s2 = 1/3, Hall's 9 x s2 is less`,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(4, 5, 4, "4-5"), 9, 7, { spread: 2.4, alpha: 5, beta: "5%" }),
    gives: [
      [
        "fail",
        0,
        13 / 3,
        8 - (Math.log(20) * 2.4 ** 2) / (2 * 3),
        8 + (Math.log(20) * 2.4 ** 2) / (2 * 3),
        `fail after 3 hives: a lot that averages 9 would fail all the same in 5 % of such checks at most; nothing is changed by 1 hive opened since; ${OWN_CHECK}`,
      ],
    ],
    known: `${WALD}: after 4, 5 and 4; Hall's factor is 19 for 2 degrees, 19 / 3 = 6.3 under 17.3`,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8), 9, 8, { part: "verdict" }),
    gives: [["open more"]],
    known: "one hive never decides",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column("", null, 0), 9, 8, { part: "more" }),
    gives: [[2]],
    known: "nothing is opened: two are the least; blanks in the three forms that hosts give them",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(JULY_8, "", "dead", null, "9", 0), 9, 8, { part: "average" }),
    gives: [[5.5]],
    known: "7.5, 0 and 9: a count that became a date, a dead-out, blanks skipped",
  },
  {
    id: "OPEN_MORE",
    args: openMore(
      [
        [5, 5],
        [6, "4-5"],
      ],
      9,
      8,
      { part: "average" },
    ),
    gives: [[10.25]],
    known: "boxes of a hive are added: 10 and 10.5",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(10, 10, 10, 10), 9, 8, { spread: 2.5, part: "more" }),
    gives: [[6]],
    known: `${WALD}: ln 10 x 2.5^2 / 1.5 = 9.6, so ten in all`,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 8, 9), 9, 8, { most: 4, part: "verdict" }),
    gives: [["undecided"]],
    known: DEFINITION,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 9, 8, { part: "fails at" }),
    gives: [[""]],
    known: "after two hives no average is low enough: 8.5 less 7.5 x ln 10 is under 0",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 10, 9, 9, 10), 9, 7, {
      pallets: PALLETS,
      spread: 2,
      size: 48,
      part: "passes at",
    }),
    gives: [[8 + (Math.log(10) * 4) / (2 * (3 / (1 - 3 / 24)))]],
    known: `${WALD}: three pallets of two, of 24 in the lot, weigh 3 / (1 - 3/24)`,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 10, 9, 9, 10, 9, 10), 9, 7, {
      pallets: column("P1", "P1", "P1", "P1", "P2", "P2", "P2", "P2"),
      beta: 0.4,
      part: "passes at",
    }),
    gives: [[8 + (Math.log(2.5) * (2.4 / 2) ** 2) / (2 * 2)]],
    known: `${WALD}: 30 % of 8 is 2.4, for pallets of four 1.2; Hall's 2.6 x s2, 0.125, is less`,
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 9), 9, 8, { size: 3, part: "verdict" }),
    gives: [["pass"]],
    known: "the whole lot is opened: 8.67 is over the middle",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 8, 9),
    gives: [[VALUE]],
    known: "the good level is under the bad",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 8, 8),
    gives: [[VALUE]],
    known: "the levels are the same",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 9, 8, { alpha: 50 }),
    gives: [[VALUE]],
    known: "a chance of one half tells nothing",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 9, 8, { beta: 0.5 }),
    gives: [[VALUE]],
    known: "the same as a share",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9), 9, 8, { size: 48.5 }),
    gives: [[VALUE]],
    known: "half a hive",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 9), 9, 8, { pallets: column("P1", "", "P2") }),
    gives: [[VALUE]],
    known: "a hive without a pallet where pallets are opened",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, "sevn"), 9, 8),
    gives: [[VALUE]],
    known: "a count that is not understood is not passed over",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 9), 9, 8, { size: 2 }),
    gives: [[VALUE]],
    known: "more opened than the lot has",
  },
  {
    id: "OPEN_MORE",
    args: openMore(column(8, 9, 9), 9, 8, { pallets: column("P1", "P2", "P1") }),
    gives: [[VALUE]],
    known: "a pallet in two places: the order counts",
  },
  {
    id: "PICK_HIVES",
    args: [SIX, 3, "Apple", " bloom "],
    gives: [
      ["Hive", 'Ticket by "apple" and "bloom", 3 of 6 hives'],
      ["H04", "4390f612"],
      ["H05", "637e33fe"],
      ["H06", "9703d9a4"],
    ],
    known: SHA,
  },
  {
    id: "PICK_HIVES",
    args: [column("H06", "", "h05", "H01", null, "H03", "H02", 0, "H04"), 3, "APPLE", "bloom"],
    gives: [
      ["Hive", 'Ticket by "apple" and "bloom", 3 of 6 hives'],
      ["H04", "4390f612"],
      ["h05", "637e33fe"],
      ["H06", "9703d9a4"],
    ],
    known: `${SHA}; the order of the rows, blanks and case make no difference`,
  },
  {
    id: "PICK_HIVES",
    args: [column(1, 2, 3, 10, 11), 2, "Über", "Blüte"],
    gives: [
      ["Hive", 'Ticket by "über" and "blüte", 2 of 5 hives'],
      [3, "05e8e6b5"],
      [11, "237d31c3"],
    ],
    known: `${SHA}; a number stays one, so that it can be looked up`,
  },
  {
    id: "PICK_HIVES",
    args: [
      column("H06", "H05", "H04", "H03", "H02", "H01"),
      2,
      "rain gauge",
      17,
      column("P3", "P3", "P4", "P4", "P1", "p1"),
    ],
    gives: [
      ["Hive", "Pallet", 'Ticket by "rain gauge" and "17", 2 of 3 pallets'],
      ["H05", "P3", "2db2fc1c"],
      ["H06", "P3", "2db2fc1c"],
      ["H03", "P4", "a37210bd"],
      ["H04", "P4", "a37210bd"],
    ],
    known: `${SHA}; whole pallets, the hives of one by their ids`,
  },
  {
    id: "PICK_HIVES",
    args: [SIX, 7, "apple", "bloom"],
    gives: [[VALUE]],
    known: "fewer hives than asked for",
  },
  {
    id: "PICK_HIVES",
    args: [column("H01", "H02", "h01"), 1, "apple", "bloom"],
    gives: [[VALUE]],
    known: "an id twice",
  },
  {
    id: "PICK_HIVES",
    args: [column("H01", "H02", "H01"), 1, "apple", "bloom", column("P1", "P1", "P2")],
    gives: [[VALUE]],
    known: "an id twice, on two pallets",
  },
  { id: "PICK_HIVES", args: [SIX, 2, "apple", ""], gives: [[VALUE]], known: "a blank seed" },
  {
    id: "PICK_HIVES",
    args: [SIX, 2, "apple", "bloom", column("P1", "P1", "", "P2", "P3", "P3")],
    gives: [[VALUE]],
    known: "a hive without a pallet",
  },
  {
    id: "PICK_HIVES",
    args: [SIX, 4, "apple", "bloom", PALLETS],
    gives: [[VALUE]],
    known: "fewer pallets than asked for",
  },
];
