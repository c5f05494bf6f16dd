import { DEEP, equivalent } from "../core/comb.js";
import { scale, sum, type Estimate } from "../core/estimate.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import { BEES_PER_FRAME, bees } from "../core/bees.js";
import { clusterCount, framesOfSeams, SEAM_COVER, type SeamMonth } from "../core/seams.js";
import { BEE_COLUMNS, COMB_RULES, framesOfBees } from "../core/strength.js";
import { refuseOneLook, refuseOneLookOfPairs } from "./both-looks.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { checkRows, eachCell, eachHive, type HiveCells } from "./hive-cells.js";
import { choice, frameSize, hives } from "./parameters.js";
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
 * @param box_frames Frame in the boxes: deep, medium, shallow, national deep, dadant, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column; the same as frame where left out.
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
        const columns =
          are === "boxes"
            ? cells.combs(i, writing, yearOf(i))
            : cells.estimates(i, kind, writing, yearOf(i));
        if (are === "seams") refuseOneLookOfPairs(i, cells, columns);
        const total = framesOfBees(columns, are, rule, inBoxes, frame);
        return [partOf(total, part, writing)];
      });
    },
  );
}

const seamParameters = [
  hives("above"),
  optional(hives("below")),
  choice("give", ["seams", "frames", "bees", "caution", "all"]),
  choice("month", Object.keys(SEAM_COVER) as SeamMonth[]),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Seams of bees, the spaces between combs, counted from above and below: their number, and what they were found to make in frames.
 *
 * @remarks A whole seam is 1 and a part of one counts in quarters; the two looks are averaged (from
 * memory). A seam is not a frame: in April one covered 630 cm2 of comb, a well-covered deep has 1,729.
 * The count from above moves with the weather, as the bees draw together in the cold.
 * @example =COMB.SEAMS(10,6) gives 8; =COMB.SEAMS(10,6,"frames","april") gives 2.91.
 * @customfunction SEAMS
 * @helpurl https://localhost:3000/help.html#SEAMS
 * @param above A row a hive: seams seen from above, a column for each box.
 * @param below Seams seen from below with the box tipped, as many columns; left out where nobody looked.
 * @param give "seams" (also where left out), "frames" of deep size fully covered, "bees", "caution", or "all" four beside each other.
 * @param month For frames and bees: "april" (also where left out), "may" or "june", when it was measured.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns What was asked for, a row a hive; blank for a hive that was not opened.
 */
export function SEAMS(
  above: unknown[][],
  below?: unknown[][],
  give?: unknown,
  month?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [above, below, give, month, part, written, inspected];
  return answer(seamParameters, values, (above, below, give, month, part, writing, inspected) => {
    if (below !== null && below.width !== above.width) {
      throw new Refusal(
        `below has ${plural(below.width, "column")} and above has ${above.width}: give one a box`,
      );
    }
    const yearOf = yearOfRow(inspected, writing);
    const order = ["seams", "frames", "bees", "caution"] as const;
    const wanted = give === "all" ? order : [give];
    return eachHive([above, below, inspected], wanted.length, (i) => {
      const from = (side: HiveCells): Estimate[] => side.estimates(i, "count", writing, yearOf(i));
      const [top, bottom] = [from(above), below && from(below)];
      bottom?.forEach((seen, k) => refuseOneLook(i, [above, k], [below!, k], [top[k]!, seen]));
      const seams = bottom === null ? sum(top) : clusterCount(sum(top), sum(bottom));
      const frames = framesOfSeams(seams, month);
      return wanted.map((what) => {
        if (what === "caution") return seamCaution(month, below === null);
        const amount = { seams, frames, bees: bees(frames, BEES_PER_FRAME["fully covered"]) }[what];
        return partOf(amount, part, writing);
      });
    });
  });
}

function seamCaution(month: SeamMonth, fromAbove: boolean): string {
  const { cm2, r } = SEAM_COVER[month];
  const once = fromAbove ? "counted from above only, which moves with the weather; " : "";
  return `${once}a seam is not a frame: in ${month} it covered ${cm2} cm2 of comb (r ${r})`;
}

const deepParameters = [
  hives("combs"),
  optional(hives("from")),
  frameSize("to"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Combs of one frame size in combs of another, like with like: foundation to foundation, or comb to comb.
 *
 * @remarks A shallow is 0.57 of a deep, a medium 0.64, a National deep 0.74, a Dadant 1.30.
 * @example =COMB.DEEP_EQUIVALENT(10,"medium") gives 6.38.
 * @customfunction DEEP_EQUIVALENT
 * @helpurl https://localhost:3000/help.html#DEEP_EQUIVALENT
 * @param combs A cell, column or block of counts.
 * @param from Their frame: deep (also where left out), medium, shallow, national deep, national shallow, national 14x12, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param to The frame to give them in: deep where left out.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Combs of the other size, a cell for each cell.
 */
export function DEEP_EQUIVALENT(
  combs: unknown[][],
  from?: unknown[][],
  to?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [combs, from, to, part, written, inspected];
  return answer(deepParameters, values, (cells, from, to, part, writing, inspected) => {
    checkRows([cells, inspected]);
    const yearOf = yearOfRow(inspected, writing);
    const sizes = boxFrames(from, cells.width, DEEP);
    return eachCell(cells, (i, k) => {
      const combs = cells.estimate(i, k, "count", writing, yearOf(i))!;
      return partOf(scale(combs, equivalent(sizes[k]!, to)), part, writing);
    });
  });
}

export const framesOfBeesFunction: SheetFunction = {
  id: "FRAMES_OF_BEES",
  parameters: framesParameters,
  evaluate: FRAMES_OF_BEES,
};
export const seams: SheetFunction = { id: "SEAMS", parameters: seamParameters, evaluate: SEAMS };
export const deepEquivalentFunction: SheetFunction = {
  id: "DEEP_EQUIVALENT",
  parameters: deepParameters,
  evaluate: DEEP_EQUIVALENT,
};
