import { frameOf } from "./comb.js";
import type { Contract, Grade } from "./contract.js";
import { checkContract, Contradiction } from "./contract-check.js";
import { quote, Refusal } from "./refusal.js";
import { GRADE_PARTS, TERMS, type Term, type TermKind } from "./terms.js";
import { normalise } from "./text.js";

type Block = readonly (readonly unknown[])[];

/** Columns of a Terms table that explain it and are no contracts. */
const REMARKS = new Set(["", "meaning", "unit", "notes"]);
const GRADE_LABEL = /^grade ([1-9]\d?) (name|frames|brood|fee)$/;

/**
 * The names of the contracts in a Terms table: the headings beside `Term`, in order.
 *
 * @throws Refusal where the block does not begin with the heading `Term`, or two have one name
 */
export function contractNames(terms: Block): string[] {
  const [corner, ...headings] = terms[0] ?? [];
  if (typeof corner !== "string" || !["term", "terms"].includes(normalise(corner))) {
    throw new Refusal(
      'the first cell must be the heading "Term", with the contracts\' names beside it',
    );
  }
  const names = headings.map(shown).filter((name) => !REMARKS.has(normalise(name)));
  const twice = names.find((name, i) => names.findIndex((n) => same(n, name)) < i);
  if (twice !== undefined) throw new Refusal(`two contracts are named ${quote(twice)}`);
  return names;
}

/**
 * One contract of a Terms table, every term read and checked against the others.
 *
 * @param terms - the table with its heading row: a term a row, a contract a column
 * @param name - the contract's heading; null where the table holds only one
 * @throws Refusal that names the term, the contract and what was expected
 */
export function readContract(terms: Block, name: string | null): Contract {
  const names = contractNames(terms);
  const list = names.map(quote).join(", ");
  if (names.length === 0) throw new Refusal("no contract stands beside the heading Term");
  if (name === null && names.length > 1) {
    throw new Refusal(`several contracts stand here, say which: ${list}`);
  }
  const wanted = names.find((n) => name === null || same(n, name));
  if (wanted === undefined)
    throw new Refusal(`no contract is named ${quote(name!)}; here are ${list}`);
  const column = terms[0]!.findIndex((heading, i) => i > 0 && same(shown(heading), wanted));
  return within(wanted, () => fromColumn(wanted, collect(terms, column)));
}

/** A contract made of written values by label; whatever is not there has its documented default. */
export function fromColumn(name: string, values: ReadonlyMap<string, unknown>): Contract {
  const read = new Map(values);
  const take = (label: string): unknown => {
    const value = read.get(label);
    read.delete(label);
    return leftOut(value) ? null : value;
  };
  const written = writtenIn(values);
  const fields = TERMS.map((term): [string, unknown] => {
    const value = take(term.label);
    return [
      term.field,
      value === null ? missing(term) : parse(term.label, term.value, value, written),
    ];
  });
  const grades = readGrades(mostGrades(read.keys()), take, written);
  const unknown = [...read.keys()].find((label) => !leftOut(read.get(label)));
  if (unknown !== undefined) {
    throw new Refusal(unknownTerm(unknown));
  }
  const contract = { ...Object.fromEntries(fields), name, grades } as unknown as Contract;
  const boxFrame = contract.boxFrame ?? contract.frame;
  const dateSystem = Number(contract.dateSystem) as Contract["dateSystem"];
  return checkContract({ ...contract, boxFrame, dateSystem });
}

/** How a contract's own figures are written, by two of its terms. */
export interface Written {
  /** Whether a text has its decimals after a comma. */
  readonly comma: boolean;
  /** Whether percents are written as fractions. */
  readonly fractions: boolean;
}

/** How the figures in a contract's column are written. */
export function writtenIn(values: ReadonlyMap<string, unknown>): Written {
  const says = (label: string): string => normalise(shown(values.get(label)));
  return {
    comma: says("decimal sign") === ",",
    fractions: says("percents written as") === "fraction",
  };
}

/** What may stand in the cell of a term, or of a part of a grade; null for a label that is neither. */
export function kindOf(label: string): TermKind | null {
  const part = GRADE_LABEL.exec(label)?.[2] as keyof typeof GRADE_PARTS | undefined;
  if (part !== undefined) return GRADE_PARTS[part];
  return TERMS.find((term) => term.label === label)?.value ?? null;
}

/** Says of a label that it is no term, and which it may have been meant for. */
export function unknownTerm(label: string): string {
  return `${quote(label)} is no term that is known${suggestion(label)}`;
}

/**
 * Reads what is written for one term alone, as a whole contract would; null where it is left out.
 *
 * @param label - of a term, or of a part of a grade
 * @throws Refusal that names the term and what was expected, or says that there is no such term
 */
export function readTerm(label: string, value: unknown, written: Written): unknown {
  if (leftOut(value)) return null;
  const kind = kindOf(label);
  if (kind !== null) return parse(label, kind, value, written);
  throw new Refusal(unknownTerm(label));
}

function missing(term: Term): unknown {
  if (term.value.kind !== "frame") return term.missing;
  return term.missing === "" ? null : frameOf(String(term.missing));
}

