import { isOneBox, placeOf } from "../../core/boxes.js";
import {
  BY_BOX,
  countsCombsThatHold,
  frameOfHeading,
  matchHeadings,
  type BesideOthers,
  type Role,
} from "../../core/headings.js";
import { yardColumns } from "../../core/yard-columns.js";
import { cellOf } from "../address.js";
import type { Step } from "../port.js";
import { freeName } from "../start/names.js";
import { typed } from "../stands.js";
import { columnsOf, type Yard } from "./yard.js";

/** A heading that is taken for each role, every word of it known. */
const HEADING_OF: Readonly<Record<string, string>> = {
  hive: "Hive",
  lot: "Lot",
  pallet: "Pallet",
  date: "Date",
  bees: "Frames of bees",
  "seams above": "Seams above",
  "seams below": "Seams below",
  brood: "Brood",
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
  readonly why: "doubt" | "calculated" | BesideOthers["why"];
}

/** Headings that leave it open what they hold, or whether they hold it again. */
export function questionsOf(yard: Yard): Question[] {
  const { headings, doubts, again } = columnsOf(yard);
  const seen = new Set<number>();
  const asked = doubts.map(({ role, heading, beside }): Question => {
    const column = headings.findIndex((other, k) => other === heading && !seen.has(k));
    seen.add(column);
    return { column, role, why: beside?.why ?? "doubt" };
  });
  const calculated = again.flatMap(({ column, role, known }): Question[] =>
    known === "calculated" ? [{ column, role, why: known }] : [],
  );
  return [...asked, ...calculated];
}

/**
 * The headings to change so that every function takes the columns as the user says: functions find
 * columns by their headings, so a heading is the one place where it can be said.
 */
export function renamesFor(yard: Yard, choices: Choices): Rename[] {
  const { headings } = yard;
  // Functions see cells, and do not see which of them a formula filled.
  const under = (row: readonly string[]) => yardColumns([row, ...yard.values.slice(1)]);
  const { roles: before, doubts } = under(headings);
  const given = new Set([...choices.values()].filter((role) => role !== null && !BY_BOX.has(role)));
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
    const { roles, doubts: open } = under(now);
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
      wanted.filter((role) => role === wanted[k]).length > 1,
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
      place: cellOf(place, 0, column),
      expect: [[entries[0]![column]!]],
      put: [[typed(to, format)]],
      formats: [[format]],
    };
  });
}

function headingFor(
  role: Role | null,
  old: string,
  others: readonly string[],
  isShared: boolean,
): string {
  // A table takes no heading twice.
  if (role === null) return freeName(`${old}, ${LEFT_OUT}`, others);
  const isOfCombs = role === "brood" && countsCombsThatHold(old);
  const plain = isOfCombs ? "Brood combs" : HEADING_OF[role]!;
  const frame = BY_BOX.has(role) ? frameOfHeading(old) : null;
  const isTakenBox = (place: string): boolean =>
    others.some((other) => placeOf(other) === place && matchHeadings([other]).roles[0] === role);
  const named = BY_BOX.has(role) ? boxOf(old) : null;
  const box = named === null || isTakenBox(named) ? null : named;
  const framed =
    box === null ? `${plain}, ${frame?.name}` : `${plain.replace("Frames of bees", "Bees")} ${box}`;
  const isTaken = (box ?? frame) !== null && matchHeadings([framed]).roles[0] === role;
  if (isTaken) return freeName(framed, others);
  // Of several columns that are added up each has to name its box.
  if (!isShared || !BY_BOX.has(role) || others.includes(plain)) return freeName(plain, others);
  const free = [1, 2, 3, 4, 5, 6].find((n) => !isTakenBox(`box ${n}`));
  return freeName(`${plain}, box ${free ?? 1}`, others);
}

/** The box that a heading names, in its own words: `top box` of `Top`; null where it names not one. */
function boxOf(heading: string): string | null {
  if (!isOneBox(heading)) return null;
  const place = placeOf(heading).replace(/\bbx\b/, "box");
  if (/^\d$/.test(place)) return `box ${place}`;
  return /^(?:box|body|super)$| |\d/.test(place) ? place : `${place} box`;
}
