import { isBlankOrZero, toCellError, type Cell } from "./cells.js";
import { answer, type SheetFunction } from "./declare.js";
import { Refusal } from "../core/refusal.js";
import { choice, hives } from "./parameters.js";
import { PARTS, partOf, written, writtenParameters, type Part } from "./written.js";

const parameters = [
  hives("counts"),
  choice("part", [...PARTS, "all"]),
  choice("kind", ["count", "percent"]),
  ...writtenParameters,
] as const;

/**
 * Reads figures as people write them: 7-8, 7½, about 5, 12+, half, none, 60%, and counts that became dates.
 *
 * @remarks Blank cells, and the number 0 that a blank may have become, give a blank: write `none`
 * for none. What is not understood gives #VALUE! with the text quoted; the high of `12+` is #N/A.
 * @example =COMB.READING("7-8") gives 7.5; =COMB.READING("7-8","all") gives 7, 7.5, 8, "7-8", "".
 * @customfunction READING
 * @helpurl https://localhost:3000/help.html#READING
 * @param counts A cell, column or block of figures.
 * @param part "middle" (also where left out), "low", "high", "text" (as it would be said), "note", or "all" five beside each other for one column.
 * @param kind "count" in frames, 0 to 60 (also where left out), or "percent", 0 to 100.
 * @param decimal The decimal sign of figures typed as text: "." (also where left out) or ",".
 * @param whole_frames TRUE where counts are whole frames, so that 2 January can only have been 1-2.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @param percents_as "percent" where 60 is written (also where left out), or "fraction" where cells hold 0.6.
 * @param date_system "1900" (also where left out), or "1904" for some workbooks begun on an old Mac.
 * @returns The part asked for, a cell for each cell; "all" gives low, middle, high, text and note.
 */
export function READING(
  counts: unknown[][],
  part?: unknown,
  kind?: unknown,
  decimal?: unknown,
  whole_frames?: unknown,
  inspected?: unknown[][],
  percents_as?: unknown,
  date_system?: unknown,
): unknown[][] {
  const values = [counts, part, kind, decimal, whole_frames, inspected, percents_as, date_system];
  return answer(parameters, values, (cells, part, kind, ...how) => {
    const { writing, yearOf } = written(...how);
    if (part === "all" && cells.width > 1) {
      throw new Refusal(`part "all" reads one column, and counts has ${cells.width}`);
    }
    const order: readonly Part[] = ["low", "middle", "high", "text", "note"];
    const parts = part === "all" ? order : [part];
    return Array.from({ length: cells.rows }, (_, i) =>
      Array.from({ length: cells.width }, (_, k) => {
        if (isBlankOrZero(cells.cells[i]![k])) return parts.map(() => "");
        return attempt(parts.length, () => {
          const estimate = cells.estimate(i, k, kind, writing, yearOf(i))!;
          return parts.flatMap((p) =>
            attempt(1, () => [cells.named(i, k, () => partOf(estimate, p, writing.decimal))]),
          );
        });
      }).flat(),
    );
  });
}

function attempt(width: number, body: () => Cell[]): Cell[] {
  try {
    return body();
  } catch (error) {
    return Array<Cell>(width).fill(toCellError(error, ""));
  }
}

export const reading: SheetFunction = { id: "READING", parameters, evaluate: READING };
