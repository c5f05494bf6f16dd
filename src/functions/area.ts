import { cellsOfSide, COMB_CASTES, coverOfCells, patchOf, PATCH_SHAPES } from "../core/cells.js";
import { CM2_PER_IN2, DEEP, sideArea } from "../core/comb.js";
import { map, scale } from "../core/estimate.js";
import { quote, Refusal } from "../core/refusal.js";
import { atMost } from "../core/tolerance.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { checkRows, eachCell } from "./hive-cells.js";
import { cellDensity, choice, frameSize, hives, number } from "./parameters.js";
import { PARTS, partOf, writtenParameter } from "./written.js";

/** What cells in a part of a side hang on, after the figures themselves. */
const sideParameters = [
  choice("caste", COMB_CASTES),
  cellDensity("density"),
  optional(hives("box_frames")),
  number("fill", 100),
  choice("counted_in", ["percent", "eighths"]),
  choice("part", PARTS),
  writtenParameter,
] as const;
const cellsParameters = [hives("cover"), ...sideParameters] as const;

/**
 * Cells in a part of a comb's side, from the percent or the eighths of the side that they take.
 *
 * @remarks 3.96 worker cells a cm2 were counted on managed comb (Ohio State / EPA 2015), 4.00 is the
 * round figure of the Liebefeld method; wild comb of 5.2 mm cells has 4.27 by geometry, 8 % more.
 * @example =COMB.CELLS(50) gives 1712; =COMB.CELLS(1,,"liebefeld","zander",,"eighths") gives 400.
 * @customfunction CELLS
 * @helpurl https://localhost:3000/help.html#CELLS
 * @param cover A cell, column or block: how much of each side the cells take.
 * @param caste "worker" (also where left out) or "drone".
 * @param density "counted" (also where left out), "liebefeld", "wild", or the width of a cell from flat to flat in mm, 4 to 8.
 * @param box_frames The combs' frame: deep (also where left out), medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param fill Percent of those cells that hold brood, the rest being empty; 100 where left out.
 * @param counted_in "percent", 0 to 100 (also where left out), or "eighths", 0 to 8.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "fractions" (0.6 for 60 %).
 * @returns Cells, a cell for each cell.
 */
export function CELLS(
  cover: unknown[][],
  caste?: unknown,
  density?: unknown,
  box_frames?: unknown[][],
  fill?: unknown,
  counted_in?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [cover, caste, density, box_frames, fill, counted_in, part, written];
  return answer(
    cellsParameters,
    values,
    (cells, caste, density, sizes, fill, counted, part, writing) => {
      const frames = boxFrames(sizes, cells.width, DEEP);
      const percent = counted === "eighths" ? 100 / 8 : 1;
      return eachCell(cells, (i, k) => {
        const cover = scale(cells.estimate(i, k, counted, writing)!, percent);
        const perPercent = cellsOfSide(frames[k]!, 1, density[caste]) * ((fill ?? 100) / 100);
        return partOf(scale(cover, perPercent), part, writing);
      });
    },
  );
}

const coverParameters = [hives("cells"), ...sideParameters] as const;

/**
 * The part of a comb's side that so many cells take, in percent or in eighths: the way back of CELLS.
 *
 * @remarks More cells than the side holds are refused.
 * @example =COMB.COVER(1712) gives 50.
 * @customfunction COVER
 * @helpurl https://localhost:3000/help.html#COVER
 * @param cells A cell, column or block: cells on each side.
 * @param caste "worker" (also where left out) or "drone".
 * @param density "counted" (also where left out), "liebefeld", "wild", or the width of a cell from flat to flat in mm, 4 to 8.
 * @param box_frames The combs' frame: deep (also where left out), medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param fill Percent of the cells in that part that hold brood; 100 where left out.
 * @param counted_in "percent", 0 to 100 (also where left out), or "eighths", 0 to 8.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns Percent or eighths of the side, a cell for each cell.
 */
export function COVER(
  cells: unknown[][],
  caste?: unknown,
  density?: unknown,
  box_frames?: unknown[][],
  fill?: unknown,
  counted_in?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [cells, caste, density, box_frames, fill, counted_in, part, written];
  return answer(
    coverParameters,
    values,
    (cells, caste, density, sizes, fill, counted, part, writing) => {
      const frames = boxFrames(sizes, cells.width, DEEP);
      const unit = counted === "eighths" ? 8 / 100 : 1;
      return eachCell(cells, (i, k) => {
        const amount = scale(cells.estimate(i, k, "amount", writing)!, 100 / (fill ?? 100));
        const percent = (n: number): number => coverOfCells(frames[k]!, n, density[caste]) * unit;
        return partOf(map(amount, percent), part, writing);
      });
    },
  );
}

