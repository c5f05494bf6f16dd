import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import type {
  Section,
  Statement,
  StatementChart,
  StatementRow,
} from "../functions/statement-model.js";
import { absolute, addressOf, cellAddress, reference } from "./area.js";
import { newWorkbook } from "./save.js";
import { alignmentOf, formatOf, heightOf, LOOKS, SIGNED } from "./statement-look.js";

const NAME = "Statement";
const CHART_ROWS = 14;
const PAPERS = { letter: 1, a4: 9 } as const;
const INCH = { left: 0.55, right: 0.55, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 };

/** The statement as a workbook of one sheet: values, formats and a chart of Excel's own. */
export function statementFile(statement: Statement): Workbook {
  const workbook = newWorkbook();
  const sheet = workbook.addWorksheet(NAME, { views: [{ showGridLines: false }] });
  const { widths, chart } = statement;
  widths.forEach((width, k) => (sheet.getColumn(k + 1).width = width));
  const page = new Page(sheet, widths.length, statement.moneyDecimals);

  page.row({ style: "title", cells: [textAcross(statement.title, widths.length)], lines: 1 });
  statement.settlement.forEach((section) => page.section(section));
  sheet.getRow(page.last).addPageBreak();
  page.section(statement.terms);
  page.heading(chart.title);
  const above = page.last;
  page.skip(CHART_ROWS);
  page.heading(statement.hives.heading);
  const headings = page.last + 1;
  statement.hives.rows.forEach((row) => page.row(row));

  const bottom = page.last;
  addChart(sheet, chart, above, widths.length);
  sheet.pageSetup = {
    ...sheet.pageSetup,
    orientation: "portrait",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    horizontalCentered: true,
    margins: INCH,
    printArea: addressOf({ top: 1, left: 1, bottom, right: widths.length }),
    printTitlesRow: `${headings}:${headings}`,
    paperSize: PAPERS[statement.paper],
  };
  const title = statement.title.replaceAll("&", "&&");
  sheet.headerFooter.oddFooter = `&L&8${title.slice(0, 120)}&R&8&P of &N`;
  return workbook;
}

function textAcross(value: string, span: number) {
  return { column: 0, span, cell: { kind: "text", value }, side: "left" } as const;
}

/** Rows written one below the other. */
class Page {
  last = 0;

  constructor(
    private readonly sheet: Worksheet,
    private readonly width: number,
    private readonly moneyDecimals: number,
  ) {}

  section({ heading, rows }: Section): void {
    if (heading !== "") this.heading(heading);
    rows.forEach((row) => this.row(row));
  }

  heading(text: string): void {
    this.row({ style: "gap", cells: [], lines: 1 });
    this.row({ style: "heading", cells: [textAcross(text, this.width)], lines: 1 });
  }

  skip(rows: number): void {
    for (let i = 0; i < rows; i++) this.row({ style: "note", cells: [], lines: 1 });
  }

  row({ style, cells, lines }: StatementRow): void {
    const at = ++this.last;
    const look = LOOKS[style];
    this.sheet.getRow(at).height = heightOf(style, lines);
    if (look.border) {
      for (let k = 1; k <= this.width; k++) this.sheet.getCell(at, k).border = look.border;
    }
    for (const placed of cells) {
      const { column, span, cell } = placed;
      if (span > 1) this.sheet.mergeCells(at, column + 1, at, column + span);
      const target = this.sheet.getCell(at, column + 1);
      target.font = look.font;
      target.numFmt = formatOf(cell, this.moneyDecimals);
      target.alignment = alignmentOf(placed, style);
      if (cell.kind !== "line") target.value = cell.value;
      else for (let k = 1; k <= span; k++) this.sheet.getCell(at, column + k).border = SIGNED;
    }
  }
}

const DASHES = ["solid", "dash", "sysDot", "dashDot"] as const;
const BLACK = "000000";
const GREY = "D0D0D0";
const GRID = { majorGridlines: true, majorGridlinesStyle: { border: GREY, borderWidth: 0.5 } };
const NO_MINOR = { minorTickMark: "none" } as const;

/** The figures of the chart stand right of what is printed, and the chart over the rows kept free. */
function addChart(sheet: Worksheet, chart: StatementChart, above: number, width: number): void {
  installChartSupport();
  const left = width + 2;
  const top = above + 1;
  const put = (cells: readonly (string | number)[], r: number): void =>
    cells.forEach((value, k) => {
      const cell = sheet.getCell(r, left + k);
      cell.font = { ...LOOKS.note.font, color: { argb: "FF7F7F7F" } };
      cell.numFmt = typeof value === "string" ? "@" : "0.0##";
      cell.value = value;
    });
  put(["Figures of the chart"], top - 1);
  put(chart.headings, top);
  chart.rows.forEach((row, i) => put(row, top + 1 + i));

  const column = (k: number): string =>
    reference({
      sheet,
      top: top + 1,
      left: left + k,
      bottom: top + chart.rows.length,
      right: left + k,
    });
  const heading = (k: number) => ({
    formula: `'${sheet.name}'!${absolute(cellAddress(top, left + k))}`,
  });
  const series = (k: number) => ({ name: heading(k), categories: column(0), values: column(k) });
  const levels = chart.headings.slice(2).map((_, i) => ({
    ...series(i + 2),
    line: BLACK,
    lineWidth: 1.75,
    lineDash: DASHES[i % DASHES.length]!,
    marker: { symbol: "none" as const },
  }));
  const bars = {
    type: "bar" as const,
    barDir: "col" as const,
    grouping: "clustered" as const,
    gapWidth: 40,
    series: [{ ...series(1), spPr: { fill: GREY, border: BLACK, borderWidth: 0.5 } }],
    valueAxis: { title: "Frames of bees", min: 0, numFmt: "0", ...GRID, ...NO_MINOR },
    categoryAxis: NO_MINOR,
  };
  const place = {
    tl: { col: 0, row: above },
    br: { col: width, row: above + CHART_ROWS },
    editAs: "oneCell" as const,
  };
  const look = { title: null, legendPosition: "b" as const, showLegend: true };
  if (levels.length === 0) sheet.addChart({ ...bars, ...look }, place);
  else {
    sheet.addComboChart(
      { ...look, groups: [bars, { type: "line", grouping: "standard", series: levels }] },
      place,
    );
  }
}
