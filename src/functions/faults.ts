import { firstOf } from "../core/listing.js";
import { CellError } from "./cells.js";

/** Refuses with all that is wrong with some rows of a sheet, each told where it stands. */
export class Faults {
  private readonly found: { readonly row: number; readonly error: CellError }[] = [];

  get isEmpty(): boolean {
    return this.found.length === 0;
  }

  /** @param row - as messages count it */
  add(row: number, errors: readonly CellError[]): void {
    for (const error of errors) this.found.push({ row, error });
  }

  throwAny(): void {
    const [first, ...others] = this.found;
    if (first === undefined) return;
    if (others.length === 0) throw first.error;
    const isUnknown = this.found.every(({ error }) => error.code === "#N/A");
    const sentences = this.found.map(
      ({ row, error }) => error.message || `an error stands in row ${row}, ${error.code}`,
    );
    throw new CellError(isUnknown ? "#N/A" : "#VALUE!", firstOf([...new Set(sentences)]));
  }
}
