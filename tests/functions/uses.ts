import { column, errorCell, serial } from "./sheet.js";

/** One way to call a function over several hives: the arguments at `byRow` have a row for each. */
export interface Use {
  readonly title: string;
  readonly id: string;
  readonly values: readonly unknown[];
  readonly byRow: readonly number[];
}

const use = (title: string, id: string, values: readonly unknown[], byRow = [0]): Use => ({
  title: `${id}, ${title}`,
  id,
  values,
  byRow,
});

const CONTRACTS: unknown[][] = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 6],
  ["minimum frames", 6, ""],
  ["brood", 3, ""],
  ["laying queen", "yes", ""],
  ["stores", "", 2],
];
/** Frames of two boxes; contract; combs of brood and their cover; queen; stores; year. */
const HIVES: unknown[][] = [
  ["7-8", 2, "Cherry", 6, 60, "yes", "", 2026],
  ["", "", "Cherry", "", "", "", "", ""],
  ["about 5", "", "Pear", "", "", "", 3, ""],
  [9, "x", "Cherry", 6, 80, "yes", "", ""],
  [4, 4, "Plum", 5, 70, "no", 1, 2026],
  [serial(2026, 7, 8), "", "Cherry", "5-6", "about 70", "no", "", serial(2026, 3, 20)],
  ["dead", "", "Pear", "none", "", "", "", ""],
  ["12+", 3, "Cherry", 4, "", "yes", 2, ""],
  [8, errorCell("#REF!"), "Pear", 4, 50, "?", "2-3", ""],
];
const at = (...columns: readonly number[]) => HIVES.map((row) => columns.map((k) => row[k]));
const asked = [CONTRACTS, at(2), at(3), at(4), at(5), at(6), null, at(7)];
const byHive = [0, 2, 3, 4, 5, 6, 8];

/** Cells as they come: figures, blanks, dates, a dead-out, an error, and some that are no figures. */
const FIGURES = [
  "7-8",
  "",
  7.5,
  "12+",
  "rubbish",
  "none",
  errorCell("#N/A"),
  true,
  "about 5",
  serial(2026, 8, 7),
  "dead",
  -3,
];
const PERCENTS: unknown[][] = [
  [90, 80, 60, 60],
  ["", "", "", ""],
  ["60%", "", "70-80", "x"],
  [100, 0.5, 100, 100],
  ["about 70", "full", "half", ""],
  ["", errorCell("#DIV/0!"), 50, 50],
];
const SEAMS: unknown[][] = [
  [8, 6],
  ["", ""],
  ["7-8", ""],
  ["dead", ""],
  ["rubbish", 4],
];

/** A yard sheet with its heading row; its hives are those above. */
export const YARD: unknown[][] = [
  ["Hive", "Top bees", "Bottom bees", "Contract", "Brood", "Brood %", "Queen", "Stores", "Date"],
  ...HIVES.map((row, i) => [i === 1 ? "" : `H${i + 1}`, ...row]),
];

