import { isBlankOrZero, toCellError, type Cell } from "./cells.js";
import { answer, type SheetFunction } from "./declare.js";
import { Refusal } from "../core/refusal.js";
import { checkRows } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { PARTS, partOf, writtenParameters, yearOfRow, type Part } from "./written.js";

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
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns The part asked for, a cell for each cell; "all" gives low, middle, high, text and note.
 */
export function READING(
  counts: unknown[][],
  part?: unknown,
  kind?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [counts, part, kind, written, inspected];
  return answer(parameters, values, (cells, part, kind, writing, inspected) => {
    checkRows([cells, inspected]);
    const yearOf = yearOfRow(inspected, writing);
    if (part === "all" && cells.width > 1) {
      throw new Refusal(`part "all" reads one column, and counts has ${cells.width}`);
    }
    const order: readonly Part[] = ["low", "middle", "high", "text", "note"];
    const parts = part === "all" ? order : [part];
    return Array.from({ length: cells.rows }, (_, i) => {
      const figures = Array.from({ length: cells.width }, (_, k): Cell[] => {
        if (isBlankOrZero(cells.raw(i, k))) return parts.map(() => "");
        return attempt(parts.length, () => {
          const estimate = cells.estimate(i, k, kind, writing, yearOf(i))!;
          const one = (p: Part): Cell[] =>
            attempt(1, () => [
              cells.named(i, k, () => partOf(estimate, p, writing, kind === "percent" ? "%" : "")),
            ]);
          return parts.map((p) => one(p)[0]!);
        });
      });
      // A list that is joined keeps room for sixteen more, which a long column has no use for.
      return figures.length === 1 ? figures[0]! : figures.flat();
    });
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
