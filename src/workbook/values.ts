import { dateToExcel, type Cell } from "@cj-tech-master/excelts";
import { CellError, type ErrorCode } from "../functions/cells.js";

/**
 * What a function is given for a cell: a number (a date as its serial), text, yes/no, an error,
 * or null for a cell with nothing in it. Cells behind the first of a merged block hold nothing.
 */
export function plainValue(cell: Cell | undefined): unknown {
  if (!cell || (cell.isMerged && cell.master !== cell)) return null;
  return plain(cell.formula ? cell.result : cell.value, cell);
}

function plain(value: unknown, cell: Cell): unknown {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return serialOf(value, cell);
  if (typeof value !== "object") return value;
  if ("error" in value) return new CellError(value.error as ErrorCode);
  if ("richText" in value) return cell.text;
  if ("text" in value) return value.text;
  return null;
}

/** The number that stands behind a date, in the date system of the workbook. */
export function serialOf(date: Date, { workbook }: Cell): number {
  return dateToExcel(date, workbook.properties.date1904 ?? false);
}
