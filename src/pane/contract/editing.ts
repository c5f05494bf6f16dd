import { regionKey } from "../port.js";
import { columnOf, rowsOf, standsAt, type TermsTable } from "./changes.js";
import { draftOf, type Draft } from "./draft.js";

/** A contract that is being written, and its table as it stood when the writing began. */
export interface Editing {
  readonly draft: Draft;
  readonly base: TermsTable;
}

/** What tells a contract from every other of the workbook. */
export function keyOf({ region }: TermsTable, name: string): string {
  return `${regionKey(region)} / ${name}`;
}

/** The table of an editing as it stands now; undefined where it is gone. */
export function nowOf({ base }: Editing, tables: readonly TermsTable[]): TermsTable | undefined {
  return tables.find(({ region }) => regionKey(region) === regionKey(base.region));
}

/** Whether the contract was changed, or taken away, since its editing began. */
export function isBehind({ draft, base }: Editing, now: TermsTable | undefined): boolean {
  return now === undefined || standing(base, draft.name) !== standing(now, draft.name);
}

/** What a contract's cells hold, wherever in the table their rows stand. */
function standing(table: TermsTable, name: string): string {
  const column = columnOf(table, name);
  const isThere = column < table.region.place.columns;
  const cells = [...rowsOf(table)]
    .map(([label, row]) => [label, String(standsAt(table, row, column))])
    .filter(([, entry]) => entry !== "");
  return JSON.stringify([isThere, cells.sort()]);
}

/** The same changes, made to the contract as it stands now. */
export function rebased({ draft, base }: Editing, now: TermsTable, sign: "." | ","): Editing {
  const stood = draftIn(base, draft.name, sign);
  const stands = draftIn(now, draft.name, sign);
  const terms = [...draft.terms].map(([label, text]): [string, string] => [
    label,
    text === (stood.terms.get(label) ?? "") ? (stands.terms.get(label) ?? "") : text,
  ]);
  const isSame = JSON.stringify(draft.grades) === JSON.stringify(stood.grades);
  const grades = isSame ? stands.grades : draft.grades;
  return { draft: { ...draft, terms: new Map(terms), grades }, base: now };
}

/** A contract as it stands in its table. */
export function draftIn(table: TermsTable, name: string, sign: "." | ","): Draft {
  return draftOf(name, table.block, columnOf(table, name), sign);
}
