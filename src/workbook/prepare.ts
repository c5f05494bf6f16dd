import { encodeCol } from "@cj-tech-master/excelts";
import type { Constants } from "./constants.js";
import type { Formula } from "./formulas.js";
import {
  inOneCell,
  SPREAD,
  traced,
  withConstants,
  withoutAnchors,
  withoutSingles,
  withoutTables,
} from "./rewrite.js";
import type { SheetTable } from "./tables.js";

/** What must be known of a workbook to write its formulas as the engine can calculate them. */
export interface Surroundings {
  readonly tables: readonly SheetTable[];
  /** Ids of our functions. */
  readonly ids: ReadonlySet<string>;
  readonly constants: Constants;
  /** The block that the formula in a cell fills, as a reference. */
  filledFrom(sheet: string, address: string): string;
}

/** A formula as the engine can calculate it; `number` is what the engine's listener will be told. */
export function calculable(formula: Formula, number: number, around: Surroundings): string {
  const { cell, text, ours, fills } = formula;
  let result = withoutTables(text, around.tables, cell);
  result = withoutAnchors(result, (sheet, address) =>
    around.filledFrom(sheet || cell.worksheet.name, address),
  );
  result = withoutSingles(result, cell.row, encodeCol(cell.col - 1));
  if (ours) {
    result = withConstants(result, (name) => around.constants.numberOf(name, cell.worksheet.name));
    result = traced(result, number, around.ids);
  }
  return fills === "one" ? inOneCell(result) : `${SPREAD}(${number},${result})`;
}

/** Whether a formula reads a block that another formula fills, however large that is. */
export function isAnchored(formula: Formula): boolean {
  return formula.text.includes("ANCHORARRAY(");
}
