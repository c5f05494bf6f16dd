/**
 * How a value is known. `read`: read in the named source. `retold`: read in another text that
 * quotes the source. `worked`: arithmetic on values that were read. `practice`: common practice,
 * no source. `memory`: recalled, not read. `fitted`: fitted to the data of the named studies.
 */
export type Known = "read" | "retold" | "worked" | "practice" | "memory" | "fitted";

/** A constant of the trade or of the biology, with where it comes from. */
export interface Source {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly known: Known;
}

const SAGILI = "Sagili & Burgett 2011, Evaluating Honey Bee Colonies for Pollination, PNW 623";
const IMDORF = "Imdorf, Rickli & Fluri 1996 (Liebefeld method)";
const FOUNDATION_LIST = "dimension list on a British beekeeping forum";
const PRACTICE = "common practice, no source";
const LIFE_TABLE = "standard life table (Winston 1987; Jay 1963)";
const SIMULATION = "own simulation, docs/simulation.md";
const SCHMICKL = "Schmickl & Crailsheim 2007, p. 230";

/** One constant of the table; the columns of SOURCES in order. */
function constant(name: string, value: number, unit: string, source: string, known: Known): Source {
  return { name, value, unit, source, known };
}

/**
 * Every constant that the core uses, in one place: the core reads its numbers here and nowhere
 * else, and the function SOURCES shows this table.
 */
