import type { Worksheet } from "@cj-tech-master/excelts";
import { NAMESPACE } from "../functions/namespace.js";
import { isIn } from "./area.js";
import { outsideTexts, pieces } from "./formula-text.js";
import { resolve, type SheetTable } from "./tables.js";

/** Names of the functions that exist only while the program calculates. */
export const TRACED = "_TRACED_";
export const SPREAD = "_SPREAD";
export const FIRST = "_FIRST";
export const BLOCK = "_BLOCK";

const AS_SAVED = `_xldudf_${NAMESPACE}_`;

/** Our functions in a formula, as typed and as Excel saves them, also behind the damage `[2]!`. */
const OURS = new RegExp(
  String.raw`(?<![\w.])(?:\[\d+\]!)?(?:${AS_SAVED}|${NAMESPACE}\.)(\w+)\(`,
  "gi",
);

export function callsOurs(formula: string): boolean {
  return formula.search(OURS) >= 0;
}

const ONE_CALL = new RegExp(
  String.raw`^(?:\[\d+\]!)?(?:${AS_SAVED}|${NAMESPACE}\.)(\w+)\((.*)\)$`,
  "is",
);

/** A formula that is one call of ours and nothing more: its function, and what stands inside. */
export function ourCall(formula: string): { readonly id: string; readonly inside: string } | null {
  const [, id, inside] = ONE_CALL.exec(formula.trim()) ?? [];
  return id === undefined ? null : { id: id.toUpperCase(), inside: inside ?? "" };
}

/** Our functions spelled as Excel saves them; it binds no others when it opens a file. */
export function asSaved(formula: string): string {
  return outsideTexts(formula, (part) =>
    part.replace(OURS, (_, id: string) => `${AS_SAVED}${id.toUpperCase()}(`),
  );
}

/** Lets the engine tell which formula a call stands in: its number goes before the arguments. */
export function traced(formula: string, number: number, ids: ReadonlySet<string>): string {
  const calls = new RegExp(String.raw`${OURS.source}\s*(\))?`, "gi");
  return outsideTexts(formula, (part) =>
    part.replace(calls, (call: string, id: string, end: string | undefined) =>
      ids.has(id.toUpperCase()) ? `${TRACED}${id}(${number}${end ?? ","}` : call,
    ),
  );
}

/** References into tables as references to cells; without a table's name, the table around the cell. */
export function withoutTables(
  formula: string,
  tables: readonly SheetTable[],
  at: { readonly worksheet: Worksheet; readonly row: number; readonly col: number },
): string {
  if (!formula.includes("[")) return formula;
  const parts = pieces(formula);
  const named = (i: number): SheetTable | undefined =>
    parts[i + 1]?.startsWith("[") ? find(tables, parts[i] ?? "") : undefined;
  return parts
    .map((part, i) => {
      if (named(i)) return "";
      const isName = /[\p{L}\p{N}_.]$/u.test(parts[i - 1] ?? "");
      const table =
        named(i - 1) ?? (isName || /^\[\d+\]$/.test(part) ? undefined : around(tables, at));
      return table && part.startsWith("[") ? resolve(table, part, at.row) : part;
    })
    .join("");
}

function find(tables: readonly SheetTable[], name: string): SheetTable | undefined {
  return tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
}

function around(
  tables: readonly SheetTable[],
  { worksheet, row, col }: { worksheet: Worksheet; row: number; col: number },
): SheetTable | undefined {
  return tables.find((table) => table.sheet === worksheet && isIn(table, row, col));
}

const SHEET = String.raw`(?:'(?:[^']|'')+'!|[\p{L}\p{N}_.]+!)?`;
const ANCHOR = new RegExp(String.raw`_xlfn\.ANCHORARRAY\((${SHEET})(\$?[A-Z]{1,3}\$?\d+)\)`, "giu");

/** `A1#` as the block that the formula in A1 fills. */
export function withoutAnchors(
  formula: string,
  filledFrom: (sheet: string, cell: string) => string,
): string {
  return outsideTexts(formula, (part) =>
    part.replace(ANCHOR, (_, sheet: string, cell: string) => filledFrom(sheet, cell)),
  );
}

const COLUMN_OR_ROW = new RegExp(
  String.raw`_xlfn\.SINGLE\((${SHEET})(\$?[A-Z]{1,3})(\$?\d+)(?::(\$?[A-Z]{1,3})(\$?\d+))?\)`,
  "giu",
);

/** `@A2:A9` as the one cell of it that lies in the formula's own row or column. */
export function withoutSingles(formula: string, row: number, column: string): string {
  return outsideTexts(formula, (part) =>
    part
      .replace(COLUMN_OR_ROW, (_, sheet: string, c1: string, r1: string, c2 = c1, r2 = r1) =>
        single(sheet, [c1, c2], [r1, r2], row, column),
      )
      .replace(/_xlfn\.SINGLE\(/gi, `${FIRST}(`),
  );
}

function single(
  sheet: string,
  columns: [string, string],
  rows: [string, string],
  row: number,
  column: string,
): string {
  const [left, right] = columns.map((c) => c.replace("$", "").toUpperCase()) as [string, string];
  const [top, bottom] = rows.map((r) => Number(r.replace("$", ""))) as [number, number];
  const oneColumn = left === right;
  const oneRow = top === bottom;
  if (oneColumn && oneRow) return `${sheet}${left}${top}`;
  if (oneColumn && row >= top && row <= bottom) return `${sheet}${left}${row}`;
  if (oneRow && isBetween(column, left, right)) return `${sheet}${column}${top}`;
  return "#VALUE!";
}

function isBetween(column: string, left: string, right: string): boolean {
  const place = (letters: string): string => letters.padStart(3, " ");
  return place(left) <= place(column) && place(column) <= place(right);
}

const FIXED = new RegExp(
  String.raw`(?<=,\s*)(?:${SHEET}\$[A-Z]{1,3}\$\d+:\$[A-Z]{1,3}\$\d+|[\p{L}_][\p{L}\p{N}_.]*)(?=\s*[,)])`,
  "giu",
);

/** Blocks that are arguments of their own by their numbers, where they have one. */
export function withConstants(formula: string, numberOf: (text: string) => number | null): string {
  return outsideTexts(formula, (part) =>
    part.replace(FIXED, (text) => {
      const number = numberOf(text);
      return number === null ? text : `${BLOCK}(${number})`;
    }),
  );
}

const FILLING =
  /^(?:_xlfn\.)?(?:_xlws\.)?(?:FILTER|SORT|UNIQUE|SORTBY|SEQUENCE|RANDARRAY|TOCOL|TOROW|CHOOSEROWS|CHOOSECOLS|VSTACK|HSTACK|WRAPROWS|WRAPCOLS|EXPAND|TAKE|DROP)\(/i;

/** The engine lets these fill cells also where the file says that the formula fills one. */
export function inOneCell(formula: string): string {
  return FILLING.test(formula) ? `${FIRST}(${formula})` : formula;
}
