import type { Contract } from "../core/contract.js";
import { headsBoxes, isBoxName } from "../core/boxes.js";
import {
  BY_BOX,
  countsCombsThatHold,
  countsStage,
  frameOfHeading,
  matchHeadings,
  matchSigns,
  wordsOf,
  type Doubt,
  type Role,
  type Sign,
} from "../core/headings.js";
import { plural } from "../core/plural.js";
import { quote, Refusal } from "../core/refusal.js";
import { yardColumns } from "../core/yard-columns.js";
import { normalise } from "../core/text.js";
import { isBlankOrZero } from "./cells.js";
import { onceEach } from "./once-each.js";
import { HiveCells } from "./hive-cells.js";
import { checkStoresUnit, storesUnitFor } from "./stores-unit.js";
import { labelOfSums } from "./sum-rows.js";
import type { LookColumns } from "./look.js";

/** A yard sheet: one hive a row under a heading row, its columns found by their headings. */
export interface YardSheet {
  readonly rows: number;
  /** Whether a row holds a hive: it has an id, and is no row of sums. */
  readonly isHive: (i: number) => boolean;
  /** How a row of sums or averages under the hives is labelled; null for any other row. */
  readonly sums: (i: number) => string | null;
  /** The columns that hold a role, null where the sheet has none. */
  readonly column: (role: Role) => HiveCells | null;
  /** Bees in a super of which no heading names the frame; null where the sheet has none. */
  readonly bareSuper: HiveCells | null;
  /** The column of a sign, null where the sheet has none; refused where a heading may be one. */
  readonly sign: (sign: Sign) => HiveCells | null;
  /** How its hives were found, read as a contract that counts combs or seams wants it. */
  readonly looks: (contract: Contract) => LookColumns;
}

/** Roles that decide a grade: a heading that may be one of them is asked about, not passed over. */
const DECIDING: ReadonlySet<Role> = new Set([
  "hive",
  "bees",
  "seams above",
  "seams below",
  "brood",
  "brood cover",
]);

const SIGN_NAMES: Readonly<Record<Sign, string>> = {
  eggs: "eggs seen",
  pattern: "the brood pattern",
  drone: "drone brood",
};

/**
 * Reads the heading row of a yard sheet.
 *
 * @param cells - the whole sheet with its heading row; rows in messages are counted from it
 * @throws Refusal that names the heading that is missing or may be meant
 */
