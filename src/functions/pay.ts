import type { Contract } from "../core/contract.js";
import { hivePay } from "../core/fees.js";
import type { Hive } from "../core/grade.js";
import { lotOf, type Lot, type OpenedHive } from "../core/lot.js";
import { lotPay } from "../core/pay.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import type { Cell } from "./cells.js";
import { contractOfLot } from "./lot-contract.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { lotOfSheet } from "./lot-sheet.js";
import { block, number, text } from "./parameters.js";
import { hiveParameters, underContract } from "./under-contract.js";

/**
 * What each hive is paid under its contract by itself: its fee, and its bonus where that is worked out hive by hive.
 *
 * @remarks 0 for a hive that is dead, lacks what the contract asks of every hive, or has no grade.
 * A part frame is paid by its hive's grade, but where the term "part frame" says between: 7.5
 * frames are then paid half way between the fees of 7 and 8. A half cent is rounded away from zero. What hangs on the lot's average (pro
 * rata, bonus by lot) is in LOT_PAY. #N/A where the contract asks for what is not judged.
 * @example =COMB.HIVE_PAY(B2:B61,Terms,"Cherry") gives a fee a hive, down the column.
 * @customfunction HIVE_PAY
 * @helpurl https://localhost:3000/help.html#HIVE_PAY
 * @param frames A row a hive: frames of bees, or the counts of its boxes, counted by the contract's rule.
 * @param terms The Terms table with its heading row, with a base fee or the grades' fees.
 * @param contract The contract's heading in the Terms table; one, or a row each.
 * @param brood A row a hive: combs that hold brood where the cover is given, else brood as the contract counts it.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100.
 * @param queen Laying queen: yes or no.
 * @param stores Stores in the contract's unit.
 * @param box_frames Frame in the boxes, one or a row of one for each column of frames; the contract's where left out.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Money, a row a hive; blank for a hive that was not opened.
 */
export function HIVE_PAY(
  frames: unknown[][],
  terms?: unknown[][],
  contract?: unknown[][],
  brood?: unknown[][],
  brood_cover?: unknown[][],
  queen?: unknown[][],
  stores?: unknown[][],
  box_frames?: unknown[][],
  inspected?: unknown[][],
): unknown[][] {
  const values = [
    frames,
    terms,
    contract,
    brood,
    brood_cover,
    queen,
    stores,
    box_frames,
    inspected,
  ];
  return answer(hiveParameters, values, (...args) =>
    underContract(args, 1, (contract, hive) => [hivePay(contract, openedHive(contract, hive))]),
  );
}

/** A hive by itself is a lot of one, so that it is accepted here as in its lot. */
function openedHive(contract: Contract, hive: Hive): OpenedHive {
  return lotOf(contract, [{ id: "in this row", pallet: null, day: null, hive }], 1).hives[0]!;
}

const lotParameters = [
  block("yard"),
  number("lot_size", 1e6),
  optional(block("terms")),
  text("contract"),
  text("lot"),
  number("delivered", 1e6),
] as const;

/**
 * The settlement of a lot, line by line: hives by what they are paid, pro rata or bonus, short delivery, total, deposit and balance.
 *
 * @remarks The shares of the opened hives are scaled to the lot, exactly or in whole hives as "round
 * hives" says (whole hives by the largest remainders, so that they add up). An amount is quantity
 * times rate, rounded to "round money", a half away from zero; the total is the sum of the amounts
 * as they stand. Hives that are not accepted and dead-outs are paid nothing. A deposit is a percent
 * of what the hives agreed would be paid at the fee agreed: the base fee, or that of a hive at the
 * contract's average.
 * @example =COMB.LOT_PAY(A1:K61,160,Terms,"Cherry","Shed") for 20 opened of 160.
 * @customfunction LOT_PAY
 * @helpurl https://localhost:3000/help.html#LOT_PAY
 * @param yard The yard sheet with its heading row, one hive a row; with the lot given, also with other lots in it.
 * @param lot_size Hives agreed, opened or not; left out where all of them stand in the sheet.
 * @param terms The Terms table with its heading row, with a base fee or the grades' fees.
 * @param contract The contract's heading in the Terms table.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @param delivered Hives that came, where fewer than agreed.
 * @returns Four columns: line, quantity, rate, amount.
 */
export function LOT_PAY(
  yard: unknown[][],
  lot_size?: unknown,
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
  delivered?: unknown,
): unknown[][] {
  const values = [yard, lot_size, terms, contract, lot, delivered];
  return answer(lotParameters, values, (yard, size, terms, name, lotName, delivered) => {
    if (size === null && delivered !== null) {
      throw new Refusal("delivered: give lot_size too, the hives that were agreed");
    }
    const contract = contractOfLot(terms, name, yard, lotName);
    const { lot, remark } = lotOfSheet(yard, contract, lotName, size);
    const { headings, lines } = settlement(contract, lot, delivered, remark);
    return [headings, ...lines.map(({ cells }) => cells)];
  });
}

/** A line of a settlement: label, quantity, rate, amount. */
export interface SettlementLine {
  readonly cells: Cell[];
  /** What is paid in the end: the total, and what a deposit leaves of it. */
  readonly isSum: boolean;
}

/**
 * The lines of a settlement under their headings.
 *
 * @param remark - what is to be said of the sheet: rows that are no hives, another contract named, where nothing else says it
 */
export function settlement(
  contract: Contract,
  lot: Lot,
  delivered: number | null,
  remark = "",
): { headings: Cell[]; lines: SettlementLine[] } {
  const pay = lotPay(contract, lot, delivered);
  const { deposit: percent, balanceDays: days, currency } = contract;
  const due = days > 0 ? `, due ${plural(days, "day")} after the inspection` : "";
  const balance = pay.balance < 0 ? "balance, to be paid back" : `balance${due}`;
  const line = (...cells: Cell[]): SettlementLine => ({ cells, isSum: false });
  const sum = (label: string, amount: number): SettlementLine => ({
    cells: [label, "", "", amount],
    isSum: true,
  });
  const deposit = `less deposit, ${percent} % of what was agreed`;
  return {
    headings: [
      "Settlement",
      "Quantity",
      "Rate",
      currency === "" ? "Amount" : `Amount, ${currency}`,
    ],
    lines: [
      line("hives agreed", lot.size, "", ""),
      ...(delivered === null ? [] : [line("hives delivered", delivered, "", "")]),
      line("hives opened", lot.hives.length, "", ""),
      ...(remark === "" ? [] : [line(remark, "", "", "")]),
      ...pay.lines.map(({ label, quantity, rate, amount }) =>
        quantity === 0 && rate === 0
          ? line(label, "", "", amount)
          : line(label, quantity, rate, amount),
      ),
      sum("total", pay.total),
      ...(percent === 0
        ? []
        : [line(deposit, percent / 100, pay.agreed, 0 - pay.deposit), sum(balance, pay.balance)]),
    ],
  };
}

export const hivePayFunction: SheetFunction = {
  id: "HIVE_PAY",
  parameters: hiveParameters,
  evaluate: HIVE_PAY,
};
export const lotPayFunction: SheetFunction = {
  id: "LOT_PAY",
  parameters: lotParameters,
  evaluate: LOT_PAY,
  table: true,
};
