import type { Layout } from "../functions/statement-layout.js";

const DASHES = ["Continuous", "Dash", "Dot", "DashDot"] as const;
const BLACK = "#000000";
const BARS = "#D0D0D0";

/** Bars of the hives and level lines of the thresholds, over the rows that are kept free for them. */
export function addChart(sheet: Excel.Worksheet, { chart, figures }: Layout, width: number): void {
  // The headings stand under the line that says what the figures are.
  const top = figures.row + 1;
  const [, headings = [], ...hives] = figures.rows;
  const column = (k: number): Excel.Range =>
    sheet.getRangeByIndexes(top + 1, figures.column + k, hives.length, 1);
  const both = sheet.getRangeByIndexes(top, figures.column, hives.length + 1, 2);
  const drawn = sheet.charts.add("ColumnClustered", both, "Columns");
  const from = sheet.getRangeByIndexes(chart.row, 0, 1, 1);
  const to = sheet.getRangeByIndexes(chart.row + chart.rows - 1, width - 1, 1, 1);
  drawn.setPosition(from, to);
  drawn.title.visible = false;
  drawn.legend.position = "Bottom";
  drawn.axes.valueAxis.minimum = 0;
  drawn.axes.valueAxis.numberFormat = "0";
  drawn.axes.valueAxis.title.text = String(headings[1]);

  const bars = drawn.series.getItemAt(0);
  bars.setXAxisValues(column(0));
  bars.gapWidth = 40;
  bars.format.fill.setSolidColor(BARS);
  bars.format.line.color = BLACK;
  headings.slice(2).forEach((heading, i) => {
    const level = drawn.series.add(String(heading));
    level.setValues(column(i + 2));
    level.setXAxisValues(column(0));
    level.chartType = "Line";
    level.markerStyle = "None";
    level.format.line.color = BLACK;
    level.format.line.weight = 1.75;
    level.format.line.lineStyle = DASHES[i % DASHES.length]!;
  });
}
