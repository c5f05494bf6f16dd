import { FRAMES, type FrameSize } from "./comb.js";
import { normalise } from "./text.js";

/** What a column of a yard sheet holds. */
export type Role =
  | "hive"
  | "lot"
  | "pallet"
  | "date"
  | "bees"
  | "seams above"
  | "seams below"
  | "brood"
  | "brood cover"
  | "queen"
  | "stores"
  | "contract"
  | "notes";

/** A heading that may hold a role and was not taken for it. */
export interface Doubt {
  readonly role: Role;
  readonly heading: string;
  /** Where it stands beside other columns of its role: what is amiss, and their headings. */
  readonly beside?: BesideOthers;
}

export interface BesideOthers {
  readonly why: "names no box" | "another look" | "their sum";
  readonly headings: readonly string[];
  /** The row of the sheet in which it is not the others' sum, as it is in the rows above. */
  readonly row: number | null;
}

export interface HeadingMatch {
  /** The role of each column, null for a column that the sheet's owner keeps for himself. */
  readonly roles: readonly (Role | null)[];
  readonly doubts: readonly Doubt[];
}

const words = (text: string): ReadonlySet<string> => new Set(text.split(" "));

/** Roles of which a sheet may have one column a box, all of them added up. */
export const BY_BOX: ReadonlySet<Role> = new Set(["bees", "seams above", "seams below", "brood"]);

/** Words that say of a column that it is about something else, whatever else stands in it. */
const OTHER = words(
  "added add removed taken given fed treated treatment treat supplier breeder price cost mites mite varroa pattern oldest stage capped sealed open egg eggs larva larvae drone drones cells cell pupae temp temperature time hour weather wind gps orchard color colour age year marked mark strength grade next previous last old uncounted",
);

/** Words that any column of figures may carry. */
const PLAIN = words(
  "of the in on at a an no nr num number # ? count counts counted cnt est est. estimate estimated approx y n yes seen with w w/ and to from by per for this today now arrival judged covered covering opened open. looked insp inspected inspection box boxes bx body bodies brood-box deep deeps medium mediums med shallow shallows national super top bottom upper lower middle mid first second third bot btm d1 d2 d3 d4 m1 m2 s1 s2 checked graded opened hive hives colony col 1 2 3 4 5 6 one two three four frames frame fr frs fr. frm frms f combs comb full name date fr# #fr each equiv equivalents equivalent total totals tot sum",
);

interface Rule {
  readonly role: Role;
  /** At least one word of each list must stand in the heading; the first list's order is a rank. */
  readonly needs: readonly (readonly string[])[];
  /** Further words that the heading may carry. */
  readonly may: ReadonlySet<string>;
}

function rule(role: Role, needs: readonly string[], may: string): Rule {
  return { role, needs: needs.map((list) => list.split(" ")), may: words(may) };
}

const PERCENT = "% percent pct cover coverage cov fill filled solid";
/** A cluster is looked at from above and below, and the looks are averaged as those of seams are. */
const SEAM = "seam seams cluster";
const BROOD = "brood brd br fobr";

/** The more special rule first: `brood %` before `brood`, `hive weight` before `hive`. */
const RULES: readonly Rule[] = [
  rule("seams above", [SEAM, "above top upper down"], "bees looking"),
  rule(
    "seams below",
    [SEAM, "below bottom bot btm lower under underneath beneath up"],
    "bees looking tipped",
  ),
  rule("brood cover", [BROOD, PERCENT], "comb avg average area mean"),
  rule("bees", ["bees bee fob fobs cluster adults"], "adult adults size occupied bees"),
  rule("brood", [BROOD], "worker area"),
  rule(
    "stores",
    ["stores store honey food feed weight wt heft"],
    "lb lbs kg pounds left est weight wt",
  ),
  rule(
    "queen",
    ["queen queenright queen-right qr qrt q laying"],
    "right queen laying ok present q",
  ),
  rule("date", ["date inspected insp opened day"], ""),
  rule("lot", ["lot load yard origin wintered region apiary truck truckload"], "wintering id code"),
  rule("pallet", ["pallet pallets plt pal drop skid"], "id code"),
  rule("contract", ["contract contracts"], "goes going under"),
  rule("notes", ["notes note remarks remark comments comment observations"], "misc other"),
  rule("hive", ["hive colony col hive# tag id no # number hives"], "tag id code label hive#"),
];

