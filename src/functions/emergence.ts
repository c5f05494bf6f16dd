import type { Stage } from "../core/clock.js";
import { emergence, type BroodInStage } from "../core/emergence.js";
import { exactly, sum } from "../core/estimate.js";
import { cellsOfBrood, checkBrood } from "../core/brood.js";
import { Refusal } from "../core/refusal.js";
import { dateAt } from "./dates.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { checkSameRows, type HiveCells } from "./hive-cells.js";
import { choice, frameSize, hives, number } from "./parameters.js";
import { UNIT_KINDS, type BroodUnit } from "./stages.js";
import { writtenParameter } from "./written.js";
import type { FrameSize } from "../core/comb.js";
import type { Writing } from "../core/writing.js";

/** Where capped brood stands on its clock. */
const CAPPED = ["capped", "just capped", "emerging", "ready to cap"] as const;

const parameters = [
  optional(hives("capped")),
  optional(hives("open")),
  optional(hives("eggs")),
  optional(hives("seen")),
  choice("unit", ["cells", "frames", "percent"] satisfies BroodUnit[]),
  choice("caste", ["worker", "drone"]),
  choice<Stage>("stage", CAPPED),
  number("fill", 100),
  number("survival", 100),
  frameSize("frame"),
  writtenParameter,
] as const;

/**
 * Bees that emerge day by day from the brood that is seen, of one hive or of a column's hives together, spilled.
 *
 * @remarks Worker brood emerges within 21 days, drone within 24. Capped brood is spread evenly over
 * the 12 days (drone 14) in which it may be, open brood and eggs over theirs; "just capped" and
 * "emerging" place it. The days add up to the brood times what lives: of eggs 0.89, open 0.96, capped
 * 0.99 (Schmickl & Crailsheim 2007; drones as workers, since they have no figures of their own), or
 * the survival that you give.
 * @example =COMB.EMERGENCE(1200,,,DATE(2026,3,28),"cells",,,,100) gives 100 bees on each of the first 12 days.
 * @customfunction EMERGENCE
 * @helpurl https://localhost:3000/help.html#EMERGENCE
 * @param capped A row a hive: capped brood in the unit; several columns are added.
 * @param open A row a hive: open brood in the unit.
 * @param eggs A row a hive: eggs in the unit.
 * @param seen Date on which it was seen, one for all; left out, the days are numbered without dates.
 * @param unit "cells" (also where left out), "frames" (full frames, both sides) or "percent" of combs, a column a comb.
 * @param caste "worker" (also where left out) or "drone".
 * @param stage Where the capped brood stands: "capped" (also where left out: anywhere), "just capped", "ready to cap" or "emerging".
 * @param fill Percent of the cells that hold brood, the rest being empty; 100 where left out.
 * @param survival Percent of the brood that lives to emerge; by its stage where left out.
 * @param frame Frame of the brood, where it is given in frames or percent: deep where left out.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames", "fractions", "1904 dates", "day first" or "month first" for dates that are text; several with commas.
 * @returns A heading row, then a row a day: day, date, bees emerging, bees so far.
 */
export function EMERGENCE(
  capped?: unknown[][],
  open?: unknown[][],
  eggs?: unknown[][],
  seen?: unknown[][],
  unit?: unknown,
  caste?: unknown,
  stage?: unknown,
  fill?: unknown,
  survival?: unknown,
  frame?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [capped, open, eggs, seen, unit, caste, stage, fill, survival, frame, written];
  return answer(
    parameters,
    values,
    (capped, open, eggs, seen, unit, caste, stage, fill, survival, frame, writing) => {
      if ([capped, open, eggs].every((column) => column === null)) {
        throw new Refusal("give capped brood, open brood or eggs");
      }
      checkAllRows([capped, open, eggs]);
      const cells = (column: HiveCells | null): number =>
        column === null ? 0 : (cellsIn(column, unit, caste, frame, writing) * (fill ?? 100)) / 100;
      const brood: BroodInStage[] = [
        { stage, cells: cells(capped) },
        { stage: "larva", cells: cells(open) },
        { stage: "egg", cells: cells(eggs) },
      ];
      const days = emergence(brood, caste, survival === null ? null : survival / 100);
      const from = seen === null ? null : seenOn(seen, writing);
      let soFar = 0;
      const rows = days.map((bees, k): Cell[] => {
        soFar += bees;
        return [k + 1, from === null ? "" : from + k + 1, bees, soFar];
      });
      return [["Day", "Date", "Bees emerging", "So far"], ...rows];
    },
  );
}

function seenOn(seen: HiveCells, writing: Writing): number | null {
  if (seen.rows > 1) throw new Refusal(`seen has ${seen.rows} rows: give one date for all hives`);
  return dateAt(seen, 0, writing);
}

/** Every stage has a row a hive: one row beside many would be added once, not once a hive. */
function checkAllRows(columns: readonly (HiveCells | null)[]): void {
  const [first, ...others] = columns.filter((column) => column !== null);
  for (const other of others) checkSameRows(first!, other);
}

/** Cells of every row of a column together. */
function cellsIn(
  column: HiveCells,
  unit: BroodUnit,
  caste: "worker" | "drone",
  frame: FrameSize,
  writing: Writing,
): number {
  const perFrame = cellsOfBrood(exactly(1), frame, caste).middle;
  const perUnit = { cells: 1, frames: perFrame, percent: perFrame / 100 }[unit];
  let total = 0;
  for (let i = 0; i < column.rows; i++) {
    if (column.isEmpty(i)) continue;
    const cells = perUnit * sum(column.estimates(i, UNIT_KINDS[unit], writing)).middle;
    column.named(i, 0, () => checkBrood(cells, frame, null, caste));
    total += cells;
  }
  return total;
}

export const emergenceFunction: SheetFunction = {
  id: "EMERGENCE",
  parameters,
  evaluate: EMERGENCE,
  table: true,
  dates: ["Date"],
};
