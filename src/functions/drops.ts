import { shownApart } from "../core/apart.js";
import { placeOnDrops, type FilledDrop, type Spread } from "../core/drops.js";
import { palletsOf, type Pallet } from "../core/pallets.js";
import { plural } from "../core/plural.js";
import { together } from "../core/together.js";
import type { Cell } from "./cells.js";
import { contractNamed } from "./contracts.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { dropsAsked, hivesOfSheet, type SheetHives } from "./drops-sheet.js";
import { block, choice, hives, text } from "./parameters.js";
import { onPalletParameter } from "./placing.js";

const parameters = [
  block("yard"),
  hives("sizes"),
  optional(block("terms")),
  text("contract"),
  optional(hives("lots")),
  optional(hives("lot_sizes")),
  optional(hives("names")),
  optional(hives("least")),
  choice("lots_apart", ["mixed", "lots apart"]),
  onPalletParameter,
  choice("part", ["list", "drops"]),
] as const;

const LIST = ["Drop", "Pallet", "Lot", "Hives", "Frames a hive", "Remark"];
const DROPS_HEADINGS = ["Drop", "Hives", "Frames a hive", "Least asked", "Pallets", "Remark"];

/**
 * Pallets to drops, as even in frames of bees as can be, spilled as the list to load by.
 *
 * @remarks Opened hives have their own frames, at most the contract's cap; the others their lot's
 * average of the opened, dead-outs in it. A hive listed with blank bees was not opened; one that
 * is not listed stands on pallets of its lot that are not named. Even is the least range from the
 * weakest drop's average to the strongest's; small cases are searched through to the best, and else
 * the last row says how far from it the list may be at most. The same cells give the same list. Lift
 * and load with a machine or with help; hives that cross a border may need permits and inspection.
 * @example =COMB.DROPS(A1:K61,M2:M8,Terms,"Cherry",O2:O4,P2:P4) for seven drops of three lots.
 * @customfunction DROPS
 * @helpurl https://localhost:3000/help.html#DROPS
 * @param yard The yard sheet with its heading row, one hive a row, with a Pallet column.
 * @param sizes A row a drop: hives that it takes, in whole pallets.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lots A row a lot: the names of the lots to place; left out for all of the sheet.
 * @param lot_sizes A row a lot: its hives, opened or not; left out where all are listed.
 * @param names A row a drop: its name; its row's number where left out.
 * @param least A row a drop, or one: average frames of bees that it should have at least.
 * @param lots_apart "mixed" (also where left out), or "lots apart": a drop takes hives of one lot only.
 * @param on_pallet Hives on a pallet: 4 where left out; 1 to place single hives.
 * @param part "list" (also where left out) with a row a pallet, or "drops" with a row a drop.
 * @returns A heading row, each drop in all and pallet by pallet, and a last row on all drops.
 */
export function DROPS(
  yard: unknown[][],
  sizes: unknown[][],
  terms?: unknown[][],
  contract?: unknown,
  lots?: unknown[][],
  lot_sizes?: unknown[][],
  names?: unknown[][],
  least?: unknown[][],
  lots_apart?: unknown,
  on_pallet?: unknown,
  part?: unknown,
): unknown[][] {
  const values = [yard, sizes, terms, contract, lots, lot_sizes, names, least, lots_apart];
  return answer(
    parameters,
    [...values, on_pallet, part],
    (yard, sizes, terms, name, lots, lotSizes, names, least, apart, onPallet, part) => {
      const drops = dropsAsked(sizes, names, least);
      const sheet = hivesOfSheet(yard, contractNamed(terms, name), lots, lotSizes, onPallet === 1);
      const pallets = palletsOf(sheet.hives, sheet.lots, onPallet);
      const spread = placeOnDrops(pallets, drops, onPallet, apart === "lots apart");
      const remark = remarkOf(spread, sheet, apart === "lots apart");
      return part === "list"
        ? [
            LIST,
            ...spread.drops.flatMap((drop) => listOf(drop, spread)),
            allAs(spread, remark, true),
          ]
        : [
            DROPS_HEADINGS,
            ...spread.drops.map((drop) => rowOf(drop, spread)),
            allAs(spread, remark, false),
          ];
    },
  );
}

/** A drop in all, then its pallets: the named ones, then how many others of each lot. */
function listOf(drop: FilledDrop, spread: Spread): Cell[][] {
  const inAll = [
    drop.name,
    "in all",
    "",
    drop.placed,
    drop.average ?? "",
    dropRemark(drop, spread),
  ];
  const lines = linesOf(drop).map(({ pallet, lot, hives, frames, remark }) => [
    drop.name,
    pallet,
    lot,
    hives,
    frames / hives,
    remark,
  ]);
  return [inAll, ...lines];
}

