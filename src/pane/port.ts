/**
 * All that the pane knows of a workbook. `excel.ts` is Excel's, `memory.ts` one for tests; the
 * playground has its own.
 */

import type { Statement } from "../functions/statement-model.js";

/** A rectangle of cells of one sheet; `row` and `column` count from 0. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/**
 * What is typed into a cell: a formula is a text that begins with "=", a blank is "". A text that
 * would be read as something else (`7-8` as a date) has an apostrophe before it, unless the cell's
 * format is text; `typed` in `stands.ts` says which.
 */
export type Entry = string | number | boolean;

/** What stands in a place, row by row. */
export interface Block {
  readonly place: Place;
  /** As a function of the add-in takes them: errors are `CellError`, dates serial numbers. */
  readonly values: readonly (readonly unknown[])[];
  readonly entries: readonly (readonly Entry[])[];
  /** Number formats as Excel writes them: "General", "@", "yyyy-mm-dd". */
  readonly formats: readonly (readonly string[])[];
}

/** What may hold a yard sheet or Terms: a table, a defined name, or the filled part of a sheet. */
export interface Region {
  readonly kind: "table" | "name" | "sheet";
  readonly name: string;
  /** With the heading row. */
  readonly place: Place;
  /** Of a table whether its last row is its row of totals, which is none of its data. */
  readonly totals?: boolean;
}

/** What tells one region from another while the workbook changes. */
export function regionKey({ kind, name }: Region): string {
  return `${kind} ${name}`;
}

/**
 * One step of a change. A change is made whole or not at all: where any cell is not as a step
 * expects it, nothing is written.
 */
export type Step =
  /**
   * Puts entries where `expect` stands now. Formats are set first, one for all cells or one each.
   * What is put must then stand there: a text that would become a number or a date is refused.
   */
  | {
      readonly kind: "put";
      readonly place: Place;
      readonly expect: readonly (readonly Entry[])[];
      readonly put: readonly (readonly Entry[])[];
      readonly formats?: string | readonly (readonly string[])[];
    }
  /** Writes nothing: the cells must be blank, since a spill is to come over them. */
  | { readonly kind: "blank"; readonly place: Place }
  /** The table or defined name covers this place from now on; the name is made where it is missing. */
  | {
      readonly kind: "cover";
      readonly region: "table" | "name";
      readonly name: string;
      readonly place: Place;
    }
  | { readonly kind: "uncover"; readonly name: string }
  /** A new sheet at the end, or away with one that such a step made. */
  | { readonly kind: "add sheet"; readonly name: string }
  /**
   * A sheet on which something stands stays, but for what is expected there. What is dropped with
   * its sheet does not come back: that step has none that takes it back, and is the only one of its
   * change.
   */
  | {
      readonly kind: "drop sheet";
      readonly name: string;
      readonly expect?: Pick<Block, "place" | "entries">;
    };

/** What became of something that was handed to the workbook's host. */
export interface Handed {
  /** Where it went, and what of it was left out. */
  readonly sentence: string;
  /** The steps that take it back; none where it left the workbook, as a file does. */
  readonly undo: readonly Step[];
}

export interface Workbook {
  /** Tables, defined names and filled parts of visible sheets, in this order. */
  regions(): Promise<readonly Region[]>;
  /** What stands in some places, all read in one step. */
  read(places: readonly Place[]): Promise<readonly Block[]>;
  /** The cell, or the range, that the user has chosen. */
  active(): Promise<Place>;
  /**
   * Makes a change, and answers the steps that take it back.
   *
   * @throws Refusal that names the place which is protected, merged, filled or changed by another
   * hand; the workbook is then as it was, or the sentence names the range that is left
   */
  write(steps: readonly Step[]): Promise<readonly Step[]>;
  /**
   * Hands over a statement as its host does it: as a new sheet, or as a file of its own. It goes whole
   * or not at all, and over nothing that is there: where the name is taken, it gets another.
   *
   * @param name - what the sheet or the file should be called
   * @throws Refusal that says why it was not made, or names the sheet that is left of it
   */
  statement(name: string, statement: Statement): Promise<Handed>;
  /** Calls on each change in the workbook, whoever made it, until what it answers is called. */
  watch(changed: () => void): () => void;
  /** The decimal sign that the user types. */
  decimalSign(): Promise<"." | ",">;
}
