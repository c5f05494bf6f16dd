import type { Absence } from "../core/absence.js";
import type { Action } from "../core/actions.js";
import { cellsOfBrood } from "../core/brood.js";
import type { Contract } from "../core/contract.js";
import type { Estimate } from "../core/estimate.js";
import { gradeOf, reasonOf, shortOf, type GradeOfHive, type Hive } from "../core/grade.js";
import type { Turn } from "../core/lot.js";
import { quote, Refusal } from "../core/refusal.js";
import { bees as beesOn } from "../core/bees.js";
import { normalise } from "../core/text.js";
import { actionReader, type ActionReader } from "./actions.js";
import { CellError, isBlankOrZero, toCellError, type Cell } from "./cells.js";
import { contractOfRow } from "./contracts.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { checkRows } from "./hive-cells.js";
import { hiveAt, standingAt } from "./look.js";
import { block, hives } from "./parameters.js";
import { TURN_NOTES, turnsIn } from "./turns.js";
import { yardSheet, type YardSheet } from "./yard-sheet.js";

/** A hive of the sheet under its contract, ready to be shown. */
export interface Graded {
  readonly hive: Hive;
  readonly contract: Contract;
  /** How this look stands beside others into the same hive. */
  readonly turn: Turn;
  /** A 0 stands for the bees, which may have been a blank. */
  readonly unwritten: boolean;
  /** The row under it has counts and no hive: another box of this one, as like as not. */
  readonly under: boolean;
  /** In what frame bees in a super were counted that names none; else empty. */
  readonly unsized: string;
  /** Null where the grade hangs on something that nobody judged: then `open` says on what. */
  readonly grade: GradeOfHive | null;
  readonly open: CellError | null;
  /** Null where no column asks for it; a sign that cannot be read is its error alone. */
  readonly action: Action | CellError | null;
}

export interface Column {
  readonly heading: string;
  /** From the sheet itself, which stands even where a hive could not be read. */
  readonly own?: (yard: YardSheet, i: number) => Cell;
  readonly cell: (graded: Graded) => Cell;
}

const own = (heading: string, role: "hive" | "lot" | "pallet"): Column => ({
  heading,
  own: (yard, i) => {
    const cell = yard.column(role)?.raw(i);
    return isBlankOrZero(cell) ? "" : (cell as Cell);
  },
  cell: () => "",
});
const middle = (estimate: Estimate | null): Cell => estimate?.middle ?? "";
const graded =
  (of: (grade: GradeOfHive) => Cell) =>
  (g: Graded): Cell =>
    g.grade === null ? g.open! : of(g.grade);

const action =
  (of: (action: Action) => string, fault: (error: CellError) => Cell) =>
  (g: Graded): Cell =>
    g.action instanceof CellError ? fault(g.action) : of(g.action!);

/** The columns that one may ask for; more may be added, none renamed once shipped. */
export const COLUMNS: Readonly<Record<string, Column>> = {
  hive: own("Hive", "hive"),
  lot: own("Lot", "lot"),
  pallet: own("Pallet", "pallet"),
  contract: { heading: "Contract", cell: (g) => g.contract.name },
  frames: { heading: "Frames of bees", cell: (g) => g.hive.frames.middle },
  "frames low": { heading: "Frames of bees, low", cell: (g) => g.hive.frames.low },
  "frames high": { heading: "Frames of bees, high", cell: (g) => g.hive.frames.high ?? "" },
  bees: {
    heading: "Bees",
    // A seam is no frame of bees: SEAMS says what it was found to hold.
    cell: ({ hive, contract }) =>
      contract.combRule === "cluster count"
        ? ""
        : beesOn(hive.frames, undefined, contract.frame).middle,
  },
  "brood full": {
    heading: "Brood, full frames",
    cell: (g) => middle(g.hive.brood?.fullFrames ?? null),
  },
  "brood combs": { heading: "Brood, combs", cell: (g) => middle(g.hive.brood?.combs ?? null) },
  "brood cells": {
    heading: "Brood, cells",
    cell: ({ hive, contract }) => {
      const full = hive.brood?.fullFrames ?? null;
      return full === null ? "" : cellsOfBrood(full, contract.frame).middle;
    },
  },
  grade: { heading: "Grade", cell: graded((grade) => grade.name) },
  "grade low": { heading: "Grade, low end", cell: graded((grade) => grade.worst) },
  "grade high": { heading: "Grade, high end", cell: graded((grade) => grade.best) },
  short: { heading: "Frames short", cell: (g) => shortfall(g)?.frames ?? "" },
  "short brood": { heading: "Brood short", cell: (g) => shortfall(g)?.brood ?? "" },
  "next grade": { heading: "Next grade", cell: (g) => shortfall(g)?.grade ?? "" },
  note: { heading: "Note", cell: noteOf },
  action: {
    heading: "Action",
    cell: action(
      ({ action, feed }) => (feed ? `${action}, feed` : action),
      (error) => error,
    ),
  },
  reason: {
    heading: "Reason",
    cell: action(
      ({ reason }) => reason,
      (error) => error.message || `an error stands in the row, ${error.code}`,
    ),
  },
};
/** Columns of text that say what is wrong with a row which cannot be read. */
const SAYS_WHY: readonly Column[] = [COLUMNS["note"]!, COLUMNS["reason"]!];
const OF_ACTION: readonly Column[] = [COLUMNS["action"]!, COLUMNS["reason"]!];

