import { Refusal } from "../core/refusal.js";
import { cellStep, costOf, isOn, neededBy, sheetsOf, type Put } from "./excel-parts.js";
import { grouped, isOfficeError, run, whyOf } from "./excel-run.js";
import { inverse, look, make, sameState, unmade, type State } from "./excel-state.js";
import type { Entry, Step } from "./port.js";
import { isFormula, isThere, labelOf, sameEntry } from "./stands.js";

/** How far a change has come, should it stop midway. */
export interface Progress {
  /** Of every step: what stands where it is to be made; from `known` on, as it was checked. */
  readonly before: State[];
  /** Of the steps that are known to have been made: what stood then. */
  readonly after: State[];
  /** How many steps were sent to Excel, of which the last may or may not have been made. */
  sent: number;
}

/**
 * After a change that stopped midway or came out wrong: finds that all was made after all, or puts
 * back what was made.
 *
 * @throws Refusal that says that nothing was written, or names what may be left
 */
export async function settle(
  steps: readonly Step[],
  progress: Progress,
  error: unknown,
): Promise<void> {
  const sent = steps.slice(0, progress.sent);
  const why = whyOf(error, neededBy(steps));
  let left: readonly string[];
  try {
    const now = await inspect(sent);
    const isWhole = sent.length === steps.length && isOfficeError(error);
    if (isWhole && sent.every((step, n) => isMade(step, progress.before[n]!, now[n]!))) {
      progress.after.splice(0, progress.after.length, ...now);
      return;
    }
    left = await putBack(sent, progress, now);
  } catch (fault) {
    if (!isOfficeError(fault)) throw fault;
    left = sent.filter(({ kind }) => kind !== "blank").map(labelOf);
  }
  throw new Refusal(
    left.length === 0
      ? `${why}: nothing was written`
      : `${why}, and not all could be put back: look at ${[...new Set(left)].join(", ")}`,
  );
}

async function inspect(steps: readonly Step[]): Promise<readonly State[]> {
  return run(async (context) => {
    const { worksheets } = context.workbook;
    const unsure = [...sheetsOf(steps, "add sheet"), ...sheetsOf(steps, "drop sheet")].map(
      (name) => ({ name, sheet: worksheets.getItemOrNullObject(name).load("name") }),
    );
    if (unsure.length > 0) await context.sync();
    const missing = new Set(unsure.flatMap((s) => (s.sheet.isNullObject ? [s.name] : [])));
    const found: State[] = [];
    for (const group of grouped(steps, costOf)) {
      const reads = group.map((step) => look(context, step, missing));
      await context.sync();
      found.push(...reads.map((read) => read()));
    }
    return found;
  });
}

/** @returns what may be left */
async function putBack(
  steps: readonly Step[],
  { before, after }: Progress,
  now: readonly State[],
): Promise<readonly string[]> {
  const left: string[] = [];
  const back = steps.flatMap((step, n) => {
    const at = { step, was: before[n]!, made: after[n] ?? null, is: now[n]! };
    if (!isAllOurs(at)) left.push(labelOf(step));
    const undo = inverse(step, target(at), at.is);
    return undo === null || sameState(target(at), at.is) ? [] : [{ undo, target: target(at), at }];
  });
  back.reverse();
  const gone = sheetsOf(
    back.map(({ undo }) => undo),
    "drop sheet",
  );
  await run(async (context) => {
    for (const group of grouped(back, ({ undo }) => costOf(undo))) {
      for (const { undo, at } of group) {
        for (const step of inOrder(undo, at.is)) make(context, step, at.is);
      }
      const reads = group.map(({ undo }) => look(context, undo, gone));
      await context.sync();
      group.forEach(({ undo, target }, n) => {
        const state = reads[n]!();
        const isBack = isOn(undo, gone) || (unmade(undo, state) === null && same(target, state));
        if (!isBack) left.push(labelOf(undo));
      });
    }
  });
  return left;
}

/**
 * In a table a formula that is put back may be filled into the column again, so that formulas go
 * first, and only where they are needed.
 */
function inOrder(undo: Step, is: State): readonly Step[] {
  if (undo.kind !== "put" || is.kind !== "cells" || is.tables.length === 0) return [undo];
  if (!undo.put.flat().some(isFormula)) return [undo];
  const cells = undo.put.flatMap((row, r) =>
    row.flatMap((entry, c) =>
      isFormula(entry) && entry === is.block.entries[r]![c] ? [] : [cellStep(undo, r, c)],
    ),
  );
  const isOfFormula = ({ put }: Put) => isFormula(put[0]![0]!);
  return [...cells.filter(isOfFormula), ...cells.filter((cell) => !isOfFormula(cell))];
}

function same(target: State, state: State): boolean {
  return target.kind !== "cells" || sameState(target, state);
}

interface Touched {
  readonly step: Step;
  readonly was: State;
  /** Null where nobody knows what Excel made of the step. */
  readonly made: State | null;
  readonly is: State;
}

/** What a place should hold again: what stood there, but what another hand typed since then stays. */
function target(touched: Touched): State {
  const { was, is } = touched;
  if (was.kind !== "cells" || is.kind !== "cells") return was;
  const pick = <T>(old: readonly (readonly T[])[], present: readonly (readonly T[])[]) =>
    old.map((row, r) => row.map((cell, c) => (isOurs(touched, r, c) ? cell : present[r]![c]!)));
  const block = {
    ...was.block,
    entries: pick(was.block.entries, is.block.entries),
    formats: pick(was.block.formats, is.block.formats),
  };
  return { ...was, block };
}

function isAllOurs(touched: Touched): boolean {
  return (
    touched.step.kind !== "put" ||
    touched.step.put.every((row, r) => row.every((_, c) => isOurs(touched, r, c)))
  );
}

/** Whether what stands in a cell was put there by us, or stood there before. */
function isOurs({ step, was, made, is }: Touched, row: number, column: number): boolean {
  if (step.kind !== "put" || is.kind !== "cells" || was.kind !== "cells") return true;
  const at = (state: State & { kind: "cells" }): Entry => state.block.entries[row]![column]!;
  // A text has its apostrophe or not by the format, which may be changed already.
  if (sameEntry(at(is), at(was))) return true;
  return made?.kind === "cells"
    ? at(is) === at(made)
    : isThere(at(is), at(was), step.put[row]![column]!);
}

function isMade(step: Step, was: State, is: State): boolean {
  if (step.kind !== "put" || was.kind !== "cells" || is.kind !== "cells") {
    return unmade(step, is) === null;
  }
  const { entries, formats } = is.block;
  return step.put.every((row, r) =>
    row.every((put, c) => {
      const format = typeof step.formats === "string" ? step.formats : step.formats?.[r]?.[c];
      return (
        isThere(entries[r]![c]!, was.block.entries[r]![c]!, put) &&
        (format === undefined || format === formats[r]![c])
      );
    }),
  );
}
