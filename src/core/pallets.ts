import { plural } from "./plural.js";
import { mean } from "./mean.js";
import { quote, Refusal } from "./refusal.js";

/** A hive that is listed: with its frames of bees where it was opened. */
export interface ListedHive {
  readonly id: string;
  readonly lot: string;
  /** Null where hives are moved singly. */
  readonly pallet: string | null;
  /** Null where it was not opened. */
  readonly frames: number | null;
}

/** Hives that are loaded as one. */
export interface Pallet {
  readonly lot: string;
  /** Null for one of those on which nothing is listed: any of the lot's will do. */
  readonly name: string | null;
  readonly hives: number;
  /** Frames of bees in all; a hive that was not opened has its lot's average. */
  readonly frames: number;
  readonly opened: number;
}

/** A lot and how many hives it has, listed or not; null where all are listed. */
export interface LotSize {
  readonly lot: string;
  readonly hives: number | null;
}

/**
 * The pallets of the lots: those that are listed, filled up with hives of their lot that are not,
 * then the rest of the lot on pallets of its own.
 *
 * @param onPallet - hives on a full pallet; 1 where hives are moved singly
 * @throws Refusal for a lot without an opened hive, a lot smaller than what is listed of it, and a
 *   pallet with too many hives
 */
export function palletsOf(
  listed: readonly ListedHive[],
  lots: readonly LotSize[],
  onPallet: number,
): Pallet[] {
  return lots.flatMap(({ lot, hives }) => {
    const own = listed.filter((hive) => hive.lot === lot);
    const average = averageOf(own, lot);
    let unlisted = (hives ?? own.length) - own.length;
    if (unlisted < 0) {
      throw new Refusal(
        `${lotName(lot)} has ${plural(own.length, "hive")} listed, more than its size of ${hives}`,
      );
    }
    const named = [...byPallet(own)].map(([, hives]): Pallet => {
      const name = hives[0]!.pallet ?? hives[0]!.id;
      if (hives.length > onPallet) {
        throw new Refusal(`pallet ${quote(name)} holds ${hives.length} hives, and not ${onPallet}`);
      }
      const added = Math.min(unlisted, onPallet - hives.length);
      unlisted -= added;
      return {
        lot,
        name,
        hives: hives.length + added,
        frames: hives.reduce((sum, hive) => sum + (hive.frames ?? average), added * average),
        opened: hives.filter((hive) => hive.frames !== null).length,
      };
    });
    const rest = Array.from({ length: Math.ceil(unlisted / onPallet) }, (_, i): Pallet => {
      const hives = Math.min(onPallet, unlisted - i * onPallet);
      return { lot, name: null, hives, frames: hives * average, opened: 0 };
    });
    return [...named, ...rest];
  });
}

/** The mean of the opened hives of a lot, dead-outs among them. */
function averageOf(hives: readonly ListedHive[], lot: string): number {
  const opened = hives.flatMap((hive) => (hive.frames === null ? [] : hive.frames));
  const average = mean(opened);
  if (average !== null) return average;
  throw new Refusal(`${lotName(lot)} has no opened hive, so its average is not known`);
}

function byPallet(hives: readonly ListedHive[]): Map<string, ListedHive[]> {
  const pallets = new Map<string, ListedHive[]>();
  for (const hive of hives) {
    const key = hive.pallet === null ? `hive ${hive.id}` : `pallet ${hive.pallet}`;
    pallets.set(key, [...(pallets.get(key) ?? []), hive]);
  }
  return pallets;
}

export function lotName(lot: string): string {
  return lot === "" ? "the sheet" : `lot ${quote(lot)}`;
}
