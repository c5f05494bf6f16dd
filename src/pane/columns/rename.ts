import { frameOfHeading, matchHeadings, type Role } from "../../core/headings.js";
import type { Step } from "../port.js";
import { holdsFormula, typed } from "../stands.js";
import type { Yard } from "./yard.js";

/** A heading that is taken for each role, every word of it known. */
const HEADING_OF: Readonly<Record<string, string>> = {
  hive: "Hive",
  lot: "Lot",
  pallet: "Pallet",
  date: "Date",
  bees: "Frames of bees",
  "seams above": "Seams above",
  "seams below": "Seams below",
  brood: "Brood combs",
  "brood cover": "Brood %",
  queen: "Laying queen",
  stores: "Stores",
  contract: "Contract",
  notes: "Notes",
};

/** The roles that a column can be given. */
export const ROLES = Object.keys(HEADING_OF) as readonly Role[];

/** Added to a heading whose column is to be passed over. */
const LEFT_OUT = "uncounted";

/** Roles of which a sheet may have a column a box, all of them added up. */
const ADDED_UP: ReadonlySet<Role> = new Set(["bees", "seams above", "seams below", "brood"]);

/** What the user says a column holds; null for a column that the functions are to leave alone. */
export type Choices = ReadonlyMap<number, Role | null>;

export interface Rename {
  readonly column: number;
  readonly from: string;
  readonly to: string;
}

/** A column that the functions would not take, or would take wrongly, unless somebody says. */
export interface Question {
  readonly column: number;
  readonly role: Role;
  readonly why: "doubt" | "calculated";
}

/** Headings that leave it open what they hold, and sums beside the boxes that they add up. */
export function questionsOf(yard: Yard): Question[] {
  const { headings, entries } = yard;
  const { roles, doubts } = matchHeadings(headings);
  const seen = new Set<number>();
  const asked = doubts.map(({ role, heading }): Question => {
    const column = headings.findIndex((other, k) => other === heading && !seen.has(k));
    seen.add(column);
    return { column, role, why: "doubt" };
  });
  const isCalculated = headings.map((_, k) =>
    entries.some((_, i) => i > 0 && holdsFormula(yard, i, k)),
  );
  const twice = roles.flatMap((role, column): Question[] => {
    if (role === null || !ADDED_UP.has(role) || !isCalculated[column]) return [];
    const written = roles.some((other, k) => other === role && !isCalculated[k]);
    return written ? [{ column, role, why: "calculated" }] : [];
  });
  return [...asked, ...twice];
}

/**
 * The headings to change so that every function takes the columns as the user says: functions find
 * columns by their headings, so a heading is the one place where it can be said.
 */
export function renamesFor(headings: readonly string[], choices: Choices): Rename[] {
  const { roles: before, doubts } = matchHeadings(headings);
  const given = new Set(
    [...choices.values()].filter((role) => role !== null && !ADDED_UP.has(role)),
  );
  // One column alone holds the hives: another that claims them too is left out.
  const yields = headings.map((heading, k) => {
    const claim = before[k] ?? doubts.find((doubt) => doubt.heading === heading)?.role;
    return !choices.has(k) && claim !== undefined && given.has(claim);
  });
  const wanted = headings.map((_, k) =>
    choices.has(k) ? choices.get(k)! : yields[k] ? null : before[k]!,
  );
  const now = [...headings];
  // A heading that is left out may let another one in, such as a total once its boxes are gone.
  for (let round = 0; round < 2 * headings.length; round++) {
    const { roles, doubts: open } = matchHeadings(now);
    const isWrong = (k: number): boolean =>
      roles[k] !== wanted[k] ||
      ((choices.has(k) || yields[k]!) && open.some((doubt) => doubt.heading === now[k]));
    const wrong = now.flatMap((_, k) => (isWrong(k) ? [k] : []));
    const k = wrong.find((column) => wanted[column] === null) ?? wrong[0];
    if (k === undefined) break;
    now[k] = headingFor(
      wanted[k]!,
      headings[k]!,
      now.filter((_, i) => i !== k),
    );
  }
  return headings.flatMap((from, column) => {
    const to = now[column]!;
    return to === from ? [] : [{ column, from, to }];
  });
}

/** The change as one step for each heading. */
export function renameSteps({ place, entries, formats }: Yard, renames: readonly Rename[]): Step[] {
  return renames.map(({ column, to }) => {
    const format = formats[0]![column]!;
    return {
      kind: "put",
      place: { ...place, column: place.column + column, rows: 1, columns: 1 },
      expect: [[entries[0]![column]!]],
      put: [[typed(to, format)]],
      formats: [[format]],
    };
  });
}

function headingFor(role: Role | null, old: string, others: readonly string[]): string {
  if (role === null) return numbered(`${old}, ${LEFT_OUT}`, others);
  const plain = HEADING_OF[role]!;
  const frame = ADDED_UP.has(role) ? frameOfHeading(old) : null;
  const framed = `${plain}, ${frame?.name}`;
  const isTaken = frame !== null && matchHeadings([framed]).roles[0] === role;
  return numbered(isTaken ? framed : plain, others);
}

/** The heading, with a number where it stands already: a table takes none twice. */
export function numbered(heading: string, others: readonly string[]): string {
  const taken = new Set(others.map((other) => other.toLowerCase()));
  for (let n = 1; ; n++) {
    const candidate = n === 1 ? heading : `${heading} ${n}`;
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
}
