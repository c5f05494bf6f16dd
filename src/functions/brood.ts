import {
  BROOD_MEASURES,
  broodOfArea,
  broodOfBoxes,
  broodOfCells,
  broodOfCombs,
  broodOfPatches,
  cellsOfBrood,
} from "../core/brood.js";
import { CM2_PER_IN2, CM_PER_INCH } from "../core/comb.js";
import { scale, sum } from "../core/estimate.js";
import type { Kind } from "../core/kinds.js";
import { Refusal } from "../core/refusal.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive } from "./hive-cells.js";
import { coversOf } from "./look.js";
import { choice, frameSize, hives, number } from "./parameters.js";
import { PARTS, partOf, writtenParameters, yearOfRow } from "./written.js";

/** What the columns may hold, and how their figures are read. */
const COLUMNS = {
  boxes: "count",
  combs: "percent",
  cells: "amount",
  cm2: "amount",
  in2: "amount",
  "patches in": "amount",
  "patches cm": "amount",
} as const satisfies Record<string, Kind>;

const parameters = [
  hives("brood"),
  optional(hives("cover")),
  choice("counted_as", [...BROOD_MEASURES, "cells"]),
  choice("columns_are", Object.keys(COLUMNS) as (keyof typeof COLUMNS)[]),
  optional(hives("box_frames")),
  frameSize("frame"),
  number("fill", 100),
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
 * @param brood A row a hive: combs that hold brood in each box, or what columns_are says.
 * @param cover Percent of those combs that brood covers on average, 0 to 100: one, or a row each, or a column a box too.
 * @param counted_as "full frames" (also where left out), "combs" or "cells".
 * @param columns_are "boxes" with counts (also where left out), "combs" with the percent of each comb, "cells" of worker brood, the area on all sides in "cm2" or "in2", or the length and width of each patch, two and two, as "patches in" or "patches cm".
 * @param box_frames Frame in the boxes: deep, medium, shallow, national deep, dadant, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column; the same as frame where left out.
 * @param frame Frame in which full frames are counted: deep where left out.
 * @param fill For cells: percent of the brood's cells that hold brood, the rest being empty; 100 where left out.
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
  fill?: unknown,
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
    fill,
    part,
    written,
    inspected,
  ];
  return answer(
    parameters,
    values,
    (cells, cover, measure, are, sizes, frame, fill, part, writing, inspected) => {
      const yearOf = yearOfRow(inspected, writing);
      const inBoxes = boxFrames(sizes, cells.width, frame);
      if (cover !== null && are !== "boxes") {
        throw new Refusal(`cover goes with the counts of boxes, and the columns are ${are}`);
      }
      return eachHive([cells, cover, inspected], 1, (i) => {
        const columns = cells.estimates(i, COLUMNS[are], writing, yearOf(i));
        const covers = coversOf(cover, i, columns.length, writing);
        const hive = {
          boxes: () => broodOfBoxes(columns, inBoxes, covers, frame),
          combs: () => broodOfCombs(columns, inBoxes, frame),
          cells: () => broodOfCells(sum(columns), frame),
          cm2: () => broodOfArea(sum(columns), frame),
          in2: () => broodOfArea(scale(sum(columns), CM2_PER_IN2), frame),
          "patches in": () =>
            broodOfPatches(
              columns.map((c) => scale(c, CM_PER_INCH)),
              frame,
            ),
          "patches cm": () => broodOfPatches(columns, frame),
        }[are]();
        const brood = measure === "combs" ? hive.combs : hive.fullFrames;
        if (brood === null) {
          const why =
            are === "boxes" ? "need the cover, which is blank" : `are not known from ${are}`;
          throw new Refusal(`${measure} of brood ${why}`, "unknown");
        }
        return [
          partOf(
            measure === "cells" ? scale(cellsOfBrood(brood, frame), (fill ?? 100) / 100) : brood,
            part,
            writing,
          ),
        ];
      });
    },
  );
}

export const broodFrames: SheetFunction = {
  id: "BROOD_FRAMES",
  parameters,
  evaluate: BROOD_FRAMES,
};
