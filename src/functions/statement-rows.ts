import { decimalsApart } from "../core/apart.js";
import type { Contract } from "../core/contract.js";
import { gradesOf } from "../core/grade.js";
import type { Placed, RowStyle, Section, StatementCell, StatementRow } from "./statement-model.js";

/**
 * Eight columns serve every section, each taking as many as it needs: names and small figures,
 * then a grade, two figures, and the room for remarks. In all what a page is wide.
 */
export const WIDTHS: readonly number[] = [9, 9, 9, 9, 14, 11, 14, 23];

/** Line to write on with a pen. */
export const LINE: StatementCell = { kind: "line" };

/** Numbers stand right and all else left, where nothing else is said. */
export type Piece = readonly [
  column: number,
  span: number,
  cell: StatementCell | string,
  side?: "left" | "right",
];

/** A row of cells; plain strings are text. */
export function row(style: RowStyle, ...pieces: readonly Piece[]): StatementRow {
  const cells = pieces
    .filter(([, , cell]) => cell !== "")
    .map(([column, span, given, side]): Placed => {
      const cell = toCell(given);
      const isNumber = cell.kind !== "text" && cell.kind !== "line";
      return { column, span, cell, side: side ?? (isNumber ? "right" : "left") };
    });
  return { style, cells, lines: Math.max(1, ...cells.map(linesOf)) };
}

/** What a line says in its three parts: label, figure, and what is to be known of it. */
export function labelled(
  label: string,
  figure: StatementCell | string,
  remark: string,
  style: RowStyle = "plain",
): StatementRow[] {
  const isLong = typeof figure === "string" && figure.length > WIDTHS[4]! - 1;
  if (!isLong) return [row(style, [0, 4, label], [4, 1, figure, "right"], [5, 3, remark])];
  const below = remark === "" ? [] : [row("note", [4, 4, remark])];
  return [row(style, [0, 4, label], [4, 4, figure]), ...below];
}

/** The same rows, told among the few that say in short what comes of the lot. */
export function inShort(...rows: readonly StatementRow[]): StatementRow[] {
  return rows.map((row) => ({ ...row, isInShort: true }));
}

/** A label, and beside it all the room that is left. */
export function fact(label: string, value: StatementCell | string): StatementRow {
  return row("plain", [0, 3, label], [3, 5, value, "left"]);
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

/** Decimals that frames are shown with where nothing asks for more. */
const FRAME_DECIMALS = 3;

/** Frames, shown apart from every threshold that they do not stand on. */
export function frames(contract: Contract, value: number): StatementCell {
  const asked = [
    contract.averageFrames,
    contract.minimumFrames,
    ...gradesOf(contract).map((grade) => grade.frames),
  ];
  const decimals = Math.max(...asked.map((level) => decimalsApart(value, level, FRAME_DECIMALS)));
  return { kind: "frames", value, ...(decimals > FRAME_DECIMALS && { decimals }) };
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

/** Letters of a statement to a column's unit, which is a digit of the larger type of a sheet. */
const LETTERS = 1.3;

/** Lines that a text takes when it is broken between words; rather one too many than one cut off. */
function linesOf({ column, span, cell }: Placed): number {
  if (cell.kind !== "text") return 1;
  const width = WIDTHS.slice(column, column + span).reduce((sum, width) => sum + width, 0);
  const room = Math.floor((width - 0.5) * LETTERS);
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
