import { matchHeadings } from "../../core/headings.js";
import { normalise } from "../../core/text.js";
import { labelOfSums } from "../../functions/sum-rows.js";
import type { Yard } from "./yard.js";

/** The lots that a yard sheet names, in the order in which they stand. */
export function lotsOf({ values, headings }: Pick<Yard, "values" | "headings">): string[] {
  const { roles } = matchHeadings(headings);
  const [hive, column] = [roles.indexOf("hive"), roles.indexOf("lot")];
  if (column < 0) return [];
  const names = new Map<string, string>();
  for (const row of values.slice(1)) {
    if (labelOfSums(row, hive) !== null) continue;
    const name = String(row[column] ?? "").trim();
    if (name !== "" && name !== "0" && !names.has(normalise(name)))
      names.set(normalise(name), name);
  }
  return [...names.values()];
}
