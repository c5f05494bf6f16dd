import type { Layout } from "../functions/statement-layout.js";
import {
  FONT,
  footerOf,
  GREY,
  heightOf,
  lieOf,
  LOOKS,
  MARGINS,
  type Look,
} from "../functions/statement-look.js";
import type { Placed, RowStyle, Statement } from "../functions/statement-model.js";
import type { Entry } from "./port.js";
import { bands } from "./statement/bands.js";
import type { Grid } from "./statement/grid.js";

/** A character of a column's width: 7 pixels of 0.75 points, as Calibri 11 has them. */
const POINTS_A_CHARACTER = 5.25;
const POINTS_AN_INCH = 72;

/** Writes what stands on a statement's sheet, and makes it look as it should. */
export function drawCells(
  sheet: Excel.Worksheet,
  { rows, figures }: Layout,
  { widths }: Statement,
  { entries, formats }: Grid,
): void {
  sheet.showGridlines = false;
  const all = sheet.getRangeByIndexes(0, 0, entries.length, entries[0]!.length);
  all.numberFormat = formats as string[][];
  all.formulas = entries as Entry[][];
  all.format.font.name = FONT;
  all.format.font.size = LOOKS.plain.size;
  all.format.verticalAlignment = "Top";
  const beside = sheet.getRangeByIndexes(0, figures.column, entries.length, 1);
  beside.getResizedRange(0, entries[0]!.length - figures.column - 1).format.font.color = `#${GREY}`;

  widths.forEach((width, c) => {
    const column = sheet.getRangeByIndexes(0, c, 1, 1);
    column.format.columnWidth = width * POINTS_A_CHARACTER;
  });
  for (const { value, from, rows: count } of bands(rows, ({ style }) => [style])) {
    const range = sheet.getRangeByIndexes(from, 0, count, widths.length);
    drawLook(range, LOOKS[value], count);
  }
  const pieces = bands(rows, ({ cells, style }) => cells.map((placed) => pieceOf(placed, style)));
  for (const { value, from, rows: count } of pieces) {
    drawPiece(sheet.getRangeByIndexes(from, value.column, count, value.span), value, count);
  }
  // Last, since what is wrapped may change it.
  const heights = bands(rows, ({ style, lines }) => [heightOf(style, lines)]);
  for (const { value, from, rows: count } of heights) {
    sheet.getRangeByIndexes(from, 0, count, 1).format.rowHeight = value;
  }
}

function drawLook({ format }: Excel.Range, { size, isBold, line }: Look, rows: number): void {
  if (isBold) format.font.bold = true;
  if (size !== LOOKS.plain.size) format.font.size = size;
  if (line === "thin") underline(format, rows, "Thin", "#000000");
  if (line === "hair") underline(format, rows, "Hairline", `#${GREY}`);
}

function pieceOf({ column, span, cell, side }: Placed, style: RowStyle) {
  const isLine = cell.kind === "line";
  return { column, span, isLine, lie: lieOf({ column, span, cell, side }, style) };
}

function drawPiece(range: Excel.Range, piece: ReturnType<typeof pieceOf>, rows: number): void {
  const { format } = range;
  const { span, isLine, lie } = piece;
  if (span > 1) range.merge(true);
  format.horizontalAlignment = lie.horizontal === "left" ? "Left" : "Right";
  if (lie.vertical === "bottom") format.verticalAlignment = "Bottom";
  if (lie.isWrapped) format.wrapText = true;
  if (lie.isIndented) format.indentLevel = 1;
  if (isLine) underline(format, rows, "Thin", "#000000");
}

/** A line under each row of a range. */
function underline(
  { borders }: Excel.RangeFormat,
  rows: number,
  weight: "Thin" | "Hairline",
  color: string,
): void {
  for (const edge of ["EdgeBottom", ...(rows > 1 ? ["InsideHorizontal"] : [])] as const) {
    const border = borders.getItem(edge as Excel.BorderIndex);
    border.style = "Continuous";
    border.weight = weight;
    border.color = color;
  }
}

/** One page wide, with the headings of the hives on each further page. */
export function setPage(
  sheet: Excel.Worksheet,
  { rows, secondPage, repeated }: Layout,
  { title, widths, paper }: Statement,
): void {
  const page = sheet.pageLayout;
  page.orientation = "Portrait";
  page.paperSize = paper === "a4" ? "A4" : "Letter";
  page.zoom = { horizontalFitToPages: 1 };
  page.centerHorizontally = true;
  page.leftMargin = MARGINS.left * POINTS_AN_INCH;
  page.rightMargin = MARGINS.right * POINTS_AN_INCH;
  page.topMargin = MARGINS.top * POINTS_AN_INCH;
  page.bottomMargin = MARGINS.bottom * POINTS_AN_INCH;
  page.headerMargin = MARGINS.header * POINTS_AN_INCH;
  page.footerMargin = MARGINS.footer * POINTS_AN_INCH;
  page.setPrintArea(sheet.getRangeByIndexes(0, 0, rows.length, widths.length));
  page.setPrintTitleRows(`$${repeated + 1}:$${repeated + 1}`);
  const footers = page.headersFooters.defaultForAllPages;
  footers.leftFooter = `&8${footerOf(title)}`;
  footers.rightFooter = "&8&P of &N";
  sheet.horizontalPageBreaks.add(`A${secondPage + 1}`);
}
