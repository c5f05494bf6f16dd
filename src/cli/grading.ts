import { readContract } from "../core/contract-reading.js";
import type { Contract } from "../core/contract.js";
import { quote, Refusal } from "../core/refusal.js";
import { standardContract } from "../core/standards.js";
import { normalise } from "../core/text.js";
import type { Grading } from "./columns.js";
import type { YardSheet } from "./find.js";
import type { Order } from "./order.js";
import { Problem } from "../workbook/problem.js";
import type { Terms } from "./terms.js";

/** What the user said of contracts on the command line. */
export interface Wish {
  /** A published standard, where no terms are used. */
  readonly standard: string | null;
  /** The contract of the terms to grade under. */
  readonly contract: string | null;
}

export function wishOf({ contract, under }: Order): Wish {
  return { standard: contract.kind === "standard" ? contract.name : null, contract: under };
}

/** By what a sheet's computed columns are graded; refused where that is not clear. */
export function gradingOf(yard: YardSheet, terms: Terms | null, wish: Wish): Grading {
  const [only, ...others] = gradingsOf(yard, terms, wish);
  if (only && others.length === 0) return only;
  throw new Problem(
    `The terms hold several contracts: ${terms!.contracts.map(quote).join(", ")}. ` +
      `Say which with --for, or give the sheet "${yard.area.sheet.name}" a column Contract.`,
  );
}

/** Every grading that is asked for: one contract, each row's own, or each contract of the terms. */
export function gradingsOf(yard: YardSheet, terms: Terms | null, wish: Wish): Grading[] {
  if (wish.standard !== null) return [{ terms: null, termsName: "", contract: wish.standard }];
  if (terms === null) throw new Problem(NO_TERMS);
  const under = (contract: string | null): Grading => ({
    terms: terms.values,
    termsName: terms.name ?? "",
    contract,
  });
  if (wish.contract !== null) return [under(nameOfContract(terms, wish.contract))];
  return yard.hasContracts ? [under(null)] : terms.contracts.map(under);
}

const NO_TERMS =
  "There are no terms to grade by: the workbook has no block of terms named Terms or headed Term. " +
  "Give the contract with --contract: a workbook with its terms, or a published standard's name.";

export function nameOfContract(terms: Terms, wanted: string): string {
  const name = terms.contracts.find((contract) => normalise(contract) === normalise(wanted));
  if (name !== undefined) return name;
  throw new Problem(
    `No contract of the terms is named ${quote(wanted)}; there are ${terms.contracts.map(quote).join(", ")}.`,
  );
}

/** A contract of the grading as it reads, with a sentence where a term of it is wrong. */
export function contractOf(grading: Grading, name: string): Contract {
  try {
    return grading.terms === null ? standardContract(name) : readContract(grading.terms, name);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Problem(`${sentence(error.message)}.`);
  }
}

/**
 * In a workbook that counts days from 1904 the same number is another day, and a count that was
 * taken for a date another count; the functions see only the number.
 */
export function refuseUnsaidDateSystem(
  yards: readonly YardSheet[],
  terms: Terms | null,
  wish: Wish,
): void {
  const gradings = terms || wish.standard ? yards.flatMap((y) => gradingsOf(y, terms, wish)) : [];
  const said = gradings.every((grading) => {
    const names = grading.contract === null ? (terms?.contracts ?? []) : [grading.contract];
    return names.every((name) => contractOf(grading, name).dateSystem === 1904);
  });
  if (said && gradings.length > 0) return;
  throw new Problem(
    "This workbook counts its dates from 1904, as some begun on an old Mac do. " +
      "Add a row to the terms: date system, and 1904 under each contract.",
  );
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
