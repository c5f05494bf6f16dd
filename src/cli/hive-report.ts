import { gradesOf } from "../core/grade.js";
import { Refusal } from "../core/refusal.js";
import type { Grading } from "./columns.js";
import { TURN_NOTES } from "../functions/turns.js";
import { cellsOf, notAdded, type YardSheet } from "./find.js";
import { contractOf } from "./grading.js";
import { linesOf, type Line } from "./hives.js";
import { Problem } from "../workbook/problem.js";
import { textTable } from "./text-table.js";

/** The lines of a yard sheet's hives, one list a grading, hive by hive the same hives. */
type Lists = readonly (readonly Line[])[];

/** How many contracts fit side by side into 80 columns. */
const SIDE_BY_SIDE = 2;

/** The hives of a yard sheet with their strength and grade, then how many of each grade a lot has. */
export function hiveReport(yard: YardSheet, gradings: readonly Grading[], width: number): string[] {
  const { sheet, top } = yard.area;
  const values = cellsOf(yard);
  const lists = gradings.map((grading) => linesOf(values, grading));
  const own = gradings[0]?.contract === null;
  return [
    `Sheet "${sheet.name}", rows counted from the headings in row ${top}`,
    ...notAdded(yard),
    ...grouped(lists).flatMap((group) => ["", ...hiveTable(group, own, width)]),
    "",
    ...textTable(tally(lists.flat(), gradings), width),
  ];
}

/** Contracts that count alike share a table; where frames or brood are counted otherwise, none does. */
function grouped(lists: Lists): Lists[] {
  const groups: Line[][][] = [];
  for (const list of lists) {
    const group = groups.find(
      (g) => g.length < SIDE_BY_SIDE && figuresOf(g[0]!) === figuresOf(list),
    );
    if (group) group.push([...list]);
    else groups.push([[...list]]);
  }
  return groups;
}

const figuresOf = (list: readonly Line[]): string =>
  JSON.stringify(list.map((l) => [l.hive, l.figures]));

function hiveTable(group: Lists, own: boolean, width: number): string[] {
  const first = group[0]!;
  const hasLots = first.some((line) => line.lot !== "");
  const under = own ? ["Contract", "Grade"] : group.map((list) => cut(list[0]?.contract ?? ""));
  const headings = [
    "Hive",
    ...(hasLots ? ["Lot"] : []),
    "Frames",
    "Bees",
    "Brood",
    "Combs",
    ...under,
    "Note",
  ];
  const rows = first.map((line, i) => [
    cut(line.hive),
    ...(hasLots ? [cut(line.lot)] : []),
    ...line.figures,
    ...(own ? [cut(line.contract)] : []),
    ...group.map((list) => cut(list[i]!.grade)),
    noteOf(group.map((list) => list[i]!)),
  ]);
  return textTable([headings, ...rows], width);
}

/** One note where all contracts agree, else each contract's. */
function noteOf(lines: readonly Line[]): string {
  const notes = new Set(lines.map((line) => line.note));
  if (notes.size === 1) return [...notes].join();
  return lines.flatMap((l) => (l.note === "" ? [] : `${l.contract}: ${l.note}`)).join("; ");
}

/** Hives, each once, by lot, contract and grade, the best grade first, then why there is none, as it is met. */
function tally(lines: readonly Line[], gradings: readonly Grading[]): string[][] {
  const counts = new Map<string, Map<string, number>>();
  const unclear = new Set<string>();
  for (const { lot, contract, grade, hive, note } of lines) {
    if (hive === "" || note.startsWith(TURN_NOTES.earlier)) continue;
    const key = JSON.stringify([lot, contract]);
    const grades = counts.get(key) ?? new Map<string, number>();
    const isUnclear = note.startsWith(TURN_NOTES.unclear);
    if (isUnclear && unclear.has(key + hive)) continue;
    if (isUnclear) unclear.add(key + hive);
    const as = isUnclear ? "standing twice" : grade || note;
    counts.set(key, grades.set(as, (grades.get(as) ?? 0) + 1));
  }
  const rows = [...counts].map(([key, grades]) => {
    const [lot, contract] = JSON.parse(key) as [string, string];
    const hives = [...grades.values()].reduce((sum, count) => sum + count, 0);
    const best = gradeNames(gradings, contract).filter((name) => grades.has(name));
    const names = new Set([...best, ...grades.keys()]);
    const list = [...names].map((name) => `${grades.get(name)} ${name}`).join(", ");
    return [cut(lot || "(no lot)"), cut(contract), String(hives), list];
  });
  return [["Lot", "Contract", "Hives", "Grades"], ...rows];
}

/** The grades of a contract, the best first; none where a row names a contract that is not there. */
function gradeNames(gradings: readonly Grading[], contract: string): string[] {
  const grading = gradings.find((g) => g.contract === null || g.contract === contract)!;
  try {
    return gradesOf(contractOf(grading, contract)).map((grade) => grade.name);
  } catch (error) {
    if (error instanceof Problem || error instanceof Refusal) return [];
    throw error;
  }
}

const cut = (text: string): string => (text.length > 14 ? `${text.slice(0, 13)}…` : text);
