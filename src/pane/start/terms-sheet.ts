import { STANDARDS, type Standard } from "../../core/standards.js";
import { GRADE_PARTS, TERMS } from "../../core/terms.js";
import type { Entry, Step } from "../port.js";
import { placeOf, plain, put } from "./steps.js";

type Table = readonly (readonly Entry[])[];

/** Standards that give a number to grade by. */
export const USABLE: readonly Standard[] = STANDARDS.filter(
  ({ terms }) => Object.keys(terms).length > 0,
);

/** Grades that a new table has rows for; more may be added. */
const GRADES = [1, 2, 3];
/** The grades stand before the money that is paid for them. */
const FIRST_OF_MONEY = "base fee";

/**
 * A Terms table with every term: what the standard says is filled in, the rest left out, which each
 * meaning explains.
 *
 * @param closing - stands in a last row, which holds no term
 */
export function termsOf(standard: Standard, closing: string): Table {
  const row = (label: string, meaning: string): readonly Entry[] => [
    label,
    standard.terms[label] ?? "",
    meaning,
  ];
  const grades = GRADES.flatMap((n) =>
    Object.keys(GRADE_PARTS).map((part) => row(`grade ${n} ${part}`, "")),
  );
  return [
    ["Term", standard.name, "Meaning"],
    ...TERMS.flatMap(({ label, meaning }) => [
      ...(label === FIRST_OF_MONEY ? grades : []),
      row(label, meaning),
    ]),
    ["", "", closing],
  ];
}

/**
 * A new sheet with a Terms table, and the name by which formulas call it. The name takes in the last
 * row that holds no term, so that terms added later come under it and not over it.
 */
export function termsSheet(sheet: string, name: string, table: Table): Step[] {
  return [
    { kind: "add sheet", name: sheet },
    put(
      sheet,
      table.map((row) => row.map(plain)),
    ),
    { kind: "cover", region: "name", name, place: placeOf(sheet, table) },
  ];
}
