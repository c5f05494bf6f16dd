import { contractOfLot } from "./lot-contract.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { countLines, gradeLines, payLines, sureLines } from "./lot-lines.js";
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

/**
 * A lot by its contract, spilled with labels: hives opened, average, met or not, how sure, hives under the minimum, grades, pay.
 *
 * @remarks Contracts settle on the average of the sample: that is "by the contract". "How sure" is
 * the interval for the average of the whole lot, opened or not. A dead-out, and a hive that lacks
 * what the contract asks of every hive, is treated as one under the minimum. A hive that stands
 * twice counts by its latest date. A row of sums or averages is no hive. Rows that cannot be read
 * refuse the lot, all of them named.
 * @example =COMB.LOT(A1:K61,160,Terms,"Cherry","Shed") for 20 opened of 160.
 * @customfunction LOT
 * @helpurl https://localhost:3000/help.html#LOT
 * @param yard The yard sheet with its heading row, one hive a row; with the lot given, also with other lots in it.
 * @param lot_size Hives in the lot, opened or not; left out where all of them stand in the sheet.
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
    const contract = contractOfLot(terms, name, yard, lotName);
    const { lot, remark } = lotOfSheet(yard, contract, lotName, size);
    const lines = [
      ...countLines(contract, lot, remark),
      ...sureLines(contract, lot, confidence),
      ...gradeLines(contract, lot),
      ...payLines(contract, lot, delivered),
    ];
    return [
      ["Lot", lotName ?? "", `under contract ${contract.name}`],
      ...lines.map(([label, figure, remark]) => [label, figure, remark]),
    ];
  });
}

export const lot: SheetFunction = { id: "LOT", parameters, evaluate: LOT, table: true };
