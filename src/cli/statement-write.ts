import { basename, extname } from "node:path";
import type { Workbook } from "@cj-tech-master/excelts";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { CellError } from "../functions/cells.js";
import { functions } from "../functions/index.js";
import { lotStatement } from "../functions/statement.js";
import type { Statement } from "../functions/statement-model.js";
import { areaOn, reference, valuesIn, type Area } from "../workbook/area.js";
import { calculate } from "../workbook/calculate.js";
import { computedHeadings } from "./columns.js";
import { readCsv, toWorkbook } from "./csv.js";
import { writeWhole } from "./files.js";
import { cellsOf, findYardSheets, nearestMiss, notAdded, type YardSheet } from "./find.js";
import { refuseUnsaidDateSystem } from "./grading.js";
import type { Done } from "./order.js";
import { settle, type Remark } from "../workbook/outcome.js";
import { Problem } from "../workbook/problem.js";
import type { Progress } from "./progress.js";
import { saveWorkbook } from "../workbook/save.js";
import type { Kind } from "./source.js";
import { agreed } from "./statement-contract.js";
import type { StatementOrder } from "./statement-command.js";
import { statementFile } from "../workbook/statement-file.js";
import { openWorkbook } from "../workbook/workbook.js";

/** Reads the yard sheet and its terms, calculates what they hold, and writes the statement on a lot. */
export async function writeStatement(
  bytes: Uint8Array,
  kind: Kind,
  order: StatementOrder,
  progress: Progress,
): Promise<Done> {
  const name = basename(order.input, extname(order.input));
  const workbook =
    kind === ".csv"
      ? toWorkbook(readCsv(bytes, order.input), name)
      : (await openWorkbook(bytes, order.input)).workbook;
  const yard = yardOf(workbook, order.sheet);
  const { terms, contract } = await agreed(workbook, order);
  if (workbook.properties.date1904) {
    const wish = terms ? { standard: null, contract } : { standard: contract, contract: null };
    refuseUnsaidDateSystem([yard], terms, wish);
  }
  progress.step("calculating");
  const { notCalculated } = settle(calculate(workbook, functions, progress.tick));
  refuseUncalculated(notCalculated, [yard.area, ...(terms ? [terms.area] : [])]);

  const made = statementOf({
    ...order,
    yard: cellsOf(yard),
    terms: terms && valuesIn(terms.area),
    contract,
  });
  progress.step("writing");
  await writeWhole(order.output, await saveWorkbook(statementFile(made)));
  return { lines: [...notAdded(yard), ...report(made, order, contract)], complete: true };
}

function statementOf(ask: Parameters<typeof lotStatement>[0]): Statement {
  try {
    return lotStatement(ask);
  } catch (error) {
    if (error instanceof Refusal) throw new Problem(`No statement: ${error.message}.`);
    if (error instanceof CellError)
      throw new Problem(`No statement: ${error.message || `a cell holds ${error.code}`}.`);
    throw error;
  }
}

function yardOf(workbook: Workbook, wanted: string | null): YardSheet {
  const yards = findYardSheets(workbook, computedHeadings());
  const [yard, ...others] =
    wanted === null
      ? yards
      : yards.filter(({ area }) => normalise(area.sheet.name) === normalise(wanted));
  if (yard === undefined) {
    throw new Problem(
      `There is no yard sheet${wanted === null ? "" : ` on a sheet ${quote(wanted)}`}: a row of ` +
        "headings, among the first 20 rows, with one for the hive (Hive) and one for its bees " +
        `(Frames of bees, or Bees for each box).${nearestMiss(workbook)}`,
    );
  }
  if (others.length === 0) return yard;
  const places = yards.map(({ area }) => reference(area).replaceAll("$", "")).join(", ");
  throw new Problem(`There are several yard sheets, ${places}: say on which sheet with --sheet.`);
}

/** Money hangs on these cells: none of them may hold what was not calculated. */
function refuseUncalculated(remarks: readonly Remark[], areas: readonly Area[]): void {
  const bad = remarks.find((remark) => areas.some((area) => holds(area, remark)));
  if (bad) throw new Problem(`No statement: ${bad.sheet}!${bad.address} ${bad.text}.`);
}

function holds(area: Area, { sheet, address }: Remark): boolean {
  const { top, left } = areaOn(area.sheet, address);
  return (
    area.sheet.name === sheet &&
    area.top <= top &&
    top <= area.bottom &&
    area.left <= left &&
    left <= area.right
  );
}

/** What the terminal is told: the verdict and the sums, and what the statement takes for granted. */
function report(
  { settlement }: Statement,
  { lot, size, output }: StatementOrder,
  contract: string,
) {
  const told = new Set(["Met or not", "Average frames", "total"]);
  const lines = settlement
    .flatMap(({ rows }) => rows)
    .flatMap(({ cells }) => {
      const [label, ...others] = cells.map(({ cell }) => (cell.kind === "line" ? "" : cell.value));
      const isTold = told.has(String(label)) || String(label).startsWith("balance");
      return isTold ? [`${label}: ${others.map(shown).join(", ")}`] : [];
    });
  return [
    `Lot ${lot ?? "(all hives of the sheet)"} under contract ${contract}`,
    ...lines,
    ...(size === null ? ["No --size was given: the hives opened are taken as the whole lot."] : []),
    `Written: ${output}`,
  ];
}

const shown = (value: string | number): string =>
  typeof value === "string" ? value : value.toLocaleString("en", { maximumFractionDigits: 2 });
