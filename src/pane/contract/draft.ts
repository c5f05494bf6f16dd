import { Contradiction } from "../../core/contract-check.js";
import {
  fromColumn,
  kindOf,
  labelOf,
  readTerm,
  writtenIn,
  type Written,
} from "../../core/contract-reading.js";
import type { Contract } from "../../core/contract.js";
import { Refusal } from "../../core/refusal.js";
import { GRADE_PARTS, TERMS } from "../../core/terms.js";
import { CellError } from "../../functions/cells.js";
import type { Block, Entry } from "../port.js";

export type GradePart = keyof typeof GRADE_PARTS;
export const PARTS = Object.keys(GRADE_PARTS) as GradePart[];
export type GradeDraft = Readonly<Record<GradePart, string>>;

/** A contract as it is being written: the text of each term, "" where it is left out. */
export interface Draft {
  readonly name: string;
  readonly terms: ReadonlyMap<string, string>;
  readonly grades: readonly GradeDraft[];
}

/** What is wrong with a draft: at a field, by its label, or with the contract as a whole. */
export interface Faults {
  readonly at: ReadonlyMap<string, string>;
  readonly whole: string | null;
  /** The contract, null where anything is wrong. */
  readonly contract: Contract | null;
}

export const gradeLabel = (index: number, part: GradePart): string => `grade ${index + 1} ${part}`;

/** A contract's column of a Terms table as a draft, figures with the user's decimal sign. */
export function draftOf(name: string, block: Block, column: number, sign: "." | ","): Draft {
  const cells = new Map<string, unknown>();
  block.values.slice(1).forEach((row) => {
    const label = labelOf(row[0]);
    if (label !== "" && !cells.has(label)) cells.set(label, row[column]);
  });
  const { comma } = writtenIn(cells);
  const written = new Map(
    [...cells].map(([label, cell]) => [label, shown(label, cell, comma ? "," : ".", sign)]),
  );
  const grades: GradeDraft[] = [];
  for (let i = 0; i < 99; i++) {
    const part = (key: GradePart) => written.get(gradeLabel(i, key)) ?? "";
    grades.push({
      name: part("name"),
      frames: part("frames"),
      brood: part("brood"),
      fee: part("fee"),
    });
  }
  const last = grades.map((grade) => PARTS.some((part) => grade[part] !== "")).lastIndexOf(true);
  return {
    name,
    terms: new Map(TERMS.map(({ label }) => [label, written.get(label) ?? ""])),
    grades: grades.slice(0, last + 1),
  };
}

/**
 * A cell as it is typed again; a blank may have come as 0, which leaves a term out.
 *
 * @param own - the decimal sign of the contract's own texts
 */
function shown(label: string, cell: unknown, own: "." | ",", sign: "." | ","): string {
  if (cell === null || cell === undefined || cell === 0) return "";
  if (typeof cell === "number") return String(cell).replace(".", sign);
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (cell instanceof CellError) return cell.code;
  const text = String(cell);
  const isFigure = kindOf(label)?.kind === "number" && /^\s*\d+[.,]\d+\s*%?\s*$/.test(text);
  return isFigure && text.includes(own) ? text.replace(own, sign) : text;
}

/** Every row that the draft has in a Terms table: its label and what is entered there. */
export function entriesOf(draft: Draft, sign: "." | ","): Map<string, Entry> {
  const { fractions } = writtenIn(draft.terms);
  const entries = new Map<string, Entry>();
  const enter = (label: string, text: string) =>
    void entries.set(label, entryOf(label, text, sign, fractions));
  for (const [label, text] of draft.terms) enter(label, text);
  draft.grades.forEach((grade, i) => {
    for (const part of PARTS) enter(gradeLabel(i, part), grade[part]);
  });
  return entries;
}

/** A figure is entered as a number, whatever sign it was typed with; all else as it stands. */
function entryOf(label: string, text: string, sign: "." | ",", fractions: boolean): Entry {
  const kind = kindOf(label);
  const plain = text.trim();
  if (kind?.kind !== "number" || plain === "") return plain;
  const digits = kind.unit === "%" ? plain.replace(/ ?%$/, "") : plain;
  const number = sign === "," ? /^\d+(?:,\d+)?$/ : /^\d+(?:\.\d+)?$/;
  if (!number.test(digits)) return plain;
  const figure = Number(digits.replace(",", "."));
  return digits !== plain && fractions ? figure / 100 : figure;
}

/** What is wrong with a draft, read as every function reads the table. */
export function faultsOf(draft: Draft, sign: "." | ","): Faults {
  const entries = entriesOf(draft, sign);
  const at = new Map<string, string>();
  // What is typed has the user's sign: a figure with the other one is none.
  const written: Written = { ...writtenIn(entries), comma: sign === "," };
  for (const [label, entry] of entries) {
    const why = refusalIn(() => readTerm(label, entry, written))?.message;
    if (why !== undefined) at.set(label, why);
  }
  if (at.size > 0) return { at, whole: null, contract: null };
  let contract: Contract | null = null;
  const refusal = refusalIn(() => {
    contract = fromColumn(draft.name, entries);
  });
  if (refusal instanceof Contradiction) {
    for (const label of refusal.terms) at.set(label, refusal.message);
  }
  return { at, whole: refusal?.message ?? null, contract };
}

function refusalIn(body: () => unknown): Refusal | null {
  try {
    body();
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}
