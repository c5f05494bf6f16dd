import { regionKey } from "../port.js";
import { texts } from "../texts.js";
import { columnOf, rowsOf, standsAt, type TermsTable } from "./changes.js";
import { draftOf, type Draft } from "./draft.js";

/** A contract that is being written, and its table as it stood when the writing began. */
export interface Editing {
  readonly draft: Draft;
  readonly base: TermsTable;
  /** The draft that was saved since: the table holds it once it is read again. */
  readonly saved?: Draft;
}

/** What is being edited, by the key of its contract. */
export type Edited = ReadonlyMap<string, Editing>;

/** What tells a contract from every other of the workbook. */
export function keyOf({ region }: TermsTable, name: string): string {
  return `${regionKey(region)} / ${name}`;
}

/** A contract of a Terms table, as one of all of the workbook's. */
export interface Standing {
  readonly key: string;
  readonly table: TermsTable;
  readonly name: string;
  /** As it is told from others of its name. */
  readonly label: string;
}

export function contractsOf(tables: readonly TermsTable[]): Standing[] {
  const several = tables.length > 1;
  return tables.flatMap((table) =>
    table.contracts.map((name) => ({
      key: keyOf(table, name),
      table,
      name,
      label: several ? texts.contract.of(name, table.region.name) : name,
    })),
  );
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

/** What is left to edit of what was saved, now that the tables are read again. */
export function leftOf(edited: Edited, tables: readonly TermsTable[], sign: "." | ","): Edited {
  const left = [...edited].flatMap(([key, editing]): [string, Editing][] => {
    const now = nowOf(editing, tables);
    const isRead = editing.saved !== undefined && now !== undefined && isBehind(editing, now);
    if (!isRead) return [[key, editing]];
    // What was typed meanwhile goes on from what was saved.
    return editing.draft === editing.saved ? [] : [[key, rebased(editing, now, sign)]];
  });
  return new Map(left);
}

/** The same changes, made to the contract as it stands now. */
export function rebased(
  { draft, base, saved }: Editing,
  now: TermsTable,
  sign: "." | ",",
): Editing {
  const stood = saved ?? draftIn(base, draft.name, sign);
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