/** A sum beside the columns that it adds is no box of its own. */
const TOTAL = words("total totals tot sum");

const FRAME_WORDS = words("frames frame fr frs fr. frms combs comb");

/**
 * Finds what each column of a yard sheet holds by the words of its heading.
 *
 * A heading is taken only where every word of it is understood; one that names a role beside a word
 * that is not known is left as a doubt, to be asked about, never taken in silence.
 *
 * @param headings - the heading row, blanks included
 */
export function matchHeadings(headings: readonly string[]): HeadingMatch {
  const doubts: Doubt[] = [];
  const found = headings.map((heading) => {
    const parts = wordsOf(heading);
    if (parts.some((word) => OTHER.has(word))) return null;
    const match = RULES.find((r) => names(r, parts));
    if (!match) {
      const seams = parts.some((word) => ["seam", "seams"].includes(word));
      const frames =
        parts.every((word) => PLAIN.has(word)) && parts.some((w) => FRAME_WORDS.has(w));
      if (seams) doubts.push({ role: "seams above", heading });
      else if (frames) doubts.push({ role: "bees", heading });
      return null;
    }
    const known = parts.every(
      (w) => PLAIN.has(w) || match.may.has(w) || match.needs.flat().includes(w),
    );
    if (known) {
      const isTotal = parts.some((word) => TOTAL.has(word));
      return { role: match.role, rank: rankOf(match, parts), isTotal };
    }
    doubts.push({ role: match.role, heading });
    return null;
  });
  const roles = found.map((match, i) => {
    if (!match) return null;
    if (BY_BOX.has(match.role)) {
      const boxes = found.some((other) => other?.role === match.role && !other.isTotal);
      if (match.isTotal && boxes) return null;
      if (framesIn(headings[i]!).length < 2) return match.role;
      doubts.push({ role: match.role, heading: headings[i]! });
      return null;
    }
    const rivals = found.filter((other) => other?.role === match.role);
    const better = rivals.some((other) => other!.rank < match.rank);
    const equals = rivals.filter((other) => other!.rank === match.rank).length;
    if (!better && equals > 1) doubts.push({ role: match.role, heading: headings[i]! });
    return better || equals > 1 ? null : match.role;
  });
  if (!COUNTS.some((role) => roles.includes(role))) {
    headings.forEach((heading, k) => {
      if (roles[k] === null && !isAsked(doubts, heading) && mayHoldBees(heading))
        doubts.push({ role: "bees", heading });
    });
  }
  return { roles, doubts };
}

const COUNTS: readonly Role[] = ["bees", "seams above", "seams below"];

/** Words that head bees in a sheet which names them nowhere else: `Top`, `Deep 1`, `T`, `Strength`. */
const BEES_UNNAMED = words(
  "top bottom bot btm upper lower t b d1 d2 d3 d4 m1 m2 s1 s2 deep deeps medium mediums med shallow shallows strength",
);

function mayHoldBees(heading: string): boolean {
  const parts = wordsOf(heading);
  return (
    parts.some((word) => BEES_UNNAMED.has(word)) &&
    parts.every((word) => BEES_UNNAMED.has(word) || PLAIN.has(word))
  );
}

const isAsked = (doubts: readonly Doubt[], heading: string): boolean =>
  doubts.some((doubt) => doubt.heading === heading);

/** Whether headings are those of a yard sheet: hives, and how many bees they have. */
export function headsYard(roles: readonly (Role | null)[]): boolean {
  return roles.includes("hive") && (roles.includes("bees") || roles.includes("seams above"));
}

/** What else may be seen of a hive and stand in a column of its own. */
export type Sign = "eggs" | "pattern" | "drone";

/** Words that say of such a column that it is a count, a score or a deed, and no sign. */
const NO_SIGN = words(
  "added add removed remove taken given fed treated treatment treat mites mite varroa count counts counted cells cell queen laid date day next previous last old uncounted",
);
const SIGN_PLAIN = words("of the in a y n yes no seen ? brood brd worker capped sealed comb combs");
const SIGN_NEEDS: readonly (readonly [Sign, readonly string[]])[] = [
  ["eggs", ["eggs", "egg"]],
  ["drone", ["drone", "drones"]],
  ["pattern", ["pattern"]],
];

/**
 * Finds the columns of signs by their headings, apart from the roles that decide a grade.
 *
 * @returns the column of each sign, and the headings that may be one and are not understood
 */
