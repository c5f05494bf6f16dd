import { basename, extname } from "node:path";
import { firstOf } from "../core/listing.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { CellError } from "../functions/cells.js";
import { functions } from "../functions/index.js";
import { contractsIn } from "../functions/lot-contract.js";
import { hivesOfLot } from "../functions/lot-rows.js";
import { lotStatement, type StatementAsk } from "../functions/statement.js";
import { yardSheet } from "../functions/yard-sheet.js";
import { outcomeOf, type Statement, type StatementCell } from "../functions/statement-model.js";
import { areaOn, isIn, valuesIn, type Area } from "../workbook/area.js";
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
import { yardAsked } from "./statement-yard.js";
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
  const yards = findYardSheets(workbook, computedHeadings());
  const yard = yardAsked(yards, order, nearestMiss(workbook));
  const byHives = contractsOn(yard, order.lot);
  const { terms, contract } = await agreed(workbook, order, byHives);
  refuseOther(contract, byHives);
  if (workbook.properties.date1904) {
    const wish = terms ? { standard: null, contract } : { standard: contract, contract: null };
    refuseUnsaidDateSystem([yard], terms, wish);
  }
  progress.step("calculating");
  const { notCalculated } = settle(calculate(workbook, functions, progress.tick));
  refuseUncalculated(notCalculated, [yard.area, ...(terms ? [terms.area] : [])]);

  const ask = { ...order, yard: cellsOf(yard), terms: terms && valuesIn(terms.area), contract };
  const made = statementOf(ask, yard.area.top);
  progress.step("writing");
  await writeWhole(order.output, await saveWorkbook(statementFile(made)));
  return { lines: [...notAdded(yard), ...report(made, order, contract)], complete: true };
}

/** What the lot's hives name in the sheet; nothing where the sheet is refused, as the statement then is. */
function contractsOn(yard: YardSheet, lot: string | null): readonly string[] {
  try {
    const sheet = yardSheet(cellsOf(yard));
    return contractsIn(sheet, hivesOfLot(sheet, lot));
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

/** A statement is signed: it goes by no contract that the lot's hives do not name, where they name one. */
function refuseOther(contract: string, byHives: readonly string[]): void {
  if (byHives.length === 0) return;
  if (byHives.some((name) => normalise(name) === normalise(contract))) return;
  throw new Problem(
    `No statement: the lot's hives name the contract ${firstOf(byHives.map(quote))}, and not ${quote(contract)}. ` +
      "Give the one they name, or mend the column Contract.",
  );
}

/** @param top - the row of the headings, from which rows are counted in what is refused */
function statementOf(ask: StatementAsk, top: number): Statement {
  try {
    return lotStatement(ask);
  } catch (error) {
    if (!(error instanceof Refusal || error instanceof CellError)) throw error;
    const why =
      error instanceof CellError ? error.message || `a cell holds ${error.code}` : error.message;
    const isOfRows = top > 1 && /\brows? \d/.test(why);
    const from = isOfRows ? ` Rows are counted from the headings in row ${top}.` : "";
    throw new Problem(`No statement: ${why}.${from}`);
  }
}

/** Money hangs on these cells: none of them may hold what was not calculated. */
function refuseUncalculated(remarks: readonly Remark[], areas: readonly Area[]): void {
  const bad = remarks.find((remark) => areas.some((area) => holds(area, remark)));
  if (bad) throw new Problem(`No statement: ${bad.sheet}!${bad.address} ${bad.text}.`);
}

function holds(area: Area, { sheet, address }: Remark): boolean {
  const { top, left } = areaOn(area.sheet, address);
  return area.sheet.name === sheet && isIn(area, top, left);
}

/** What the terminal is told: what comes of the lot, and what the statement takes for granted. */
function report(statement: Statement, { lot, size, output }: StatementOrder, contract: string) {
  const lines = outcomeOf(statement)
    .flatMap(({ rows }) => rows)
    .map(({ cells }) => {
      const [label, ...others] = cells.map(({ cell }) => shown(cell));
      return others.length === 0 ? label! : `${label}: ${others.join(", ")}`;
    });
  return [
    `Lot ${lot ?? "(all hives of the sheet)"} under contract ${contract}`,
    ...lines,
    ...(size === null
      ? ["No --size was given: the hives that stand in the sheet are taken as the whole lot."]
      : []),
    `Written: ${output}`,
  ];
}

function shown(cell: StatementCell): string {
  if (cell.kind === "line") return "";
  if (cell.kind === "text") return cell.value;
  if (cell.kind === "percent") return `${figure(100 * cell.value)} %`;
  return figure(cell.value);
}

function figure(value: number): string {
  return value.toLocaleString("en", { maximumFractionDigits: 2 });
}
