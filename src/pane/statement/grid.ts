import type { Layout } from "../../functions/statement-layout.js";
import { formatOf } from "../../functions/statement-look.js";
import type { Entry } from "../port.js";
import { typed } from "../stands.js";

/** Every cell of a statement's sheet from A1 on, as it is typed, and its number format. */
export interface Grid {
  readonly entries: readonly (readonly Entry[])[];
  readonly formats: readonly (readonly string[])[];
}

const FIGURES = "0.0##";

export function gridOf({ rows, figures }: Layout, moneyDecimals: number): Grid {
  const height = Math.max(rows.length, figures.row + figures.rows.length);
  const width = figures.column + Math.max(...figures.rows.map((row) => row.length));
  const blank = <T>(cell: T): T[][] =>
    Array.from({ length: height }, () => Array<T>(width).fill(cell));
  const entries = blank<Entry>("");
  const formats = blank("General");
  const put = (r: number, c: number, value: string | number, format: string): void => {
    formats[r]![c] = format;
    entries[r]![c] = typeof value === "string" ? typed(value, format) : value;
  };
  rows.forEach(({ cells }, r) =>
    cells.forEach(({ column, cell }) => {
      if (cell.kind !== "line") put(r, column, cell.value, formatOf(cell, moneyDecimals));
    }),
  );
  figures.rows.forEach((row, r) =>
    row.forEach((value, c) =>
      put(figures.row + r, figures.column + c, value, typeof value === "string" ? "@" : FIGURES),
    ),
  );
  return { entries, formats };
}