export function yardSheet(cells: readonly (readonly unknown[])[]): YardSheet {
  const { headings, roles, doubts, opened } = yardColumns(cells);
  const columnsOf = (role: Role): number[] => roles.flatMap((r, i) => (r === role ? [i] : []));

  const missing = (role: Role, example: string): never => {
    const asked = doubts.filter((d) => d.role === role).map((d) => quote(d.heading));
    const plainly = asked.length > 1 ? ', a box such as "Bees top box"' : "";
    const maybe =
      asked.length > 0 ? `; is it ${asked.join(" or ")}? Then name it plainly${plainly}` : "";
    throw new Refusal(`the first row needs a heading such as ${quote(example)}${maybe}`);
  };
  if (columnsOf("hive").length === 0) missing("hive", "Hive");
  refuseTwoHeadingRows(headings, roles.indexOf("hive"), cells[1]);
  refuseRowsOfBoxes(headings, roles, cells);
  doubts.forEach(refuseBeside);
  const hasSeams = columnsOf("seams above").length > 0 || columnsOf("seams below").length > 0;
  if (columnsOf("bees").length === 0 && !hasSeams) missing("bees", "Frames of bees");
  const doubt = doubts.find((d) => DECIDING.has(d.role));
  if (doubt) {
    throw new Refusal(
      `the heading ${quote(doubt.heading)} may or may not hold ${doubt.role}: rename it, or leave its column out`,
    );
  }

  const pick = (columns: readonly number[]): HiveCells => {
    const names = columns.map((k) => headings[k]!.replace(/\s+/g, " ").trim());
    return new HiveCells(names.join(" and "), cells, { columns, headings: names, firstRow: 2 });
  };
  const column = onceEach((role: Role) => {
    const columns = columnsOf(role);
    return columns.length === 0 ? null : pick(columns);
  });
  const sizes = (columns: readonly number[]) =>
    onceEach((contract: Contract) =>
      columns.map((k) => frameOfHeading(headings[k]!) ?? contract.boxFrame),
    );

  const supers = columnsOf("bees").filter(
    (k) => wordsOf(headings[k]!).includes("super") && frameOfHeading(headings[k]!) === null,
  );
  const [hive = -1] = columnsOf("hive");
  const sums = (i: number): string | null => labelOfSums(cells[i + 1]!, hive);
  const isHive = (i: number): boolean => !column("hive")!.isEmpty(i) && sums(i) === null;

  return {
    rows: cells.length - 1,
    isHive,
    sums,
    column,
    bareSuper: supers.length > 0 ? pick(supers) : null,
    sign: onceEach((sign: Sign) => {
      const { columns, doubts } = matchSigns(headings);
      const doubt = doubts.find((d) => d.sign === sign);
      if (doubt) {
        throw new Refusal(
          `the heading ${quote(doubt.heading)} may or may not tell of ${SIGN_NAMES[sign]}: rename it, or leave its column out`,
        );
      }
      return columns.has(sign) ? pick([columns.get(sign)!]) : null;
    }),
    looks: onceEach((contract: Contract) => {
      const bySeams = hasSeams && (contract.combRule === "cluster count" || !column("bees"));
      if (bySeams && contract.combRule !== "cluster count") {
        throw new Refusal(
          `the sheet counts seams, and contract ${quote(contract.name)} does not: its comb rule is ${contract.combRule}`,
        );
      }
      if (contract.combRule === "cluster count" && !hasSeams) {
        throw new Refusal(
          `contract ${quote(contract.name)} counts seams, and the sheet counts combs, ${quote(column("bees")!.name)}: ` +
            `a cluster count is made of "Seams above" and "Seams below"`,
        );
      }
      const stages = column("brood") ? [] : headings.filter(countsStage);
      const asksBrood = () => contract.brood > 0 || contract.grades.some((g) => g.brood > 0);
      if (stages.length > 0 && asksBrood()) {
        throw new Refusal(
          `contract ${quote(contract.name)} asks for brood, and the sheet has it by stage, ${stages.map(quote).join(" and ")}: ` +
            'add a column "Brood" of all stages together; a comb that holds two of them is one comb',
        );
      }
      if (contract.stores > 0) checkStoresUnit(column("stores"), contract);
      const seams = pairSeams(columnsOf("seams above"), columnsOf("seams below"), bySeams);
      const bees = bySeams ? seams : columnsOf("bees");
      const brood = columnsOf("brood");
      return {
        bees: pick(bees),
        beesAre: bySeams ? "seams" : "boxes",
        brood: column("brood"),
        cover: column("brood cover"),
        broodIsCombs: brood.some((k) => countsCombsThatHold(headings[k]!)),
        queen: column("queen"),
        stores: column("stores"),
        inspected: column("date"),
        opened: opened.length === 1 ? pick(opened) : column("date"),
        notes: column("notes"),
        isDateOwn: ownDates(pick(bees), column("date"), column("lot"), isHive),
        beeFrames: sizes(bees),
        broodFrames: sizes(brood),
        storesUnit: onceEach((contract: Contract) => storesUnitFor(column("stores"), contract)),
        blankIsNone: true,
      };
    }),
  };
}

/**
 * Whether the date of a row is that of its own hive's inspection: other hives of its lot that are not
 * counted have none, and most that have one are counted. A date filled down says nothing of a hive.
 */
function ownDates(
  bees: HiveCells,
  dates: HiveCells | null,
  lots: HiveCells | null,
  isHive: (i: number) => boolean,
): (i: number) => boolean {
  if (dates === null) return () => false;
  const lotOf = (i: number): string => normalise(String(lots?.raw(i) ?? ""));
  const tally = () => {
    const found = new Map<string, { counted: number; blank: number; undated: number }>();
    for (let i = 0; i < bees.rows; i++) {
      if (!isHive(i)) continue;
      const of = found.get(lotOf(i)) ?? { counted: 0, blank: 0, undated: 0 };
      const isDated = !dates.isUncounted(i);
      if (isDated && !bees.isUncounted(i)) of.counted++;
      else if (isDated) of.blank++;
      else if (bees.isUncounted(i)) of.undated++;
      found.set(lotOf(i), of);
    }
    return found;
  };
  let tallies: ReturnType<typeof tally> | null = null;
  return (i) => {
    if (dates.isUncounted(i)) return false;
    tallies ??= tally();
    const { counted, blank, undated } = tallies.get(lotOf(i))!;
    return undated > 0 && counted > blank;
  };
}

