import { caution, hourOf, temperatureOf, type TemperatureUnit } from "../core/conditions.js";
import { Refusal } from "../core/refusal.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { beside, checkSingle } from "./rows.js";

const parameters = [
  hives("temperature"),
  optional(hives("hour")),
  choice<TemperatureUnit>("unit", ["F", "C"]),
] as const;

/**
 * A caution where the weather or the hour of an inspection changes what is counted; blank where it does not.
 *
 * @remarks Below 57 F bees draw into a cluster and fewer combs look covered; from 60 F on, between 10
 * and 16 hours, foragers are out. Both are common practice, no source, so no count is corrected. A
 * temperature of 0 equals a blank cell: write it as text, '0.
 * @example =COMB.CONDITIONS(45) gives a caution that the bees draw into a cluster; =COMB.CONDITIONS(70,9) gives a blank.
 * @customfunction CONDITIONS
 * @helpurl https://localhost:3000/help.html#CONDITIONS
 * @param temperature A row a hive, or one: temperature of the air; 0 as the text '0.
 * @param hour A row a hive, or one: the hour from 1 to 24 (14.5), a time of day as the sheet keeps it (0.5 is noon), or a text such as 14:30 or 2 pm.
 * @param unit "F" (also where left out) or "C".
 * @returns A sentence or a blank, a row a hive.
 */
export function CONDITIONS(
  temperature: unknown[][],
  hour?: unknown[][],
  unit?: unknown,
): unknown[][] {
  return answer(parameters, [temperature, hour, unit], (temperatures, hours, unit) => {
    checkSingle([temperatures, hours]);
    return eachHive([beside([temperatures, hours])], 1, (i) => {
      const degrees = figureAt(temperatures, i, (cell) => temperatureOf(cell, unit));
      const hour = hours && figureAt(hours, i, hourOf);
      return [degrees === null ? "" : caution(degrees, hour)];
    });
  });
}

function figureAt(
  column: HiveCells,
  i: number,
  read: (cell: number | string) => number,
): number | null {
  const cell = column.cell(i);
  if (cell === null || cell === 0) return null;
  return column.named(i, 0, () => {
    if (typeof cell === "number" || typeof cell === "string") return read(cell);
    throw new Refusal(`${String(cell)} stands where a figure was expected`);
  });
}

export const conditions: SheetFunction = {
  id: "CONDITIONS",
  parameters,
  evaluate: CONDITIONS,
};