/** Every function that takes hives, each way of giving them at least once. */
export const USES: readonly Use[] = [
  use("a column", "READING", [column(...FIGURES)]),
  use("a column in five parts", "READING", [column(...FIGURES), "all"]),
  use("a block as text", "READING", [at(0, 1, 3), "text", null, null, at(7)], [0, 4]),
  use("percents", "READING", [PERCENTS, "low", "percent"]),
  use("boxes", "FRAMES_OF_BEES", [at(0, 1)]),
  use("boxes of two sizes", "FRAMES_OF_BEES", [at(0, 1), null, null, [["deep", "medium"]]]),
  use("combs", "FRAMES_OF_BEES", [PERCENTS, "combs", "sum of parts"]),
  use("sides", "FRAMES_OF_BEES", [PERCENTS, "sides", "three-quarters", null, null, "text"]),
  use("seams", "FRAMES_OF_BEES", [SEAMS, "seams"]),
  use("a column", "BEES", [column(...FIGURES), "average"]),
  use("boxes", "BEES", [at(0, 1), 2000, null, "medium", "high"]),
  use("boxes and their cover", "BROOD_FRAMES", [at(3), at(4)], [0, 1]),
  use("combs that hold any", "BROOD_FRAMES", [at(3), null, "combs"]),
  use("combs", "BROOD_FRAMES", [PERCENTS, null, "cells", "combs"]),
  use("both looks", "SEAMS", [SEAMS.map((row) => [row[0]]), SEAMS.map((row) => [row[1]])], [0, 1]),
  use("all that is known of them", "SEAMS", [SEAMS, null, "all", "june"]),
  use("two sizes", "DEEP_EQUIVALENT", [at(0, 1), [["medium", "shallow"]]]),
  use("bees", "BEES", [column(19200, "", "12000-15000", "rubbish", -1), null, "frames"]),
  use("sides", "COVER_TO_BEES", [PERCENTS]),
  use("combs, by hive", "COVER_TO_BEES", [PERCENTS, "combs", null, null, null, "hives"]),
  use("pounds", "BEE_WEIGHT", [column(3, "", "2-3", "rubbish", 0.5), "lb", "bees", null, "high"]),
  use("worker", "CELLS", [PERCENTS]),
  use("drone, in part empty", "CELLS", [PERCENTS, "drone", "liebefeld", null, 80]),
  use("a column", "COVER", [column(1700, "", "400-800", 5000, "rubbish")]),
  use("eighths", "FOOD", [column("3-4", "", 9, "half", 2), "lb", null, "eighths"]),
  use("length and width", "PATCH", [column(10, "", "8-9", 30), column(6, "", 5, 20)], [0, 1]),
  use("a grid", "PATCH", [column(20, "", "about 5", "18-20", 90), null, "squares", "percent"]),
  use("area", "BROOD_FRAMES", [column(4000, "", "3000-4000", "x"), null, null, "cm2"]),
  use("fill", "PATTERN", [column(92, "", "70-85", "x", "about 80"), "all"]),
  use("cells", "DRONE_SHARE", [column(50, "", 300, "x"), column(950, "", 900, 5)], [0, 1]),
  use(
    "three stages",
    "EGGS_PER_DAY",
    [column(1000, "", 500, "x"), column(2000, "", "none", 1), column(4000, "", 9000, 1), "all"],
    [0, 1, 2],
  ),
  use(
    "stages",
    "DAYS_TO_EMERGE",
    [column("capped", "", "eggs", "x"), column("worker", "", "drone", "")],
    [0, 1],
  ),
  use(
    "a day a row",
    "EMERGE_DATE",
    [
      column(serial(2026, 3, 20), "", "soon", serial(2026, 3, 21)),
      column("open", "", "open", "egg"),
    ],
    [0, 1],
  ),
  use(
    "a day a row",
    "EGG_DATE",
    [column(serial(2026, 3, 20), "", serial(2026, 3, 21)), column("emerging", "", "just capped")],
    [0, 1],
  ),
  use(
    "oldest stages",
    "BROOD_START",
    [
      column(serial(2026, 3, 20), "", serial(2026, 3, 21), serial(2026, 3, 21)),
      column("emerging", "", "capped", "x"),
      null,
      column("", "", 2000, 1),
      column("", "", 1000, 1),
      "all",
    ],
    [0, 1, 3, 4],
  ),
  use(
    "combs and their cover",
    "FORECAST",
    [at(0, 1), serial(2026, 3, 20), serial(2026, 4, 3), at(3), at(4)],
    [0, 3, 4],
  ),
  use(
    "cells by stage, a date a row",
    "FORECAST",
    [
      column(8, "", "7-8", "none", 9),
      column(serial(2026, 3, 20), "", serial(2026, 3, 21), serial(2026, 3, 21), ""),
      serial(2026, 4, 20),
      column(9000, "", "8000-9000", "none", 1),
      null,
      column(5000, "", "", "", 1),
      column(3000, "", 100, "", 1),
      "cells",
      "build-up",
      "today",
      10,
      null,
      90,
      "all",
    ],
    [0, 1, 3, 5, 6],
  ),
  use(
    "a morning and a noon",
    "CONDITIONS",
    [column(45, "", 70, "warm"), column(9, "", 12, 13)],
    [0, 1],
  ),
  use("frames and pollen", "STORES", [at(0, 6), null, "kg", null, null, at(6), "all"], [0, 5]),
  use("heft", "STORES", [column(95, "", "90-100", 20, "x"), "lb", "lb", null, 60]),
  use("a target", "FEED", [at(6), null, column(30, 30, "", 20, 1, 9, 9, "x", 30)], [0, 2]),
  use(
    "bees and brood",
    "FEED",
    [at(6), null, null, null, null, null, at(0, 1), null, 30, at(3), null, "all"],
    [0, 6, 9],
  ),
  use(
    "a crop a row",
    "HIVES_NEEDED",
    [column(40, "", "x", 9), column("pear", "", "", "plum")],
    [0, 1],
  ),
  use("a contract a row", "GRADE", [at(0, 1), ...asked], byHive),
  use("a published standard", "GRADE", [at(0, 1), null, "Almond Board of California"]),
  use("what is short", "SHORT_OF", [at(0, 1), ...asked, "all"], byHive),
  use("a contract a row", "HIVE_CHECK", [at(0, 1), ...asked], byHive),
];

/** The use with other cells in its columns. */
export function withCells(values: Use["values"], change: (cell: unknown) => unknown): unknown[] {
  return values.map((value) =>
    Array.isArray(value) ? value.map((row: unknown[]) => row.map(change)) : value,
  );
}