/** `Bees` over `Top` and `Bottom`: the boxes beside the first would be passed over. */
function refuseTwoHeadingRows(
  headings: readonly string[],
  hive: number,
  under: readonly unknown[] = [],
): void {
  if (!isBlankOrZero(under[hive])) return;
  headings.forEach((over, k) => {
    const role = isBoxName(under[k]) ? matchHeadings([over]).roles[0] : null;
    if (!role || !BY_BOX.has(role)) return;
    throw new Refusal(
      `the headings stand in two rows, ${quote(over)} over ${quote(String(under[k]))}: write them in ` +
        `one row, ${quote(`${over} ${String(under[k])}`)}`,
    );
  });
}

/** A row a box: each would be graded as a hive, or left out for want of a name. */
function refuseRowsOfBoxes(
  headings: readonly string[],
  roles: readonly (Role | null)[],
  cells: readonly (readonly unknown[])[],
): void {
  const box = headings.findIndex((heading, k) => roles[k] === null && headsBoxes(heading));
  if (box < 0) return;
  const hive = roles.indexOf("hive");
  const look = [hive, roles.indexOf("lot"), roles.indexOf("date")];
  const boxOf = new Map<string, string>();
  for (let i = 1; i < cells.length; i++) {
    const row = cells[i]!;
    if (isBlankOrZero(row[box])) continue;
    const name = normalise(String(row[box]));
    const key = look.map((k) => String(row[k] ?? "")).join("\n");
    const isNameless = isBlankOrZero(row[hive]);
    const isCounted = roles.some((role, k) => BY_BOX.has(role!) && !isBlankOrZero(row[k]));
    if (isNameless ? isCounted : (boxOf.get(key) ?? name) !== name) {
      throw new Refusal(
        `${quote(headings[box]!)} makes several rows of a hive, as row ${i + 1} is: write each hive in one row, ` +
          'with a column a box such as "Bees top box" and "Bees bottom box"',
      );
    }
    boxOf.set(key, name);
  }
}

/** What may be a box, a total or another look must be said before anything is added up. */
function refuseBeside({ role, heading, beside }: Doubt): void {
  if (beside === undefined) return;
  const others = beside.headings.map(quote).join(" and ");
  if (beside.why === "their sum") {
    throw new Refusal(
      `${quote(heading)} is the sum of ${others} in every row: if it is their total, head it ${quote(`Total ${role}`)}`,
    );
  }
  if (beside.why === "another look") {
    throw new Refusal(
      `${quote(heading)} beside ${others} is another look at the same hives, and looks are not added up: ` +
        `leave out one, or head it ${quote(`${heading}, uncounted`)}`,
    );
  }
  if (beside.row !== null) {
    throw new Refusal(
      `${quote(heading)} is the sum of ${others} in the rows above row ${beside.row}, and not in it: correct ` +
        `the row, or head the column ${quote(`Total ${role}`)}`,
    );
  }
  // Top and bottom say of seams from where they are seen.
  const place = role.startsWith("seams") ? "box 1" : "top box";
  const box = `${role[0]!.toUpperCase()}${role.slice(1)} ${place}`;
  throw new Refusal(
    `${quote(heading)} stands beside ${others} and names no box: head a box by its place, such as ` +
      `${quote(box)}, a total ${quote(`Total ${role}`)}, and what is not to be added ${quote(`${heading}, uncounted`)}`,
  );
}

function pairSeams(above: readonly number[], below: readonly number[], needed: boolean): number[] {
  if (needed && above.length !== below.length) {
    throw new Refusal(
      `seams are counted from above in ${plural(above.length, "column")} and from below in ${below.length}: give both for each box`,
    );
  }
  return above.flatMap((k, i) => [k, below[i]!]);
}
