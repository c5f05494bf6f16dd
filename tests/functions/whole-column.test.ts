import { expect, it } from "vitest";
import { MAX_CELLS as OF_FILES } from "../../src/workbook/engine.js";
import { functions } from "../../src/functions/index.js";
import { cellsOf, shown } from "./sheet.js";

/** `A:A` as Excel hands it over, and the widest block: a sheet has 1,048,576 rows. */
const column = Array.from({ length: 1_048_576 }, () => [""]);
const block = Array.from({ length: 1_048_576 }, () => Array<string>(20).fill(""));

const takesBlocks = functions.filter((fn) => fn.parameters.some((p) => p.matrix));

it.each(takesBlocks.map((fn) => [fn.id, fn] as const))(
  "a whole column is refused by %s in a sentence",
  (id, fn) => {
    fn.parameters.forEach((parameter, at) => {
      if (!parameter.matrix) return;
      const given = (cells: unknown): unknown[] =>
        fn.parameters.map((p, k) => (k === at ? cells : p.optional ? null : [[7]]));
      const refused = (cells: unknown, most: number): void => {
        const rows = cellsOf(id, given(cells), most).map((row) => row.map(shown));
        expect(rows).toEqual([
          [
            expect.stringMatching(
              /^#VALUE! [\d,]+ cells in one call; at most [\d,]+ fit: give the rows/,
            ),
          ],
        ]);
      };
      refused(column, 250_000);
      refused(block, OF_FILES);
    });
  },
);
