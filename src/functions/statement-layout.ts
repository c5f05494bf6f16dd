import type { Section, Statement, StatementRow } from "./statement-model.js";

/** Rows that the chart lies over. */
const CHART_ROWS = 14;

/** A statement as rows of one sheet, one below the other; rows and columns count from 0. */
export interface Layout {
  readonly rows: readonly StatementRow[];
  /** The row that begins a new page. */
  readonly secondPage: number;
  /** The first of the rows that are kept free for the chart, and how many these are. */
  readonly chart: { readonly row: number; readonly rows: number };
  /** The row of headings that each further page repeats. */
  readonly repeated: number;
  /** Figures of the chart, right of what is printed: what they are, their headings, then a hive a row. */
  readonly figures: {
    readonly row: number;
    readonly column: number;
    readonly rows: readonly (readonly (string | number)[])[];
  };
}

export function layoutOf(statement: Statement): Layout {
  const { widths, chart, hives } = statement;
  const rows: StatementRow[] = [across("title", statement.title, widths.length)];
  const heading = (text: string): void => {
    rows.push(EMPTY("gap"), across("heading", text, widths.length));
  };
  const section = (one: Section): void => {
    if (one.heading !== "") heading(one.heading);
    rows.push(...one.rows);
  };
  statement.settlement.forEach(section);
  const secondPage = rows.length;
  section(statement.terms);
  heading(chart.title);
  const above = rows.length;
  rows.push(...Array.from({ length: CHART_ROWS }, () => EMPTY("note")));
  const repeated = rows.length + 2;
  section(hives);
  const figures = [["Figures of the chart"], chart.headings, ...chart.rows];
  return {
    rows,
    secondPage,
    chart: { row: above, rows: CHART_ROWS },
    repeated,
    figures: { row: above - 1, column: widths.length + 1, rows: figures },
  };
}

const EMPTY = (style: "gap" | "note"): StatementRow => ({ style, cells: [], lines: 1 });

function across(style: "title" | "heading", value: string, span: number): StatementRow {
  const cell = { kind: "text", value } as const;
  return { style, cells: [{ column: 0, span, cell, side: "left" }], lines: 1 };
}