/** Shown where no columns are asked for; never changed once shipped. */
export const DEFAULT = "frames, bees, brood full, brood combs, grade, short, note";

const parameters = [
  block("yard"),
  optional(block("terms")),
  optional(hives("contract")),
  optional(block("columns")),
] as const;

/**
 * The computed columns of a whole yard sheet, in one spill beside it: strength, brood, grade, what is short, and a note.
 *
 * @remarks Give the sheet with its heading row; its columns are found by their headings (Hive,
 * Frames of bees or one column a box, Brood, Brood %, Queen, Stores, Date, Contract). A hive whose
 * bees are blank, or say `not opened`, was not opened: only its note says so. Of one that was, a
 * blank for brood or stores is none. A row without an id stays blank, and so does a row of sums or
 * averages (Total, Avg lot N), which is no hive. A row that cannot be read has its error in its own
 * cells and its reason in the note. Asked for action and reason, it
 * says of each opened hive what to do by the terms: place, hold back, combine or look again, with
 * feed beside it where it is light. Columns Eggs (yes, no or how many), Brood pattern (solid, spotty, or percent
 * of cells filled) and Drone brood (together, scattered, normal, or percent) are read for that where
 * the sheet has them. An action is no diagnosis: ask the apiary inspector about disease.
 * @example =COMB.YARD_COLUMNS(A1:H61,Terms,"Cherry") beside the sheet, from the heading row down.
 * @customfunction YARD_COLUMNS
 * @helpurl https://localhost:3000/help.html#YARD_COLUMNS
 * @param yard The yard sheet with its heading row, one hive a row.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name; left out where the sheet has a contract column.
 * @param columns Which columns, in order, as one text with commas or as cells: hive, lot, pallet, contract, frames, frames low, frames high, bees, brood full, brood combs, brood cells, grade, grade low, grade high, short, short brood, next grade, note, action, reason.
 * @returns A heading row, then a row for each row of the sheet.
 */
export function YARD_COLUMNS(
  yard: unknown[][],
  terms?: unknown[][],
  contract?: unknown[][],
  columns?: unknown[][],
): unknown[][] {
  return answer(parameters, [yard, terms, contract, columns], (cells, terms, contract, columns) => {
    const sheet = yardSheet(cells);
    const wanted = columnsAsked(columns);
    const ids = sheet.column("hive")!;
    checkRows([ids, contract]);
    const contractOf = contractOfRow(terms, contract ?? sheet.column("contract"));
    const acts = wanted.some((column) => OF_ACTION.includes(column)) ? actionReader(sheet) : null;
    const turnOf = turnsIn(sheet, contractOf);
    const rows = Array.from({ length: sheet.rows }, (_, i) => {
      const noted = (note: string) => wanted.map((c) => (c === COLUMNS["note"] ? note : null));
      if (!sheet.isHive(i)) return noted(strayNote(sheet, i)).map((cell) => cell ?? "");
      try {
        const graded = gradeAt(sheet, i, contractOf(i), turnOf(i), acts);
        if (typeof graded === "string") {
          const other = (c: Column): Cell =>
            c === COLUMNS["contract"] ? contractOf(i).name : (c.own?.(sheet, i) ?? "");
          return noted(graded).map((cell, k) => cell ?? other(wanted[k]!));
        }
        return wanted.map((column) => column.own?.(sheet, i) ?? column.cell(graded));
      } catch (caught) {
        const error = toCellError(caught, `row ${i + 2}`);
        const note = error.message || `an error stands in row ${i + 2}, ${error.code}`;
        return wanted.map((c) => (SAYS_WHY.includes(c) ? note : (c.own?.(sheet, i) ?? error)));
      }
    });
    return [wanted.map((column) => column.heading), ...rows];
  });
}

