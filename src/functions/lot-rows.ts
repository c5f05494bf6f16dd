import { firstOf, rowsHave } from "../core/listing.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { CellError } from "./cells.js";
import { onceEach } from "./once-each.js";
import type { HiveCells } from "./hive-cells.js";
import type { YardSheet } from "./yard-sheet.js";

/**
 * The rows of the hives that stand in one lot, opened or not.
 *
 * @param lot - its name in the sheet's lot column; null takes every hive of a sheet with one lot
 * @throws Refusal that names the rows without id or lot, or the lots of which one is to be chosen
 */
export function rowsOfLot(sheet: YardSheet, bees: HiveCells, lot: string | null): number[] {
  const lots = sheet.column("lot");
  if (lot === null) {
    refuseStrays(sheet, bees, () => true);
    const hives = hivesOf(sheet);
    const names = lotsIn(sheet);
    if (names.length > 1) {
      throw new Refusal(
        `the column ${quote(lots!.name)} holds several lots (${firstOf(names.map(quote))}): ` +
          `say which one, or give that column another heading where all of it is one lot`,
      );
    }
    return hives;
  }
  if (lots === null) {
    throw new Refusal(`lot ${quote(lot)} is asked for, and the sheet has no lot column`);
  }
  const isAsked = standsIn(lots, lot);
  const isUnsaid = (i: number): boolean => lots.text(i) === null;
  refuseStrays(sheet, bees, (i) => isAsked(i) || isUnsaid(i));
  const hives = hivesOf(sheet);
  const unsaid = hives.filter((i) => isUnsaid(i) && !bees.isUncounted(i)).map((i) => i + 2);
  if (unsaid.length > 0) throw new Refusal(`${rowsHave(unsaid)} no lot: write it in every row`);
  return hives.filter(isAsked);
}

/** The rows of the hives that name a lot, and of all hives where none is asked for. */
export function hivesOfLot(sheet: YardSheet, lot: string | null): number[] {
  const lots = sheet.column("lot");
  const hives = hivesOf(sheet);
  return lot === null || lots === null ? hives : hives.filter(standsIn(lots, lot));
}

function standsIn(lots: HiveCells, lot: string): (i: number) => boolean {
  const asked = normalise(lot);
  const isName = onceEach((name: string) => normalise(name) === asked);
  return (i) => isName(lots.text(i) ?? "");
}

/** A row that has counts and no id may be a hive, and may be a sum: which, nobody can tell. */
export function refuseStrays(
  sheet: YardSheet,
  bees: HiveCells,
  isMeant: (i: number) => boolean,
): void {
  const strays = rowsOf(sheet).filter(
    (i) => !sheet.isHive(i) && sheet.sums(i) === null && !bees.isUncounted(i) && isMeant(i),
  );
  if (strays.length === 0) return;
  throw new Refusal(
    `${rowsHave(strays.map((i) => i + 2))} counts and no hive id: give each hive its number, or write Total where it is a sum`,
  );
}

/** The lots that a sheet names for its hives, each once, in the order in which they stand. */
export function lotsIn(sheet: YardSheet): readonly string[] {
  const lots = sheet.column("lot");
  const names = new Map<string, string>();
  if (lots === null) return [];
  for (const i of hivesOf(sheet)) {
    if (lots.raw(i) instanceof CellError) continue;
    const name = lots.text(i);
    if (name !== null && !names.has(normalise(name))) names.set(normalise(name), name);
  }
  return [...names.values()];
}

const rowsOf = (sheet: YardSheet): number[] => Array.from({ length: sheet.rows }, (_, i) => i);

const hivesOf = (sheet: YardSheet): number[] => rowsOf(sheet).filter(sheet.isHive);
