import {
  acresIn,
  AREAS,
  cropRate,
  wholeHives,
  type Area,
  type CropRate,
} from "../core/hives-needed.js";
import { rounded, scale } from "../core/estimate.js";
import { loadsOf, type Loads } from "../core/loads.js";
import { plural } from "../core/plural.js";
import { quote, Refusal } from "../core/refusal.js";
import { sources } from "../core/sources.js";
import type { Cell } from "./cells.js";
import { answer, needed, optional, type SheetFunction } from "./declare.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { choice, hives, number, option } from "./parameters.js";
import { checkSingle } from "./rows.js";
import { writtenParameter } from "./written.js";

const PARTS = ["middle", "low", "high", "note"] as const;

const neededParameters = [
  hives("area"),
  optional(hives("crop")),
  choice("unit", AREAS),
  number("hives_an_area", 100),
  number("frames_an_area", 1000),
  number("frames_a_hive", 60),
  choice("part", [...PARTS, "all"]),
  writtenParameter,
] as const;

/**
 * Hives that an orchard takes, from its area and the crop's published range, a rate, or frames of bees.
 *
 * @remarks Hives an acre: almond 2 (Almond Board of California), apple 1 to 2, cherry 2 to 3, pear 2 to
 * 4, blueberry 2 to 3 or more (Good Fruit Grower); kiwifruit 8 to 10 a hectare (New Zealand standard).
 * Middle is half way. Whole hives, rounded up. Starting points: variety, planting, weather and the
 * hives' strength change them, and the signed contract comes first.
 * @example =COMB.HIVES_NEEDED(40,"cherry") gives 100; =COMB.HIVES_NEEDED(40,,,,16,8) gives 80.
 * @customfunction HIVES_NEEDED
 * @helpurl https://localhost:3000/help.html#HIVES_NEEDED
 * @param area A row a block: its area.
 * @param crop A row a block, or one: almond, apple, cherry, pear, blueberry or kiwifruit.
 * @param unit "acres" (also where left out) or "hectares".
 * @param hives_an_area Hives an acre or hectare, in place of the crop's range.
 * @param frames_an_area Frames of bees an acre or hectare, in place of hives; needs frames_a_hive.
 * @param frames_a_hive Frames of bees of a hive on average, for frames_an_area.
 * @param part "middle" (also where left out), "low", "high", "note", or "all" four beside each other.
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns Hives, a row a block; blank where no area is given.
 */
export function HIVES_NEEDED(
  area: unknown[][],
  crop?: unknown[][],
  unit?: unknown,
  hives_an_area?: unknown,
  frames_an_area?: unknown,
  frames_a_hive?: unknown,
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [area, crop, unit, hives_an_area, frames_an_area, frames_a_hive, part, written];
  return answer(
    neededParameters,
    values,
    (areas, crops, unit, ownRate, framesRate, framesEach, part, writing) => {
      checkSingle([areas, crops]);
      const own = ownRateOf(unit, crops, ownRate, framesRate, framesEach);
      const parts = part === "all" ? PARTS : [part];
      return eachHive([areas, crops], parts.length, (i) => {
        const area = areas.estimate(i, 0, "amount", writing)!;
        const acres = scale(area, acresIn(unit));
        const { least, most, note } = own ?? cropAt(crops!, i);
        const middle = (least + most) / 2;
        const found = {
          middle: () => wholeHives(acres.middle * middle),
          low: () => wholeHives(acres.low * least),
          high: () => (acres.high === null ? "" : wholeHives(acres.high * most)),
          note: () => note,
        } satisfies Record<(typeof PARTS)[number], () => Cell>;
        return parts.map((p): Cell => found[p]());
      });
    },
  );
}

/** The rate that is given in place of a crop's, an acre; null where the crop says. */
function ownRateOf(
  unit: Area,
  crops: HiveCells | null,
  hives: number | null,
  frames: number | null,
  framesEach: number | null,
): CropRate | null {
  const given = [crops, hives, frames].filter((way) => way !== null).length;
  if (given !== 1) {
    throw new Refusal(
      `${given === 0 ? "nothing says" : "more than one thing says"} how many hives: give a crop, hives_an_area, or frames_an_area with frames_a_hive`,
    );
  }
  if ((frames === null) !== (framesEach === null)) {
    throw new Refusal(
      frames === null
        ? "frames_a_hive: given without frames_an_area"
        : "frames_a_hive: left out, and frames_an_area needs it",
    );
  }
  if (crops !== null) return null;
  const rate = hives ?? frames! / framesEach!;
  const an = unit === "acres" ? "an acre" : "a hectare";
  return {
    least: rate / acresIn(unit),
    most: rate / acresIn(unit),
    note:
      hives === null
        ? `${plural(rounded(frames!), "frame")} ${an}, hives of ${rounded(framesEach!)}`
        : `${plural(rounded(hives), "hive")} ${an}, as given`,
  };
}

