import { deepEquivalent } from "../core/comb.js";
import { scale, sum } from "../core/estimate.js";
import { BEE_COLUMNS, bees as beesOn, COMB_RULES, framesOfBees } from "../core/strength.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive } from "./hive-cells.js";
import { choice, frameSize, hives, perFrame } from "./parameters.js";
import { PARTS, partOf, writtenParameters, yearOfRow } from "./written.js";

const framesParameters = [
  hives("bees"),
  choice("columns_are", BEE_COLUMNS),
  choice("rule", COMB_RULES),
  optional(hives("box_frames")),
  frameSize("frame"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Frames of bees of each hive, from the counts of its boxes, the cover of its combs, or its seams.
 *
 * @remarks A column a box and a row a hive: 7-8 and 5 give 12.5. Where the columns are combs or
 * sides, they hold percents, and the contract's rule says when a comb counts. A box of another frame
 * counts in the frame asked for, foundation to foundation: a medium is 0.64 of a deep.
 * @example =COMB.FRAMES_OF_BEES(B2:C2) with 7-8 and 5 gives 12.5.
 * @customfunction FRAMES_OF_BEES
 * @helpurl https://localhost:3000/help.html#FRAMES_OF_BEES
 * @param bees A row a hive: the boxes' counts, or what columns_are says.
 * @param columns_are "boxes" with counts (also where left out), "combs" or "sides" with the percent covered (sides two and two), "seams" from above and below, two and two.
 * @param rule For combs and sides: "two-thirds" (also where left out), "three-quarters" or "sum of parts".
 * @param box_frames Frame in the boxes: deep (also where left out), medium, shallow, national deep, dadant, or a size such as 42 x 27 cm; one, or a row of one for each column.
 * @param frame Frame in which to count: deep where left out.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Frames of bees, a row a hive; blank for a hive that was not opened.
 */
export function FRAMES_OF_BEES(
  bees: unknown[][],
  columns_are?: unknown,
  rule?: unknown,
  box_frames?: unknown[][],
  frame?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [bees, columns_are, rule, box_frames, frame, part, written, inspected];
  return answer(
    framesParameters,
    values,
    (cells, are, rule, sizes, frame, part, writing, inspected) => {
      const yearOf = yearOfRow(inspected, writing);
      const inBoxes = boxFrames(sizes, cells.width, frame);
      const kind = are === "combs" || are === "sides" ? "percent" : "count";
      return eachHive([cells, inspected], 1, (i) => {
        const columns = cells.estimates(i, kind, writing, yearOf(i));
        const total = framesOfBees(columns, are, rule, inBoxes, frame);
        return [partOf(total, part, writing)];
      });
    },
  );
}

const beesParameters = [
  hives("frames"),
  perFrame("per_frame"),
  frameSize("frame"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Bees on frames of bees, by a published figure or one of your own.
 *
 * @remarks "well covered" is 2,400 bees on a deep covered well on both sides (Sagili & Burgett 2011),
 * "fully covered" 2,200 (Imdorf, Rickli & Fluri 1996), "average" 1,400 on an occupied, not full comb
 * (Simpson 1969). Several columns are a hive's boxes and are added.
 * @example =COMB.BEES(8) gives 19200.
 * @customfunction BEES
 * @helpurl https://localhost:3000/help.html#BEES
 * @param frames A row a hive: frames of bees, or the counts of its boxes.
 * @param per_frame "well covered" (also where left out), "fully covered", "average", or bees on one deep frame.
 * @param frame The frame that was frame: deep where left out, medium, shallow, national deep, or a size.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Bees, a row a hive; blank for a hive that was not opened.
 */
export function BEES(
  frames: unknown[][],
  per_frame?: unknown,
  frame?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  return answer(
    beesParameters,
    [frames, per_frame, frame, part, written, inspected],
    (cells, each, frame, part, writing, inspected) => {
      const yearOf = yearOfRow(inspected, writing);
      const deeps = deepEquivalent(frame);
      return eachHive([cells, inspected], 1, (i) => {
        const hive = sum(cells.estimates(i, "count", writing, yearOf(i)));
        return [partOf(beesOn(scale(hive, deeps), each), part, writing)];
      });
    },
  );
}

export const framesOfBeesFunction: SheetFunction = {
  id: "FRAMES_OF_BEES",
  parameters: framesParameters,
  evaluate: FRAMES_OF_BEES,
};
export const beesFunction: SheetFunction = {
  id: "BEES",
  parameters: beesParameters,
  evaluate: BEES,
};
