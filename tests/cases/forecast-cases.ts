import type { Case } from "./cases.js";

const VALUE = { error: "#VALUE!" } as const;
const NA = { error: "#N/A" } as const;
/** 28 March, 11 April and 1 January 2026 as a 1900 workbook numbers them. */
const MARCH_28 = 46109;
const APRIL_11 = 46123;
const TABLE = "life table 3/6/12 and 3/7/14 (Winston 1987; Jay 1963)";
const LOSSES = "daily losses 0.03, 0.01, 0.001 (Schmickl & Crailsheim 2007) by hand";

/** Cells of a deep's two sides at 3.96 a cm2. */
const FRAME = 2 * 134 * 2.54 ** 2 * 3.96;
const LARVA = 0.99 ** 3 * 0.999 ** 12;
const CAPPED = 0.999 ** 6;

/** Bees of 4 full frames of brood, stages 1 : 1.5 : 3.2, alive after 14 days of 3.5 % loss. */
const alive = (() => {
  const cells = (4 * FRAME) / 5.7;
  const capped = (cells * 3.2 * CAPPED) / 12;
  const larvae = (cells * 1.5 * LARVA) / 6;
  // Twelve days' bees, the last two days old; then larvae's on days 13 and 14.
  return (capped * 0.965 ** 2 * (1 - 0.965 ** 12)) / 0.035 + larvae * (0.965 + 1);
})();
const TWO_WEEKS = 8 * Math.sqrt((8 * 2400 * 0.965 ** 14 + alive) / (8 * 2400));
const HIVE_ERROR = Math.sqrt(
  0.15 ** 2 + (14 / 21) * (0.35 ** 2 - 0.15 ** 2) + (14 / 21) * 0.24 ** 2,
);

/** Rows of days with the bees of each, under EMERGENCE's heading. */
const days = (bees: readonly number[], from: number | null = null): (string | number)[][] => {
  let soFar = 0;
  return [
    ["Day", "Date", "Bees emerging", "So far"],
    ...bees.map((n, k) => [k + 1, from === null ? "" : from + k + 1, n, (soFar += n)]),
  ];
};
const each = (count: number, bees: number) => Array<number>(count).fill(bees);

