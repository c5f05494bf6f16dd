import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { areaAt, areaOn, overlaps, type Area } from "../../src/workbook/area.js";
import { outsideTexts } from "../../src/workbook/formula-text.js";
import { formulasOf, type Formula } from "../../src/workbook/formulas.js";

const SHEET = String.raw`(?:(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?`;
const REFERENCE = new RegExp(
  String.raw`(?<![\p{L}\p{N}_.$!'])${SHEET}(?:\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3})(?![\p{L}\p{N}_.(!])`,
  "giu",
);
const WORD = /[\p{L}_\\][\p{L}\p{N}_.\\]*/gu;
const LAST_ROW = 1_048_576;

/**
 * The formulas of ours that wait for another of ours, directly or through the spreadsheet's own, each
 * as `Lots!B8 waits for Yard!M1`.
 */
export function chainsIn(workbook: Workbook): string[] {
  const formulas = formulasOf(workbook);
  const names = new Map(
    workbook.definedNames.getAllEntries().map(({ name, ranges }) => [name.toLowerCase(), ranges]),
  );
  const readBy = new Map(formulas.map((f) => [f, readsOf(f, workbook, names)]));
  return formulas
    .filter(({ ours }) => ours)
    .flatMap((formula) => {
      const waits = [...before(formula, formulas, readBy)].filter(({ ours }) => ours);
      return waits.map((other) => `${placeOf(formula)} waits for ${placeOf(other)}`);
    });
}

/** Every formula that must be calculated first. */
function before(
  formula: Formula,
  formulas: readonly Formula[],
  readBy: ReadonlyMap<Formula, readonly Area[]>,
): Set<Formula> {
  const found = new Set<Formula>();
  const open = [formula];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const areas = readBy.get(next)!;
    for (const other of formulas) {
      if (found.has(other) || !areas.some((area) => overlaps(area, other.area))) continue;
      found.add(other);
      open.push(other);
    }
  }
  return found;
}

function readsOf(
  { text, cell }: Formula,
  workbook: Workbook,
  names: ReadonlyMap<string, readonly string[]>,
): Area[] {
  const areas: Area[] = [];
  outsideTexts(text, (part) => {
    for (const [reference] of part.matchAll(REFERENCE)) {
      areas.push(areaOf(reference, cell.worksheet, workbook));
    }
    for (const [word] of part.matchAll(WORD)) {
      for (const range of names.get(word.toLowerCase()) ?? []) {
        areas.push(areaOf(range, cell.worksheet, workbook));
      }
    }
    return part;
  });
  return areas;
}

function areaOf(reference: string, own: Worksheet, workbook: Workbook): Area {
  const rows = reference.replace(/(\$?[A-Z]{1,3}):(\$?[A-Z]{1,3})$/i, `$11:$2${LAST_ROW}`);
  const area = rows.includes("!") ? areaAt(workbook, rows) : areaOn(own, rows);
  if (area === null) throw new Error(`${reference} is no block of the workbook`);
  return area;
}

function placeOf({ cell }: Formula): string {
  return `${cell.worksheet.name}!${cell.address}`;
}
