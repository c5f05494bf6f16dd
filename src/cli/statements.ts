import type { Workbook } from "@cj-tech-master/excelts";
import { NAMESPACE } from "../functions/namespace.js";
import { addressOf, valuesIn } from "./area.js";
import { formulasOf } from "./formulas.js";
import { textTable } from "./text-table.js";

/** Functions that spill a table to read, and not a row for each row of the sheet. */
const TABLES = [
  "LOT",
  "LOT_PAY",
  "WHAT_IF",
  "COMPARE",
  "TO_OPEN",
  "LOT_CHANCE",
  "PICK_HIVES",
  "LOADS",
  "DROPS",
];
const TABLE = new RegExp(`^_?(?:xldudf_)?${NAMESPACE}[._](?:${TABLES.join("|")})\\(`, "i");
/** Columns of hives that begin with their names can be read without the sheet beside them. */
const NAMED_HIVES = new RegExp(
  `^_?(?:xldudf_)?${NAMESPACE}[._]YARD_COLUMNS\\(.*"\\s*hive\\s*[,"]`,
  "i",
);

/** The tables on lots that formulas of a calculated workbook spill, each under its place. */
export function statements(workbook: Workbook, width: number): string[] {
  return formulasOf(workbook)
    .filter(({ text, fills }) => fills === "spill" && (TABLE.test(text) || NAMED_HIVES.test(text)))
    .flatMap(({ area }) => [
      `${area.sheet.name}!${addressOf(area)}`,
      ...textTable(
        valuesIn(area).map((row) => row.map(shown)),
        width,
      ),
      "",
    ]);
}

function shown(value: unknown): string {
  if (typeof value !== "number") return value === null || value === undefined ? "" : String(value);
  return value.toLocaleString("en", { maximumFractionDigits: 2 });
}
