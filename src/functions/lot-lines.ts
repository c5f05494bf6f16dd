import { shownApart } from "../core/apart.js";
import type { Contract } from "../core/contract.js";
import { countLot, underOf, type Lot, type LotCount } from "../core/lot.js";
import { lotPay } from "../core/pay.js";
import { toPlaces } from "../core/places.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import { lotAverage, type LotAverage } from "../core/sampling.js";
import { shareUnder } from "../core/share.js";
import type { Cell } from "./cells.js";

/** What a figure is: hives, frames, a share in percent, money, or words. */
export type FigureKind = "count" | "frames" | "percent" | "money" | "text";

/** A line on a lot: what it is, its figure, what is to be known of it, and of what kind it is. */
export type LotLine = [
  label: string,
  figure: Cell,
  remark: string,
  kind: FigureKind,
  /** Among the few lines that say in short what comes of the lot. */
  inShort?: "in short",
];

/**
 * What the opened hives come to under the contract, up to whether it is met.
 *
 * @param remark - what is to be said of the sheet: rows that are no hives, another contract named
 */
export function countLines(contract: Contract, lot: Lot, remark: string): LotLine[] {
  const count = countLot(contract, lot);
  return [
    ["Hives in the lot", lot.size, "", "count"],
    ["Hives opened", count.opened, joined(openedRemark(lot, count), remark), "count", "in short"],
    ["Dead-outs", count.deadOuts, "", "count"],
    ["Hives under the minimum", count.under, underRemark(contract), "count"],
    ["Average frames", count.average ?? "", averageRemark(contract, count), "frames", "in short"],
    ["By the contract", count.met ? "met" : "not met", reason(contract, count), "text", "in short"],
  ];
}

/** Opened hives by grade, the best first. */
export function gradeLines(contract: Contract, lot: Lot): LotLine[] {
  const { grades, opened } = countLot(contract, lot);
  return [...grades].map(([grade, hives]) => [
    `Grade ${grade}`,
    hives,
    `${percent(hives / opened)} of the hives opened`,
    "count",
  ]);
}

function openedRemark({ hives, size }: Lot, { opened }: LotCount): string {
  if (opened === size) return "every hive of the lot";
  const named = hives.flatMap(({ pallet }) => pallet ?? []);
  const [pallets, unnamed] = [new Set(named).size, hives.length - named.length];
  const without = unnamed > 0 ? `, and ${plural(unnamed, "hive")} without a pallet` : "";
  const on = pallets > 0 ? `, on ${plural(pallets, "pallet")}${without}` : "";
  return `${percent(opened / size)} of the lot${on}`;
}

/** Which hives those under the minimum are, and what the contract does with them. */
export function underRemark(contract: Contract): string {
  const does = {
    "left out": "left out of the average",
    counted: "counted in the average",
    "rejects the load": `the load is rejected over ${contract.forgivenShare} % of ${forgivenOf(contract)}`,
  }[contract.underMinimum];
  return `dead-outs and hives that lack what is asked of every hive among them; ${does}`;
}

/** What the percent that is forgiven is taken of, in the words of a sentence. */
function forgivenOf({ forgivenAgainst, forgivenShare }: Contract): string {
  if (forgivenAgainst !== "hives above the minimum" || forgivenShare === 0) return forgivenAgainst;
  return "hives opened, and where more are under the minimum than over it";
}

function averageRemark(contract: Contract, { counted }: LotCount): string {
  const cap = contract.mostFrames > 0 ? `, each at most ${contract.mostFrames}` : "";
  const asked =
    contract.averageFrames > 0 ? `${contract.averageFrames} asked` : "no average is asked";
  return `of ${plural(counted, "hive")}${cap}; ${asked}`;
}

function reason(contract: Contract, count: LotCount): string {
  const { average, averageMet, underMet } = count;
  const parts = [];
  if (contract.averageFrames > 0) {
    const asked = contract.averageFrames;
    const is =
      average === null ? "no hive counts" : `the sample's average is ${shownApart(average, asked)}`;
    parts.push(`${is}, ${averageMet ? "at least" : "under"} the ${asked} asked`);
  }
  if (contract.underMinimum === "rejects the load") {
    parts.push(`${underOf(count)}: ${underMet ? "forgiven" : "too many"}`);
  }
  return parts.length === 0 ? "the contract asks nothing of the lot as a whole" : parts.join("; ");
}

/** What the opened hives tell of the whole lot. */
export function sureLines(contract: Contract, lot: Lot, confidence: number): LotLine[] {
  const average = lotAverage(contract, lot, confidence);
  const share = shareUnder(lot, confidence);
  const limits =
    lot.hives.length === lot.size
      ? "every hive was opened"
      : `${confidence} % limits for the whole lot, exact for hives drawn singly` +
        (contract.openedBy === "pallets" ? "; on whole pallets they are too narrow" : "");
  return [
    ["How sure", sureness(contract, average), joined(average.method, average.warning), "text"],
    ["Average of the whole lot, low", average.low ?? "", `${confidence} % interval`, "frames"],
    ["Average of the whole lot, high", average.high ?? "", "", "frames"],
    ["Share under the minimum, %", 100 * share.share, "", "percent"],
    ["Share under the minimum, low, %", 100 * share.low, limits, "percent"],
    ["Share under the minimum, high, %", 100 * share.high, "", "percent"],
  ];
}

/** What the interval says of the whole lot's average against what the contract asks. */
function sureness({ averageFrames: asked }: Contract, { low, high }: LotAverage): string {
  if (asked === 0) return "no average is asked";
  if (low === null || high === null) return "too few hives to tell";
  if (low >= asked) return "the whole lot's average reaches what is asked";
  return high < asked
    ? "the whole lot's average is under what is asked"
    : "the whole lot's average may be over or under what is asked";
}

/** Whether the contract says what hives are paid. */
export function saysFees({ baseFee, grades }: Contract): boolean {
  return baseFee > 0 || grades.some((grade) => grade.fee > 0);
}

/** The settlement; a contract that says nothing of money has none. */
export function payLines(contract: Contract, lot: Lot, delivered: number | null): LotLine[] {
  if (!saysFees(contract)) {
    if (delivered === null) return [["Pay", "", "the contract gives no fee", "text"]];
    throw new Refusal("delivered: the contract gives no fee to settle");
  }
  const { lines, total, deposit, balance, currency } = lotPay(contract, lot, delivered);
  return [
    ...lines.map((line): LotLine => [
      `Pay: ${line.label}`,
      line.amount,
      line.rate === 0 ? "" : `${round(line.quantity, 4)} x ${round(line.rate, 4)}`,
      "money",
    ]),
    ["Pay in all", total, currency, "money"],
    ["Deposit", deposit, "", "money"],
    ["Balance", balance, "", "money"],
  ];
}

function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join("; ");
}

function percent(share: number): string {
  return `${round(100 * share)} %`;
}

function round(value: number, decimals = 2): string {
  return String(toPlaces(value, decimals));
}
