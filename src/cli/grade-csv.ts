import { computedColumns, computedHeadings } from "./columns.js";
import { valuesIn } from "../workbook/area.js";
import { CellError } from "../functions/cells.js";
import { withColumns, type CsvFile } from "./csv.js";
import { writeWhole } from "./files.js";
import { findYardSheets, nearestMiss } from "./find.js";
import { gradingOf, wishOf } from "./grading.js";
import { hiveReport } from "./hive-report.js";
import type { Done, Order } from "./order.js";
import { Problem } from "../workbook/problem.js";
import type { Workbook } from "@cj-tech-master/excelts";

/** Puts the computed columns as values behind a yard sheet that is kept as text. */
export async function gradeCsv(csv: CsvFile, workbook: Workbook, order: Order): Promise<Done> {
  const headings = computedHeadings();
  const [yard, ...others] = findYardSheets(workbook, headings);
  if (!yard || others.length > 0) throw new Problem(yard ? SEVERAL : NONE + nearestMiss(workbook));
  const heading = csv.lines[yard.area.top - 1]!.fields;
  if (headings.every((text) => heading.includes(text))) throw new Problem(ALREADY);
  const terms = order.contract.kind === "terms" ? order.contract.terms : null;
  const grading = gradingOf(yard, terms, wishOf(order));
  const columns = computedColumns(valuesIn(yard.area), grading);
  await writeWhole(order.output, withColumns(csv, yard.area, columns));
  const unread = columns.filter((row) =>
    row.some((cell) => cell instanceof CellError && cell.code !== "#N/A"),
  );
  return {
    lines: [
      ...(order.isQuiet ? [] : [...hiveReport(yard, [grading], order.width), ""]),
      ...(unread.length === 0 ? [] : [`Rows with an error, told in their notes: ${unread.length}`]),
      `Written: ${order.output}`,
    ],
    complete: unread.length === 0,
  };
}

const NONE =
  "There is no yard sheet in the file: a row of headings, among the first 20, with one for the " +
  "hive (Hive) and one for its bees (Frames of bees, or Bees for each box).";
const SEVERAL = "There are several yard sheets in the file: give each a file of its own.";
const ALREADY = "The computed columns are in the file already: give the file without them.";
