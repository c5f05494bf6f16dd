import { laying, type Laying } from "../core/laying.js";
import { Refusal } from "../core/refusal.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { eachHive } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { amountAt, beside } from "./rows.js";
import { writtenParameter } from "./written.js";

/** Each part as a cell; a stage that is not judged gives a blank. */
const PARTS = {
  "by eggs": ({ byEggs }: Laying): Cell => byEggs ?? "",
  "by open": ({ byOpen }: Laying): Cell => byOpen ?? "",
  "by capped": ({ byCapped }: Laying): Cell => byCapped ?? "",
  verdict: ({ verdict }: Laying): Cell => verdict,
  note: ({ note }: Laying): Cell => note,
};
const youngest = ({ byEggs, byOpen, byCapped }: Laying): Cell => byEggs ?? byOpen ?? byCapped ?? "";
const ALL = Object.keys(PARTS) as (keyof typeof PARTS)[];

const parameters = [
  optional(hives("eggs")),
  optional(hives("open")),
  optional(hives("capped")),
  choice("part", ["youngest", ...ALL, "all"]),
  writtenParameter,
] as const;

/**
 * Eggs a day that a queen must have laid for the worker brood that is seen, and whether rearing grows.
 *
 * @remarks Eggs / 3, open / 6, capped / 12, each divided by what lives to the middle of that stage
 * (0.955, 0.886, 0.854: worked from the daily losses of Schmickl & Crailsheim 2007): the laying of
 * the last 3 days, of 3 to 9 days ago, of 9 to 21. Growing or shrinking where the younger stages are
 * over or under both 1:2:4 (steady, ACT Beekeepers 2022) and 1:1.5:3.2 (in the field, Schmolke et
 * al. 2020 data) by 15 %, which two observers differ by. A blank or a 0 is a stage not judged: write
 * none for none. Worker brood only: drone brood has another clock. Eggs are easily missed.
 * @example =COMB.EGGS_PER_DAY(3000,6000,12000) gives 1047; =COMB.EGGS_PER_DAY(1000,2000,2000,"verdict") gives growing.
 * @customfunction EGGS_PER_DAY
 * @helpurl https://localhost:3000/help.html#EGGS_PER_DAY
 * @param eggs A row a hive: cells with worker eggs; several columns are a hive's boxes and are added.
 * @param open A row a hive: cells with open worker brood.
 * @param capped A row a hive: cells of capped worker brood.
 * @param part "youngest" (also where left out: by the youngest stage that is given), "by eggs", "by open", "by capped", "verdict" (growing, steady, shrinking), "note", or "all" five beside each other.
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns Eggs a day or the part asked for, a row a hive; blank where no stage was judged.
 */
export function EGGS_PER_DAY(
  eggs?: unknown[][],
  open?: unknown[][],
  capped?: unknown[][],
  part?: unknown,
  written?: unknown,
): unknown[][] {
  return answer(
    parameters,
    [eggs, open, capped, part, written],
    (eggs, open, capped, part, writing) => {
      const stages = [eggs, open, capped];
      if (stages.every((stage) => stage === null)) {
        throw new Refusal("give the cells of eggs, of open or of capped brood");
      }
      const width = part === "all" ? ALL.length : 1;
      return eachHive([beside(stages)], width, (i) => {
        const amount = (stage: typeof eggs): number | null => amountAt(stage, i, writing);
        const hive = laying(amount(eggs), amount(open), amount(capped));
        if (part === "youngest") return [youngest(hive)];
        return (part === "all" ? ALL : [part]).map((p) => PARTS[p](hive));
      });
    },
  );
}

export const eggsPerDay: SheetFunction = {
  id: "EGGS_PER_DAY",
  parameters,
  evaluate: EGGS_PER_DAY,
};
