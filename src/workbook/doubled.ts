import type { Role } from "../core/headings.js";
import type { Area } from "./area.js";
import type { CalculatedCells } from "./calculated-cells.js";

/** Roles of which a sheet may have a column a box, all of them added up. */
const ADDED_UP: ReadonlySet<Role> = new Set(["bees", "seams above", "seams below", "brood"]);

/**
 * Columns such as a total of bees beside the counts of the boxes, by their place in the sheet:
 * calculated, and of the same kind as columns that somebody wrote. Added up with them they would
 * count the bees twice.
 */
export function doubledColumns(
  area: Area,
  roles: readonly (Role | null)[],
  calculated: CalculatedCells,
): number[] {
  const isCalculated = roles.map((_, k) =>
    calculated.touch({ ...area, top: area.top + 1, left: area.left + k, right: area.left + k }),
  );
  return roles.flatMap((role, k) => {
    if (role === null || !ADDED_UP.has(role) || !isCalculated[k]) return [];
    return roles.some((other, i) => other === role && !isCalculated[i]) ? [k] : [];
  });
}
