import { bees, beesOnSide, framesOf, weighBees, WEIGHT_UNITS } from "../core/bees.js";
import { DEEP } from "../core/comb.js";
import { exactly, scale, sum, type Estimate } from "../core/estimate.js";
import { checkUnit } from "../core/stores.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachCell, eachHive } from "./hive-cells.js";
import { choice, frameSize, hives, number, perFrame } from "./parameters.js";
import { PARTS, partOf, writtenParameter, writtenParameters, yearOfRow } from "./written.js";

const beesParameters = [
  hives("amount"),
  perFrame("per_frame"),
  choice("to", ["bees", "frames"]),
  frameSize("frame"),
  choice("part", PARTS),
  ...writtenParameters,
] as const;

/**
 * Bees on frames of bees, or the frames that so many bees make, by a published figure or one of your own.
 *
 * @remarks "well covered" is 2,400 bees on a deep covered well on both sides (Sagili & Burgett 2011),
 * "fully covered" 2,200 (Imdorf, Rickli & Fluri 1996), "average" 1,400 on an occupied, not full comb
 * (Simpson 1969), "liebefeld" that method's 125 an eighth of a Zander side. Several columns are a
 * hive's boxes and are added.
 * @example =COMB.BEES(8) gives 19200; =COMB.BEES(19200,,"frames") gives 8.
 * @customfunction BEES
 * @helpurl https://localhost:3000/help.html#BEES
 * @param amount A row a hive: frames of bees, or the counts of its boxes; bees where "frames" are asked for.
 * @param per_frame "well covered" (also where left out), "fully covered", "average", "liebefeld", or bees on one deep frame.
 * @param to "bees" (also where left out) or "frames".
 * @param frame The frame that is counted: deep where left out, medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Bees, or frames of bees, a row a hive; blank for a hive that was not opened.
 */
export function BEES(
  amount: unknown[][],
  per_frame?: unknown,
  to?: unknown,
  frame?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [amount, per_frame, to, frame, part, written, inspected];
  return answer(beesParameters, values, (cells, each, to, frame, part, writing, inspected) => {
    const yearOf = yearOfRow(inspected, writing);
    const convert = to === "bees" ? bees : framesOf;
    return eachHive([cells, inspected], 1, (i) => {
      const figures =
        to === "bees"
          ? cells.combs(i, writing, yearOf(i))
          : cells.estimates(i, "amount", writing, yearOf(i));
      const hive = sum(figures);
      return [partOf(convert(hive, each, frame), part, writing)];
    });
  });
}

const coverParameters = [
  hives("cover"),
  choice("columns_are", ["sides", "combs"]),
  choice("counted_in", ["percent", "eighths"]),
  perFrame("per_frame"),
  optional(hives("box_frames")),
  choice("give", ["each", "hives"]),
  choice("part", PARTS),
  writtenParameter,
] as const;

/**
 * Bees on every comb side of a whole sheet of estimates in one spill, from the percent or the eighths that bees cover.
 *
 * @remarks A deep side well covered holds 1,200 bees (half of 2,400, Sagili & Burgett 2011).
 * @example =COMB.COVER_TO_BEES(50) gives 600; =COMB.COVER_TO_BEES(2,,"eighths","liebefeld","zander") gives 250.
 * @customfunction COVER_TO_BEES
 * @helpurl https://localhost:3000/help.html#COVER_TO_BEES
 * @param cover A cell, column or block: how much of each side, or of each comb, bees cover.
 * @param columns_are "sides" (also where left out), or "combs" with the cover of both sides together.
 * @param counted_in "percent", 0 to 100 (also where left out), or "eighths", 0 to 8.
 * @param per_frame "well covered" (also where left out), "fully covered", "average", "liebefeld", or bees on one deep frame.
 * @param box_frames The combs' frame: deep (also where left out), medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param give "each" side's or comb's bees (also where left out), or "hives" for the sum of each row.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @returns Bees, a cell for each cell, or one for each row.
 */
export function COVER_TO_BEES(
  cover: unknown[][],
  columns_are?: unknown,
  counted_in?: unknown,
  per_frame?: unknown,
  box_frames?: unknown[][],
  give?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [cover, columns_are, counted_in, per_frame, box_frames, give, part, written];
  return answer(
    coverParameters,
    values,
    (cells, are, counted, each, sizes, give, part, writing) => {
      const frames = boxFrames(sizes, cells.width, DEEP);
      const sides = are === "combs" ? 2 : 1;
      const percent = counted === "eighths" ? 100 / 8 : 1;
      const at = (i: number, k: number): Estimate => {
        const cover = cells.estimate(i, k, counted, writing) ?? exactly(0);
        return scale(beesOnSide(scale(cover, percent), each, frames[k]), sides);
      };
      if (give === "each") return eachCell(cells, (i, k) => partOf(at(i, k), part, writing));
      return eachHive([cells], 1, (i) => {
        const hive = sum(Array.from({ length: cells.width }, (_, k) => at(i, k)));
        return [partOf(hive, part, writing)];
      });
    },
  );
}

const weightParameters = [
  hives("amount"),
  choice("from", WEIGHT_UNITS),
  choice("to", ["bees", "lb", "kg"]),
  number("per_pound", 10000),
  choice("part", PARTS),
  writtenParameter,
] as const;

/**
 * Pounds or kilograms of bees in bees, and back.
 *
 * @remarks A pound holds about 3,500 bees (common extension figure), 3,000 to 5,000 are found: "low"
 * and "high" give that range.
 * @example =COMB.BEE_WEIGHT(3) gives 10500; =COMB.BEE_WEIGHT(10500,"bees","kg") gives 1.36.
 * @customfunction BEE_WEIGHT
 * @helpurl https://localhost:3000/help.html#BEE_WEIGHT
 * @param amount A cell, column or block of weights or of bees.
 * @param from "lb" (also where left out), "kg" or "bees".
 * @param to "bees" (also where left out), "lb" or "kg".
 * @param per_pound Bees in a pound, where you know your own; else 3,500 with its range.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns The amount in the other unit, a cell for each cell.
 */
export function BEE_WEIGHT(
  amount: unknown[][],
  from?: unknown,
  to?: unknown,
  per_pound?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [amount, from, to, per_pound, part, written];
  return answer(weightParameters, values, (cells, from, to, perPound, part, writing) =>
    eachCell(cells, (i, k) => {
      const cell = cells.cell(i, k);
      if (typeof cell === "string") checkUnit(cell, from);
      const amount = cells.estimate(i, k, "amount", writing)!;
      return partOf(weighBees(amount, from, to, perPound), part, writing);
    }),
  );
}

export const beesFunction: SheetFunction = {
  id: "BEES",
  parameters: beesParameters,
  evaluate: BEES,
};
export const coverToBees: SheetFunction = {
  id: "COVER_TO_BEES",
  parameters: coverParameters,
  evaluate: COVER_TO_BEES,
};
export const beeWeight: SheetFunction = {
  id: "BEE_WEIGHT",
  parameters: weightParameters,
  evaluate: BEE_WEIGHT,
};
