import type { Block, Entry, Place, Region } from "../pane/port.js";

/** A table or a defined name over a place. */
export type Named = Omit<Region, "kind"> & { readonly kind: "table" | "name" };

/** Sheets that are changed at once, cell by cell, and never by half: what `LocalWorkbook` writes to. */
export interface Sheets {
  /** Visible sheets, in the order of their tabs. */
  visible(): readonly string[];
  has(sheet: string): boolean;
  isProtected(sheet: string): boolean;
  /** The smallest place that holds all filled cells of a sheet; null where none is filled. */
  used(sheet: string): Place | null;
  block(place: Place): Block;
  active(): Place;
  decimalSign(): "." | ",";
  merged(sheet: string): readonly Place[];
  /** Tables, then defined names. */
  named(): readonly Named[];
  /** @param formats - what the cells have from now on; null leaves what they have */
  put(
    place: Place,
    entries: readonly (readonly Entry[])[],
    formats: readonly (readonly string[])[] | null,
  ): void;
  cover(named: Named): void;
  uncover(name: string): void;
  addSheet(name: string): void;
  dropSheet(name: string): void;
  /** Calls after each change, by whatever hand, until what it answers is called. */
  watch(changed: () => void): () => void;
}
