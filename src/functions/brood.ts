import { BROOD_MEASURES, broodCells, broodOfBoxes, broodOfCombs } from "../core/brood.js";

import { sum } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive } from "./hive-cells.js";
import { choice, frameSize, hives } from "./parameters.js";
import { PARTS, partOf, writtenParameters, yearOfRow } from "./written.js";

const parameters = [
  hives("brood"),
  optional(hives("cover")),
  choice("counted_as", [...BROOD_MEASURES, "cells"]),
  choice("columns_are", ["boxes", "combs"]),
  optional(hives("box_frames")),
  frameSize("frame"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Brood of each hive in full-frame equivalents, in combs that hold brood, or in worker cells.
 *
 * @remarks Standards ask for one or the other, and they differ: 5 combs half covered are 5 combs and
 * 2.5 full frames. Full frames need the cover. Cells are frame at 3.96 a cm2 on both sides.
 * @example =COMB.BROOD_FRAMES(7,60) gives 4.2; =COMB.BROOD_FRAMES(7,60,"combs") gives 7.
 * @customfunction BROOD_FRAMES
 * @helpurl https://localhost:3000/help.html#BROOD_FRAMES
 * @param brood A row a hive: combs that hold brood in each box, or the percent of each comb.
 * @param cover Percent of those combs that brood covers on average, one or a row each, 0 to 100.
 * @param counted_as "full frames" (also where left out), "combs" or "cells".
 * @param columns_are "boxes" with counts (also where left out), or "combs" with the percent of each comb.
 * @param box_frames Frame in the boxes: deep (also where left out), medium, shallow, national deep, dadant, or a size such as 42 x 27 cm; one, or a row of one for each column.
 * @param frame Frame in which full frames are frame: deep where left out.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
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
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [
    brood,
    cover,
    counted_as,
    columns_are,
    box_frames,
    frame,
    part,
    written,
    inspected,
  ];
  return answer(
    parameters,
    values,
    (cells, cover, measure, are, sizes, frame, part, writing, inspected) => {
      const yearOf = yearOfRow(inspected, writing);
      const inBoxes = boxFrames(sizes, cells.width, frame);
      if (cover !== null && are === "combs") {
        throw new Refusal("cover stands beside the percent of each comb: give one of them");
      }
      return eachHive([cells, cover, inspected], 1, (i) => {
        const columns = cells.estimates(
          i,
          are === "boxes" ? "count" : "percent",
          writing,
          yearOf(i),
        );
        const covered = cover?.estimate(i, 0, "percent", writing, null) ?? null;
        const hive =
          are === "combs"
            ? broodOfCombs(columns, inBoxes, frame)
            : broodOfBoxes(
                columns,
                inBoxes,
                sum(columns).middle === 0 ? sum(columns) : covered,
                frame,
              );
        const full = measure === "combs" ? hive.combs : hive.fullFrames;
        if (full === null) {
          throw new Refusal(`cover is blank, and ${measure} of brood need it`, "unknown");
        }
        return [partOf(measure === "cells" ? broodCells(full, frame) : full, part, writing)];
      });
    },
  );
}

export const broodFrames: SheetFunction = {
  id: "BROOD_FRAMES",
  parameters,
  evaluate: BROOD_FRAMES,
};
