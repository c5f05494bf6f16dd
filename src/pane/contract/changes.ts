import { labelOf, readTerm, writtenIn, type Written } from "../../core/contract-reading.js";
import { Refusal } from "../../core/refusal.js";
import { TERMS } from "../../core/terms.js";
import { CellError } from "../../functions/cells.js";
import { cellName, cellOf } from "../address.js";
import { holdsFormula } from "../stands.js";
import type { Block, Entry, Place, Region, Step } from "../port.js";

/** One term that is to change in the sheet. */
export interface Change {
  readonly label: string;
  readonly was: Entry;
  readonly now: Entry;
  /** Row of the table that holds the term; null where it has to be added. */
  readonly row: number | null;
}

/** A Terms table as it was read. */
export interface TermsTable {
  readonly region: Region;
  readonly block: Block;
  readonly contracts: readonly string[];
}

/** The column of a contract; the one after the last where it is new. */
export function columnOf({ block }: TermsTable, name: string): number {
  const headings = block.values[0] ?? [];
  const at = headings.findIndex((heading, k) => k > 0 && String(heading).trim() === name);
  return at < 0 ? headings.length : at;
}

/** The row of each term, the first where it stands twice. */
export function rowsOf({ block }: TermsTable): ReadonlyMap<string, number> {
  const rows = new Map<string, number>();
  block.values.forEach((row, r) => {
    const label = r === 0 ? "" : labelOf(row[0]);
    if (label !== "" && !rows.has(label)) rows.set(label, r);
  });
  return rows;
}

/** How the figures in a contract's column are written. */
export function writtenOf(table: TermsTable, column: number): Written {
  const cells = [...rowsOf(table)].map(
    ([label, row]) => [label, table.block.values[row]![column]] as const,
  );
  return writtenIn(new Map(cells));
}

/** What differs between a draft's entries and the table, in the order of the draft. */
export function changesOf(
  table: TermsTable,
  column: number,
  entries: ReadonlyMap<string, Entry>,
): Change[] {
  const { block } = table;
  const rows = rowsOf(table);
  const wanted = new Map(entries);
  // A grade that was taken away leaves its rows blank.
  for (const label of rows.keys()) {
    if (/^grade \d+ /.test(label) && !wanted.has(label)) wanted.set(label, "");
  }
  const written = writtenIn(entries);
  return [...wanted].flatMap(([label, now]): Change[] => {
    const row = rows.get(label) ?? null;
    const was = row === null ? "" : (block.entries[row]![column] ?? "");
    const stands = row === null ? "" : (block.values[row]![column] ?? "");
    return alike(label, stands, now, written) ? [] : [{ label, was, now, row }];
  });
}

/** The same to the reader of the table, as it will read: 8 and "8", a blank and a 0. */
function alike(label: string, was: unknown, now: Entry, written: Written): boolean {
  const [a, b] = [was, now].map((cell) => meant(label, cell, written));
  return a === b;
}

function meant(label: string, cell: unknown, written: Written): string {
  const entry = cell instanceof CellError ? cell.code : cell;
  try {
    return JSON.stringify(readTerm(label, entry, written));
  } catch (error) {
    if (error instanceof Refusal) return String(entry).trim();
    throw error;
  }
}

/** What stands in a cell of the table, without the apostrophe that keeps a text a text. */
export function standsAt({ block }: TermsTable, row: number | null, column: number): Entry {
  if (row === null) return "";
  const entry = block.entries[row]?.[column] ?? "";
  // In a cell of text none is needed: one that stands there is the text's own.
  const isKept = typeof entry === "string" && block.formats[row]?.[column] !== "@";
  return isKept ? entry.replace(/^'/, "") : entry;
}

/** The terms whose cells hold formulas, which the pane leaves alone, each with its cell. */
export function formulasIn(table: TermsTable, column: number): ReadonlyMap<string, string> {
  const { place } = table.region;
  return new Map(
    [...rowsOf(table)].flatMap(([label, row]): [string, string][] =>
      holdsFormula(table.block, row, column)
        ? [[label, cellName(place.row + row, place.column + column)]]
        : [],
    ),
  );
}

/**
 * The steps that make the changes: cells that change, rows for terms that the table lacks, a column
 * with its heading where the contract is new, and the table's reach over them. What the table is to
 * reach over must be blank, or a note beside it would become a term.
 */
export function stepsOf(
  table: TermsTable,
  name: string,
  column: number,
  changes: readonly Change[],
): Step[] {
  const { place } = table.region;
  const isNew = column >= place.columns;
  const added = changes.filter(({ row }) => row === null);
  const grown: Place = {
    ...place,
    rows: place.rows + added.length,
    columns: Math.max(place.columns, column + 1),
  };
  const changed = changes.flatMap(({ row, was, now }) =>
    row === null ? [] : [cell(table, row, column, isNew ? "" : was, now)],
  );
  const steps: Step[] = [
    ...(isNew ? [blank(grown, { column, columns: 1 })] : []),
    ...(added.length > 0 ? [blank(grown, { row: place.rows, rows: added.length })] : []),
    ...(isNew ? [cell(table, 0, column, "", name)] : []),
    ...changed,
    ...added.flatMap((change, k) => rowFor(table, place.rows + k, column, change)),
  ];
  const covers = grown.rows !== place.rows || grown.columns !== place.columns;
  if (!covers || table.region.kind === "sheet") return steps;
  const { kind, name: region } = table.region;
  const cover: Step = { kind: "cover", region: kind, name: region, place: grown };
  return [...steps, cover];
}

/** A part of a place, counted from its upper left, that must be blank. */
function blank(place: Place, part: Partial<Omit<Place, "sheet">>): Step {
  const { row = 0, column = 0, rows = place.rows, columns = place.columns } = part;
  const { sheet } = place;
  return {
    kind: "blank",
    place: { sheet, row: place.row + row, column: place.column + column, rows, columns },
  };
}

/** A new row: the term's label, its value, and what it means where the table has a column for that. */
function rowFor(table: TermsTable, row: number, column: number, { label, now }: Change): Step[] {
  const meanings = (table.block.values[0] ?? []).findIndex(
    (heading) => String(heading).trim().toLowerCase() === "meaning",
  );
  const meaning = TERMS.find((term) => term.label === label)?.meaning;
  return [
    cell(table, row, 0, "", label),
    cell(table, row, column, "", now),
    ...(meanings > 0 && meaning !== undefined ? [cell(table, row, meanings, "", meaning)] : []),
  ];
}

function cell(
  { region: { place }, block }: TermsTable,
  row: number,
  column: number,
  was: Entry,
  now: Entry,
): Step {
  const format = block.formats[row]?.[column] ?? "General";
  const isText = typeof now === "string" && now !== "";
  return {
    kind: "put",
    place: cellOf(place, row, column),
    expect: [[was]],
    put: [[now]],
    // A figure in a cell of text would be a text; a name such as 8-9 would become a date.
    formats: isText ? "@" : format === "@" ? "General" : format,
  };
}