const PATCH_UNITS = {
  in: { length: true, cm2: CM2_PER_IN2 },
  cm: { length: true, cm2: 1 },
  "sq in": { length: false, cm2: CM2_PER_IN2 },
  squares: { length: false, cm2: 25 },
} as const;
type PatchUnit = keyof typeof PATCH_UNITS;

const patchParameters = [
  hives("length"),
  optional(hives("width")),
  choice("unit", Object.keys(PATCH_UNITS) as PatchUnit[]),
  choice("give", ["cells", "cm2", "in2", "percent"]),
  choice("shape", PATCH_SHAPES),
  choice("caste", COMB_CASTES),
  cellDensity("density"),
  number("fill", 100),
  frameSize("frame"),
  choice("part", PARTS),
  writtenParameter,
] as const;

/**
 * Cells, area or percent of a side of a patch of brood, from its length and width or from a grid laid over it.
 *
 * @remarks A patch is nearest to an ellipse: length x width alone over-counts one by 1.27. A patch
 * larger than the side of its frame is refused.
 * @example =COMB.PATCH(10,6,"in","in2") gives 47.1; =COMB.PATCH(30,,"sq in","cm2") gives 193.5.
 * @customfunction PATCH
 * @helpurl https://localhost:3000/help.html#PATCH
 * @param length A column: the length of each patch, or the squares of a grid that it fills.
 * @param width A column: the width of each patch; left out for a grid.
 * @param unit "in" (also where left out) or "cm" for length and width; "sq in" or "squares" of 5 x 5 cm for a grid.
 * @param give "cells" (also where left out), "cm2", "in2", or "percent" of the side.
 * @param shape "ellipse" (also where left out) or "rectangle".
 * @param caste "worker" (also where left out) or "drone".
 * @param density "counted" (also where left out), "liebefeld", "wild", or the width of a cell from flat to flat in mm, 4 to 8.
 * @param fill Percent of the patch's cells that hold brood; 100 where left out.
 * @param frame The comb's frame: deep where left out, medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns What was asked for, a row a patch.
 */
export function PATCH(
  length: unknown[][],
  width?: unknown[][],
  unit?: unknown,
  give?: unknown,
  shape?: unknown,
  caste?: unknown,
  density?: unknown,
  fill?: unknown,
  frame?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [length, width, unit, give, shape, caste, density, fill, frame, part, written];
  return answer(
    patchParameters,
    values,
    (lengths, widths, unit, give, shape, caste, density, fill, frame, part, writing) => {
      const { length: isLength, cm2: perUnit } = PATCH_UNITS[unit];
      if (isLength && widths === null)
        throw new Refusal(`width: left out, and a patch in ${unit} needs it`);
      if (!isLength && widths !== null) {
        throw new Refusal(
          `width: a grid in ${quote(unit)} is one figure, how many of them the patch fills`,
        );
      }
      checkRows([lengths, widths]);
      const side = sideArea(frame);
      return eachCell(lengths, (i, k) => {
        const long = lengths.estimate(i, k, "amount", writing)!;
        const wide = widths?.estimate(i, widths.width === 1 ? 0 : k, "amount", writing);
        if (wide === null) throw new Refusal("the width is blank");
        const area = scale(wide === undefined ? long : patchOf(long, wide, shape), perUnit);
        if (!atMost(area.middle, side)) {
          throw new Refusal(
            `a patch of ${Math.round(area.middle)} cm2 is more than one side of the frame (${frame.name}) holds: ${Math.round(side)} cm2`,
          );
        }
        const filled = (fill ?? 100) / 100;
        const factor = {
          cells: density[caste] * filled,
          cm2: 1,
          in2: 1 / CM2_PER_IN2,
          percent: 100 / side,
        }[give];
        return partOf(scale(area, factor), part, writing);
      });
    },
  );
}

export const cellsFunction: SheetFunction = {
  id: "CELLS",
  parameters: cellsParameters,
  evaluate: CELLS,
};
export const cover: SheetFunction = { id: "COVER", parameters: coverParameters, evaluate: COVER };
export const patchFunction: SheetFunction = {
  id: "PATCH",
  parameters: patchParameters,
  evaluate: PATCH,
};
