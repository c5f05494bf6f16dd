import type { Case, Input } from "./cases.js";

const VALUE = { error: "#VALUE!" } as const;
const ALMOND = "Almond Board of California";
const HONEY = "6 to 8 lb a full deep (extension-style pages), by hand";
const SYRUP = "7 lb of stores a gallon of 2:1 (two feeding guides), by hand";
const BAD = "a mistake that is refused";
const column = (...cells: Input[]): Input[][] => cells.map((cell) => [cell]);

/** Four opened pallets of one lot, and of another; frames that can be added in the head. */
const YARD: Input[][] = [
  ["Hive", "Lot", "Pallet", "Frames of bees"],
  ["A1", "Hill", "P1", 12],
  ["A2", "Hill", "P1", 12],
  ["A3", "Hill", "P2", 4],
  ["A4", "Hill", "P2", 4],
  ["B1", "Sea", "P3", 10],
  ["B2", "Sea", "P3", 10],
  ["B3", "Sea", "P4", 6],
  ["B4", "Sea", "P4", 6],
];
const LIST = ["Drop", "Pallet", "Lot", "Hives", "Frames a hive", "Remark"];

const drops = (
  yard: Input[][],
  sizes: Input[][],
  {
    lots = null,
    lotSizes = null,
    names = null,
    least = null,
    apart = null,
    onPallet = 2,
    part = null,
  }: Partial<Record<"lots" | "lotSizes" | "names" | "least", Input[][] | null>> & {
    apart?: Input;
    onPallet?: Input;
    part?: Input;
  } = {},
): Case["args"] => [yard, sizes, null, ALMOND, lots, lotSizes, names, least, apart, onPallet, part];

