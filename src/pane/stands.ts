/** What must stand before and after a change, the same for every workbook. */
import { address, cellOf } from "./address.js";
import type { Block, Entry, Place, Step } from "./port.js";

type Entries = readonly (readonly Entry[])[];

/**
 * A text as it would be typed: with an apostrophe before it where a spreadsheet would take it for
 * something else (`7-8` for a date, `50%` for a number, `=x` for a formula) and the cell's format
 * does not keep it a text.
 *
 * @example typed("7-8", "General") // "'7-8"
 * @example typed("7-8", "@") // "7-8"
 */
export function typed(text: string, format: string): string {
  return format !== "@" && mayTurn(text) ? `'${text}` : text;
}

/**
 * Rather too many than too few: which words are months or currencies depends on the language. What
 * has digits and at most one word may be a date, an hour or an amount, but `S01` is neither.
 */
function mayTurn(text: string): boolean {
  if (/^[=+\-@'#]/.test(text) || /^\s*(true|false)\s*$/i.test(text)) return true;
  const words = text.match(/\p{L}+/gu) ?? [];
  return /\d/.test(text) && words.length <= 1 && !/^\p{L}{1,2}\d/u.test(text);
}

/** @returns the first cell that is not as expected, in a sentence, or null */
export function unexpected(place: Place, entries: Entries, expect: Entries): string | null {
  return firstOf(place, entries, (entry, row, column) => {
    const expected = expect[row]![column]!;
    if (entry === expected) return null;
    return `holds ${shown(entry)} where ${shown(expected)} stood when it was read`;
  });
}

/** @returns the first cell that is filled, in a sentence, or null */
export function filled(place: Place, entries: Entries): string | null {
  return firstOf(place, entries, (entry) =>
    entry === "" ? null : `holds ${shown(entry)} and must be blank`,
  );
}

/**
 * What a workbook made of what was put: a formula may come back spelt otherwise, but a number, a
 * text and a blank must come back themselves.
 *
 * @returns the first cell that is not what was put, in a sentence, or null
 */
export function turned(place: Place, entries: Entries, put: Entries): string | null {
  const spelt = new Map<Entry, string>();
  return firstOf(place, entries, (entry, row, column) => {
    const wanted = put[row]![column]!;
    if (!isFormula(wanted)) return sameEntry(entry, wanted) ? null : becameOther(wanted, entry);
    if (!isFormula(entry)) return becameOther(wanted, entry);
    // A table may fill its column with one of several formulas.
    const other = spelt.get(entry);
    spelt.set(entry, loosely(wanted));
    return other === undefined || other === loosely(wanted) ? null : becameOther(wanted, entry);
  });
}

export function isFormula(entry: Entry): entry is string {
  return typeof entry === "string" && entry.startsWith("=");
}

/** Whether a cell of a block holds a formula: in a cell of text, `=x` may be a text. */
export function holdsFormula(
  { entries, values, formats }: Pick<Block, "entries" | "values" | "formats">,
  row: number,
  column: number,
): boolean {
  const entry = entries[row]?.[column] ?? "";
  const isText = formats[row]?.[column] === "@" && values[row]?.[column] === entry;
  return isFormula(entry) && !isText;
}

/** Every block that a step holds has the size of its place. */
export function checkShape(place: Place, block: readonly (readonly unknown[])[]): void {
  if (block.length === place.rows && block.every((row) => row.length === place.columns)) return;
  throw new Error(`a block of another size was meant for ${address(place)}`);
}

function becameOther(wanted: Entry, entry: Entry): string {
  return `would hold ${shown(entry)} where ${shown(wanted)} was put`;
}

/** An apostrophe that was typed to keep a text a text is no part of it. */
export function sameEntry(a: Entry, b: Entry): boolean {
  const bare = (entry: Entry) =>
    typeof entry === "string" ? entry.replace(/^'/, "") : kept(entry);
  return bare(a) === bare(b);
}

/** Of a number the 15 digits that Excel keeps. */
function kept(entry: Entry): Entry {
  return typeof entry === "number" ? Number(entry.toPrecision(15)) : entry;
}

function loosely(formula: string): string {
  return formula.toLowerCase().replace(/\s/g, "");
}

function shown(entry: Entry): string {
  if (entry === "") return "nothing";
  const text = String(entry);
  return `"${text.length > 60 ? `${text.slice(0, 60)}…` : text}"`;
}

function firstOf(
  place: Place,
  entries: Entries,
  sentence: (entry: Entry, row: number, column: number) => string | null,
): string | null {
  for (const [row, cells] of entries.entries()) {
    for (const [column, entry] of cells.entries()) {
      const found = sentence(entry, row, column);
      if (found !== null) return `${address(cellOf(place, row, column))} ${found}`;
    }
  }
  return null;
}

/** Whether a cell holds what was put there, by what stood before: a formula may be spelt otherwise. */
export function isThere(entry: Entry, before: Entry, put: Entry): boolean {
  if (!isFormula(put)) return sameEntry(entry, put);
  if (!isFormula(entry)) return false;
  return entry !== before || loosely(entry) === loosely(put);
}

/** What a step touches, in words. */
export function labelOf(step: Step): string {
  switch (step.kind) {
    case "put":
    case "blank":
      return address(step.place);
    case "cover":
      return `the ${step.region} ${step.name}`;
    case "uncover":
      return `the name ${step.name}`;
    case "add sheet":
    case "drop sheet":
      return `the sheet ${step.name}`;
  }
}
