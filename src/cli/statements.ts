import type { Workbook } from "@cj-tech-master/excelts";
import { dayOfSerial, showDay } from "../core/serial.js";
import { CellError } from "../functions/cells.js";
import { functions } from "../functions/index.js";
import { NAMESPACE } from "../functions/namespace.js";
import { addressOf, valuesIn } from "../workbook/area.js";
import { formulasOf } from "../workbook/formulas.js";
import { textTable } from "./text-table.js";

const TABLES = functions.filter(({ table }) => table).map(({ id }) => id);
const TABLE = new RegExp(`^_?(?:xldudf_)?${NAMESPACE}[._](${TABLES.join("|")})\\(`, "i");
/** Columns of hives that begin with their names can be read without the sheet beside them. */
const NAMED_HIVES = new RegExp(
  `^_?(?:xldudf_)?${NAMESPACE}[._]YARD_COLUMNS\\(.*"\\s*hive\\s*[,"]`,
  "i",
);

/** The tables on lots that formulas of a calculated workbook spill, each under its place. */
export function statements(workbook: Workbook, width: number): string[] {
  return formulasOf(workbook)
    .filter(({ text, fills }) => fills === "spill" && (TABLE.test(text) || NAMED_HIVES.test(text)))
    .flatMap(({ area, text }) => {
      const table = textsOf(valuesIn(area), datesOf(text), workbook.properties.date1904);
      return [`${area.sheet.name}!${addressOf(area)}`, ...textTable(table, width), ""];
    });
}

/** Headings of the columns of a call that hold days, which the workbook keeps as plain numbers. */
function datesOf(call: string): readonly unknown[] {
  const id = TABLE.exec(call)?.[1]?.toUpperCase();
  return functions.find((fn) => fn.id === id)?.dates ?? [];
}

function textsOf(
  [headings = [], ...rows]: readonly (readonly unknown[])[],
  dates: readonly unknown[],
  is1904 = false,
): string[][] {
  const dated = (value: unknown): string =>
    typeof value === "number" ? showDay(dayOfSerial(value, is1904 ? 1904 : 1900)) : shown(value);
  const shownIn = headings.map((heading) => (dates.includes(heading) ? dated : shown));
  return [headings.map(shown), ...rows.map((row) => row.map((cell, k) => shownIn[k]!(cell)))];
}

function shown(value: unknown): string {
  // Its sentence stands with what was not calculated.
  if (value instanceof CellError) return value.code;
  if (typeof value !== "number") return value === null || value === undefined ? "" : String(value);
  return value.toLocaleString("en", { maximumFractionDigits: 2 });
}
