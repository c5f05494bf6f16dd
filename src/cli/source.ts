import { extname } from "node:path";
import { isStandard, STANDARDS } from "../core/standards.js";
import { readInput } from "./files.js";
import { Problem } from "../workbook/problem.js";
import { findTerms, type Terms } from "./terms.js";
import { openWorkbook } from "../workbook/workbook.js";

export type Kind = ".xlsx" | ".csv";

const HINTS: Readonly<Record<string, string>> = {
  ".xls": "is an Excel file of before 2007",
  ".xlsm": "may hold macros, which would be lost",
  ".xlsb": "is a binary workbook",
  ".xltx": "is a template",
  ".ods": "is an OpenDocument sheet",
  ".numbers": "is a sheet of Numbers",
};

/** What kind of file a name says it is; refused where it is neither a workbook nor a text of cells. */
export function kindOf(path: string): Kind {
  const extension = extname(path).toLowerCase();
  if (extension === ".xlsx" || extension === ".csv") return extension;
  const hint = HINTS[extension] ?? "is neither an .xlsx nor a .csv file";
  throw new Problem(
    `${path} ${hint}. Save it as an Excel Workbook (.xlsx) or as CSV (.csv) first.`,
  );
}

/** What was given with --contract. */
export type ContractSource =
  | { readonly kind: "none" }
  | { readonly kind: "standard"; readonly name: string }
  | { readonly kind: "terms"; readonly terms: Terms; readonly path: string };

export async function contractSource(given: string | null): Promise<ContractSource> {
  if (given === null) return { kind: "none" };
  if (isStandard(given)) return { kind: "standard", name: given };
  if (extname(given) === "") {
    const names = STANDARDS.map((standard) => `  ${standard.name}`).join("\n");
    throw new Problem(
      `"${given}" is no file with terms, and no published standard. The standards are:\n${names}`,
    );
  }
  if (kindOf(given) !== ".xlsx")
    throw new Problem(`Terms are read from an .xlsx file, not ${given}.`);
  const { workbook } = await openWorkbook(await readInput(given), given);
  const terms = findTerms(workbook);
  if (!terms) {
    throw new Problem(`${given} holds no terms: no block named Terms, and none headed Term.`);
  }
  return { kind: "terms", terms, path: given };
}
