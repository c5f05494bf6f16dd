import { sources as table } from "../core/sources.js";
import { answer, type SheetFunction } from "./declare.js";

/**
 * Every constant that Comb Tally uses, with its unit, where it comes from and how it is known.
 * @customfunction SOURCES
 * @helpurl https://localhost:3000/help.html#SOURCES
 * @returns One row a constant: name, value, unit, source, how it is known.
 */
export function SOURCES(): unknown[][] {
  return answer([], [], () => [
    ["constant", "value", "unit", "source", "how known"],
    ...Object.values(table).map((s) => [s.name, s.value, s.unit, s.source, s.known]),
  ]);
}

export const sources: SheetFunction = { id: "SOURCES", parameters: [], evaluate: SOURCES };
