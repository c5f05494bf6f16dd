import { kindOf, labelOf, unknownTerm } from "../../core/contract-reading.js";
import { isBlankOrZero } from "../../functions/cells.js";
import { cellName } from "../address.js";
import { texts } from "../texts.js";
import { rowsOf, type TermsTable } from "./changes.js";

const t = texts.contract;

/**
 * Rows of a Terms table for which every function refuses a contract, each as a sentence with its
 * cell: a label that is no term, a term that stands twice.
 */
export function problemsIn(table: TermsTable, column: number): string[] {
  const { region, block } = table;
  const first = rowsOf(table);
  const cellOf = (row: number) => cellName(region.place.row + row, region.place.column);
  return block.values.flatMap((cells, row) => {
    const label = row === 0 ? "" : labelOf(cells[0]);
    if (label === "") return [];
    const above = first.get(label)!;
    if (above < row) return [t.twice(cellOf(row), label, cellOf(above))];
    const isUnknown = kindOf(label) === null && !isBlankOrZero(cells[column]);
    return isUnknown ? [t.noTerm(cellOf(row), unknownTerm(label))] : [];
  });
}
