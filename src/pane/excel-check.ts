import { address, cellOf, placeOf, samePlace, within } from "./address.js";
import { isFollowing, type State } from "./excel-state.js";
import { loadBlock } from "./excel-read.js";
import { has, rangeAt } from "./excel-run.js";
import type { Entry, Place, Step } from "./port.js";
import { checkShape, filled, isFormula, labelOf, typed, unexpected } from "./stands.js";

/** Answers, once the context is synced, why a step may not be made, or null. */
export type Guard = (state: State) => string | null;

/**
 * Asks for all that may stand in the way of a step: protection, merged cells, spills, tables.
 *
 * @param all - every step of the change, since one may make room for another
 */
export function guard(context: Excel.RequestContext, step: Step, all: readonly Step[]): Guard {
  switch (step.kind) {
    case "put":
    case "blank":
      return guardCells(context, step, all);
    case "cover":
      return step.region === "table" ? guardTable(context, step, all) : guardName(step);
    case "uncover":
      return (state) =>
        state.kind === "covered" && state.formula === null
          ? `there is no ${labelOf(step).replace(/^the /, "")}`
          : guardName(step)(state);
    case "add sheet":
    case "drop sheet":
      return guardSheet(context, step, all);
  }
}

type Cells = Extract<Step, { kind: "put" | "blank" }>;

function guardCells(context: Excel.RequestContext, step: Cells, all: readonly Step[]): Guard {
  const { place } = step;
  if (step.kind === "put") checkShape(place, step.expect);
  if (step.kind === "put") checkShape(place, step.put);
  const hindrance = all.some((one) => one.kind === "add sheet" && one.name === place.sheet)
    ? () => null
    : hindranceAt(context, step);
  return (state) => {
    if (state.kind !== "cells") return null;
    const { entries } = state.block;
    const other =
      step.kind === "blank" ? filled(place, entries) : unexpected(place, entries, step.expect);
    return other ?? hindrance(state.tables) ?? formulaKeptAsText(step, state);
  };
}

function hindranceAt(
  context: Excel.RequestContext,
  step: Cells,
): (tables: readonly string[]) => string | null {
  const range = rangeAt(context, step.place).load("hasSpill,format/protection/locked");
  const { protection } = context.workbook.worksheets.getItem(step.place.sheet);
  protection.load("protected,options");
  // Before that set nobody tells of merged cells: what is put into one is then missed on reading back.
  const merged = has("1.13") ? range.getMergedAreasOrNullObject().load("address") : null;
  const where = address(step.place);
  return ([table]) => {
    if (merged !== null && !merged.isNullObject) {
      return `${where} has merged cells, ${merged.address}: unmerge them first`;
    }
    if (step.kind === "blank") {
      return table === undefined
        ? null
        : `${where} lies in the table ${table}, and a formula cannot spill into a table`;
    }
    if (protection.protected) {
      // Null where some cells are locked and some are not.
      if (range.format.protection.locked !== false) return `${where} is protected`;
      if (step.formats !== undefined && !protection.options.allowFormatCells) {
        return `${where} is protected against changes of format`;
      }
    }
    const isOneCell = step.place.rows * step.place.columns === 1;
    const isAnchor = isOneCell && isFormula(step.expect[0]![0]!);
    return range.hasSpill !== false && !isAnchor
      ? `${where} holds the result of a formula that spills: change that formula itself`
      : null;
  };
}

/** A formula in a cell that was made text afterwards could not be put back as a formula. */
function formulaKeptAsText(step: Cells, state: State): string | null {
  if (step.kind === "blank" || state.kind !== "cells") return null;
  const { entries, values, formats } = state.block;
  const isSo = entries.some((row, r) =>
    row.some((entry, c) => isFormula(entry) && formats[r]![c] === "@" && values[r]![c] !== entry),
  );
  return isSo ? `${address(step.place)} holds a formula in a cell with the format of text` : null;
}

