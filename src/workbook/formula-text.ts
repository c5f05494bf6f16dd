import { decodeCol, encodeCol } from "@cj-tech-master/excelts";

/** A text, a sheet's name in quotes, what a table's brackets hold, a word or reference, any other sign. */
const PIECE =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]']|'[^]|\[(?:[^[\]']|'[^])*\])*\]|[\p{L}\p{N}_.$\\?]+|[^]/gu;

/** A formula cut where its meaning changes; joined again, it is the same formula. */
export function pieces(formula: string): string[] {
  return formula.match(PIECE) ?? [];
}

/** Changes a formula everywhere but inside the texts that it quotes. */
export function outsideTexts(formula: string, change: (part: string) => string): string {
  let result = "";
  let part = "";
  for (const piece of pieces(formula)) {
    if (!piece.startsWith('"')) {
      part += piece;
      continue;
    }
    result += change(part) + piece;
    part = "";
  }
  return result + change(part);
}

const CELL = /^(\$?)([A-Z]{1,3})(\$?)(\d{1,7})$/i;
const COLUMN = /^(\$?)([A-Z]{1,3})$/i;
const ROW = /^(\$?)(\d{1,7})$/;

/**
 * A formula as it reads some rows further down and columns further right. Files store a column of
 * like formulas once; the library's own way of spelling out the others also changes the cell names
 * that stand in texts and in the names of sheets and tables.
 */
export function slide(formula: string, rows: number, columns: number): string {
  const parts = pieces(formula);
  return parts.map((part, i) => slidePiece(parts, part, i, rows, columns)).join("");
}

function slidePiece(
  parts: readonly string[],
  part: string,
  i: number,
  rows: number,
  columns: number,
): string {
  const next = parts[i + 1] ?? "";
  const isName = next === "(" || next === "!" || next.startsWith("[");
  if (isName || (next === ":" && parts[i + 3] === "!")) return part;
  const cell = CELL.exec(part);
  if (cell) return slideColumn(cell[1], cell[2], columns) + slideRow(cell[3], cell[4], rows);
  const other = next === ":" ? parts[i + 2] : parts[i - 1] === ":" ? parts[i - 2] : undefined;
  if (other === undefined) return part;
  const column = COLUMN.exec(part);
  if (column && COLUMN.test(other)) return slideColumn(column[1], column[2], columns);
  const row = ROW.exec(part);
  return row && ROW.test(other) ? slideRow(row[1], row[2], rows) : part;
}

function slideRow(fixed = "", row = "", by: number): string {
  return fixed ? fixed + row : String(Number(row) + by);
}

function slideColumn(fixed = "", letters = "", by: number): string {
  return fixed ? fixed + letters : encodeCol(decodeCol(letters.toUpperCase()) + by);
}
