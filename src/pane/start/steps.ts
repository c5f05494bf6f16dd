import type { Entry, Place, Step } from "../port.js";

/** An entry that is to have a number format of its own. */
export interface Formatted {
  readonly entry: Entry;
  readonly format: string;
}

/** A text stays the text that it is, whatever it looks like; all else is for the spreadsheet to show. */
export function plain(entry: Entry): Formatted {
  const isText = typeof entry === "string" && entry !== "" && !entry.startsWith("=");
  return { entry, format: isText ? "@" : "General" };
}

/** Puts rows from a cell on into cells that are blank. */
export function put(
  sheet: string,
  rows: readonly (readonly Formatted[])[],
  row = 0,
  column = 0,
): Step {
  return {
    kind: "put",
    place: placeOf(sheet, rows, row, column),
    expect: rows.map((cells) => cells.map(() => "")),
    put: rows.map((cells) => cells.map(({ entry }) => entry)),
    formats: rows.map((cells) => cells.map(({ format }) => format)),
  };
}

export function placeOf(
  sheet: string,
  rows: readonly (readonly unknown[])[],
  row = 0,
  column = 0,
): Place {
  return { sheet, row, column, rows: rows.length, columns: rows[0]!.length };
}
