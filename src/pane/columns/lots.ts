import { matchHeadings } from "../../core/headings.js";
import { normalise } from "../../core/text.js";
import type { Yard } from "./yard.js";

/** The lots that a yard sheet names, in the order in which they stand. */
export function lotsOf({ values, headings }: Pick<Yard, "values" | "headings">): string[] {
  const column = matchHeadings(headings).roles.indexOf("lot");
  if (column < 0) return [];
  const names = new Map<string, string>();
  for (const row of values.slice(1)) {
    const name = String(row[column] ?? "").trim();
    if (name !== "" && name !== "0" && !names.has(normalise(name)))
      names.set(normalise(name), name);
  }
  return [...names.values()];
}
