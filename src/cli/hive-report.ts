import { gradesOf } from "../core/grade.js";
import { Refusal } from "../core/refusal.js";
import type { Grading } from "./columns.js";
import { TURN_NOTES } from "../functions/turns.js";
import { ABSENCE_NOTES } from "../functions/yard.js";
import { cellsOf, notAdded, type YardSheet } from "./find.js";
import { contractOf } from "./grading.js";
import { linesOf, type Line } from "./hives.js";
import { Problem } from "../workbook/problem.js";
import { NOTHING, severalContracts, verdictOn } from "./lot-verdict.js";
import { inSheetRows } from "./sheet-rows.js";
import { paragraph, textTable } from "./text-table.js";
import { isUnopened, unopenedIn } from "./unopened.js";

/** The lines of a yard sheet's hives, one list a grading, hive by hive the same hives. */
type Lists = readonly (readonly Line[])[];

/** How many contracts fit side by side into 80 columns. */
const SIDE_BY_SIDE = 2;

/** The hives of a yard sheet with their strength and grade, then what each lot comes to. */
export function hiveReport(yard: YardSheet, gradings: readonly Grading[], width: number): string[] {
  const { sheet, top } = yard.area;
  const values = cellsOf(yard);
  const lists = gradings.map((grading) =>
    linesOf(values, grading).map((line) => ({ ...line, note: inSheetRows(line.note, top) })),
  );
  const opened = lists.map((list) => list.filter((line) => !isUnopened(line)));
  const unopened = unopenedIn(lists[0] ?? []).flatMap((text) => paragraph(text, width));
  const own = gradings[0]?.contract === null;
  return [
    `Sheet "${sheet.name}", headings in row ${top}`,
    ...notAdded(yard),
    ...grouped(opened).flatMap((group) => ["", ...hiveTable(group, own, width)]),
    ...(unopened.length > 0 ? ["", ...unopened] : []),
    "",
    ...lotTable(values, lists.flat(), gradings, { top, width }),
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

/** Each is looked for through the whole sheet. */
const MOST_LOTS = 50;

/** Each lot under each contract: its hives, average, whether it is met, and hives by grade. */
function lotTable(
  values: unknown[][],
  lines: readonly Line[],
  gradings: readonly Grading[],
  { top, width }: { top: number; width: number },
): string[] {
  const tallies = tally(lines);
  const named = new Set(tallies.map(({ lot }) => lot));
  const lots = tallies.map(({ lot, contract, grades }) => {
    const grading = gradings.find((g) => g.contract === null || g.contract === contract)!;
    const listed = [...grades.values()].reduce((sum, count) => sum + count, 0);
    const hives = listed - (grades.get(ABSENCE_NOTES.gone) ?? 0);
    const best = gradeNames(grading, contract).filter((name) => grades.has(name));
    const names = new Set([...best, ...grades.keys()]);
    const list = [...names].map((name) => `${grades.get(name)} ${name}`).join(", ");
    const isRest = lot === "" && named.size > 1;
    const isSeveral = grading.contract === null && tallies.some(isOther({ lot, contract }));
    const { average, met, caution } =
      isRest || named.size > MOST_LOTS || contract === ""
        ? NOTHING
        : isSeveral
          ? severalContracts(lot || null)
          : verdictOn(values, lot || null, grading, contract);
    const row = [cut(lot || "(no lot)"), cut(contract), String(hives), average, met, list];
    return { row, caution };
  });
  const headings = ["Lot", "Contract", "Hives", "Average", "Verdict", "Grades"];
  const cautions = new Set(lots.map(({ caution }) => caution).filter((caution) => caution !== ""));
  const said = [...cautions].map((caution) => inSheetRows(caution, top));
  const isJudged = lots.some(({ row }) => row[4] !== "");
  return [
    ...textTable([headings, ...lots.map(({ row }) => row)], width),
    ...[...(isJudged ? [HOW_SURE] : []), ...said].flatMap((text) => [
      "",
      ...paragraph(text, width),
    ]),
  ];
}

const HOW_SURE =
  "Average and verdict are those of the hives opened. How sure they are of a lot that was opened in " +
  "part, LOT and the statement say: they ask how many hives it has.";

const isOther =
  (one: Pick<Tally, "lot" | "contract">) =>
  ({ lot, contract }: Tally): boolean =>
    lot === one.lot && contract !== one.contract;

interface Tally {
  readonly lot: string;
  readonly contract: string;
  readonly grades: ReadonlyMap<string, number>;
}

/** Hives, each once, by lot, contract and grade; without a grade by why there is none. */
function tally(lines: readonly Line[]): Tally[] {
  const tallies = new Map<string, { lot: string; contract: string; grades: Map<string, number> }>();
  const unclear = new Set<string>();
  for (const { lot, contract, grade, hive, note } of lines) {
    if (hive === "" || note.startsWith(TURN_NOTES.earlier)) continue;
    const key = JSON.stringify([lot, contract]);
    const isUnclear = note.startsWith(TURN_NOTES.unclear);
    if (isUnclear && unclear.has(key + hive)) continue;
    if (isUnclear) unclear.add(key + hive);
    if (!tallies.has(key)) tallies.set(key, { lot, contract, grades: new Map() });
    const { grades } = tallies.get(key)!;
    const as = isUnclear ? "standing twice" : grade || note;
    grades.set(as, (grades.get(as) ?? 0) + 1);
  }
  return [...tallies.values()];
}

/** The grades of a contract, the best first; none where a row names a contract that is not there. */
function gradeNames(grading: Grading, contract: string): string[] {
  try {
    return gradesOf(contractOf(grading, contract)).map((grade) => grade.name);
  } catch (error) {
    if (error instanceof Problem || error instanceof Refusal) return [];
    throw error;
  }
}

const cut = (text: string): string => (text.length > 14 ? `${text.slice(0, 13)}…` : text);