/** Cases of stores, feed, hives an orchard takes, loads, drops and actions. */
export const cases: readonly Case[] = [
  {
    id: "STORES",
    args: [column(2, "2-3", "", "none", -1)],
    gives: [[14], [17.5], [""], [0], [VALUE]],
    known: HONEY,
  },
  {
    id: "STORES",
    args: [[["2-3", 1]], null, "lb", [["deep", "medium"]], null, null, "all"],
    gives: [[21.25, 15.5, 28, "15.5-28", "", ""]],
    known: "2 x 6 + 3.5, 2.5 x 7 + 3.75, 3 x 8 + 4: a medium holds 3.5 to 4 lb",
  },
  {
    id: "STORES",
    args: [column(95, "90-100", 55), "lb", "lb", null, column(60, 60, 60), null, null],
    gives: [[35], [35], [VALUE]],
    known: "95 - 60 by hand; 55 is less than the tare",
  },
  { id: "STORES", args: [95, "lb"], gives: [[VALUE]], known: "a weight without its tare" },
  {
    id: "STORES",
    args: [column("40 kg", "40 lb"), "lb", null, null, 10],
    gives: [[VALUE], [30]],
    known: "kilograms where pounds were said",
  },
  {
    id: "FEED",
    args: [column(1, "none", "", 3, -2)],
    gives: [[13 / 7], [20 / 7], [""], [0], [VALUE]],
    known: `${SYRUP}: 20 lb less 7, 0 and 21`,
  },
  {
    id: "FEED",
    args: [column(10, 40), "lb", 30, "lb", "1:1", "litres"],
    gives: [[4 * 3.785411784], [0]],
    known: "20 lb short, 5 lb a gallon of 1:1, 3.785411784 L a gallon",
  },
  {
    id: "FEED",
    args: [column(5), "kg", column(9), "kg", "dry sugar", "kg"],
    gives: [[4 / (0.8 / 0.82)]],
    known: "4 kg short; sugar as honey with 18 % water, less a fifth",
  },
  {
    id: "FEED",
    args: [[["none"]], "lb", null, "lb", 61 / 1440, null, 20000, "bees", 30, null, null, "all"],
    gives: [
      [
        (20000 * 30 * 5.45) / 453592.37 / 5,
        (20000 * 30 * 4.2) / 453592.37 / 5,
        (20000 * 30 * 6.7) / 453592.37 / 5,
        (20000 * 30 * 5.45) / 453592.37,
        (20000 * 30 * 5.45) / 453592.37,
        "at the winter rate, which is no brood-rearing rate: with brood they use far more; dry sugar instead below about 57 F; feed inside the hive, towards evening: spilled feed starts robbing",
      ],
    ],
    known: "4.2 to 6.7 mg a bee a day (Harbo 1983), by hand; 1:1 typed in a cell is the time 1:01",
  },
  { id: "FEED", args: [1, null, 30, null, null, null, 8, null, 30], gives: [[VALUE]], known: BAD },
  { id: "FEED", args: [1, null, null, null, null, null, 8], gives: [[VALUE]], known: BAD },
  { id: "FEED", args: [1, null, 30, null, "dry", "gallons"], gives: [[VALUE]], known: BAD },
  {
    id: "HIVES_NEEDED",
    args: [column(40, "", 10), column("almonds", "pear", "Apple"), null, null, null, null, "all"],
    gives: [
      [80, 80, 80, "2 an acre: Almond Board of California, Honey Bee Best Management Practices"],
      ["", "", "", ""],
      [15, 10, 20, "1 to 2 an acre: Good Fruit Grower"],
    ],
    known: "the published rates times the area",
  },
  {
    id: "HIVES_NEEDED",
    args: [column(10), "kiwifruit", "hectares", null, null, null, "low"],
    gives: [[80]],
    known: "8 to 10 hives a hectare, New Zealand kiwifruit pollination standard",
  },
  {
    id: "HIVES_NEEDED",
    args: [column(40), null, null, null, 16, 8],
    gives: [[80]],
    known: "40 x 16 / 8",
  },
  { id: "HIVES_NEEDED", args: [column(40)], gives: [[VALUE]], known: "nothing says how many" },
  { id: "HIVES_NEEDED", args: [column(40), "plum"], gives: [[VALUE]], known: "no rate published" },
  {
    id: "LOADS",
    args: [960],
    gives: [
      ["Hives a load", 408, "by space alone"],
      ["By space", 408, "17 stacks x 2 sides x 3 high x 4"],
      [
        "By weight",
        "",
        "not reckoned: give hive_weight and payload; what a truck and its axles may weigh is for local codes and the scale",
      ],
      ["Loads", 3, "of 960 hives"],
      ["Hives on the last load", 144, ""],
    ],
    known: "17 x 2 x 3 x 4 = 408 double deeps, a honey producer's account; 960 - 2 x 408",
  },
  {
    id: "LOADS",
    args: [402, 110, 44000],
    gives: [
      ["Hives a load", 400, "weight is the limit"],
      ["By space", 408, "17 stacks x 2 sides x 3 high x 4"],
      [
        "By weight",
        400,
        "pallets of 440; a load weighs 44000 of 44000; what a truck and its axles may weigh is for local codes and the scale",
      ],
      ["Loads", 2, "of 402 hives, the last pallet with 2 of 4"],
      ["Hives on the last load", 2, ""],
    ],
    known: "44,000 / (4 x 110) = 100 pallets",
  },
  { id: "LOADS", args: [100, 110], gives: [[VALUE]], known: "a weight without a payload" },
  { id: "LOADS", args: [100, 110, 400], gives: [[VALUE]], known: "no pallet may be carried" },
  {
    id: "DROPS",
    args: drops(YARD, column(4, 4)),
    gives: [
      LIST,
      ["1", "in all", "", 4, 8, ""],
      ["1", "P1", "Hill", 2, 12, ""],
      ["1", "P2", "Hill", 2, 4, ""],
      ["2", "in all", "", 4, 8, ""],
      ["2", "P3", "Sea", 2, 10, ""],
      ["2", "P4", "Sea", 2, 6, ""],
      ["All drops", "in all", "", 8, 8, "weakest to strongest drop 0 frames: no list is more even"],
    ],
    known: "12 + 4 = 10 + 6, by hand",
  },
  {
    id: "DROPS",
    args: drops(YARD, column(4, 4), {
      names: column("Gate", "Creek"),
      least: column("", 11),
      part: "drops",
    }),
    gives: [
      ["Drop", "Hives", "Frames a hive", "Least asked", "Pallets", "Remark"],
      ["Gate", 4, 5, "", "Hill: P2; Sea: P4", ""],
      ["Creek", 4, 11, 11, "Hill: P1; Sea: P3", ""],
      ["All drops", 8, 8, "", "", "weakest to strongest drop 6 frames: no list is more even"],
    ],
    known: "only 12 and 10 make 11, by hand",
  },
  {
    id: "DROPS",
    args: drops(YARD, column(6, 4, 4), {
      lots: column("Sea", "Hill"),
      lotSizes: column(4, 10),
      apart: "lots apart",
    }),
    gives: [
      LIST,
      ["1", "in all", "", 6, 8, ""],
      ["1", "P1", "Hill", 2, 12, ""],
      ["1", "P2", "Hill", 2, 4, ""],
      ["1", "any 1 not listed", "Hill", 2, 8, ""],
      ["2", "in all", "", 4, 8, ""],
      ["2", "P3", "Sea", 2, 10, ""],
      ["2", "P4", "Sea", 2, 6, ""],
      ["3", "in all", "", 4, 8, ""],
      ["3", "any 2 not listed", "Hill", 4, 8, ""],
      [
        "All drops",
        "in all",
        "",
        14,
        8,
        "weakest to strongest drop 0 frames, within each lot: no list is more even; hives not opened are at their lot's average",
      ],
    ],
    known: "10 hives fill 6 and 4, by hand; each lot's opened average 8",
  },
  { id: "DROPS", args: drops(YARD, column(4, 2)), gives: [[VALUE]], known: "room for 6 of 8" },
  { id: "DROPS", args: drops(YARD, column(5, 5)), gives: [[VALUE]], known: "no whole pallets" },
  {
    id: "DROPS",
    args: drops(YARD, column(6, 2), { apart: "lots apart" }),
    gives: [[VALUE]],
    known: "lots of 4 and 4 do not fit 6 and 2",
  },
  {
    id: "DROPS",
    args: drops(YARD, column(4, 4), { lots: column("Hill", "Plain") }),
    gives: [[VALUE]],
    known: "a lot without an opened hive",
  },
  {
    id: "DROPS",
    args: drops(YARD, column(4, 4), { lots: column("Hill", "Sea"), lotSizes: column(2, 4) }),
    gives: [[VALUE]],
    known: "a lot smaller than what is listed of it",
  },
  {
    id: "YARD_COLUMNS",
    args: [
      [
        [
          "Hive",
          "Frames of bees",
          "Brood",
          "Queen",
          "Stores",
          "Eggs",
          "Brood pattern",
          "Drone brood",
        ],
        ["H1", 8, 3, "yes", 3, "yes", "solid", "together"],
        ["H2", 8, 3, "yes", 2, "yes", 90, "normal"],
        ["H3", 5, 2, "yes", 3, "", "", ""],
        ["H4", 3, 1, "yes", 3, "", "", ""],
        ["H5", 8, 3, "yes", 3, "no", "", ""],
        ["H6", 8, 3, "yes", 3, "", "spotty", "scattered"],
        ["H7", 3, 4, "yes", 3, "", "", ""],
        ["H8", "dead", "", "", "", "", "", ""],
        ["", "", "", "", "", "", "", ""],
        ["H9", 8, 3, "yes", 3, "", 3, ""],
      ],
      [
        ["Term", "Cherry"],
        ["average frames", 8],
        ["minimum frames", 6],
      ],
      null,
      "action, reason",
    ],
    gives: [
      ["Action", "Reason"],
      ["place", ""],
      ["place, feed", "stores 2 frames, under 2.86"],
      ["hold back", "frames 5 of 6"],
      ["combine", "frames of bees 3, under 4; frames 3 of 6"],
      ["look again", "no eggs seen; no diagnosis: ask the apiary inspector"],
      [
        "look again",
        "spotty brood; drone brood scattered in worker cells; no diagnosis: ask the apiary inspector",
      ],
      [
        "look again",
        "3 frames of bees for 4 of brood: fewer than it needs, 4; no diagnosis: ask the apiary inspector; frames of bees 3, under 4; frames 3 of 6",
      ],
      [
        "take out",
        "dead: close it against robbing, and ask the apiary inspector before its combs are used again",
      ],
      ["", ""],
      [
        VALUE,
        '"Brood pattern", row 11: "3" stands where "solid", "spotty" or the percent of cells filled was expected',
      ],
    ],
    known:
      "the rules of the terms: 20 lb are 20 / 7 frames, under 4 frames, 1 frame for each of brood",
  },
];
