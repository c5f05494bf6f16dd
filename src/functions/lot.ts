import type { Contract } from "../core/contract.js";
import { countLot, type Lot, type LotCount } from "../core/lot.js";
import { lotPay } from "../core/pay.js";
import { Refusal } from "../core/refusal.js";
import { lotAverage, type LotAverage } from "../core/sampling.js";
import { shareUnder } from "../core/share.js";
import type { Cell } from "./cells.js";
import { contractNamed } from "./contracts.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { lotOfSheet } from "./lot-sheet.js";
import { block, confidence, number, text } from "./parameters.js";

const parameters = [
  block("yard"),
  number("lot_size", 1e6),
  optional(block("terms")),
  text("contract"),
  text("lot"),
  number("delivered", 1e6),
  confidence("confidence"),
] as const;

/** A row of the statement: what it is, its figure, and what is to be known of it. */
type Row = [label: string, figure: Cell, remark: string];

/**
 * A lot by its contract, spilled with labels: hives opened, average, met or not, how sure, hives under the minimum, grades, pay.
 *
 * @remarks Contracts settle on the average of the sample: that is "by the contract". "How sure" is
 * the interval for the average of the whole lot, opened or not. A dead-out, and a hive that lacks
 * what the contract asks of every hive, is treated as one under the minimum. A hive that stands
 * twice counts by its latest date. A row that cannot be read refuses the lot.
 * @example =COMB.LOT(A1:K61,160,Terms,"Cherry","Shed") for 20 opened of 160.
 * @customfunction LOT
 * @helpurl https://localhost:3000/help.html#LOT
 * @param yard The yard sheet with its heading row, one opened hive a row; with the lot given, also with other lots in it.
 * @param lot_size Hives in the lot, opened or not; left out where every hive was opened.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @param delivered Hives that came, where fewer than agreed; lot_size is then what was agreed.
 * @param confidence Confidence of the interval and the limits in percent: 95 where left out.
 * @returns Three columns: label, figure, remark.
 */
export function LOT(
  yard: unknown[][],
  lot_size?: unknown,
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
  delivered?: unknown,
  confidence?: unknown,
): unknown[][] {
  const values = [yard, lot_size, terms, contract, lot, delivered, confidence];
  return answer(parameters, values, (yard, size, terms, name, lotName, delivered, confidence) => {
    const contract = contractNamed(terms, name);
    const lot = lotOfSheet(yard, contract, lotName, size);
    const count = countLot(contract, lot);
    return [
      ["Lot", lotName ?? "", `under contract ${contract.name}`],
      ["Hives in the lot", lot.size, ""],
      ["Hives opened", count.opened, openedRemark(lot, count)],
      ["Dead-outs", count.deadOuts, ""],
      ["Hives under the minimum", count.under, underRemark(contract)],
      ["Average frames", count.average ?? "", averageRemark(contract, count)],
      ["By the contract", count.met ? "met" : "not met", reason(contract, count)],
      ...howSure(contract, lot, confidence),
      ...[...count.grades].map(([grade, hives]): Row => [
        `Grade ${grade}`,
        hives,
        `${percent(hives / count.opened)} of the hives opened`,
      ]),
      ...pay(contract, lot, delivered),
    ];
  });
}

function openedRemark({ hives, size }: Lot, { opened }: LotCount): string {
  if (opened === size) return "every hive of the lot";
  const pallets = new Set(hives.map((hive) => hive.pallet).filter((pallet) => pallet !== null));
  const on = pallets.size > 0 ? `, on ${pallets.size} pallets` : "";
  return `${percent(opened / size)} of the lot${on}`;
}

function underRemark(contract: Contract): string {
  const does = {
    "left out": "left out of the average",
    counted: "counted in the average",
    "rejects the load": `the load is rejected over ${contract.forgivenShare} % of ${contract.forgivenAgainst}`,
  }[contract.underMinimum];
  return `dead-outs and hives that lack what is asked of every hive among them; ${does}`;
}

function averageRemark(contract: Contract, { counted }: LotCount): string {
  const cap = contract.mostFrames > 0 ? `, each at most ${contract.mostFrames}` : "";
  const asked =
    contract.averageFrames > 0 ? `${contract.averageFrames} asked` : "no average is asked";
  return `of ${counted} hives${cap}; ${asked}`;
}

function reason(
  contract: Contract,
  { average, averageMet, underMet, under, opened }: LotCount,
): string {
  const parts = [];
  if (contract.averageFrames > 0) {
    const is = average === null ? "no hive counts" : `the sample's average is ${round(average)}`;
    parts.push(`${is}, ${averageMet ? "at least" : "under"} the ${contract.averageFrames} asked`);
  }
  if (contract.underMinimum === "rejects the load") {
    parts.push(
      `${under} of ${opened} hives under the minimum ${underMet ? "are forgiven" : "are too many"}`,
    );
  }
  return parts.length === 0 ? "the contract asks nothing of the lot as a whole" : parts.join("; ");
}

function howSure(contract: Contract, lot: Lot, confidence: number): Row[] {
  const average = lotAverage(contract, lot, confidence);
  const share = shareUnder(lot, confidence);
  const limits =
    lot.hives.length === lot.size
      ? "every hive was opened"
      : `${confidence} % limits for the whole lot, exact for hives drawn singly` +
        (contract.openedBy === "pallets" ? "; on whole pallets they are too narrow" : "");
  return [
    [
      "How sure",
      sureness(contract, average),
      [average.method, average.warning].filter((text) => text !== "").join("; "),
    ],
    ["Average of the whole lot, low", average.low ?? "", `${confidence} % interval`],
    ["Average of the whole lot, high", average.high ?? "", ""],
    ["Share under the minimum, %", 100 * share.share, ""],
    ["Share under the minimum, low, %", 100 * share.low, limits],
    ["Share under the minimum, high, %", 100 * share.high, ""],
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

/** The settlement; a contract that says nothing of money has none. */
function pay(contract: Contract, lot: Lot, delivered: number | null): Row[] {
  if (contract.baseFee === 0 && contract.grades.every((grade) => grade.fee === 0)) {
    if (delivered === null) return [["Pay", "", "the contract gives no fee"]];
    throw new Refusal("delivered: the contract gives no fee to settle");
  }
  const { lines, total, deposit, balance, currency } = lotPay(contract, lot, delivered);
  return [
    ...lines.map((line): Row => [
      `Pay: ${line.label}`,
      line.amount,
      line.rate === 0 ? "" : `${round(line.quantity, 4)} x ${round(line.rate, 4)}`,
    ]),
    ["Pay in all", total, currency],
    ["Deposit", deposit, ""],
    ["Balance", balance, ""],
  ];
}

function percent(share: number): string {
  return `${round(100 * share)} %`;
}

function round(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}

export const lot: SheetFunction = { id: "LOT", parameters, evaluate: LOT };
