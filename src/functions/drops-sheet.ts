import type { Contract } from "../core/contract.js";
import type { Drop } from "../core/drops.js";
import { latestLooks } from "../core/lot.js";
import { lotName, type ListedHive, type LotSize } from "../core/pallets.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { checkRows, type HiveCells } from "./hive-cells.js";
import { dayAt } from "./dates.js";
import { framesAt, standingAt } from "./look.js";
import { refuseStrays } from "./lot-rows.js";
import { checkSingle } from "./rows.js";
import { remarkOnSums } from "./sum-rows.js";
import { yardSheet, type YardSheet } from "./yard-sheet.js";

/** What a yard sheet says of the hives to be placed. */
export interface SheetHives {
  readonly hives: readonly ListedHive[];
  readonly lots: readonly LotSize[];
  /** Lots of the sheet that are not asked for. */
  readonly leftOut: readonly string[];
  /** What is to be said of rows that are no hives. */
  readonly noHives: string;
  /** Dead hives, each with where it stands. */
  readonly dead: readonly string[];
}

/** A listed hive before it is known which lots are asked for. */
interface Listed extends ListedHive {
  readonly day: number | null;
  readonly dead: boolean;
}

/**
 * The hives of a yard sheet by lot and pallet; one whose bees are blank was not opened.
 *
 * @param single - hives are moved singly, whatever pallets the sheet names
 */
export function hivesOfSheet(
  yard: unknown[][],
  contract: Contract,
  lots: HiveCells | null,
  sizes: HiveCells | null,
  single: boolean,
): SheetHives {
  const sheet = yardSheet(yard);
  const listed = latestLooks(listedHives(sheet, contract, single));
  const inSheet = [...new Set(listed.map((hive) => hive.lot))];
  const asked = lotsAsked(lots, sizes, inSheet);
  const names = asked.map(({ lot }) => lot);
  const hives = listed.filter((hive) => names.includes(hive.lot));
  return {
    hives,
    lots: asked,
    noHives: remarkOnSums(sheet),
    leftOut: inSheet.filter((lot) => !names.includes(lot)),
    dead: hives.filter((hive) => hive.dead).map((hive) => `${hive.id}${placeOf(hive)}`),
  };
}

/** Where a hive is to be found, as far as the sheet says it. */
function placeOf({ lot, pallet }: Listed): string {
  if (pallet !== null) return ` (pallet ${pallet})`;
  return lot === "" ? "" : ` (${lotName(lot)})`;
}

function listedHives(sheet: YardSheet, contract: Contract, single: boolean): Listed[] {
  const looks = sheet.looks(contract);
  const ids = sheet.column("hive")!;
  const [lots, pallets, dates] = [
    sheet.column("lot"),
    sheet.column("pallet"),
    sheet.column("date"),
  ];
  if (pallets === null && !single) {
    throw new Refusal(
      'the sheet has no pallet column: give one headed "Pallet", or 1 as on_pallet to move single hives',
    );
  }
  refuseStrays(sheet, looks.bees, () => true);
  const spelling = new Map<string, string>();
  const asFirstSpelled = (text: string): string => {
    const key = normalise(text);
    if (!spelling.has(key)) spelling.set(key, text);
    return spelling.get(key)!;
  };
  return Array.from({ length: sheet.rows }, (_, i): Listed | null => {
    if (!sheet.isHive(i)) return null;
    const standing = standingAt(looks, i);
    if (standing === "gone") return null;
    const id = ids.text(i)!;
    const lot = lots?.text(i) ?? null;
    if (lots !== null && lot === null) throw new Refusal(`hive ${id} of row ${i + 2} has no lot`);
    const pallet = single ? null : (pallets?.text(i) ?? null);
    if (pallet === null && !single) {
      throw new Refusal(`hive ${id} of row ${i + 2} has no pallet`);
    }
    const isOpened = standing === "opened" && !looks.bees.isEmpty(i);
    const seen = isOpened ? framesAt(looks, i, contract) : null;
    return {
      id,
      lot: asFirstSpelled(lot ?? ""),
      pallet: pallet && asFirstSpelled(pallet),
      frames: seen && Math.min(seen.middle, contract.mostFrames || Infinity),
      day: dayAt(dates, i, contract),
      dead: seen?.dead ?? false,
    };
  }).filter((hive) => hive !== null);
}

/** The lots to place and their sizes, spelled as in the sheet; all of it where none is named. */
function lotsAsked(
  names: HiveCells | null,
  sizes: HiveCells | null,
  inSheet: readonly string[],
): LotSize[] {
  checkSingle([names, sizes]);
  if (names === null) {
    if (sizes === null) return inSheet.map((lot) => ({ lot, hives: null }));
    if (inSheet.length > 1) {
      throw new Refusal("lots: left out, and the sheet has several: say whose the lot_sizes are");
    }
    const hives = sizes.rows === 1 ? wholeAt(sizes, 0) : null;
    if (hives === null) throw new Refusal("lot_sizes: one number was expected for the one lot");
    return inSheet.map((lot) => ({ lot, hives }));
  }
  checkRows([names, sizes]);
  const asked = Array.from({ length: names.rows }, (_, i): LotSize[] => {
    const name = names.text(i);
    if (name === null) return [];
    const lot = inSheet.find((known) => normalise(known) === normalise(name));
    if (lot === undefined) {
      throw new Refusal(`no opened hive stands in ${lotName(name)}, so its average is not known`);
    }
    return [{ lot, hives: sizes && wholeAt(sizes, i) }];
  }).flat();
  if (asked.length === 0) throw new Refusal("lots: no lot is named: name some, or leave it out");
  const twice = asked.find(({ lot }, i) => asked.findIndex((other) => other.lot === lot) < i);
  if (twice !== undefined) throw new Refusal(`${lotName(twice.lot)} stands twice in lots`);
  return asked;
}

/** The drops in the order of their rows; one without a name is called by its row. */
export function dropsAsked(
  sizes: HiveCells,
  names: HiveCells | null,
  least: HiveCells | null,
): Drop[] {
  checkSingle([sizes, names, least]);
  checkRows([sizes, names, least]);
  const drops = Array.from({ length: sizes.rows }, (_, i): Drop[] => {
    const hives = wholeAt(sizes, i);
    if (hives === null) return [];
    const name = names?.text(i) ?? `${i + 1}`;
    return [{ name, hives, least: least === null ? 0 : (numberAt(least, i) ?? 0) }];
  }).flat();
  if (drops.length === 0) throw new Refusal("sizes: no drop is given");
  const twice = drops.find(({ name }, i) => drops.findIndex((other) => other.name === name) < i);
  if (twice !== undefined) throw new Refusal(`names: two drops are named ${quote(twice.name)}`);
  return drops;
}

function wholeAt(column: HiveCells, i: number): number | null {
  const value = numberAt(column, i);
  if (value === null || (Number.isInteger(value) && value <= 1e5)) return value;
  return column.named(i, 0, () => {
    throw new Refusal(`${value} stands where a whole number of hives was expected`);
  });
}

function numberAt(column: HiveCells, i: number): number | null {
  if (column.isEmpty(i)) return null;
  const cell = column.cell(i);
  return column.named(i, 0, () => {
    if (typeof cell === "number" && cell > 0 && Number.isFinite(cell)) return cell;
    throw new Refusal(`${quote(String(cell))} stands where a number over 0 was expected`);
  });
}
