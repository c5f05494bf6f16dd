import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { layoutOf, type Layout } from "../functions/statement-layout.js";
import { footerOf, formatOf, heightOf, MARGINS } from "../functions/statement-look.js";
import type { Statement, StatementRow } from "../functions/statement-model.js";
import { addressOf } from "./area.js";
import { newWorkbook } from "./save.js";
import { addChart } from "./statement-chart.js";
import { alignment, border, FIGURE_FONT, font, SIGNED } from "./statement-style.js";

const NAME = "Statement";
const PAPERS = { letter: 1, a4: 9 } as const;

/** The statement as a workbook of one sheet: values, formats and a chart of Excel's own. */
export function statementFile(statement: Statement): Workbook {
  const workbook = newWorkbook();
  const sheet = workbook.addWorksheet(NAME, { views: [{ showGridLines: false }] });
  const { widths } = statement;
  widths.forEach((width, k) => (sheet.getColumn(k + 1).width = width));
  const layout = layoutOf(statement);
  layout.rows.forEach((row, r) => drawRow(sheet, row, r + 1, statement));
  sheet.getRow(layout.secondPage).addPageBreak();
  drawFigures(sheet, layout);
  addChart(sheet, statement.chart, layout, widths.length);
  setPage(sheet, layout, statement);
  return workbook;
}

function drawRow(
  sheet: Worksheet,
  { style, cells, lines }: StatementRow,
  at: number,
  { widths, moneyDecimals }: Statement,
): void {
  sheet.getRow(at).height = heightOf(style, lines);
  const under = border(style);
  if (under) widths.forEach((_, k) => (sheet.getCell(at, k + 1).border = under));
  for (const placed of cells) {
    const { column, span, cell } = placed;
    if (span > 1) sheet.mergeCells(at, column + 1, at, column + span);
    const target = sheet.getCell(at, column + 1);
    target.font = font(style);
    target.numFmt = formatOf(cell, moneyDecimals);
    target.alignment = alignment(placed, style);
    if (cell.kind !== "line") target.value = cell.value;
    else for (let k = 1; k <= span; k++) sheet.getCell(at, column + k).border = SIGNED;
  }
}

function drawFigures(sheet: Worksheet, { figures }: Layout): void {
  figures.rows.forEach((row, r) =>
    row.forEach((value, k) => {
      const cell = sheet.getCell(figures.row + r + 1, figures.column + k + 1);
      cell.font = FIGURE_FONT;
      cell.numFmt = typeof value === "string" ? "@" : "0.0##";
      cell.value = value;
    }),
  );
}

function setPage(sheet: Worksheet, layout: Layout, { title, widths, paper }: Statement): void {
  const headings = layout.repeated + 1;
  sheet.pageSetup = {
    ...sheet.pageSetup,
    orientation: "portrait",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    horizontalCentered: true,
    margins: MARGINS,
    printArea: addressOf({ top: 1, left: 1, bottom: layout.rows.length, right: widths.length }),
    printTitlesRow: `${headings}:${headings}`,
    paperSize: PAPERS[paper],
  };
  sheet.headerFooter.oddFooter = `&L&8${footerOf(title)}&R&8&P of &N`;
}