function cropAt(crops: HiveCells, i: number): CropRate {
  const crop = crops.text(i);
  if (crop === null) throw new Refusal("the crop is blank, and the rate hangs on it");
  return crops.named(i, 0, () => cropRate(crop));
}

const { truckStacks, truckSides, truckHigh, palletHives } = sources;

/** A count of one cell, the usual where it is left out. */
function count(name: string, usual: number, most: number) {
  return option(name, usual, (value) => {
    if (Number.isInteger(value) && (value as number) > 0 && (value as number) <= most) {
      return value as number;
    }
    throw new Refusal(
      `${quote(String(value))} stands where a whole number up to ${most} was expected`,
    );
  });
}

/** Hives on a full pallet; 1 where hives are moved singly. */
export const onPalletParameter = count("on_pallet", palletHives.value, 100);

const loadsParameters = [
  needed(number("hives", 1e6)),
  number("hive_weight", 1e4),
  number("payload", 1e7),
  onPalletParameter,
  count("stacks", truckStacks.value, 100),
  count("sides", truckSides.value, 10),
  count("high", truckHigh.value, 20),
] as const;

type Row = [label: string, figure: Cell, remark: string];

/**
 * Truckloads that hives make, by the truck's space and by the weight it may carry, whichever is less.
 *
 * @remarks A truck takes 17 stacks x 2 sides x 3 high x 4 hives = 408 double deeps (a honey producer's
 * account): give your own. No legal limit is hidden in here: what a truck and each axle may weigh is a
 * matter of local codes and of the truck; weigh the loaded truck on a scale, tie down and net the load.
 * Hives that cross a border may need permits and inspection certificates first.
 * @example =COMB.LOADS(960) spills 3 loads of up to 408 by space; =COMB.LOADS(960,110,44000) reckons 400 by weight.
 * @customfunction LOADS
 * @helpurl https://localhost:3000/help.html#LOADS
 * @param hives Hives to move.
 * @param hive_weight What a hive weighs with its share of the pallet, at its heaviest, in the unit of the payload; left out where only space is reckoned.
 * @param payload What the truck may carry, in the unit of the hive's weight; needed with hive_weight.
 * @param on_pallet Hives on a pallet: 4 where left out.
 * @param stacks Stacks of pallets along the truck: 17 where left out.
 * @param sides Stacks across the truck: 2 where left out.
 * @param high Pallets on a stack: 3 where left out, for double deeps.
 * @returns Three columns: label, figure, remark.
 */
export function LOADS(
  hives: unknown,
  hive_weight?: unknown,
  payload?: unknown,
  on_pallet?: unknown,
  stacks?: unknown,
  sides?: unknown,
  high?: unknown,
): unknown[][] {
  const values = [hives, hive_weight, payload, on_pallet, stacks, sides, high];
  return answer(loadsParameters, values, (hives, hive, payload, onPallet, stacks, sides, high) => {
    if (!Number.isInteger(hives)) throw new Refusal(`hives: ${hives} is no whole number`);
    if ((hive === null) !== (payload === null)) {
      const [given, left] = hive === null ? ["payload", "hive_weight"] : ["hive_weight", "payload"];
      throw new Refusal(`${left}: left out, and ${given} is given: weight needs both`);
    }
    const weight = hive === null ? null : { hive, payload: payload! };
    const loads = loadsOf(hives, { stacks, sides, high, onPallet }, weight);
    return [
      ["Hives a load", loads.aLoad, lessOf(loads)],
      [
        "By space",
        loads.bySpace,
        `${plural(stacks, "stack")} x ${plural(sides, "side")} x ${high} high x ${onPallet}`,
      ],
      ["By weight", loads.byWeight ?? "", weightRemark(loads, weight, onPallet)],
      ["Loads", loads.loads, `of ${plural(hives, "hive")}${partPallet(hives, onPallet)}`],
      ["Hives on the last load", loads.onLast, ""],
    ] satisfies Row[];
  });
}

function lessOf({ bySpace, byWeight }: Loads): string {
  if (byWeight === null) return "by space alone";
  return byWeight < bySpace ? "weight is the limit" : "space is the limit";
}

function weightRemark(
  { aLoad }: Loads,
  weight: { readonly hive: number; readonly payload: number } | null,
  onPallet: number,
): string {
  const codes = "what a truck and its axles may weigh is for local codes and the scale";
  if (weight === null) return `not reckoned: give hive_weight and payload; ${codes}`;
  return `pallets of ${rounded(weight.hive * onPallet)}; a load weighs ${rounded(aLoad * weight.hive)} of ${weight.payload}; ${codes}`;
}

function partPallet(hives: number, onPallet: number): string {
  const over = hives % onPallet;
  return over === 0 ? "" : `, the last pallet with ${over} of ${onPallet}`;
}

export const hivesNeeded: SheetFunction = {
  id: "HIVES_NEEDED",
  parameters: neededParameters,
  evaluate: HIVES_NEEDED,
};
export const loadsFunction: SheetFunction = {
  id: "LOADS",
  parameters: loadsParameters,
  evaluate: LOADS,
  table: true,
};
