import type { FWorkbook } from "@univerjs/sheets/facade";
import { CellError } from "../functions/cells.js";
import { rangeName } from "../pane/address.js";
import type { Called } from "./grid-functions.js";
import { texts } from "./texts.js";

/** The sentences of our functions' errors: the grid shows a code and has no place for more. */
export class Why {
  private readonly calls = new Map<string, Called>();

  readonly called = (call: Called): void => {
    const key = `${call.sheetId}!${call.row},${call.column}`;
    const hasErrors = call.rows.some((row) => row.some((cell) => cell instanceof CellError));
    if (hasErrors) this.calls.set(key, call);
    else this.calls.delete(key);
  };

  forget(): void {
    this.calls.clear();
  }

  /** What the error in the chosen cell means, or null where it holds none of ours. */
  of(workbook: FWorkbook): string | null {
    const range = workbook.getActiveRange();
    if (!range) return null;
    const [row, column] = [range.getRow(), range.getColumn()];
    if (!String(range.getValue() ?? "").startsWith("#")) return null;
    for (const { sheetId, rows, ...at } of this.calls.values()) {
      const error = rows[row - at.row]?.[column - at.column];
      if (sheetId !== range.getSheetId() || !(error instanceof CellError)) continue;
      const place = { sheet: "", row, column, rows: 1, columns: 1 };
      return error.message === "" ? null : texts.why(rangeName(place), error.message);
    }
    return null;
  }
}
