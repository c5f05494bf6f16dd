import type { Table, Workbook } from "@cj-tech-master/excelts";
import { areaOn, reference, type Area } from "./area.js";

/** A table of the workbook: its whole block, with its headings and its row of totals. */
export interface SheetTable extends Area {
  readonly name: string;
  readonly headings: 0 | 1;
  readonly totals: 0 | 1;
  readonly columns: readonly string[];
}

export function tablesOf(workbook: Workbook): SheetTable[] {
  return workbook.worksheets.flatMap((sheet) => sheet.getTables().map((t) => toSheetTable(t)));
}

export function toSheetTable({ worksheet, model }: Table): SheetTable {
  const first = areaOn(worksheet, (model.tableRef ?? model.ref).split(":")[0] ?? "");
  const headings = model.headerRow === false ? 0 : 1;
  const totals = model.totalsRow ? 1 : 0;
  return {
    ...first,
    bottom: first.top + headings + model.rows.length + totals - 1,
    right: first.left + model.columns.length - 1,
    name: model.displayName ?? model.name,
    headings,
    totals,
    columns: model.columns.map((column) => column.name),
  };
}

/** How a formula names a whole table that has headings: with them, without a row of totals. */
export function tableReference(table: SheetTable): string {
  return `${table.name}[${table.totals ? "[#Headers],[#Data]" : "#All"}]`;
}

/**
 * The cells that a table reference means in a row: `[#All]`, `[[#Headers],[#Data]]`, `[Bees]`,
 * `[[Bees]:[Brood]]`, `[[#This Row],[Hive '#]]` or `[@Bees]`, as an ordinary reference. The engine
 * takes no heading with an apostrophe sign in it, and lets each this-row reference wait for the
 * whole column, which at some thousand rows takes more memory than there is.
 */
export function resolve(table: SheetTable, brackets: string, row: number): string {
  const { items, names } = parse(brackets);
  const rows =
    items.length === 0
      ? [rowsOf(table, "#data", row)]
      : items.map((item) => rowsOf(table, item, row));
  const columns =
    names.length === 0 ? [0, table.columns.length - 1] : names.map((n) => columnOf(table, n));
  if (rows.includes(null) || columns.includes(-1)) return "#REF!";
  const spans = rows.flatMap((span) => span ?? []);
  return reference({
    sheet: table.sheet,
    top: Math.min(...spans),
    bottom: Math.max(...spans),
    left: table.left + Math.min(...columns),
    right: table.left + Math.max(...columns),
  });
}

function parse(brackets: string): { items: string[]; names: string[] } {
  const inside = brackets.slice(1, -1).trim();
  const thisRow = inside.startsWith("@");
  const text = thisRow ? inside.slice(1) : inside;
  const nested = [...text.matchAll(/\[((?:[^[\]']|'[^])*)\]/g)].map((match) => match[1] ?? "");
  const parts = nested.length > 0 ? nested : text === "" ? [] : [text];
  const items = parts.filter((part) => part.startsWith("#")).map((part) => part.toLowerCase());
  const names = parts
    .filter((part) => !part.startsWith("#"))
    .map((n) => n.replace(/'([^])/g, "$1"));
  return { items: thisRow ? ["#this row", ...items] : items, names };
}

function rowsOf(table: SheetTable, item: string, row: number): [number, number] | null {
  const first = table.top + table.headings;
  const last = table.bottom - table.totals;
  switch (item) {
    case "#all":
      return [table.top, table.bottom];
    case "#data":
      return [first, last];
    case "#headers":
      return table.headings ? [table.top, table.top] : null;
    case "#totals":
      return table.totals ? [table.bottom, table.bottom] : null;
    case "#this row":
      return row >= first && row <= last ? [row, row] : null;
    default:
      return null;
  }
}

function columnOf(table: SheetTable, name: string): number {
  const wanted = name.toLowerCase();
  const exact = table.columns.findIndex((column) => column.toLowerCase() === wanted);
  if (exact >= 0) return exact;
  return table.columns.findIndex((c) => c.trim().toLowerCase() === wanted.trim());
}
