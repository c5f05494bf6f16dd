import type { Case } from "./cases.js";

const DEFINITION = "by definition of the function";
const TABLE = "life table 3/6/12, 3/7/14, 3/5.5/7.5 (Winston 1987; Jay 1963)";
const NA = { error: "#N/A" } as const;
const VALUE = { error: "#VALUE!" } as const;
/** 20 March 2026 as a 1900 workbook numbers it. */
const MARCH_20 = 46101;

/** What lives to the middle of each stage, from 0.03, 0.01 and 0.001 a day (Schmickl & Crailsheim). */
const MID_EGG = 0.97 ** 1.5;
const MID_OPEN = 0.97 ** 3 * 0.99 ** 3;
const MID_CAPPED = 0.97 ** 3 * 0.99 ** 6 * 0.999 ** 6;

const CLUSTER = "cold: bees draw into a cluster, so fewer combs look covered than in warmth";
const FORAGERS = "midday and warm: foragers are out, so fewer bees are seen than the hive has";
const LOOK_AGAIN = "look again, and ask someone who knows, such as the apiary inspector";
const SOLID = "solid brood has 5 to 20 % of empty cells (from memory)";

/** Cases of the brood clock, laying, the pattern of brood and the conditions of an inspection. */
export const cases: Case[] = [
  {
    id: "DAYS_TO_EMERGE",
    args: [
      [
        ["egg"],
        ["larvae"],
        ["open brood"],
        ["ready to cap"],
        ["just capped"],
        ["Sealed"],
        ["emerging"],
      ],
    ],
    gives: [[19.5], [15], [15], [12.5], [11.5], [6], [0]],
    known: `${TABLE}: 21 less the middle of the stage`,
  },
  {
    id: "DAYS_TO_EMERGE",
    args: [[["egg"], ["capped"]], null, "all"],
    gives: [
      [16.1, 19.5, 22.2],
      [0, 6, 13.2],
    ],
    known: "by hand: 20.3 - 2 x 0.6 (Bartlett, CDP2020 data) less 3; 21 + 2 x 0.6 less 0, 9",
  },
  {
    id: "DAYS_TO_EMERGE",
    args: [
      [["capped"], ["capped"], ["capped"], ["grafted"], ["grafted"]],
      [["worker"], ["drones"], ["queen cell"], ["queen"], ["drone"]],
    ],
    gives: [[6], [7], [3.75], [12.5], [VALUE]],
    known: `${TABLE}: half of 12, 14 and 7.5; 16 - 3.5; a drone is not grafted`,
  },
  {
    id: "DAYS_TO_EMERGE",
    args: [[[""], [null], [0], ["hatching"], ["egg"]]],
    gives: [[""], [""], [""], [VALUE], [19.5]],
    known: "blanks in three forms; a word for two things; a bad row spoils itself alone",
  },
  {
    id: "EMERGE_DATE",
    args: [MARCH_20, [["just capped"], ["egg"], [null]], null, "all"],
    gives: [
      [MARCH_20 + 9, MARCH_20 + 12, MARCH_20 + 14],
      [MARCH_20 + 16, MARCH_20 + 20, MARCH_20 + 23],
      ["", "", ""],
    ],
    known: "by hand: 9.1 down, 11.5 to the nearest, 13.2 up; 16.1, 19.5, 22.2; one date for all",
  },
  {
    id: "EMERGE_DATE",
    args: [[[MARCH_20], [MARCH_20 + 0.6], [null], [7], ["soon"]], "capped", "drone"],
    gives: [[MARCH_20 + 7], [MARCH_20 + 7], [""], [VALUE], [VALUE]],
    known: `${TABLE}: half of 14; a time of day is left away; 7 is no date`,
  },
  {
    id: "EGG_DATE",
    args: [MARCH_20, [["egg"], ["just capped"], ["capped"], ["emerging"]], null, "all"],
    gives: [
      [MARCH_20 - 3, MARCH_20 - 1, MARCH_20],
      [MARCH_20 - 10, MARCH_20 - 9, MARCH_20 - 9],
      [MARCH_20 - 23, MARCH_20 - 15, MARCH_20 - 9],
      [NA, MARCH_20 - 21, MARCH_20 - 19],
    ],
    known: `${TABLE}, by hand; the oldest capped is 22.2 days old, what emerges 19.1 at least`,
  },
  {
    id: "EGG_DATE",
    args: [MARCH_20, "emerging", [["worker"], ["drone"], ["queen"], ["wasp"]]],
    gives: [[MARCH_20 - 21], [MARCH_20 - 24], [MARCH_20 - 16], [VALUE]],
    known: TABLE,
  },
  {
    id: "EGG_DATE",
    args: [
      [[MARCH_20], [MARCH_20]],
      [["egg"], ["egg"], ["egg"]],
    ],
    gives: [[VALUE]],
    known: "two dates and three stages do not go together",
  },
  {
    id: "EGGS_PER_DAY",
    args: [
      [[3000], [null], [null], [0]],
      [[6000], ["6000"], [null], [""]],
      [[12000], [null], [1200], [null]],
    ],
    gives: [[1000 / MID_EGG], [1000 / MID_OPEN], [100 / MID_CAPPED], [""]],
    known: "by hand: / 3, / 6, / 12 over what lives to mid-stage; the youngest stage that is given",
  },
  {
    id: "EGGS_PER_DAY",
    args: [1000, 2000, 4000, "all"],
    gives: [
      [
        1000 / 3 / MID_EGG,
        2000 / 6 / MID_OPEN,
        4000 / 12 / MID_CAPPED,
        "steady",
        "as much young brood as where laying is steady",
      ],
    ],
    known: "1:2:4, ACT Beekeepers 2022",
  },
  {
    id: "EGGS_PER_DAY",
    args: [
      [[1000], [1000], ["none"], [null], ["none"]],
      [[1500], [2000], [500], [null], ["none"]],
      [[3200], [2000], [4000], [4000], ["none"]],
      "verdict",
    ],
    gives: [["steady"], ["growing"], ["shrinking"], [""], [""]],
    known:
      "1:1.5:3.2, Schmolke et al. 2020 data; half and over four times the capped; one stage; none",
  },
  {
    id: "EGGS_PER_DAY",
    args: [[[3000], [null]], 6000],
    gives: [[1000 / MID_EGG], [1000 / MID_OPEN]],
    known: "one row of open brood serves every hive",
  },
  {
    id: "EGGS_PER_DAY",
    args: [[[1500, 1500]], null, null, "by eggs"],
    gives: [[1000 / MID_EGG]],
    known: "two boxes are added",
  },
  {
    id: "EGGS_PER_DAY",
    args: [[["many"], [-5], ["200-400"], [{ error: "#N/A" }]], null, null],
    gives: [[VALUE], [VALUE], [100 / MID_EGG], [{ error: "#N/A" }]],
    known: DEFINITION,
  },
  { id: "EGGS_PER_DAY", args: [null, null, null], gives: [[VALUE]], known: "nothing is given" },
  {
    id: "DRONE_SHARE",
    args: [[[5], [null], [5], [null]], [[95], [95], [null], [null]], "area"],
    gives: [[5], [0], [NA], [""]],
    known: "by hand; a blank beside worker brood is none; worker brood that is blank is not judged",
  },
  {
    id: "DRONE_SHARE",
    args: [5, 95, "area", "build-up", "together", "all"],
    gives: [
      [
        (100 * 5 * 2.45) / (5 * 2.45 + 95 * 3.96),
        5,
        "normal",
        "together and up to about 10 % is normal; 3 % in May and 5 % in June were measured",
      ],
    ],
    known: "2.45 and 3.96 cells a cm2: COLOSS BEEBOOK 5.9, Ohio State / EPA 2015 notes",
  },
  {
    id: "DRONE_SHARE",
    args: [230, 400, null, null, null, "by area"],
    gives: [[(100 * 230) / 2.45 / (230 / 2.45 + 400 / 3.96)]],
    known: "the cells of an eighth each (Liebefeld method) take nearly the same area: 48 %",
  },
  {
    id: "DRONE_SHARE",
    args: [
      [[null], [10], [10], [300], ["1 or 2"]],
      1000,
      null,
      [["end of winter"], ["Build-up"], ["summer"], ["summer"], ["spring"]],
      [[null], ["scattered"], ["together"], ["together"], [null]],
      "verdict",
    ],
    gives: [["normal"], ["look again"], ["normal"], ["look again"], [VALUE]],
    known: "common practice, no source; spring is none of the seasons",
  },
  {
    id: "DRONE_SHARE",
    args: [1, 999, null, "summer", "scattered", "note"],
    gives: [[`domed caps scattered in worker cells are a warning at any share: ${LOOK_AGAIN}`]],
    known: DEFINITION,
  },
  {
    id: "PATTERN",
    args: [[[95], ["81%"], [80], [null], [0.9]]],
    gives: [["solid"], ["solid"], ["spotty"], [""], [VALUE]],
    known: "from memory: spotty from 20 % of empty cells; a fraction is asked about",
  },
  {
    id: "PATTERN",
    args: [[["75-85"], [0.9]], "all", "fractions"],
    gives: [
      ["spotty", 20, `judged too widely to be sure: ${SOLID}`],
      ["solid", 10, SOLID],
    ],
    known: "from memory",
  },
  {
    id: "CONDITIONS",
    args: [
      [[45], [65], [65], [58], [null], ["warm"]],
      [[12], [0.5], [9], [12], [12], [12]],
    ],
    gives: [[CLUSTER], [FORAGERS], [""], [""], [""], [VALUE]],
    known: "common practice, no source: under 57 F; from 60 F between 10 and 16 hours",
  },
  {
    id: "CONDITIONS",
    args: [[[0], ["0"], [20]], [["14:30"]], "C"],
    gives: [[""], [CLUSTER], [FORAGERS]],
    known: "a 0 equals a blank, the text 0 does not; 20 C are 68 F",
  },
  {
    id: "CONDITIONS",
    args: [70, [[2], ["2 pm"], ["2 am"], [25]]],
    gives: [[VALUE], [FORAGERS], [""], [VALUE]],
    known: "2 may be at night or after noon",
  },
];
