import { ValueType, type Cell, type Workbook } from "@cj-tech-master/excelts";
import type { Result } from "./formulas.js";

/** What the library keeps of a cell that has both a formula and a link, and shows as a link alone. */
interface Linked {
  readonly formula?: string;
  readonly sharedFormula?: string;
  readonly shareType?: string;
  readonly ref?: string;
  readonly result?: Result;
  readonly hyperlink?: string;
}

/**
 * Takes the links off cells that hold a formula, so that it is calculated. Returns how to put them
 * back; where other cells share the formula the library could not write it with its link.
 */
export function takeLinksOff(workbook: Workbook): () => void {
  const links: [Cell, string][] = [];
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        const { formula, sharedFormula, shareType, ref, result, hyperlink } = cell.model as Linked;
        if (cell.type !== ValueType.Hyperlink || !(formula ?? sharedFormula)) return;
        cell.value = { formula, sharedFormula, shareType, ref, result } as typeof cell.value;
        if (hyperlink && formula && !shareType) links.push([cell, hyperlink]);
      }),
    );
  }
  return () => links.forEach(([cell, hyperlink]) => putBack(cell, hyperlink));
}

function putBack(cell: Cell, hyperlink: string): void {
  const { formula, result } = cell;
  cell.value = formula
    ? { formula, hyperlink, ...(result !== undefined && { result }) }
    : { text: cell.text, hyperlink };
}
