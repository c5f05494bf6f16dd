import type { Contract } from "./contract.js";
import { labelOf, readContract } from "./contract-reading.js";
import { STANDARDS } from "./standards.js";
import { TERMS } from "./terms.js";
import { normalise } from "./text.js";

type Block = readonly (readonly unknown[])[];

/** Terms that say what is done with a lot, and nothing of how its hives are judged. */
const AFTER_JUDGING: ReadonlySet<keyof Contract> = new Set<keyof Contract>([
  "underMinimum",
  "forgivenShare",
  "forgivenAgainst",
  "baseFee",
  "bonus",
  "bonusBy",
  "bonusCeiling",
  "proRata",
  "currency",
  "moneyRounding",
  "hiveRounding",
  "deposit",
  "balanceDays",
  "shortDelivery",
]);

/** Whether a lot's hives are judged the same whatever stands in this term. */
export function leavesHives(contract: Contract, label: string): boolean {
  const wanted = labelOf(label);
  if (/^grade \d+ fee$/.test(wanted)) return true;
  const field = TERMS.find((term) => term.label === wanted)?.field;
  // Without grades of its own a contract tells hives apart by its average.
  if (field === "averageFrames") return contract.grades.length > 0;
  return field !== undefined && AFTER_JUDGING.has(field);
}

/** Terms by which the sheet's cells are read. */
const READING: ReadonlySet<keyof Contract> = new Set<keyof Contract>([
  "combRule",
  "frame",
  "boxFrame",
  "broodMeasure",
  "layingQueen",
  "stores",
  "storesUnit",
  "wholeFrames",
  "decimal",
  "percentsAs",
  "dateSystem",
  "dates",
]);

/** By what a contract reads a sheet: two with the same read the same, and refuse it in the same words. */
export function readingOf(contract: Contract): string {
  return JSON.stringify([contract.name, ...[...READING].map((field) => contract[field])]);
}

/** Whether the sheet's cells are read the same whatever stands in this term. */
export function leavesReading(label: string): boolean {
  const wanted = labelOf(label);
  const field = TERMS.find((term) => term.label === wanted)?.field;
  return field === undefined || !READING.has(field);
}

/**
 * The same contract with something else in one of its terms, as if the cell had been changed.
 *
 * @param terms - the Terms table; null for a published standard, which then gains the term
 * @param contract - as it stands
 */
export function contractWith(
  terms: Block | null,
  contract: Contract,
  label: string,
  value: unknown,
): Contract {
  const rows = columnOf(terms, contract);
  const wanted = labelOf(label);
  const changed = rows.map(([own, cell]) => [own, labelOf(own) === wanted ? value : cell]);
  if (!rows.some(([own]) => labelOf(own) === wanted)) changed.push([wanted, value]);
  return readContract([["Term", contract.name], ...changed], contract.name);
}

function columnOf(terms: Block | null, { name }: Contract): Block {
  if (terms === null) {
    const standard = STANDARDS.find((standard) => standard.name === name);
    return Object.entries(standard?.terms ?? {});
  }
  const column = terms[0]!.findIndex((cell, k) => k > 0 && textOf(cell) === textOf(name));
  return terms.slice(1).map((row) => [row[0], row[column]]);
}

function textOf(cell: unknown): string {
  return normalise(String(cell ?? ""));
}