interface Line {
  readonly pallet: string;
  readonly lot: string;
  readonly hives: number;
  readonly frames: number;
  readonly remark: string;
}

function linesOf({ pallets }: FilledDrop): Line[] {
  const named = pallets.flatMap((pallet): Line[] =>
    pallet.name === null ? [] : [{ ...pallet, pallet: pallet.name, remark: openedRemark(pallet) }],
  );
  return [...named, ...others(pallets)];
}

/** Pallets of which any will do, together for each lot. */
function others(pallets: readonly Pallet[]): Line[] {
  const lots = [...new Set(pallets.filter(isAny).map((pallet) => pallet.lot))];
  return lots.map((lot) => {
    const own = pallets.filter((pallet) => isAny(pallet) && pallet.lot === lot);
    const sum = (key: "hives" | "frames"): number =>
      own.reduce((total, pallet) => total + pallet[key], 0);
    return {
      pallet: `any ${own.length} not listed`,
      lot,
      hives: sum("hives"),
      frames: sum("frames"),
      remark: "",
    };
  });
}

function isAny(pallet: Pallet): boolean {
  return pallet.name === null;
}

function openedRemark({ opened, hives }: Pallet): string {
  if (opened === hives) return "";
  return opened === 0 ? "not opened" : `${opened} of ${hives} opened`;
}

function rowOf(drop: FilledDrop, spread: Spread): Cell[] {
  const lots = [...new Set(drop.pallets.map((pallet) => pallet.lot))];
  const pallets = lots.map((lot) => {
    const own = drop.pallets.filter((pallet) => pallet.lot === lot);
    const named = own.flatMap(({ name }) => name ?? []);
    const rest = own.length - named.length;
    const any = rest === 0 ? [] : [`${rest} not listed`];
    return `${lot === "" ? "" : `${lot}: `}${[...named, ...any].join(", ")}`;
  });
  return [
    drop.name,
    drop.placed,
    drop.average ?? "",
    drop.least || "",
    pallets.join("; "),
    dropRemark(drop, spread),
  ];
}

function dropRemark({ hives, placed, average, least, misses }: FilledDrop, spread: Spread): string {
  return together(
    placed < hives ? `${plural(hives - placed, "hive")} short of ${hives}` : "",
    misses
      ? `${shownApart(average ?? 0, least)} a hive, under the ${least} asked${spread.leastCannotBe ? ": not all drops' least can be kept" : ", and no way to keep it was found"}`
      : "",
  );
}

function allAs({ drops }: Spread, remark: string, isList: boolean): Cell[] {
  const hives = drops.reduce((sum, drop) => sum + drop.placed, 0);
  const frames = drops.reduce((sum, drop) => sum + (drop.average ?? 0) * drop.placed, 0);
  const average = frames / hives;
  return isList
    ? ["All drops", "in all", "", hives, average, remark]
    : ["All drops", hives, average, "", "", remark];
}

function remarkOf(spread: Spread, sheet: SheetHives, apart: boolean): string {
  const { range, over, isBest } = spread;
  const unopened = sheet.hives.filter((hive) => hive.frames === null).length;
  const best = isBest
    ? "no list is more even"
    : spread.leastCannotBe || spread.drops.some(({ misses }) => misses)
      ? "how near to the best is not known, since a least is not kept"
      : `the most even list may be under that by ${rounded3(over)} at most`;
  return together(
    `weakest to strongest drop ${plural(rounded3(range), "frame")}${apart ? ", within each lot" : ""}: ${best}`,
    spread.drops.some(({ pallets }) => pallets.some((p) => p.opened < p.hives))
      ? "hives not opened are at their lot's average"
      : "",
    unopened > 0 ? `listed and not opened: ${unopened}` : "",
    sheet.dead.length > 0
      ? `dead: ${sheet.dead.join(", ")}; counted as 0, take them out or replace them before loading`
      : "",
    sheet.noHives,
    sheet.leftOut.length > 0 ? `not placed: ${sheet.leftOut.join(", ")}` : "",
  );
}

/** A difference between drops: to three places, since two would often be none. */
function rounded3(value: number): number {
  return Math.round(value * 1000) / 1000;
}

export const drops: SheetFunction = { id: "DROPS", parameters, evaluate: DROPS, table: true };
