import type { Contract } from "../core/contract.js";
import type { Lot } from "../core/lot.js";
import { plural } from "../core/plural.js";
import { together } from "../core/together.js";
import { Refusal } from "../core/refusal.js";
import { lotAverage, lotChance } from "../core/sampling.js";
import { sources } from "../core/sources.js";
import { planOfLot, planOfSpread, toOpen, type SamplePlan } from "../core/to-open.js";
import type { Cell } from "./cells.js";
import { contractNamed } from "./contracts.js";
import { contractOfLot } from "./lot-contract.js";
import { answer, needed, optional, type SheetFunction } from "./declare.js";
import { lotOfSheet } from "./lot-sheet.js";
import { block, choice, confidence, number, text } from "./parameters.js";

const MOST_HIVES = 1e6;

/** A row of a statement: what it is, its figure, and what is to be known of it. */
type Row = [label: string, figure: Cell, remark: string];

const chanceParameters = [
  block("yard"),
  number("lot_size", MOST_HIVES),
  optional(block("terms")),
  text("contract"),
  text("lot"),
  choice("part", ["chance", "note", "all"]),
] as const;

/**
 * The chance that the average of the whole lot meets the contract, foretold from the hives that were opened.
 *
 * @remarks The unopened hives' mean is foretold by Student's t about that of the opened ones, in a
 * finite lot and under the contract's own rules (cap, hives under the minimum, whole pallets). It
 * assumes that the opened hives were drawn at random, that the rest are judged by the same eyes, and
 * that nothing else is known of the lot. Of lots told 80 %, 78 to 83 % met in simulation. Only the
 * average is asked about: a load may still be rejected for hives under the minimum. 0 or 1 where
 * every hive was opened.
 * @example =COMB.LOT_CHANCE(A1:K61,160,Terms,"Cherry","Shed") for 20 opened of 160.
 * @customfunction LOT_CHANCE
 * @helpurl https://localhost:3000/help.html#LOT_CHANCE
 * @param yard The yard sheet with its heading row, one hive a row; with the lot given, also with other lots in it.
 * @param lot_size Hives in the lot, opened or not; left out where all of them stand in the sheet.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @param part "chance" (also where left out), "note" (what it rests on), or "all" both beside each other.
 * @returns A chance from 0 to 1, or the part asked for.
 */
export function LOT_CHANCE(
  yard: unknown[][],
  lot_size?: unknown,
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
  part?: unknown,
): unknown[][] {
  const values = [yard, lot_size, terms, contract, lot, part];
  return answer(chanceParameters, values, (yard, size, terms, name, lotName, part) => {
    const contract = contractOfLot(terms, name, yard, lotName);
    const { lot, remark } = lotOfSheet(yard, contract, lotName, size);
    const chance = lotChance(contract, lot);
    const note = together(chanceNote(contract, lot), remark);
    return [{ chance: [chance], note: [note], all: [chance, note] }[part]];
  });
}

/** What the chance that a lot meets its average rests on. */
export function chanceNote(contract: Contract, lot: Lot): string {
  if (lot.hives.length === lot.size) return "every hive was opened";
  const { warning } = lotAverage(contract, lot, 95);
  return `opened hives drawn at random, the rest judged by the same eyes${joined(warning)}`;
}

const toOpenParameters = [
  needed(number("margin", sources.mostFrames.value)),
  needed(number("lot_size", MOST_HIVES)),
  number("spread", sources.mostFrames.value),
  optional(block("yard")),
  optional(block("terms")),
  text("contract"),
  text("lot"),
  confidence("confidence"),
] as const;

/**
 * How many hives, or whole pallets, to open so that the lot's average is known within a margin.
 *
 * @remarks Goes by the spread given, else by that of the hives opened so far, else by a typical one:
 * 30 % of the average that the contract asks (Schmolke et al. 2020 data, 0.24 to 0.33 in yards of 7
 * to 8 frames). It says which. The finite lot, hives left out of the average and the observers'
 * error of the terms are reckoned in. If the hives differ more than that, the margin comes out wider.
 * @example =COMB.TO_OPEN(1,96,2.4) gives 20 hives of 96.
 * @customfunction TO_OPEN
 * @helpurl https://localhost:3000/help.html#TO_OPEN
 * @param margin Frames either way, such as 0.5: half of the interval's width.
 * @param lot_size Hives in the lot, opened or not.
 * @param spread Standard deviation of the hives in frames, or of the pallets' averages where whole pallets are opened; left out for that of the sheet, or a typical one.
 * @param yard The yard sheet with its heading row, where some hives are opened already.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @param confidence Confidence in percent: 95 where left out.
 * @returns Three columns: label, figure, remark.
 */