/** Cases of emergence, of when rearing began, and of the forecast. */
export const cases: Case[] = [
  {
    id: "EMERGENCE",
    args: [1200, null, null, MARCH_28, "cells", null, null, null, 100],
    gives: days([...each(12, 100), ...each(9, 0)], MARCH_28),
    known: `${TABLE}: capped evenly over 12 days`,
  },
  {
    id: "EMERGENCE",
    args: [1200, 600, 300, null, null, null, null, null, 50],
    gives: days([...each(12, 50), ...each(6, 50), ...each(3, 50)]),
    known: `${TABLE}: a steady 1:2:4 emerges alike on 21 days`,
  },
  {
    id: "EMERGENCE",
    args: [1400, null, null, null, "cells", "drone", null, 50, 100],
    gives: days([...each(14, 50), ...each(10, 0)]),
    known: `${TABLE}: drones over 14 days, half of the cells filled`,
  },
  {
    id: "EMERGENCE",
    args: [[[100], [""], ["100"]], null, null, null, null, null, "just capped", null, 100],
    gives: days([...each(11, 0), 200, ...each(9, 0)]),
    known: `${TABLE}: capped today emerges on the twelfth day`,
  },
  {
    id: "EMERGENCE",
    args: [100, null, null, null, null, null, "emerging"],
    gives: days([100 * 0.999 ** 0.5, ...each(20, 0)]),
    known: LOSSES,
  },
  {
    id: "EMERGENCE",
    args: [100, null, null, null, null, "queen"],
    gives: [[VALUE]],
    known: "worker and drone alone",
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, "capped", null, null, null, "all"],
    gives: [[MARCH_28 - 9, MARCH_28 - 23, 9, "by the oldest brood seen"]],
    known: `${TABLE}: capped is 9 days old or more, and at most 21 + 2 x 0.6`,
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, [["egg"], ["emerging"], [""], ["hatching"]], null, null, null, "earliest"],
    gives: [[MARCH_28 - 3], [NA], [""], [VALUE]],
    known: `${TABLE}; emerging brood proves only 21 days or more`,
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, "capped", null, 2000, 2000, "all"],
    // By 1:2:4 half, by 1:1.5:3.2 15/32 of the capped stage: 9 + 12 x 15/32 to 9 + 6.
    gives: [[MARCH_28 - 14, MARCH_28 - 15, 14.625, "by the amounts, if laying was steady"]],
    known: "by hand from the two yardsticks",
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, "larva", null, null, 500],
    gives: [[VALUE]],
    known: "capped brood beside an oldest stage of larvae contradicts it",
  },
  {
    id: "DAYS_AHEAD",
    args: [[["Coast"], ["Shed"], ["Shed"]], MARCH_28, [["emerging"], ["larva"], ["larva"]], "Shed"],
    gives: [
      [
        "Lot",
        "Hives",
        "Began at the latest",
        "Began at the earliest",
        "Days ahead, low",
        "Days ahead, high",
        "Says",
      ],
      [
        "Coast",
        1,
        // Measured workers emerge from 20.3 - 2 x 0.6 days on.
        MARCH_28 - 19,
        "not shown",
        19.1 - 9,
        "not shown",
        "ahead of Shed by at least 10.1 days; 1 of 1 hive past the clock: 21 days or more by the life table, 19.1 as measured",
      ],
      ["Shed", 2, MARCH_28 - 3, MARCH_28 - 9, "", "", ""],
    ],
    known: `${TABLE}; Bartlett, CDP2020 data: 20.3 days, sd 0.6`,
  },
  {
    id: "DAYS_AHEAD",
    args: [[["Coast"]], MARCH_28, [["egg"]], "Ridge"],
    gives: [[VALUE]],
    known: "a lot that is not there",
  },
  {
    id: "FORECAST",
    args: [8, MARCH_28, APRIL_11, 4],
    gives: [[TWO_WEEKS]],
    known: `${TABLE}; ${LOSSES}, as a geometric series; 0.035 a day (field studies)`,
  },
  {
    id: "FORECAST",
    args: [8, MARCH_28, APRIL_11, 4, null, null, null, null, null, null, null, null, null, "all"],
    gives: [
      [
        TWO_WEEKS,
        TWO_WEEKS * Math.exp(-1.76 * HIVE_ERROR),
        TWO_WEEKS * Math.exp(1.21 * HIVE_ERROR),
      ],
    ],
    known: "the fitted errors of docs/forecast.md, by hand",
  },
  {
    id: "FORECAST",
    args: [[[8], ["dead"], [""], [8], [8]], MARCH_28, MARCH_28, [[4], [""], [""], ["x"], [4]]],
    gives: [[8], [0], [""], [VALUE], [8]],
    known: "on the day itself nothing has changed; a bad row spoils itself alone",
  },
  {
    id: "FORECAST",
    // No brood, a loss of 19 % a day over one day: half of the way to 0.81 is 0.9.
    args: [10, MARCH_28, MARCH_28 + 1, "none", null, null, null, null, 19],
    gives: [[9]],
    known: "by hand",
  },
  {
    id: "FORECAST",
    args: [8, APRIL_11, MARCH_28, 4],
    gives: [[VALUE]],
    known: "dates out of order",
  },
  {
    id: "FORECAST",
    args: [
      [[8], [8], [8], [0.9]],
      MARCH_28,
      MARCH_28,
      [[""], [0], ["none"], [""]],
      null,
      [[""], [""], [""], [1]],
    ],
    gives: [[NA], [NA], [8], [0.9]],
    known: "brood that is not judged is not none; a blank stage beside a filled one is none",
  },
  { id: "FORECAST", args: [8, MARCH_28, APRIL_11], gives: [[NA]], known: "no brood is given" },
  {
    id: "FORECAST",
    args: [[[8], [8]], MARCH_28, MARCH_28, [[10], ["10½"]], ...each(6, 0).map(() => null), 10],
    gives: [[8], [VALUE]],
    known: "more full frames of brood than the boxes hold frames",
  },
  {
    id: "FORECAST",
    // A deep's two sides hold FRAME cells, 6,847; 60 frames of them are 410,817.
    args: [[[8], [8]], MARCH_28, MARCH_28, [[410000], [411000]], null, null, null, "cells"],
    gives: [[8], [VALUE]],
    known: "134 in2 x 6.4516 x 3.96 x 2 x 60 by hand; more frames than 60 is a slip",
  },
  {
    id: "EMERGENCE",
    args: [[[411000], [1]], null, null, null, "cells"],
    gives: [[VALUE]],
    known: "the same: a slip in one row would be in every day's sum",
  },
  {
    id: "EMERGENCE",
    args: [[[100], [100]], 50, null, null, "cells"],
    gives: [[VALUE]],
    known: "one row of open brood beside two hives would be added once",
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, "emerging", 1000, 2000, 4000, "all"],
    gives: [[MARCH_28 - 19, NA, 20.3 - 2 * 0.6, "at least 19.1 days, by the oldest brood seen"]],
    known:
      "Bartlett, CDP2020 data: 20.3 days, sd 0.6; capped brood beside emerging is no contradiction",
  },
  {
    id: "BROOD_START",
    args: [MARCH_28, "just capped", 1000, 2000, 100, "all"],
    gives: [[MARCH_28 - 9, MARCH_28 - 10, 9, "by the oldest brood seen"]],
    known: `${TABLE}: just capped is 9 to 10 days old, whatever there is of it`,
  },
  {
    id: "FORECAST_DAYS",
    args: [[["none"], ["none"]], MARCH_28, 1, [[""], [""]]],
    gives: [
      ["Date", "Frames of bees", "Low", "High", "Note"],
      [MARCH_28, 0, 0, 0, ""],
      [
        MARCH_28 + 1,
        0,
        0,
        0,
        "the band holds nine lots in ten of field studies from March to October, 8 to 32 days ahead, but 2 of the 5 hives seen in March and April, which grew faster; none were of pollination loads",
      ],
    ],
    known: "no bees raise none",
  },
];
