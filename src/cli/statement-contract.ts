import { extname } from "node:path";
import type { Workbook } from "@cj-tech-master/excelts";
import { quote } from "../core/refusal.js";
import { isStandard } from "../core/standards.js";
import { normalise } from "../core/text.js";
import { refuseSameFile } from "./files.js";
import { nameOfContract } from "./grading.js";
import { Problem } from "../workbook/problem.js";
import { contractSource } from "./source.js";
import type { StatementOrder } from "./statement-command.js";
import { findTerms, type Terms } from "./terms.js";

/** Terms of which a statement goes by one contract; null where that is a published standard. */
export interface Agreed {
  readonly terms: Terms | null;
  readonly contract: string;
}

/**
 * The contract meant: one of the workbook's own terms, of another workbook, or a published standard.
 *
 * @param byHives - the contracts that the lot's hives name in the sheet
 */
export async function agreed(
  workbook: Workbook,
  { contract, under, output }: StatementOrder,
  byHives: readonly string[],
): Promise<Agreed> {
  const inSheet = byHives.length === 1 ? byHives[0]! : null;
  const own = findTerms(workbook);
  const named = own?.contracts.find((name) => normalise(name) === normalise(contract ?? ""));
  if (own !== null && (contract === null || named !== undefined)) {
    return { terms: own, contract: oneOf(own, named ?? under ?? inSheet) };
  }
  if (contract === null) throw new Problem(NO_CONTRACT);
  // A name that is no file's and no standard's can only be meant for one of the workbook's own.
  if (own !== null && extname(contract) === "" && !isStandard(contract)) {
    return { terms: own, contract: nameOfContract(own, contract) };
  }
  const source = await contractSource(contract);
  if (source.kind !== "terms") return { terms: null, contract };
  await refuseSameFile(source.path, output);
  return { terms: source.terms, contract: oneOf(source.terms, under ?? inSheet) };
}

const NO_CONTRACT =
  "There are no terms to settle by: the workbook has no block of terms named Terms or headed Term. " +
  "Give --contract: a workbook with the terms, or a published standard's name.";

function oneOf(terms: Terms, wanted: string | null): string {
  if (wanted !== null) return nameOfContract(terms, wanted);
  const [only, ...others] = terms.contracts;
  if (only !== undefined && others.length === 0) return only;
  throw new Problem(
    `The terms hold several contracts: ${terms.contracts.map(quote).join(", ")}. ` +
      "Say which with --contract, or with --for where the terms are another workbook's.",
  );
}
