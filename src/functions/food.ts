import { DEEP } from "../core/comb.js";
import { scale } from "../core/estimate.js";
import { foodOnSide } from "../core/food.js";
import { sources } from "../core/sources.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachCell } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { PARTS, partOf, writtenParameter } from "./written.js";

const UNITS = ["kg", "lb", "g"] as const;
const parameters = [
  hives("cover"),
  choice("unit", UNITS),
  optional(hives("box_frames")),
  choice("counted_in", ["percent", "eighths"]),
  choice("part", PARTS),
  writtenParameter,
] as const;

/**
 * Weight of food on each comb side, from the percent or the eighths of the side that hold it.
 *
 * @remarks 125 g on an eighth of a Zander side of about 1 dm2 (Liebefeld method), other frames by
 * their area. It is the food seen, capped or not, without the comb: a deep full on both sides comes
 * to 2.16 kg (4.8 lb). By other sources STORES takes 6 to 8 lb for it: keep to one of the two.
 * @example =COMB.FOOD(4,"g","zander","eighths") gives 500.
 * @customfunction FOOD
 * @helpurl https://localhost:3000/help.html#FOOD
 * @param cover A cell, column or block: how much of each side holds food.
 * @param unit "kg" (also where left out), "lb" or "g".
 * @param box_frames The combs' frame: deep (also where left out), medium, shallow, national deep, dadant, zander, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param counted_in "percent", 0 to 100 (also where left out), or "eighths", 0 to 8.
 * @param part "middle" (also where left out), "low", "high", "text" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "fractions" (0.6 for 60 %).
 * @returns The weight, a cell for each cell.
 */
export function FOOD(
  cover: unknown[][],
  unit?: unknown,
  box_frames?: unknown[][],
  counted_in?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [cover, unit, box_frames, counted_in, part, written];
  return answer(parameters, values, (cells, unit, sizes, counted, part, writing) => {
    const frames = boxFrames(sizes, cells.width, DEEP);
    const percent = counted === "eighths" ? 100 / 8 : 1;
    const perGram = { g: 1, kg: 1 / 1000, lb: sources.poundsPerKilogram.value / 1000 }[unit];
    return eachCell(cells, (i, k) => {
      const cover = scale(cells.estimate(i, k, counted, writing)!, percent);
      return partOf(scale(foodOnSide(cover, frames[k]!), perGram), part, writing);
    });
  });
}

export const food: SheetFunction = { id: "FOOD", parameters, evaluate: FOOD };
