import { describe, expect, it } from "vitest";
import { turnsOf } from "../../src/core/lot.js";
import { comb, one, serial, terms } from "./sheet.js";

const TERMS = terms(["average frames", 8], ["minimum frames", 6]);
const [MONDAY, WEEK_AFTER] = [serial(2026, 3, 23), serial(2026, 3, 30)];
const HEADINGS = ["Hive", "Lot", "Date", "Bees"];
const notes = (...rows: unknown[][]): unknown[] =>
  comb("YARD_COLUMNS", [HEADINGS, ...rows], TERMS, "Cherry", "note")
    .slice(1)
    .flat();
const EARLIER = "an earlier look: the later one counts";
const UNCLEAR = "stands twice: give each of its looks its own date, so that the later one counts";

describe("a hive that stands twice in the computed columns", () => {
  it("is noted at the look that does not count in the lot", () => {
    const rows = [
      ["1", "N", MONDAY, 9],
      ["1", "N", WEEK_AFTER, 10],
      ["2", "N", WEEK_AFTER, 8],
    ];
    expect(notes(...rows)).toEqual([EARLIER, "", ""]);
    // By hand: (10 + 8) / 2.
    const lot = comb("LOT", [HEADINGS, ...rows], 40, TERMS, "Cherry");
    expect(lot.find(([label]) => label === "Average frames")?.[1]).toBe(9);
  });

  it("is noted at both looks where no day says which counts, as the lot is refused", () => {
    const rows = [
      ["1", "N", "", 9],
      ["1", "N", WEEK_AFTER, 10],
      ["2", "N", "", 8],
      ["2", "N", "", 8],
    ];
    expect(notes(...rows)).toEqual([UNCLEAR, UNCLEAR, UNCLEAR, UNCLEAR]);
    expect(one("LOT", [HEADINGS, ...rows], 40, TERMS, "Cherry")).toBe(
      "#VALUE! hive 1 stands twice (and so do 2): give each of its looks its own date, so that the later one counts",
    );
  });

  it("is another hive in another lot, and none where it was not opened", () => {
    expect(notes(["1", "N", "", 9], ["1", "S", "", 10])).toEqual(["", ""]);
    expect(notes(["1", "N", "", ""], ["1", "n ", "", 10])).toEqual(["not opened", ""]);
  });
});

it("the latest look counts, in whatever order they stand", () => {
  const looks = (...days: (number | null)[]) => days.map((day) => ({ id: "1", day }));
  expect(turnsOf(looks(5, 5, 7))).toEqual(["earlier", "earlier", "counts"]);
  expect(turnsOf(looks(7, 5, 5))).toEqual(["counts", "earlier", "earlier"]);
  expect(turnsOf(looks(7, 5, 7))).toEqual(["unclear", "earlier", "unclear"]);
  expect(turnsOf(looks(7, null))).toEqual(["unclear", "unclear"]);
});
