/**
 * The demo's yard sheet: an invented outfit, three lots of 20 hives opened on whole pallets of four
 * as they came to a sweet-cherry orchard. One line a hive, as it was called out at the pallet: bees
 * in the top box, bees in the bottom box, combs with brood, how much of them is brood, laying queen,
 * stores in frames, remark.
 */
const LOTS = {
  Shed: `
    4 | 5-6 | 4 | 50% | yes | 3 |
    3-4 | 5 | 3 | half | yes | 3 |
    2 | 6 | 3 | 55% | yes | 4 |
    4 | 6 | 4 | 50% | yes | 3 |
    3 | 5 | 4 | 45% | yes | 2 |
    3½ | 6 | 4 | 50% | yes | 3 |
    2-3 | 4 | 2 | 40% | yes | 4 | small cluster
    4 | 6 | 4 | 60% | yes | 2 |
    about 3 | 5 | 3 | 50% | yes | 3 |
    4 | 5 | 4 | 50% | yes | 3 |
    3 | 6 | 4 | half | yes | 3 |
    none | 4 | 2 | 40% | yes | 5 | all below
    4 | 6 | 4 | 55% | yes | 3 |
    3 | 5-6 | 3 | 50% | yes | 3 |
    4 | 5 | 4 | 45% | yes | 2 |
    2 | 5 | 3 | 40% | yes | 4 |
    3-4 | 6 | 4 | 50% | yes | 3 |
    4 | 6 | 4 | 60% | yes | 3 |
    3 | 5 | 3 | 50% | no | 4 | no eggs, cells on two combs
    3 | 6 | 4 | 50% | yes | 3 |`,
  Foothill: `
    3 | 5 | 4 | 60% | yes | 2 |
    2 | 5 | 4 | 55% | yes | 2 |
    1-2 | 4 | 3 | half | yes | 1 | light, feed
    3 | 6 | 5 | 60% | yes | 2 |
    dead | | | | | | dry, robbed out
    2-3 | 5 | 4 | 60% | yes | 2 |
    3 | 4-5 | 4 | 55% | yes | 2 |
    none | 4 | 3 | 50% | yes | 1 |
    4 | 5 | 5 | 65% | yes | 2 |
    2 | 5 | 4 | 60% | yes | 2 |
    3 | 6 | 5 | 60% | yes | 1 |
    1 | 4 | 3 | 50% | yes | 2 |
    3 | 5 | 4 | 60% | yes | 2 |
    3 | @7-8 | 5 | 65% | yes | 2 | typed 7-8, the sheet made it a date
    2 | 5½ | 4 | 55% | yes | 2 |
    3 | 5 | 4 | 60% | yes | 3 |
    half | 3 | 2 | 45% | yes | 1 | queen late
    2-3 | 5 | 4 | 60% | yes | 2 |
    3 | 5 | 4 | 60% | yes | 2 |
    2 | 4 | 3 | 55% | yes | 2 |`,
  Coast: `
    5 | 7 | 6 | 70% | yes | 1 |
    4-5 | 7 | 6 | 75% | yes | 1 |
    6 | 8 | 7 | 75% | yes | 1 |
    3 | 6 | 5 | 70% | yes | 1 |
    6 | 7-8 | 7 | 75% | yes | 2 |
    7 | 8 | 8 | 80% | yes | 1 | crowded
    2 | 5 | 4 | 60% | yes | 1 |
    5 | 7 | 6 | 70% | yes | 1 |
    4 | 6-7 | 6 | 70% | yes | 1 |
    5-6 | 8 | 7 | 75% | yes | 1 |
    1 | 4 | 3 | 50% | yes | 1 | spotty
    6 | 8 | 7 | 80% | yes | 1 |
    5 | 7 | 6 | 3/4 | yes | 1 |
    3-4 | 6 | 5 | 65% | yes | 1 |
    7 | 8+ | 8 | 80% | yes | 2 | bees at the lid
    4 | 7 | 6 | 70% | yes | 1 |
    5 | 7 | 6 | 70% | yes | 1 |
    6 | 8 | 7 | 75% | yes | 1 |
    2-3 | 5 | 4 | 65% | yes | 1 |
    4 | 7 | 6 | 70% | yes | 1 |`,
};

/**
 * Days on which the lots were opened, as the workbook numbers them: 27, 28 and 29 March 2026.
 * @type {Readonly<Record<string, number>>}
 */
const OPENED = { Shed: 46108, Foothill: 46109, Coast: 46110 };

/** Hives of each lot, opened or not. */
export const SIZES = { Shed: 160, Foothill: 240, Coast: 160 };

