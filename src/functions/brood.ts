import { BROOD_MEASURES, broodCells, broodOfBoxes, broodOfCombs } from "../core/brood.js";
import { DEEP, frameOf } from "../core/comb.js";
import { sum } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive } from "./hive-cells.js";
import { choice, hives, text } from "./parameters.js";
import { PARTS, partOf, written, writtenParameters } from "./written.js";

const parameters = [
  hives("brood"),
  optional(hives("cover")),
  choice("counted_as", [...BROOD_MEASURES, "cells"]),
  choice("columns_are", ["boxes", "combs"]),
  optional(hives("box_frames")),
  text("frame"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Brood of each hive in full-frame equivalents, in combs that hold brood, or in worker cells.
 *
 * @remarks Standards ask for one or the other, and they differ: 5 combs half covered are 5 combs and
 * 2.5 full frames. Full frames need the cover. Cells are counted at 3.96 a cm2 on both sides.
 * @example =COMB.BROOD_FRAMES(7,60) gives 4.2; =COMB.BROOD_FRAMES(7,60,"combs") gives 7.
 * @customfunction BROOD_FRAMES
 * @helpurl https://localhost:3000/help.html#BROOD_FRAMES
 * @param brood A row a hive: combs that hold brood in each box, or the percent of each comb.
 * @param cover Percent of those combs that brood covers on average, one or a row each, 0 to 100.
 * @param counted_as "full frames" (also where left out), "combs" or "cells".
 * @param columns_are "boxes" with counts (also where left out), or "combs" with the percent of each comb.
 * @param box_frames Frame in the boxes: deep (also where left out), medium, shallow, national deep, dadant, or a size such as 42 x 27 cm; one, or a row of one for each column.
 * @param frame Frame in which full frames are counted: deep where left out.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param decimal The decimal sign of figures typed as text: "." (also where left out) or ",".
 * @param whole_frames TRUE where counts are whole frames, so that 2 January can only have been 1-2.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @param percents_as "percent" where 60 is written (also where left out), or "fraction" where cells hold 0.6.
 * @param date_system "1900" (also where left out), or "1904" for some workbooks begun on an old Mac.
 * @returns Brood in the measure asked for, a row a hive; blank for a hive that was not opened.
 */
export function BROOD_FRAMES(
  brood: unknown[][],
  cover?: unknown[][],
  counted_as?: unknown,
  columns_are?: unknown,
  box_frames?: unknown[][],
  frame?: unknown,
  part?: unknown,
  decimal?: unknown,
  whole_frames?: unknown,
  inspected?: unknown[][],
  percents_as?: unknown,
  date_system?: unknown,
): unknown[][] {
  const how = [decimal, whole_frames, inspected, percents_as, date_system];
  const values = [brood, cover, counted_as, columns_are, box_frames, frame, part, ...how];
  return answer(parameters, values, (cells, cover, measure, are, sizes, frame, part, ...how) => {
    const { writing, yearOf } = written(...how);
    const counted = frame === null ? DEEP : frameOf(frame);
    const inBoxes = boxFrames(sizes, cells.width, sizes === null ? counted : DEEP);
    if (cover !== null && are === "combs") {
      throw new Refusal("cover stands beside the percent of each comb: give one of them");
    }
    return eachHive([cells, cover], 1, (i) => {
      const columns = cells.estimates(i, are === "boxes" ? "count" : "percent", writing, yearOf(i));
      const covered = cover?.estimate(i, 0, "percent", writing, null) ?? null;
      const hive =
        are === "combs"
          ? broodOfCombs(columns, inBoxes, counted)
          : broodOfBoxes(
              columns,
              inBoxes,
              sum(columns).middle === 0 ? sum(columns) : covered,
              counted,
            );
      const full = measure === "combs" ? hive.combs : hive.fullFrames;
      if (full === null) {
        throw new Refusal(`cover is blank, and ${measure} of brood need it`, "unknown");
      }
      return [
        partOf(measure === "cells" ? broodCells(full, counted) : full, part, writing.decimal),
      ];
    });
  });
}

export const broodFrames: SheetFunction = {
  id: "BROOD_FRAMES",
  parameters,
  evaluate: BROOD_FRAMES,
};
