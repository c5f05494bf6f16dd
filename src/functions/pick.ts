import { checkOnceEach, drawNames, type Ticket } from "../core/pick.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import { saysSum } from "../core/sums.js";
import { normalise } from "../core/text.js";
import type { Cell } from "./cells.js";
import { answer, needed, optional, type SheetFunction } from "./declare.js";
import { checkRows, type HiveCells } from "./hive-cells.js";
import { hives, number, text } from "./parameters.js";
import { checkSingle } from "./rows.js";

const CHECK_DIGITS = 8;

const parameters = [
  hives("hives"),
  needed(number("how_many", 1e6)),
  needed(text("seed_one")),
  needed(text("seed_two")),
  optional(hives("pallets")),
] as const;

/**
 * Which hives or pallets to open, drawn by two words, one from each party, so that nobody chose.
 *
 * @remarks Each hive draws a ticket, the SHA-256 of the two words and its id; the least are opened,
 * in that order (consistent sampling, Rivest 2018). The same words give the same drawing on every
 * computer, in whatever order the list stands, and asking for more only adds to it. Case and spaces
 * make no difference. Settle the list first, and let each write down a word before seeing the
 * other's. To check a ticket: the first 8 digits of printf 'apple\nbloom\nh01' | sha256sum.
 * @example =COMB.PICK_HIVES(A2:A4,2,"Apple","Bloom") with H01, H02 and H03 spills a heading line, then H02 and H03.
 * @customfunction PICK_HIVES
 * @helpurl https://localhost:3000/help.html#PICK_HIVES
 * @param hives A row a hive: its id, each once.
 * @param how_many Hives to open; pallets to open where the pallets are given.
 * @param seed_one A word of the one party.
 * @param seed_two A word of the other.
 * @param pallets A row a hive: the pallet it stands on; whole pallets are then drawn.
 * @returns A heading line with both words, then a row a hive in the order to open: id, pallet where given, first digits of the ticket.
 */
export function PICK_HIVES(
  hives: unknown[][],
  how_many: unknown,
  seed_one: unknown,
  seed_two: unknown,
  pallets?: unknown[][],
): unknown[][] {
  const values = [hives, how_many, seed_one, seed_two, pallets];
  return answer(parameters, values, (ids, howMany, one, two, pallets) => {
    checkSingle([ids, pallets]);
    checkRows([ids, pallets]);
    const listed = listedHives(ids, pallets);
    const draw = pallets === null ? drawHives : drawPallets;
    return draw(listed, howMany, [one, two]);
  });
}

interface ListedHive {
  readonly id: string;
  /** The id as it stands in the sheet, so that it can be looked up. */
  readonly cell: Cell;
  /** Empty where no pallets are given. */
  readonly pallet: string;
}

type Words = readonly [string, string];

function listedHives(ids: HiveCells, pallets: HiveCells | null): ListedHive[] {
  const listed: ListedHive[] = [];
  for (let i = 0; i < ids.rows; i++) {
    const id = ids.text(i);
    if (id === null || saysSum(id)) continue;
    const pallet = pallets === null ? "" : pallets.text(i);
    if (pallet === null) throw new Refusal(`pallets: hive ${id} of row ${i + 1} has none`);
    const cell = ids.cell(i);
    listed.push({ id, cell: typeof cell === "number" ? cell : id, pallet });
  }
  checkOnceEach(
    listed.map(({ id }) => id),
    "hive",
  );
  return listed;
}

function drawHives(hives: readonly ListedHive[], howMany: number, words: Words): Cell[][] {
  const ids = hives.map(({ id }) => id);
  const drawn = drawNames(ids, howMany, words, "hive");
  const heading = ["Hive", drawnBy(words, `${howMany} of ${plural(ids.length, "hive")}`)];
  const cells = new Map(hives.map(({ id, cell }) => [id, cell]));
  return [heading, ...drawn.map((hive) => [cells.get(hive.name)!, digits(hive)])];
}

/** Pallets in the order of their tickets, the hives of one in the order of their ids. */
function drawPallets(hives: readonly ListedHive[], howMany: number, words: Words): Cell[][] {
  const onPallet = new Map<string, ListedHive[]>();
  for (const hive of hives) {
    const key = normalise(hive.pallet);
    onPallet.set(key, [...(onPallet.get(key) ?? []), hive]);
  }
  const drawn = drawNames([...onPallet.keys()], howMany, words, "pallet");
  const heading = [
    "Hive",
    "Pallet",
    drawnBy(words, `${howMany} of ${plural(onPallet.size, "pallet")}`),
  ];
  const rows = drawn.flatMap((pallet) =>
    byId(onPallet.get(pallet.name)!).map((hive) => [hive.cell, hive.pallet, digits(pallet)]),
  );
  return [heading, ...rows];
}

/** By the characters' numbers, so that no computer's language makes a difference. */
function byId(hives: readonly ListedHive[]): ListedHive[] {
  return [...hives].sort((a, b) => (normalise(a.id) < normalise(b.id) ? -1 : 1));
}

function drawnBy(words: Words, share: string): string {
  const [one, two] = words.map(normalise);
  return `Ticket by "${one}" and "${two}", ${share}`;
}

function digits({ ticket }: Ticket): string {
  return ticket.slice(0, CHECK_DIGITS);
}

export const pickHives: SheetFunction = {
  id: "PICK_HIVES",
  parameters,
  evaluate: PICK_HIVES,
  table: true,
};