export function TO_OPEN(
  margin: unknown,
  lot_size: unknown,
  spread?: unknown,
  yard?: unknown[][],
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
  confidence?: unknown,
): unknown[][] {
  const values = [margin, lot_size, spread, yard, terms, contract, lot, confidence];
  return answer(
    toOpenParameters,
    values,
    (margin, size, spread, yard, terms, name, lotName, confidence) => {
      if (!Number.isInteger(size))
        throw new Refusal(`lot_size: ${size} is no whole number of hives`);
      const { plan, opened, remark } =
        yard === null
          ? planWithout(terms, name, size, spread)
          : planBySheet(contractOfLot(terms, name, yard, lotName), yard, lotName, size, spread);
      const { units, hives, margin: reached } = toOpen(plan, margin, confidence);
      const byPallet = plan.kind === "pallets";
      const pallets: Row[] = byPallet
        ? [
            [
              "Pallets to open",
              units,
              `of ${plan.inLot}, ${plural(round(plan.hivesOnUnit), "hive")} each`,
            ],
          ]
        : [];
      return [
        ["Hives to open", hives, `in all, of ${size} in the lot`],
        ...pallets,
        ["Still to open", Math.max(0, hives - opened), together(`${opened} opened so far`, remark)],
        ["Margin, frames", reached, `either way, at ${confidence} %; ${margin} asked`],
        ["Spread, frames", plan.spread, spreadRemark(plan, opened)],
        ["Note", "", noteOn(units, plan)],
      ] satisfies Row[];
    },
  );
}

interface PlanOfLot {
  readonly plan: SamplePlan;
  readonly opened: number;
  readonly remark: string;
}

function planWithout(
  terms: unknown[][] | null,
  name: string | null,
  size: number,
  spread: number | null,
): PlanOfLot {
  const contract = terms === null && name === null ? null : contractNamed(terms, name);
  return { plan: planOfSpread(contract, size, spread), opened: 0, remark: "" };
}

function planBySheet(
  contract: Contract,
  yard: unknown[][],
  lotName: string | null,
  size: number,
  spread: number | null,
): PlanOfLot {
  const { lot, remark } = lotOfSheet(yard, contract, lotName, size);
  return { plan: planOfLot(contract, lot, spread), opened: lot.hives.length, remark };
}

function spreadRemark({ spreadFrom, kind }: SamplePlan, opened: number): string {
  const of = kind === "hives" ? "" : ", of the pallets' averages";
  if (spreadFrom === "given") return `given${of}`;
  if (spreadFrom === "the hives opened") return `seen in the ${opened} hives opened${of}`;
  const { value, source } = sources.typicalSpread;
  return `typical${of}: ${value} % of the average (${source})`;
}

function noteOn(units: number, { kind, inLot, counting }: SamplePlan): string {
  const enough = sources.sureFrom.value;
  const parts = [`wider if the ${kind} differ more than that`];
  if (counting < 1) parts.push(`${round(100 * counting)} % of the ${kind} counting in the average`);
  if (units * counting < enough && units < inLot) {
    parts.push(`under ${enough} ${kind} the interval may miss more often than it says`);
  }
  return parts.join("; ");
}

function joined(warning: string): string {
  return warning === "" ? "" : `; ${warning}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

export const lotChanceFunction: SheetFunction = {
  id: "LOT_CHANCE",
  parameters: chanceParameters,
  evaluate: LOT_CHANCE,
  table: true,
};
export const toOpenFunction: SheetFunction = {
  id: "TO_OPEN",
  parameters: toOpenParameters,
  evaluate: TO_OPEN,
  table: true,
};
