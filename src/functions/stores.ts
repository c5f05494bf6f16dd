import type { AskYear } from "../core/date-count.js";
import { DEEP, type FrameSize } from "../core/comb.js";
import { scale, sum, type Estimate } from "../core/estimate.js";
import { quote, Refusal } from "../core/refusal.js";
import {
  heft,
  perPound,
  pollenOfFrames,
  STORES_UNITS,
  storesInPounds,
  WEIGHTS,
  type StoresUnit,
} from "../core/stores.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { checkSingle } from "./rows.js";
import { checkUnitsWritten } from "./stores-unit.js";
import { partOf, writtenParameters, yearOfRow } from "./written.js";

const PARTS = ["middle", "low", "high", "text", "pollen", "note"] as const;

const parameters = [
  hives("stores"),
  choice("counted_in", STORES_UNITS),
  choice("unit", WEIGHTS),
  optional(hives("box_frames")),
  optional(hives("tare")),
  optional(hives("pollen")),
  choice("part", [...PARTS, "all"]),
  ...writtenParameters,
] as const;

/**
 * Weight of a hive's stores, from full frames of honey by their size, or from its heft less the tare.
 *
 * @remarks A full deep holds 6 to 8 lb of honey, a medium 3.5 to 4 (extension-style pages), others by
 * their area; the result carries that range. Stored pollen is 0.23 g a cell. A heft is honey and
 * pollen together, and whatever the tare leaves out: the tare is the hive's weight without stores, with
 * bees and brood. Where food was judged by the side of a comb, use FOOD, which by its own source takes
 * 4.8 lb for a full deep. A full box weighs more than one person should lift alone: heft with a scale or
 * with help.
 * @example =COMB.STORES(2) gives 14; =COMB.STORES(95,"lb","kg",,60) gives 15.9.
 * @customfunction STORES
 * @helpurl https://localhost:3000/help.html#STORES
 * @param stores A row a hive: full frames of honey, a column a box, or the hive's weight.
 * @param counted_in "frames" (also where left out), or "lb" or "kg" of the whole hive.
 * @param unit What to give: "lb" (also where left out) or "kg".
 * @param box_frames The combs' frame: deep (also where left out), medium, shallow, national deep, dadant, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param tare What the hive weighs without its stores, in the unit of the weight: one, or a row each; needed with a weight.
 * @param pollen A row a hive: full frames of stored pollen, for the part "pollen"; one column beside several boxes is of deeps.
 * @param part "middle" (also where left out), "low", "high", "text", "pollen" (its weight), "note", or "all" six beside each other.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns The weight or the part asked for, a row a hive; blank for a hive that was not judged.
 */
export function STORES(
  stores: unknown[][],
  counted_in?: unknown,
  unit?: unknown,
  box_frames?: unknown[][],
  tare?: unknown[][],
  pollen?: unknown[][],
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [stores, counted_in, unit, box_frames, tare, pollen, part, written, inspected];
  return answer(
    parameters,
    values,
    (cells, counted, unit, sizes, tare, pollen, part, writing, inspected) => {
      if ((tare === null) !== (counted === "frames")) {
        throw new Refusal(
          tare === null
            ? `tare: left out, and stores in ${counted} are a whole hive's weight less its tare`
            : "tare: given for frames, which have none",
        );
      }
      checkSingle([tare]);
      const yearOf = yearOfRow(inspected, writing);
      const frames = boxFrames(sizes, cells.width, DEEP);
      const pollenFrames = pollen === null ? [] : framesOfPollen(pollen, sizes, cells.width);
      const parts = part === "all" ? PARTS : [part];
      return eachHive([cells, tare, pollen, inspected], parts.length, (i) => {
        const there = storesAt(cells, i, counted, tare, frames, writing, yearOf(i));
        const weight = scale(there, perPound(unit));
        const pollenAt = (): Cell => {
          if (pollen === null || pollen.isEmpty(i)) return "";
          const counts = pollen.estimates(i, "count", writing, yearOf(i));
          const pounds = sum(counts.map((count, k) => pollenOfFrames(count, pollenFrames[k]!)));
          return pounds.middle * perPound(unit);
        };
        return parts.map((p): Cell => {
          if (p === "pollen") return pollenAt();
          if (p === "high" && weight.high === null && part === "all") return "";
          return partOf(weight, p, writing);
        });
      });
    },
  );
}

/** One column of pollen beside several boxes of honey is that of all boxes together, in deeps. */
function framesOfPollen(
  pollen: HiveCells,
  sizes: HiveCells | null,
  boxes: number,
): readonly FrameSize[] {
  return boxFrames(pollen.width === 1 && boxes > 1 ? null : sizes, pollen.width, DEEP);
}

/** Stores of a row in lb: the boxes' frames added, or the hive's weight less its tare. */
function storesAt(
  cells: HiveCells,
  i: number,
  counted: StoresUnit,
  tare: HiveCells | null,
  frames: readonly FrameSize[],
  writing: Writing,
  year: AskYear,
): Estimate {
  const boxes = weightsOrCounts(cells, i, counted, writing, year);
  if (tare === null) return sum(boxes.map((box, k) => storesInPounds(box, counted, frames[k]!)));
  if (tare.isEmpty(i)) throw new Refusal("the tare is blank, and the stores are what is over it");
  const without = sum(weightsOrCounts(tare, i, counted, writing, year));
  return storesInPounds(
    cells.named(i, 0, () => heft(sum(boxes), without)),
    counted,
    DEEP,
  );
}

/** Figures of a row as frames or as weights; a weight with the other unit behind it is refused. */
export function weightsOrCounts(
  cells: HiveCells,
  i: number,
  unit: StoresUnit,
  writing: Writing,
  year?: AskYear,
): Estimate[] {
  checkUnitsWritten(cells, i, unit);
  const figures = cells.estimates(i, unit === "frames" ? "count" : "amount", writing, year);
  const dead = figures.findIndex((figure) => figure.dead);
  if (dead < 0) return figures;
  return cells.named(i, dead, () => {
    throw new Refusal(`${quote(String(cells.cell(i, dead)))} stands where stores were expected`);
  });
}

export const stores: SheetFunction = { id: "STORES", parameters, evaluate: STORES };
