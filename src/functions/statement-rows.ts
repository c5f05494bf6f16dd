import type { Placed, RowStyle, Section, StatementCell, StatementRow } from "./statement-model.js";

/**
 * Eight columns serve every section, each taking as many as it needs: names and small figures,
 * then a grade, two figures, and the room for remarks. In all what a page is wide.
 */
export const WIDTHS: readonly number[] = [9, 9, 9, 9, 14, 11, 12, 25];

/** Line to write on with a pen. */
export const LINE: StatementCell = { kind: "line" };

type Piece = readonly [column: number, span: number, cell: StatementCell | string];

/** A row of cells; plain strings are text. */
export function row(style: RowStyle, ...pieces: readonly Piece[]): StatementRow {
  const cells = pieces
    .filter(([, , cell]) => cell !== "")
    .map(([column, span, cell]): Placed => ({ column, span, cell: toCell(cell) }));
  return { style, cells, lines: Math.max(1, ...cells.map(linesOf)) };
}

/** What a line says in its three parts: label, figure, and what is to be known of it. */
export function labelled(
  label: string,
  figure: StatementCell | string,
  remark: string,
  style: RowStyle = "plain",
): StatementRow[] {
  const isLong = typeof figure === "string" && figure.length > WIDTHS[4]!;
  if (!isLong) return [row(style, [0, 4, label], [4, 1, figure], [5, 3, remark])];
  const below = remark === "" ? [] : [row("note", [4, 4, remark])];
  return [row(style, [0, 4, label], [4, 4, figure]), ...below];
}

/** A label, and beside it all the room that is left. */
export function fact(label: string, value: StatementCell | string): StatementRow {
  return row("plain", [0, 3, label], [3, 5, value]);
}

/** A sentence across the page. */
export function sentence(text: string): StatementRow {
  return row("note", [0, WIDTHS.length, text]);
}

export function section(heading: string, ...rows: readonly StatementRow[]): Section {
  return { heading, rows };
}

export function count(value: number): StatementCell {
  return { kind: "count", value };
}

function toCell(cell: StatementCell | string): StatementCell {
  return typeof cell === "string" ? { kind: "text", value: printable(cell) } : cell;
}

/** Signs that no file of a spreadsheet may hold, and line breaks, become spaces. */
function printable(text: string): string {
  return text
    .replace(/[\p{Cc}\uFFFE\uFFFF]+/gu, " ")
    .replace(/\p{Cs}/gu, "\uFFFD")
    .trim();
}

/** Lines that a text takes when it is broken between words, as wide as digits are. */
function linesOf({ column, span, cell }: Placed): number {
  if (cell.kind !== "text") return 1;
  const room = WIDTHS.slice(column, column + span).reduce((sum, width) => sum + width, 0);
  let lines = 1;
  let used = 0;
  for (const { length } of cell.value.split(" ")) {
    if (used > 0 && used + 1 + length > room) {
      lines++;
      used = 0;
    }
    used += (used > 0 ? 1 : 0) + length;
    lines += Math.ceil(used / room) - 1;
    used = used > room ? used % room : used;
  }
  return lines;
}