export function matchSigns(headings: readonly string[]): {
  readonly columns: ReadonlyMap<Sign, number>;
  readonly doubts: readonly { readonly sign: Sign; readonly heading: string }[];
} {
  const columns = new Map<Sign, number>();
  const doubts: { sign: Sign; heading: string }[] = [];
  headings.forEach((heading, k) => {
    const parts = wordsOf(heading);
    const found = SIGN_NEEDS.find(([, needs]) => needs.some((word) => parts.includes(word)));
    if (found === undefined || parts.some((word) => NO_SIGN.has(word))) return;
    const [sign] = found;
    const all = SIGN_NEEDS.flatMap(([, needs]) => needs);
    const known = parts.every((word) => SIGN_PLAIN.has(word) || all.includes(word));
    if (!known || columns.has(sign)) doubts.push({ sign, heading });
    else columns.set(sign, k);
  });
  return { columns, doubts };
}

/**
 * What a heading says that stores are counted in; `hive weight` where it may be the weight of the
 * whole hive, null where it does not say.
 */
export function storesUnitOf(heading: string): "frames" | "lb" | "kg" | "hive weight" | null {
  const parts = wordsOf(heading);
  const has = (list: string): boolean => list.split(" ").some((word) => parts.includes(word));
  if (has("weight wt heft") && !has("stores store honey food feed")) return "hive weight";
  if (has("lb lbs pounds")) return "lb";
  if (has("kg")) return "kg";
  return has("frames frame fr frs fr. frms combs comb") ? "frames" : null;
}

/** A queen who is not seen is there nonetheless, as a rule: the heading asks for no more than a look. */
export function asksWhetherSeen(heading: string): boolean {
  const parts = wordsOf(heading);
  return parts.includes("seen") && parts.some((word) => QUEEN.has(word));
}

const QUEEN = words("queen queenright qr qrt q");

/**
 * Whether a heading counts the combs that hold brood, of which each may be partly filled. Frames of
 * brood are said of full ones (both common practice, no source).
 */
export function countsCombsThatHold(heading: string): boolean {
  const parts = wordsOf(heading);
  return parts.some((word) => HOLD.has(word)) && !parts.some((word) => FULL.has(word));
}

/** Whether a heading counts the brood of one stage alone, such as `Capped brood`. */
export function countsStage(heading: string): boolean {
  const parts = wordsOf(heading);
  const has = (of: ReadonlySet<string>): boolean => parts.some((word) => of.has(word));
  const isKnown = parts.every((w) => STAGE.has(w) || BROODS.has(w) || PLAIN.has(w));
  return has(BROODS) && has(STAGE) && isKnown;
}

const BROODS = words(BROOD);
const STAGE = words("capped sealed uncapped unsealed open egg eggs larva larvae pupae");

const HOLD = words("comb combs with w");
const FULL = words("full solid equiv equivalent equivalents");

/** The frame that a heading names (`Medium bees`, `bees, deep 1`), null where it names none. */
export function frameOfHeading(heading: string): FrameSize | null {
  return framesIn(heading)[0] ?? null;
}

/** The frames that a heading names; a `national deep` is no deep beside it. */
function framesIn(heading: string): FrameSize[] {
  const parts = ` ${wordsOf(heading).join(" ")} `
    .replace(/ meds? /, " medium ")
    .replace(/s /g, " ");
  const named = FRAMES.filter((frame) => parts.includes(` ${frame.name} `));
  return named.filter(({ name }) => !named.some((n) => n.name !== name && n.name.includes(name)));
}

/** The words of a heading, without signs; a table's second `Bees` is `Bees2`. */
export function wordsOf(heading: string): string[] {
  return normalise(heading)
    .replace(/brood (?:box|boxes|chamber|nest)/g, "box")
    .replace(/\b(bees|fob|brood)(\d)\b/g, "$1 $2")
    .replace(/[()[\]:;,/&+*'"_.-]/g, " ")
    .replace(/([%#?])/g, " $1 ")
    .split(" ")
    .filter((word) => word !== "");
}

function names(candidate: Rule, parts: readonly string[]): boolean {
  return candidate.needs.every((list) => list.some((word) => parts.includes(word)));
}

/** Of two headings for one role the better has the earlier word of the list, then fewer words. */
function rankOf(match: Rule, parts: readonly string[]): number {
  return match.needs[0]!.findIndex((word) => parts.includes(word)) * 100 + parts.length;
}
