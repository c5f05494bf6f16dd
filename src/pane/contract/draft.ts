import { fromColumn, labelOf, readTerm } from "../../core/contract-reading.js";
import type { Contract } from "../../core/contract.js";
import { Refusal } from "../../core/refusal.js";
import { GRADE_PARTS, TERMS, type TermKind } from "../../core/terms.js";
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

const KINDS: ReadonlyMap<string, TermKind> = new Map([
  ...TERMS.map(({ label, value }): [string, TermKind] => [label, value]),
]);

export const gradeLabel = (index: number, part: GradePart): string => `grade ${index + 1} ${part}`;

/** A contract's column of a Terms table as a draft, figures with the user's decimal sign. */
export function draftOf(name: string, block: Block, column: number, sign: "." | ","): Draft {
  const written = new Map<string, string>();
  block.values.slice(1).forEach((row) => {
    const label = labelOf(row[0]);
    if (label !== "" && !written.has(label)) written.set(label, shown(row[column], sign));
  });
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

/** A cell as it is typed again; a blank may have come as 0, which leaves a term out. */
function shown(cell: unknown, sign: "." | ","): string {
  if (cell === null || cell === undefined || cell === 0) return "";
  if (typeof cell === "number") return String(cell).replace(".", sign);
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  return String(cell);
}

/** Every row that the draft has in a Terms table: its label and what is entered there. */
export function entriesOf(draft: Draft, sign: "." | ","): Map<string, Entry> {
  const entries = new Map<string, Entry>();
  for (const [label, text] of draft.terms)
    entries.set(label, entryOf(KINDS.get(label), text, sign));
  draft.grades.forEach((grade, i) => {
    for (const part of PARTS) {
      entries.set(gradeLabel(i, part), entryOf(GRADE_PARTS[part], grade[part], sign));
    }
  });
  return entries;
}

/** A figure is entered as a number, whatever sign it was typed with; all else as it stands. */
function entryOf(kind: TermKind | undefined, text: string, sign: "." | ","): Entry {
  const plain = text.trim();
  if (kind?.kind !== "number" || plain === "") return plain;
  const digits = plain.replace(/ ?%$/, "");
  const number = sign === "," ? /^\d+(?:,\d+)?$/ : /^\d+(?:\.\d+)?$/;
  const isPercent = digits !== plain && kind.unit !== "%";
  return number.test(digits) && !isPercent ? Number(digits.replace(",", ".")) : plain;
}

/** What is wrong with a draft, read as every function reads the table. */
export function faultsOf(draft: Draft, sign: "." | ","): Faults {
  const entries = entriesOf(draft, sign);
  const at = new Map<string, string>();
  const fractions = draft.terms.get("percents written as") === "fraction";
  for (const [label, entry] of entries) {
    const why = refusalOf(() => readTerm(label, entry, fractions));
    if (why !== null) at.set(label, why);
  }
  if (at.size > 0) return { at, whole: null, contract: null };
  let contract: Contract | null = null;
  const whole = refusalOf(() => {
    contract = fromColumn(draft.name, entries);
  });
  if (whole !== null) {
    // A contradiction names its terms first to last: it is shown at the first of them.
    const named = [...entries.keys()].filter((label) => whole.includes(label));
    const first = named.sort((a, b) => whole.indexOf(a) - whole.indexOf(b))[0];
    const grade = /^(grade \d+)\b/.exec(whole)?.[1];
    const field = grade === undefined ? first : `${grade} name`;
    if (field !== undefined) at.set(field, whole);
  }
  return { at, whole, contract };
}

function refusalOf(body: () => unknown): string | null {
  try {
    body();
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
}