export const sources = {
  beesWellCovered: constant(
    "bees on a deep comb well covered on both sides",
    2400,
    "bees",
    SAGILI,
    "retold",
  ),
  beesFullyCovered: constant(
    "bees on a Langstroth comb fully covered, 1,100 a side",
    2200,
    "bees",
    IMDORF,
    "read",
  ),
  beesAverageOccupied: constant(
    "bees on an occupied Langstroth comb, average, not full",
    1400,
    "bees",
    "Simpson 1969, J Apic Res 8:3-8 (abstract)",
    "read",
  ),
  deepCombArea: constant(
    "Langstroth deep, comb inside the frame, one side (8 x 16.75 in)",
    134,
    "in2",
    SAGILI,
    "retold",
  ),
  deepFoundationWidth: constant(
    "Langstroth foundation, width",
    16.75,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  deepFoundationHeight: constant(
    "Langstroth deep foundation, height",
    8.625,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  mediumFoundationHeight: constant(
    "Langstroth medium foundation, height",
    5.5,
    "in",
    "from memory",
    "memory",
  ),
  shallowFoundationHeight: constant(
    "Langstroth shallow foundation, height",
    4.875,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  nationalFoundationWidth: constant(
    "British National foundation, width",
    13.4375,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  nationalDeepHeight: constant(
    "British National deep foundation, height",
    8,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  nationalShallowHeight: constant(
    "British National shallow foundation, height",
    5,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  national14x12Height: constant(
    "British National 14 x 12 foundation, height",
    11.5,
    "in",
    FOUNDATION_LIST,
    "read",
  ),
  dadantCombArea: constant(
    "Dadant brood comb, comb inside the frame, one side",
    1125,
    "cm2",
    "Bertrand, La conduite du rucher, p. 256",
    "read",
  ),
  workerCellsPerCm2: constant(
    "worker cells, one side, counted on managed comb",
    3.96,
    "cells/cm2",
    "Ohio State / EPA 2015 field data notes",
    "read",
  ),
  workerCellWidth: constant(
    "worker cell, flat to flat (by geometry 8 % more cells than are counted)",
    0.52,
    "cm",
    "Seeley & Morse 1976, Insectes Sociaux 23:495-512",
    "retold",
  ),
  twoThirdsCover: constant(
    "cover from which a comb counts whole under the two-thirds rule",
    200 / 3,
    "%",
    PRACTICE,
    "practice",
  ),
  threeQuartersCover: constant(
    "cover of each side from which a comb counts whole under the three-quarters rule",
    75,
    "%",
    PRACTICE,
    "practice",
  ),
  aboutFrames: constant("`about 5` is read as 5 give or take", 0.5, "frames", PRACTICE, "practice"),
  aboutPercent: constant(
    "`about 60%` is read as 60 % give or take",
    5,
    "% points",
    PRACTICE,
    "practice",
  ),
  mostFrames: constant(
    "more combs than this in one count is refused as a slip",
    60,
    "frames",
    PRACTICE,
    "practice",
  ),
  widestDateRange: constant(
    "a date is read back as a count only where its range is at most this wide",
    5,
    "frames",
    PRACTICE,
    "practice",
  ),
  zanderCombArea: constant(
    "Zander comb, one side: eight eighths of about 1 dm2",
    800,
    "cm2",
    "Liebefeld method as taught in the German-speaking countries",
    "worked",
  ),
  beesPerEighth: constant(
    "bees on an eighth of a Zander side",
    125,
    "bees",
    "Liebefeld method",
    "read",
  ),
  foodPerEighth: constant(
    "food in an eighth of a Zander side",
    125,
    "g",
    "Liebefeld method",
    "read",
  ),
  workerCellsPerEighth: constant(
    "worker cells in an eighth of a Zander side",
    400,
    "cells",
    "Liebefeld method as taught in the German-speaking countries",
    "read",
  ),
  droneCellsPerEighth: constant(
    "drone cells in an eighth of a Zander side",
    230,
    "cells",
    "Liebefeld method as taught in the German-speaking countries",
    "read",
  ),
  droneCellsPerCm2: constant(
    "drone cells, one side: the middle of 2.3 to 2.6, European stock",
    2.45,
    "cells/cm2",
    "COLOSS BEEBOOK, colony strength 5.9",
    "worked",
  ),
  droneCellWidth: constant(
    "drone cell, flat to flat",
    0.62,
    "cm",
    "Seeley & Morse 1976, Insectes Sociaux 23:495-512",
    "retold",
  ),
  seamCoverApril: constant(
    "comb covered by the bees of one seam, April (r 0.75)",
    630,
    "cm2",
    "Ohio State / EPA 2015 field data, 112 inspections",
    "worked",
  ),
  seamCoverMay: constant(
    "comb covered by the bees of one seam, May (r 0.56)",
    600,
    "cm2",
    "Ohio State / EPA 2015 field data, 112 inspections",
    "worked",
  ),
  seamCoverJune: constant(
    "comb covered by the bees of one seam, June (r 0.37)",
    912,
    "cm2",
    "Ohio State / EPA 2015 field data, 112 inspections",
    "worked",
  ),
  beesPerPound: constant("bees in a pound", 3500, "bees", "common extension figure", "read"),
  beesPerPoundLeast: constant(
    "bees in a pound, fewest",
    3000,
    "bees",
    "common extension figure",
    "read",
  ),
  beesPerPoundMost: constant(
    "bees in a pound, most",
    5000,
    "bees",
    "common extension figure",
    "read",
  ),
  fewHives: constant(
    "fewer opened hives of a lot than this are too few to compare lots by",
    6,
    "hives",
    PRACTICE,
    "practice",
  ),
  typicalSpread: constant(
    "standard deviation of hives in a yard, of their average (0.24 to 0.33 in yards of 7 to 8 frames)",
    30,
    "%",
    "Schmolke et al. 2020 data",
    "worked",
  ),
  typicalSpreadHives: constant(
    "the typical spread is trusted at least as one seen in so many hives",
    7,
    "hives",
    SIMULATION,
    "worked",
  ),
  sureFrom: constant(
    "from so many counted hives or pallets on, a 95 % interval holds about as often as it says",
    15,
    "hives",
    SIMULATION,
    "worked",
  ),
  alike: constant(
    "hives that differ less than this part of the typical spread are called more alike than usual",
    50,
    "%",
    SIMULATION,
    "worked",
  ),
  extremeSkew: constant(
    "skewness of the opened hives from which a few of them sway the average",
    2,
    "skewness",
    SIMULATION,
    "worked",
  ),
  sequentialChance: constant(
    "OPEN_MORE: either chance of a wrong verdict, where none is stated",
    10,
    "%",
    PRACTICE,
    "practice",
  ),
  sequentialMost: constant(
    "OPEN_MORE: most to open, in fixed samples of the same chances, where none is stated",
    3,
    "samples",
    "NIST/SEMATECH e-Handbook of Statistical Methods, 6.2.6",
    "read",
  ),
  poundsPerKilogram: constant(
    "pounds in a kilogram",
    1 / 0.45359237,
    "lb/kg",
    "definition of the international pound, 1959",
    "read",
  ),
  // The brood clock, laying, the pattern of brood, and the conditions of an inspection.
  workerEggDays: constant("worker: egg", 3, "days", LIFE_TABLE, "retold"),
  workerOpenDays: constant("worker: open larva", 6, "days", LIFE_TABLE, "retold"),
  workerCappedDays: constant("worker: capped", 12, "days", LIFE_TABLE, "retold"),
  droneEggDays: constant("drone: egg", 3, "days", LIFE_TABLE, "retold"),
  droneOpenDays: constant("drone: open larva", 7, "days", LIFE_TABLE, "retold"),
  droneCappedDays: constant("drone: capped", 14, "days", LIFE_TABLE, "retold"),
  queenEggDays: constant("queen: egg", 3, "days", LIFE_TABLE, "retold"),
  queenOpenDays: constant("queen: open larva", 5.5, "days", LIFE_TABLE, "retold"),
  queenCappedDays: constant("queen: capped", 7.5, "days", LIFE_TABLE, "retold"),
  workerEmergence: constant(
    "worker: laying to emergence as measured, mean (n 78, Georgia)",
    20.3,
    "days",
    "Bartlett, CDP2020 data",
    "worked",
  ),
  workerEmergenceSd: constant(
    "worker: laying to emergence as measured, standard deviation (n 78, Georgia)",
    0.6,
    "days",
    "Bartlett, CDP2020 data",
    "worked",
  ),
  droneEmergenceSpread: constant(
    "drone: earlier or later than the life table (no measured spread is known)",
    2,
    "days",
    PRACTICE,
    "practice",
  ),
  queenEmergenceSpread: constant(
    "queen: earlier or later than the life table (no measured spread is known)",
    1,
    "days",
    PRACTICE,
    "practice",
  ),
  stageWidth: constant(
    "`ready to cap` is capped within, `just capped` was capped within, a grafted larva is no older than",
    1,
    "days",
    PRACTICE,
    "practice",
  ),
  eggLoss: constant("worker eggs that die", 0.03, "a day", SCHMICKL, "retold"),
  openLoss: constant("worker larvae that die", 0.01, "a day", SCHMICKL, "retold"),
  cappedLoss: constant("capped worker brood that dies", 0.001, "a day", SCHMICKL, "retold"),
  steadyOpen: constant(
    "open brood to one cell of eggs where laying is steady",
    2,
    "cells",
    "ACT Beekeepers 2022",
    "read",
  ),
  steadyCapped: constant(
    "capped brood to one cell of eggs where laying is steady",
    4,
    "cells",
    "ACT Beekeepers 2022",
    "read",
  ),
  fieldOpen: constant(
    "open brood to one cell of eggs in field data",
    1.5,
    "cells",
    "Schmolke et al. 2020 data",
    "worked",
  ),
  fieldCapped: constant(
    "capped brood to one cell of eggs in field data",
    3.2,
    "cells",
    "Schmolke et al. 2020 data",
    "worked",
  ),
  broodObservers: constant(
    "two observers of one hive's brood differ by (14 to 15 %)",
    15,
    "%",
    "Bartlett et al. 2024 field data",
    "worked",
  ),
  droneShareMay: constant(
    "drone share of brood area in managed hives, May",
    3,
    "%",
    "Ohio State / EPA 2015",
    "worked",
  ),
  droneShareJune: constant(
    "drone share of brood area in managed hives, June",
    5,
    "%",
    "Ohio State / EPA 2015",
    "worked",
  ),
  droneShareMost: constant(
    "drone share of brood area that is expected at most, in full build-up, kept together",
    10,
    "%",
    PRACTICE,
    "practice",
  ),
  solidEmpty: constant(
    "empty cells that solid capped brood has at the least",
    5,
    "%",
    "from memory",
    "memory",
  ),
  spottyEmpty: constant(
    "empty cells from which capped brood is spotty",
    20,
    "%",
    "from memory",
    "memory",
  ),
  clusterBelow: constant("bees draw into a cluster below", 57, "F", PRACTICE, "practice"),
  foragingFrom: constant("foragers are out at midday from", 60, "F", PRACTICE, "practice"),
  middayFrom: constant("midday for foragers, from", 10, "hour of the day", PRACTICE, "practice"),
  middayTo: constant("midday for foragers, to", 16, "hour of the day", PRACTICE, "practice"),
  coldestAir: constant(
    "a temperature under this is refused as a slip",
    -40,
    "F",
    PRACTICE,
    "practice",
  ),
  hottestAir: constant(
    "a temperature over this is refused as a slip",
    130,
    "F",
    PRACTICE,
    "practice",
  ),
} satisfies Record<string, Source>;
