/** What stands in a cell of a statement; a host shows each kind in its own format. */
export type StatementCell =
  | { readonly kind: "text"; readonly value: string }
  | {
      /** `percent` is a share from 0 to 1, `date` the serial of a day in the 1900 system. */
      readonly kind: "count" | "quantity" | "rate" | "money" | "percent" | "date";
      readonly value: number;
    }
  /** Decimals are said where the usual ones would show another side of what is asked. */
  | { readonly kind: "frames"; readonly value: number; readonly decimals?: number }
  /** A line to write on with a pen. */
  | { readonly kind: "line" };

/** A cell and the columns that it takes, counted from 0. */
export interface Placed {
  readonly column: number;
  readonly span: number;
  readonly cell: StatementCell;
  readonly side: "left" | "right";
}

/** How a row looks: a heading of a section, headings of columns, a figure that matters, small print. */
export type RowStyle =
  "title" | "heading" | "headings" | "plain" | "strong" | "note" | "sign" | "gap";

export interface StatementRow {
  readonly style: RowStyle;
  readonly cells: readonly Placed[];
  /** Lines of text that its fullest cell needs: merged cells do not find their height themselves. */
  readonly lines: number;
  /** Among the few rows that say in short what comes of the lot. */
  readonly isInShort?: true;
}

/** A part of a statement under its heading. */
export interface Section {
  readonly heading: string;
  readonly rows: readonly StatementRow[];
}

/** What comes of the lot in short: the rows that say it, each section's under its heading. */
export function outcomeOf({ settlement }: Statement): Section[] {
  return settlement.flatMap(({ heading, rows }) => {
    const told = rows.filter(({ isInShort }) => isInShort);
    return told.length > 0 ? [{ heading, rows: told }] : [];
  });
}

/** Bars of the hives opened, strongest first, and a level line for each threshold. */
export interface StatementChart {
  readonly title: string;
  /** `Hive`, `Frames of bees`, then a heading for each threshold. */
  readonly headings: readonly string[];
  /** A hive a row: its id, its frames as judged, and each threshold again. */
  readonly rows: readonly (readonly [id: string, ...figures: number[]])[];
}

export type Paper = "letter" | "a4";

/** A settlement as it is handed over: values alone, in the order in which they are printed. */
export interface Statement {
  readonly title: string;
  /** The first page or pages: what is settled, and where both parties sign. */
  readonly settlement: readonly Section[];
  /** From a new page on: the terms, the chart, and last the hives, which may run on. */
  readonly terms: Section;
  readonly chart: StatementChart;
  /** Its first row has the headings that are repeated on each further page. */
  readonly hives: Section;
  /** Of the columns, in characters. */
  readonly widths: readonly number[];
  /** Decimals of its sums of money. */
  readonly moneyDecimals: number;
  readonly paper: Paper;
}