type Cover = Extract<Step, { kind: "cover" }>;

function guardTable(context: Excel.RequestContext, step: Cover, all: readonly Step[]): Guard {
  const headings = { ...step.place, rows: 1 };
  const range = rangeAt(context, headings).load("formulas");
  return (state) => {
    if (state.kind !== "covered" || samePlace(state.place, step.place)) return null;
    const was = state.place;
    // What Excel asks of a table that is resized.
    if (was === null || was.row !== step.place.row || within(was, step.place) === null) {
      return `the table ${step.name} keeps its heading row, and some of its columns`;
    }
    if (!has("1.13")) {
      return (
        `this Excel cannot resize a table from here: drag the lower right corner of ` +
        `${step.name} so that it covers ${address(step.place)}`
      );
    }
    // Excel would write a heading of its own there, and it would stay.
    const row = range.formulas[0] as Entry[];
    const empty = row.findIndex((entry, c) => (putAt(all, headings, c) ?? entry) === "");
    return empty < 0 ? null : `the table ${step.name} would get a column without a heading`;
  };
}

/** A name over a table or a formula cannot be put back as it was, so only its own kind may change. */
function guardName(step: Step): Guard {
  return (state) =>
    isFollowing(state) && step.kind !== "cover" && state.kind === "covered"
      ? `${labelOf(step)} stands for ${state.formula}, not for plain cells`
      : null;
}

type OfSheet = Extract<Step, { kind: "add sheet" | "drop sheet" }>;

function guardSheet(context: Excel.RequestContext, step: OfSheet, all: readonly Step[]): Guard {
  const protection = context.workbook.protection.load("protected");
  const refused = step.kind === "drop sheet" ? guardDropped(context, step, all) : null;
  return (state) => {
    if (protection.protected) return "the workbook's structure is protected";
    if (refused !== null) return refused();
    const isThere = state.kind === "sheet" && state.isThere;
    return isThere ? `there is a sheet ${step.name} already` : unfit(step.name);
  };
}

function guardDropped(
  context: Excel.RequestContext,
  { name, expect }: Extract<Step, { kind: "drop sheet" }>,
  all: readonly Step[],
): () => string | null {
  const sheet = context.workbook.worksheets.getItem(name);
  const used = sheet.getUsedRangeOrNullObject(true).load("address,formulas");
  const comments = sheet.comments.load("items/id");
  const block = expect === undefined ? null : loadBlock(context, expect.place);
  return () => {
    if (comments.items.length > 0) return `there is a comment on the sheet ${name}`;
    const other = expect && unexpected(expect.place, block!().entries, expect.entries);
    const place = used.isNullObject ? null : placeOf(used.address);
    if (other || place === null) return other ?? null;
    const left = (used.formulas as Entry[][]).map((row, r) =>
      row.map((entry, c) => {
        const cell = cellOf(place, r, c);
        const isExpected = expect !== undefined && within(expect.place, cell) !== null;
        return isExpected ? "" : (putAt(all, { ...place, row: place.row + r }, c) ?? entry);
      }),
    );
    return filled(place, left);
  };
}

/** What Excel asks of a sheet's name. */
function unfit(name: string): string | null {
  const isFit = /^[^:\\/?*[\]']([^:\\/?*[\]]*[^:\\/?*[\]'])?$/.test(name) && name.length <= 31;
  return isFit ? null : `a sheet cannot be called ${typed(name, "@")}`;
}

/** What a step of the change puts into a cell, counted from the upper left of a place. */
function putAt(all: readonly Step[], place: Place, c: number): Entry | undefined {
  const cell = cellOf(place, 0, c);
  const over = all.filter((one) => one.kind === "put" && within(one.place, cell) !== null);
  const step = over.at(-1);
  if (step?.kind !== "put") return undefined;
  return step.put[cell.row - step.place.row]![cell.column - step.place.column];
}