/** A hive that was opened, else the note on why it has no grade. */
function gradeAt(
  sheet: YardSheet,
  i: number,
  contract: Contract,
  turn: Turn,
  acts: ActionReader | null,
): Graded | string {
  const looks = sheet.looks(contract);
  const standing = standingAt(looks, i);
  if (standing !== "opened") return ABSENCE_NOTES[standing];
  const hive = hiveAt(looks, i, contract);
  const unwritten = looks.bees.isEmpty(i) && !hive.frames.dead;
  const action = acts && acts(i, contract, hive);
  let [grade, open]: [GradeOfHive | null, CellError | null] = [null, null];
  try {
    grade = gradeOf(contract, hive);
  } catch (error) {
    if (!(error instanceof Refusal) || error.kind !== "unknown") throw error;
    open = toCellError(error, "");
  }
  const under = isStray(sheet, i + 1);
  const { bareSuper: bare } = sheet;
  const isSaid = contract.boxFrame !== contract.frame;
  const unsized =
    bare === null || bare.isUncounted(i) || isSaid || looks.bees.isUncounted(i)
      ? ""
      : `${quote(bare.name)} counted as ${contract.boxFrame.name}: its heading names no frame`;
  return { hive, contract, turn, unwritten, under, unsized, grade, open, action };
}

/** What is noted of a hive that has no count. */
export const ABSENCE_NOTES: Readonly<Record<Absence, string>> = {
  "not opened": "not opened",
  gone: "no longer in the lot",
};

function shortfall({ hive, contract, grade }: Graded): ReturnType<typeof shortOf> {
  return grade === null ? null : shortOf(contract, hive);
}

function noteOf({ hive, contract, turn, unwritten, under, unsized, grade, open }: Graded): string {
  const parts = [
    TURN_NOTES[turn],
    unwritten ? "0 bees: counted as none" : "",
    under ? "the row under it has counts and no hive id: not counted" : "",
    hive.frames.note,
    unsized,
    hive.brood?.combs?.note ?? hive.brood?.fullFrames?.note ?? "",
    reasonOf(contract, hive, grade),
    open?.message ?? "",
  ];
  return parts.filter((part) => part !== "").join("; ");
}

/** A row that has no hive but has counts is not passed over in silence. */
function strayNote(sheet: YardSheet, i: number): string {
  const sums = sheet.sums(i);
  if (sums !== null) return `not a hive: ${sums}`;
  return isStray(sheet, i) ? "no hive id: not counted" : "";
}

function isStray(sheet: YardSheet, i: number): boolean {
  if (i >= sheet.rows || !sheet.column("hive")!.isEmpty(i) || sheet.sums(i) !== null) return false;
  const figures = (["bees", "seams above", "seams below", "brood"] as const).map(sheet.column);
  return figures.some((column) => column !== null && !column.isEmpty(i));
}

function columnsAsked(asked: unknown[][] | null): Column[] {
  const cells = asked === null ? [DEFAULT] : asked.flat();
  const fault = cells.find((cell) => cell instanceof CellError);
  if (fault) throw fault;
  const names = cells.flatMap((cell) => (isBlankOrZero(cell) ? [] : String(cell).split(/[,;]/)));
  const filled = names.map((name) => normalise(name)).filter((name) => name !== "");
  return (filled.length === 0 ? DEFAULT.split(", ") : filled).map((name) => {
    if (Object.hasOwn(COLUMNS, name)) return COLUMNS[name]!;
    const choices = Object.keys(COLUMNS).join(", ");
    throw new Refusal(`${quote(name)} is no column that can be asked for: ${choices}`);
  });
}

export const yardColumns: SheetFunction = {
  id: "YARD_COLUMNS",
  parameters,
  evaluate: YARD_COLUMNS,
};
