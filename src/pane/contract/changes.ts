import { labelOf } from "../../core/contract-reading.js";
import { TERMS } from "../../core/terms.js";
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

/** What differs between a draft's entries and the table, in the order of the table. */
export function changesOf(
  table: TermsTable,
  column: number,
  entries: ReadonlyMap<string, Entry>,
): Change[] {
  const { block } = table;
  const rows = new Map<string, number>();
  block.values.forEach((row, r) => {
    const label = r === 0 ? "" : labelOf(row[0]);
    if (label !== "" && !rows.has(label)) rows.set(label, r);
  });
  const wanted = new Map(entries);
  // A grade that was taken away leaves its rows blank.
  for (const label of rows.keys()) {
    if (/^grade \d+ /.test(label) && !wanted.has(label)) wanted.set(label, "");
  }
  return [...wanted].flatMap(([label, now]): Change[] => {
    const row = rows.get(label) ?? null;
    const was = row === null ? "" : (block.entries[row]![column] ?? "");
    return alike(was, now) ? [] : [{ label, was, now, row }];
  });
}

/** The same to the reader of the table: 8 and "8", a blank and the 0 that leaves a term out. */
function alike(was: Entry, now: Entry): boolean {
  const plain = (entry: Entry): string => {
    if (entry === true) return "yes";
    if (entry === false) return "no";
    return entry === 0 ? "" : bare(entry).trim().toLowerCase();
  };
  return plain(was) === plain(now);
}

/** An entry without the apostrophe that keeps a text a text in the sheet. */
export function bare(entry: Entry): string {
  return String(entry).replace(/^'/, "");
}

/** The labels of terms whose cells hold formulas, which the pane leaves alone. */
export function formulasIn({ block }: TermsTable, column: number): ReadonlySet<string> {
  const labels = block.entries.flatMap((row, r) => {
    const entry = row[column];
    const isFormula = typeof entry === "string" && entry.startsWith("=");
    return isFormula ? [labelOf(block.values[r]![0])] : [];
  });
  return new Set(labels);
}

/**
 * The steps that make the changes: cells that change, rows for terms that the table lacks, a column
 * with its heading where the contract is new, and the table's reach over them.
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
    place: {
      sheet: place.sheet,
      row: place.row + row,
      column: place.column + column,
      rows: 1,
      columns: 1,
    },
    expect: [[was]],
    put: [[now]],
    // A figure in a cell of text would be a text; a name such as 8-9 would become a date.
    formats: isText ? "@" : format === "@" ? "General" : format,
  };
}
