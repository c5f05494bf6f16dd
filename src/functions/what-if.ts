import type { Contract } from "../core/contract.js";
import { DEAD_OUT, NO_GRADE } from "../core/contract-check.js";
import { exact, minus, toNumber } from "../core/exact.js";
import { countLot, lotOf, underOf, type Lot, type LotCount } from "../core/lot.js";
import { lotPay } from "../core/pay.js";
import { together } from "../core/together.js";
import { contractWith, leavesHives, leavesReading } from "../core/what-if.js";
import { CellError, isBlankOrZero, toCellError, type Cell } from "./cells.js";
import { contractOfLot } from "./lot-contract.js";
import { answer, needed, optional, type SheetFunction } from "./declare.js";
import { onceEach } from "./once-each.js";
import { lotInSheet } from "./lot-sheet.js";
import { block, number, text } from "./parameters.js";

const parameters = [
  block("yard"),
  needed(text("term")),
  block("values"),
  number("lot_size", 1e6),
  optional(block("terms")),
  text("contract"),
  text("lot"),
] as const;

/** The lot as a contract counts it, and what is to be said of rows of the sheet that are no hives. */
interface Judged {
  readonly lot: Lot;
  readonly remark: string;
}

/** What the lot comes to with one value in the term. */
interface Outcome {
  readonly count: LotCount;
  /** Null where the contract does not say what is paid: then `open` asks for it. */
  readonly pay: number | null;
  readonly open: CellError | null;
  readonly remark: string;
}

/**
 * What a lot comes to for each of several values of one term: verdict, average, grades and pay, a row a value, in one spill.
 *
 * @remarks Each row is what LOT_PAY gives with that value in the contract. "Change" is the pay
 * against the row before, blank where it stays the same. A blank or 0 leaves the term out. A value
 * that the contract cannot hold spoils its own row, and the note says why; so does a contract that
 * gives no fee its pay. How sure the average is stands in LOT.
 * @example =COMB.WHAT_IF(A1:K61,"average frames",{7;7.5;8},160,Terms,"Cherry","Shed") gives three rows under a heading.
 * @customfunction WHAT_IF
 * @helpurl https://localhost:3000/help.html#WHAT_IF
 * @param yard The yard sheet with its heading row, one hive a row; with the lot given, also with other lots in it.
 * @param term The label of one term as in the Terms table, such as "average frames" or "grade 1 fee".
 * @param values What to put there: a row or a column of thresholds, fees or words.
 * @param lot_size Hives agreed, opened or not; left out where all of them stand in the sheet.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @returns A heading row, then a row a value: value, verdict, average frames, hives opened of each grade, pay, change, note.
 */
export function WHAT_IF(
  yard: unknown[][],
  term: unknown,
  values: unknown[][],
  lot_size?: unknown,
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
): unknown[][] {
  const args = [yard, term, values, lot_size, terms, contract, lot];
  return answer(parameters, args, (yard, term, values, size, terms, name, lotName) => {
    const now = contractOfLot(terms, name, yard, lotName);
    const readOnce = onceEach((contract: Contract) => lotInSheet(yard, contract, lotName));
    const judge = (contract: Contract): Judged => {
      const { looks, size: sizeOf, remark } = readOnce(leavesReading(term) ? now : contract);
      return { lot: lotOf(contract, looks, sizeOf(size)), remark };
    };
    const judgeNow = onceEach(judge);
    const outcomes = values.flat().map((value): Outcome | CellError => {
      try {
        if (value instanceof CellError) throw value;
        const contract = contractWith(terms, now, term, value);
        return outcomeOf(contract, leavesHives(now, term) ? judgeNow(now) : judge(contract));
      } catch (error) {
        return toCellError(error, "");
      }
    });
    checkShared(outcomes);
    return table(term, values.flat(), outcomes, now.currency);
  });
}

function outcomeOf(contract: Contract, { lot, remark }: Judged): Outcome {
  const count = countLot(contract, lot);
  try {
    return { count, pay: lotPay(contract, lot, null).total, open: null, remark };
  } catch (error) {
    const open = new CellError("#N/A", toCellError(error, "").message);
    return { count, pay: null, open, remark };
  }
}

function table(
  term: string,
  values: readonly unknown[],
  outcomes: readonly (Outcome | CellError)[],
  currency: string,
): Cell[][] {
  const grades = gradesOf(outcomes);
  const rows = outcomes.map((outcome, i): Cell[] => {
    const value = isBlankOrZero(values[i]) ? "left out" : (values[i] as Cell);
    if (outcome instanceof CellError) {
      const note = outcome.message || `an error stands there, ${outcome.code}`;
      return [value, ...Array<Cell>(grades.length + 4).fill(outcome), note];
    }
    const { count, pay, open, remark } = outcome;
    return [
      value,
      count.met ? "met" : "not met",
      count.average ?? "",
      ...grades.map((grade) => count.grades.get(grade) ?? 0),
      pay ?? open!,
      change(outcomes[i - 1], pay),
      together(reason(count), open?.message ?? "", remark),
    ];
  });
  const pay = currency === "" ? "Pay" : `Pay, ${currency}`;
  return [[term, "Verdict", "Average frames", ...grades, pay, "Change", "Note"], ...rows];
}

/** Every grade that a row names; a threshold may make one of them disappear. */
function gradesOf(outcomes: readonly (Outcome | CellError)[]): string[] {
  const names = new Set(
    outcomes.flatMap((outcome) =>
      outcome instanceof CellError ? [] : [...outcome.count.grades.keys()],
    ),
  );
  for (const last of [NO_GRADE, DEAD_OUT]) {
    names.delete(last);
    names.add(last);
  }
  return [...names];
}

/** A fault that every value shares is the whole call's, not one error a row. */
function checkShared(outcomes: readonly (Outcome | CellError)[]): void {
  const [first] = outcomes;
  const shared = outcomes.every(
    (outcome) => outcome instanceof CellError && outcome.message === (first as CellError).message,
  );
  if (shared) throw first;
}

function change(before: Outcome | CellError | undefined, pay: number | null): Cell {
  const was = before === undefined || before instanceof CellError ? null : before.pay;
  if (was === null || pay === null || was === pay) return "";
  return toNumber(minus(exact(pay), exact(was)));
}

function reason(count: LotCount): string {
  return together(
    count.averageMet ? "" : "the average is under what is asked",
    count.underMet ? "" : underOf(count),
  );
}

export const whatIf: SheetFunction = { id: "WHAT_IF", parameters, evaluate: WHAT_IF, table: true };
