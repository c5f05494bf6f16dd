import type { Role } from "../core/headings.js";
import type { Area } from "./area.js";
import { eachCellOf, type Formula } from "./formulas.js";
import { place } from "./segments.js";

/** Roles of which a sheet may have a column a box, all of them added up. */
const ADDED_UP: ReadonlySet<Role> = new Set(["bees", "seams above", "seams below", "brood"]);

/** Cells that hold a formula or are filled by one. */
export function calculatedCells(formulas: readonly Formula[]): ReadonlySet<string> {
  const cells = new Set<string>();
  for (const { area } of formulas) {
    eachCellOf(area, (r, c) => cells.add(place(area.sheet, r, c)));
  }
  return cells;
}

/**
 * Columns such as a total of bees beside the counts of the boxes, by their place in the sheet:
 * calculated, and of the same kind as columns that somebody wrote. Added up with them they would
 * count the bees twice.
 */
export function doubledColumns(
  area: Area,
  roles: readonly (Role | null)[],
  calculated: ReadonlySet<string>,
): number[] {
  const isCalculated = roles.map((_, k) => {
    for (let row = area.top + 1; row <= area.bottom; row++) {
      if (calculated.has(place(area.sheet, row, area.left + k))) return true;
    }
    return false;
  });
  return roles.flatMap((role, k) => {
    if (role === null || !ADDED_UP.has(role) || !isCalculated[k]) return [];
    return roles.some((other, i) => other === role && !isCalculated[i]) ? [k] : [];
  });
}
