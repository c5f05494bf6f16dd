import { placeEvenly } from "./even.js";
import { lotName, type Pallet } from "./pallets.js";
import { plural } from "./plural.js";
import { quote, Refusal } from "./refusal.js";
import { atLeast, TOLERANCE } from "./tolerance.js";

/** Where hives are set down: how many, and the average frames of bees that they should have. */
export interface Drop {
  readonly name: string;
  readonly hives: number;
  /** 0 where nothing is asked. */
  readonly least: number;
}

/** A drop with the pallets that go to it. */
export interface FilledDrop extends Drop {
  readonly pallets: readonly Pallet[];
  /** Hives on them; fewer than the drop takes where there are no more. */
  readonly placed: number;
  /** Mean frames of bees; null where no hive is left for it. */
  readonly average: number | null;
  /** Whether that is under its least. */
  readonly misses: boolean;
}

/** Every pallet placed, and how near that is to the best. */
export interface Spread {
  readonly drops: readonly FilledDrop[];
  /** Frames from the weakest to the strongest drop; the most of the lots' where these stand apart. */
  readonly range: number;
  /** Frames by which the range may be over the least possible; 0 where it is the least. */
  readonly over: number;
  /** Whether no way of placing the pallets is better. */
  readonly isBest: boolean;
  /** Whether it is known that the drops' least averages cannot all be kept. */
  readonly leastCannotBe: boolean;
}

/** Ways of giving drops to lots that are tried before it is given up. */
const MOST_TRIED = 200_000;

/**
 * Places pallets on drops so that the drops' averages differ as little as can be, the least average
 * of every drop kept if that can be.
 *
 * @param onPallet - hives on a full pallet
 * @param apart - whether a drop takes hives of one lot only
 * @throws Refusal where the drops are no whole pallets, hold fewer hives than there are, or cannot
 *   keep the lots apart
 */
export function placeOnDrops(
  pallets: readonly Pallet[],
  drops: readonly Drop[],
  onPallet: number,
  apart: boolean,
): Spread {
  checkRoom(pallets, drops, onPallet);
  const lots = [...new Set(pallets.map((pallet) => pallet.lot))];
  const groups = apart
    ? dropsOfLots(lots, pallets, drops, onPallet).map((own, l) => ({
        pallets: pallets.filter((pallet) => pallet.lot === lots[l]),
        drops: own,
      }))
    : [{ pallets, drops: drops.map((_, d) => d) }];
  const taken = drops.map((): Pallet[] => []);
  const placings = groups.map((group) => {
    const places = group.drops.map((d) => ({
      units: drops[d]!.hives / onPallet,
      least: drops[d]!.least,
    }));
    const placing = placeEvenly(group.pallets, places);
    placing.of.forEach((place, i) => taken[group.drops[place]!]!.push(group.pallets[i]!));
    return placing;
  });
  const isBest = placings.every((placing) => placing.isBest);
  return {
    drops: drops.map((drop, d) => filledDrop(drop, taken[d]!)),
    range: Math.max(...placings.map(({ score }) => score.range)),
    over: Math.max(
      ...placings.map(({ isBest, score, bound }) =>
        isBest ? 0 : Math.max(0, score.range - bound.range),
      ),
    ),
    isBest,
    leastCannotBe: placings.some(
      ({ isBest, score, bound }) =>
        bound.missed > TOLERANCE || (isBest && score.missed > TOLERANCE),
    ),
  };
}

function filledDrop(drop: Drop, pallets: readonly Pallet[]): FilledDrop {
  const placed = pallets.reduce((sum, pallet) => sum + pallet.hives, 0);
  const frames = pallets.reduce((sum, pallet) => sum + pallet.frames, 0);
  const average = placed === 0 ? null : frames / placed;
  const misses = average !== null && !atLeast(average, drop.least);
  return { ...drop, pallets, placed, average, misses };
}

function checkRoom(pallets: readonly Pallet[], drops: readonly Drop[], onPallet: number): void {
  const uneven = drops.find((drop) => drop.hives % onPallet !== 0);
  if (uneven !== undefined) {
    throw new Refusal(
      `drop ${quote(uneven.name)} takes ${plural(uneven.hives, "hive")}, which whole pallets of ${onPallet} do not make`,
    );
  }
  const room = drops.reduce((sum, drop) => sum + drop.hives, 0);
  const hives = pallets.reduce((sum, pallet) => sum + pallet.hives, 0);
  if (room < hives) {
    throw new Refusal(`the drops hold ${plural(room, "hive")}, and there are ${hives}`);
  }
  if (room / onPallet < pallets.length) {
    throw new Refusal(
      `the drops hold ${plural(room / onPallet, "pallet")}, and there are ${pallets.length}, not all of them full`,
    );
  }
}

/**
 * The drops of each lot, where a drop takes one lot only: those that have room for it, so that the
 * drops' least averages are missed as little as can be.
 */
function dropsOfLots(
  lots: readonly string[],
  pallets: readonly Pallet[],
  drops: readonly Drop[],
  onPallet: number,
): number[][] {
  const own = lots.map((lot) => pallets.filter((pallet) => pallet.lot === lot));
  const averages = own.map(
    (list) =>
      list.reduce((sum, pallet) => sum + pallet.frames, 0) /
      list.reduce((sum, pallet) => sum + pallet.hives, 0),
  );
  const order = drops.map((_, d) => d);
  order.sort((a, b) => drops[b]!.hives - drops[a]!.hives || drops[b]!.least - drops[a]!.least);
  const room = order.map((d) => drops[d]!.hives / onPallet);
  const after = room.map((_, k) => room.slice(k).reduce((sum, units) => sum + units, 0));
  const known = new Map<string, { readonly missed: number; readonly lot: number } | null>();

  const best = (k: number, left: readonly number[]): { missed: number; lot: number } | null => {
    const still = left.reduce((sum, units) => sum + units, 0);
    if (k === order.length) return still === 0 ? { missed: 0, lot: -1 } : null;
    if (still > after[k]!) return null;
    const key = `${k}:${left.join()}`;
    if (known.has(key)) return known.get(key)!;
    if (known.size >= MOST_TRIED) {
      throw new Refusal("too many ways to keep the lots apart: give fewer drops at a time");
    }
    let found: { missed: number; lot: number } | null = null;
    const { least, hives } = drops[order[k]!]!;
    for (let lot = 0; lot < lots.length; lot++) {
      if (left[lot] === 0 && still > 0) continue;
      const rest = best(
        k + 1,
        left.map((units, l) => (l === lot ? Math.max(0, units - room[k]!) : units)),
      );
      if (rest === null) continue;
      const missed = rest.missed + Math.max(0, least - averages[lot]!) * hives;
      if (found === null || missed < found.missed - TOLERANCE) found = { missed, lot };
    }
    known.set(key, found);
    return found;
  };

  let left: readonly number[] = own.map((list) => list.length);
  const given = lots.map((): number[] => []);
  for (let k = 0; k < order.length; k++) {
    const found = best(k, left);
    if (found === null) {
      const sizes = lots
        .map((lot, l) => `${lotName(lot)} of ${plural(own[l]!.length, "pallet")}`)
        .join(", ");
      throw new Refusal(`no way of giving these drops to single lots has room for ${sizes}`);
    }
    given[found.lot]!.push(order[k]!);
    left = left.map((units, l) => (l === found.lot ? Math.max(0, units - room[k]!) : units));
  }
  return given.map((list) => list.sort((a, b) => a - b));
}
