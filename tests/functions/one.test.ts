import { expect, it } from "vitest";
import { column, comb, serial, terms } from "./sheet.js";

const [MARCH_27, MARCH_28] = [serial(2026, 3, 27), serial(2026, 3, 28)];
const ALMOND = "Almond Board of California";
const ONE_HIVE = [
  ["Hive", "Lot", "Pallet", "Date", "Frames of bees", "Full frames brood"],
  ["A1", "A", "P1", MARCH_28, 1, 1],
];
/** Nobody asks a lot for one frame; it is the least that shows the word. */
const contract = terms(
  ["average frames", 1],
  ["minimum frames", 1],
  ["under minimum", "rejects the load"],
  ["base fee", 100],
  ["deposit", 10],
  ["balance due", 1],
  ["bees for brood", 2],
);
const strict = terms(
  ["average frames", 8],
  ["minimum frames", 6],
  ["under minimum", "rejects the load"],
  ["base fee", 100],
);
const bonus = terms(
  ["grade 1 name", "Light"],
  ["grade 1 frames", 1],
  ["grade 1 fee", 10],
  ["average frames", 1],
  ["bonus a frame", 1],
);
const pallets = terms(["average frames", 8], ["opened by", "pallets"]);
const seams = terms(["average frames", 8], ["comb rule", "cluster count"]);
const SEAMS = [
  ["Hive", "Seams above", "Seams below box 1", "Seams below box 2"],
  ["A1", 8, 7, 6],
];
/** Hives moved singly, one of the lot in the sheet. */
const drops = (size: number, lotSize: number): unknown[] => {
  const lots = [column("A"), column(lotSize)];
  return [ONE_HIVE, column(size), null, ALMOND, ...lots, null, null, null, 1];
};

// English: one hive, two hives. Each of these says a number that is one.
it.each([
  ["FORECAST", [8, MARCH_28, MARCH_27, 4], "on: the date lies 1 day before the hive was"],
  [
    "FORECAST_DAYS",
    [column(1), MARCH_28, 1, column(1), 50, null, null, null, null, 1],
    "1 egg a day",
  ],
  [
    "FORECAST_DAYS",
    [column(1), MARCH_28, 1, column("none"), null, null, null, null, null, null, 1],
    "outgrow 1 frame",
  ],
  ["LOT_FORECAST", [ONE_HIVE, MARCH_27, 1, contract], "lies 1 day before hive A1"],
  ["LOT_FORECAST", [ONE_HIVE, MARCH_28, 4, contract], "in the average: 1 hive"],
  ["LOT", [ONE_HIVE, 4, contract], "25 % of the lot, on 1 pallet"],
  ["LOT", [ONE_HIVE, 4, contract], "of 1 hive; 1 asked"],
  ["LOT", [ONE_HIVE, 4, strict], "1 of 1 hive under the minimum: too many"],
  ["LOT", [ONE_HIVE, 0.5, contract], "a lot of 0.5 hives: give a whole number"],
  ["WHAT_IF", [ONE_HIVE, "average frames", [[8]], 1, strict], "1 of 1 hive under the minimum"],
  ["LOT_PAY", [ONE_HIVE, 1, contract], "due 1 day after the inspection"],
  ["LOT_PAY", [ONE_HIVE, 1, strict], "load rejected: 1 of 1 hive under the minimum"],
  ["LOT_PAY", [ONE_HIVE, 1, bonus], "average 1 of 1 frame"],
  ["EMERGENCE", [column(1, 2), 50], "open has 1 row and capped has 2"],
  ["COMPARE", [column("A"), column(7, 8)], "lots has 1 row and frames has 2"],
  ["QUICK_LOOK", [column(8, 6), column(7)], "full has 1 row and quick has 2"],
  ["TO_OPEN", [1, 4, null, ONE_HIVE, pallets], "1 hive each"],
  ["YARD_COLUMNS", [ONE_HIVE, contract, null, "reason"], "1 frame of bees for"],
  ["YARD_COLUMNS", [SEAMS, seams], "from above in 1 column and from below in 2"],
  ["BROOD_FRAMES", [[[7]], null, null, "patches cm"], "even number of columns, not 1"],
  ["SEAMS", [[[8, 7]], [[6]]], "below has 1 column and above has 2"],
  ["PICK_HIVES", [column("A1"), 1, "oak", "elm"], "1 of 1 hive"],
  ["PICK_HIVES", [column("A1"), 2, "oak", "elm"], "2 asked for"],
  ["HIVES_NEEDED", [40, null, null, 1, null, null, "note"], "1 hive an acre"],
  ["HIVES_NEEDED", [40, null, null, null, 1, 8, "note"], "1 frame an acre"],
  ["LOADS", [1, null, null, 1, 1, 1, 1], "1 stack x 1 side x 1 high x 1"],
  ["LOADS", [1, null, null, 1, 1, 1, 1], "of 1 hive"],
  ["DROPS", drops(2, 1), "1 hive short of 2"],
  ["DROPS", drops(1, 4), "the drops hold 1 hive, and there are 4"],
] as [string, unknown[], string][])("%s says one as one", (id, values, said) =>
  expect(
    comb(id, ...values)
      .flat()
      .join("\n"),
  ).toContain(said),
);