/** The cherry orchard, invented: its acres, and what its truck may carry by its papers, in lb. */
export const ORCHARD = { acres: 220, hiveWeight: 120, payload: 46000 };

/** The orchard's drops: name, hives, least average frames of bees that its corner asks, if any. */
export const DROPS = [
  ["Gate", 80, 9],
  ["Creek", 96, 0],
  ["Bench", 96, 0],
  ["Windbreak", 80, 0],
  ["Pump house", 72, 0],
  ["South end", 136, 0],
];

export const HEADINGS = [
  "Hive",
  "Lot",
  "Pallet",
  "Date",
  "Bees top box",
  "Bees bottom box",
  "Brood combs",
  "Brood %",
  "Laying queen",
  "Stores (frames)",
  "Notes",
];

/**
 * A count that the spreadsheet made a date as it was typed: 7-8 became 8 July of that year.
 * @type {Readonly<Record<string, number>>}
 */
const TYPED_AS_DATE = { "@7-8": 46211 };

/** The rows of the sheet; plain numbers as numbers, everything else as the text that was written. */
export const rows = Object.entries(LOTS).flatMap(([lot, lines]) =>
  lines
    .trim()
    .split("\n")
    .map((line, i) => {
      const written = line.split("|").map((cell) => cell.trim());
      const figures = written.map((text) =>
        text in TYPED_AS_DATE
          ? { date: TYPED_AS_DATE[text] }
          : /^\d+$/.test(text)
            ? Number(text)
            : text,
      );
      const pallet = `${lot[0]}${Math.floor(i / 4) + 1}`;
      return [
        `${lot[0]}${String(i + 1).padStart(2, "0")}`,
        lot,
        pallet,
        { day: OPENED[lot] },
        ...figures,
      ];
    }),
);

/**
 * The oldest brood that was seen in four hives of each lot: the shed's began last, the coast's first.
 * @type {Readonly<Record<string, string>>}
 */
export const OLDEST = {
  S01: "larva",
  S02: "ready to cap",
  S03: "larva",
  S04: "larva",
  F01: "capped",
  F02: "capped",
  F03: "just capped",
  F04: "capped",
  C01: "emerging",
  C02: "emerging",
  C03: "emerging",
  C04: "emerging",
};

/** Two contracts side by side, invented, with what each term means. */
export const TERMS = [
  ["Term", "Cherry", "Pear", "Meaning"],
  ["average frames", 8, 7, "frames of bees the lot must have on average"],
  ["minimum frames", 6, 5, "frames of bees a hive must have"],
  [
    "under minimum",
    "left out",
    "counted",
    "left out of the average, counted in it, or rejects the load",
  ],
  ["comb rule", "two-thirds", "two-thirds", "a comb counts once two-thirds of it are covered"],
  ["frame size", "deep", "deep", "the frame in which the contract counts"],
  ["most frames a hive", 12, "", "a stronger hive counts as this many in the average"],
  [
    "part frame",
    "between",
    "down",
    "7.5 is read as 7.5 and paid between 7 and 8 (between), or as 7 (down)",
  ],
  ["brood", 1, 3, "brood a hive must have"],
  ["brood counted as", "full frames", "combs", "full-frame equivalents, or combs that hold brood"],
  ["laying queen", "yes", "yes", "a hive must have a laying queen"],
  ["grade 1 name", "Prime", "Full", "the best grade first"],
  ["grade 1 frames", 10, 7, ""],
  ["grade 1 brood", 3, 4, ""],
  ["grade 1 fee", 68, 52, "a hive"],
  ["grade 2 name", "Standard", "Light", ""],
  ["grade 2 frames", 8, 5, ""],
  ["grade 2 brood", 1, 3, ""],
  ["grade 2 fee", 60, 40, ""],
  ["grade 3 name", "Light", "", ""],
  ["grade 3 frames", 6, "", ""],
  ["grade 3 brood", 1, "", ""],
  ["grade 3 fee", 45, "", ""],
  ["bonus a frame", 2, "", "for each frame of the lot's average over the average asked"],
  ["bonus ceiling", 8, "", "most bonus a hive"],
  ["pro rata", "", "yes", "a lot under the average is paid in proportion"],
  ["currency", "dollars", "dollars", ""],
  ["share opened", 15, 10, "percent of hives to open"],
  ["opened by", "pallets", "pallets", "single hives or whole pallets are drawn"],
  ["inspect above temperature", 55, 55, "degrees, in the unit below"],
  ["temperature unit", "F", "F", ""],
  ["deposit", 30, "", "percent of the fee paid beforehand"],
  ["balance due", 30, 30, "days after the inspection"],
];