/** The number of the last grade that a label names. */
function mostGrades(labels: Iterable<string>): number {
  return Math.max(0, ...Array.from(labels, (label) => Number(GRADE_LABEL.exec(label)?.[1] ?? 0)));
}

function readGrades(most: number, take: (label: string) => unknown, written: Written): Grade[] {
  const rows = Array.from({ length: most }, (_, i) => {
    const part = (key: keyof typeof GRADE_PARTS): unknown => {
      const label = `grade ${i + 1} ${key}`;
      const value = take(label);
      return value === null ? null : parse(label, GRADE_PARTS[key], value, written);
    };
    return { name: part("name"), frames: part("frames"), brood: part("brood"), fee: part("fee") };
  });
  const filled = rows.map((row) => Object.values(row).some((value) => value !== null));
  return rows.slice(0, filled.lastIndexOf(true) + 1).map((row, i) => {
    if (row.name === null)
      throw new Contradiction(`grade ${i + 1} has no name: fill "grade ${i + 1} name"`, [
        `grade ${i + 1} name`,
      ]);
    const { name, frames, brood, fee } = row as { [K in keyof Grade]: Grade[K] | null };
    return { name: name!, frames: frames ?? 0, brood: brood ?? 0, fee: fee ?? 0 };
  });
}

/** The rows of one contract's column by label; a label that stands twice is refused. */
function collect(terms: Block, column: number): Map<string, unknown> {
  const values = new Map<string, unknown>();
  for (const row of terms.slice(1)) {
    const label = labelOf(row[0]);
    if (label === "") continue;
    if (values.has(label)) throw new Refusal(`the term ${quote(label)} stands twice`);
    values.set(label, row[column]);
  }
  return values;
}

/** A label without its unit in brackets or a closing colon. */
export function labelOf(cell: unknown): string {
  return normalise(shown(cell))
    .replace(/ ?:$/, "")
    .replace(/ ?\([^()]*\)$/, "")
    .replace(/ ?:$/, "");
}

function parse(label: string, kind: TermKind, value: unknown, written: Written): unknown {
  const text = normalise(shown(value));
  const refuse = (expected: string): never => {
    throw new Refusal(`${label}: ${quote(shown(value))} stands where ${expected} was expected`);
  };
  switch (kind.kind) {
    case "text":
      return shown(value).trim();
    case "choice":
      return (
        kind.choices.find((choice) => choice.toLowerCase() === text) ??
        refuse(kind.choices.join(" or "))
      );
    case "yes or no":
      if (value === true || text === "yes") return true;
      return value === false || text === "no" ? false : refuse("yes or no");
    case "frame":
      try {
        return frameOf(shown(value));
      } catch (error) {
        throw error instanceof Refusal ? new Refusal(`${label}: ${error.message}`) : error;
      }
    case "number": {
      const amount = amountOf(kind, value, text, written);
      const asked = kind.unit === "%" && !text.endsWith("%") && !written.fractions;
      if (asked && amount > 0 && amount < 1) {
        refuse(
          `a percent (is it ${+(amount * 100).toPrecision(6)} %? or "percents written as": fraction)`,
        );
      }
      const fits = amount >= kind.least && amount <= kind.most;
      return fits ? amount : refuse(`a number from ${kind.least} to ${kind.most} ${kind.unit}`);
    }
  }
}

/**
 * A number cell as it is, a text with the contract's decimal sign, an amount of money with a
 * currency's or without; NaN for anything else. Without its sign a percent is a fraction where the
 * contract writes them so.
 */
function amountOf(
  kind: TermKind & { kind: "number" },
  value: unknown,
  text: string,
  written: Written,
): number {
  const percent = kind.unit === "%";
  const sign = percent ? / ?%$/ : kind.unit === "money" ? /^\p{Sc} ?| ?\p{Sc}$/u : null;
  const digits = sign ? text.replace(sign, "") : text;
  const plain = written.comma ? /^\d+(?:,\d+)?$/ : /^\d+(?:\.\d+)?$/;
  const typed = plain.test(digits) ? Number(digits.replace(",", ".")) : NaN;
  const amount = typeof value === "number" ? value : typed;
  return percent && written.fractions && digits === text ? amount * 100 : amount;
}

function leftOut(value: unknown): boolean {
  return shown(value).trim() === "";
}

function within(contract: string, body: () => Contract): Contract {
  try {
    return body();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(`contract ${quote(contract)}: ${error.message}`, error.kind);
  }
}

function suggestion(label: string): string {
  const words = new Set(label.split(" "));
  const near = TERMS.map((term) => term.label).filter((known) =>
    known.split(" ").some((word) => word.length > 3 && words.has(word)),
  );
  return near.length === 0 ? "" : `; did you mean ${near.slice(0, 3).map(quote).join(" or ")}?`;
}

function same(a: string, b: string): boolean {
  return normalise(a) === normalise(b);
}

/** A cell as a text; a blank may have become the number 0 on its way. */
function shown(cell: unknown): string {
  return cell === null || cell === undefined || cell === 0 ? "" : String(cell);
}
