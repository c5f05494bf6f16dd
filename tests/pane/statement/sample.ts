import { lotStatement, type StatementAsk } from "../../../src/functions/statement.js";
import type { Statement } from "../../../src/functions/statement-model.js";

/** 27 March 2026 in the 1900 system. */
export const MARCH_27 = 46108;

export const YARD: (string | number)[][] = [
  ["Hive", "Lot", "Pallet", "Date", "Frames of bees"],
  ["H01", "Shed", "P1", MARCH_27, 9],
  ["H02", "Shed", "P1", MARCH_27, "8-9"],
  ["H03", "Shed", "P2", MARCH_27, 4],
];

export const TERMS: (string | number)[][] = [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ["base fee", 50],
  ["currency", "dollars"],
];

export function statementOf(more: Partial<StatementAsk> = {}): Statement {
  return lotStatement({
    yard: YARD,
    terms: TERMS,
    contract: "Cherry",
    lot: "Shed",
    size: 6,
    delivered: null,
    grower: "=1+1",
    beekeeper: null,
    words: null,
    picked: null,
    paper: "letter",
    ...more,
  });
}
