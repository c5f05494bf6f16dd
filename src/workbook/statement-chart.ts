import type { Worksheet } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import type { Layout } from "../functions/statement-layout.js";
import type { StatementChart } from "../functions/statement-model.js";
import { absolute, cellAddress, reference } from "./area.js";

const DASHES = ["solid", "dash", "sysDot", "dashDot"] as const;
const BLACK = "000000";
const GREY = "D0D0D0";
const GRID = { majorGridlines: true, majorGridlinesStyle: { border: GREY, borderWidth: 0.5 } };
const NO_MINOR = { minorTickMark: "none" } as const;

/** Bars and level lines over the rows kept free, drawn from the figures right of what is printed. */
export function addChart(
  sheet: Worksheet,
  chart: StatementChart,
  layout: Layout,
  width: number,
): void {
  installChartSupport();
  // Of the headings, which stand under the line that says what the figures are.
  const top = layout.figures.row + 2;
  const left = layout.figures.column + 1;
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
    valueAxis: { title: chart.headings[1]!, min: 0, numFmt: "0", ...GRID, ...NO_MINOR },
    categoryAxis: NO_MINOR,
  };
  const place = {
    tl: { col: 0, row: layout.chart.row },
    br: { col: width, row: layout.chart.row + layout.chart.rows },
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
