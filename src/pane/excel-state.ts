/** What a step touches, as it stands: read before a change, after it, and to take it back. */
import { absolute, address, placeOf, samePlace } from "./address.js";
import { loadBlock } from "./excel-read.js";
import { parts } from "./excel-parts.js";
import { rangeAt } from "./excel-run.js";
import type { Block, Entry, Place, Step } from "./port.js";
import { labelOf, turned } from "./stands.js";

export type State =
  /** Of `put` and `blank`. */
  | {
      readonly kind: "cells";
      readonly block: Block;
      readonly isAnyRowHidden: boolean;
      readonly isAnyColumnHidden: boolean;
      /** Names of the tables that the place touches. */
      readonly tables: readonly string[];
    }
  /** Of `cover` and `uncover`: null where there is no such name, or it is no plain range. */
  | { readonly kind: "covered"; readonly place: Place | null; readonly formula: string | null }
  | { readonly kind: "sheet"; readonly isThere: boolean };

/** Asks for the state of what a step touches; what is answered reads it after the sync. */
export function look(
  context: Excel.RequestContext,
  step: Step,
  /** Sheets that are not there while this is read. */
  missing: ReadonlySet<string>,
): () => State {
  switch (step.kind) {
    case "put":
    case "blank": {
      if (missing.has(step.place.sheet)) return () => untouched(step.place);
      const range = rangeAt(context, step.place).load("rowHidden,columnHidden");
      const tables = range.getTables(false).load("items/name");
      const block = loadBlock(context, step.place);
      return () => ({
        kind: "cells",
        block: block(),
        // Null where some are and some are not.
        isAnyRowHidden: range.rowHidden !== false,
        isAnyColumnHidden: range.columnHidden !== false,
        tables: tables.items.map(({ name }) => name),
      });
    }
    case "cover":
      return step.region === "table"
        ? lookAtTable(context, step.name)
        : lookAtName(context, step.name, missing);
    case "uncover":
      return lookAtName(context, step.name, missing);
    case "add sheet":
    case "drop sheet": {
      const sheet = context.workbook.worksheets.getItemOrNullObject(step.name).load("name");
      return () => ({ kind: "sheet", isThere: !sheet.isNullObject });
    }
  }
}

function lookAtTable(context: Excel.RequestContext, name: string): () => State {
  const range = context.workbook.tables.getItem(name).getRange().load("address");
  return () => ({ kind: "covered", place: placeOf(range.address), formula: null });
}

function lookAtName(
  context: Excel.RequestContext,
  name: string,
  missing: ReadonlySet<string>,
): () => State {
  const [sheet, own] = scopeOf(name);
  const none: State = { kind: "covered", place: null, formula: null };
  if (sheet !== null && missing.has(sheet)) return () => none;
  const item = namesOf(context, sheet).getItemOrNullObject(own).load("formula,value,type");
  return () =>
    item.isNullObject
      ? none
      : {
          kind: "covered",
          place: item.type === "Range" ? placeOf(String(item.value)) : null,
          formula: String(item.formula),
        };
}

/** Makes a step: formats first, then entries. */
export function make(context: Excel.RequestContext, step: Step, state: State): void {
  const { worksheets, tables } = context.workbook;
  switch (step.kind) {
    case "blank":
      return;
    case "put":
      if (state.kind !== "cells") return;
      for (const part of parts(step, state)) {
        const range = rangeAt(context, part.place);
        // One value for all cells is documented for both; the types want a block.
        if (part.formats !== undefined) range.numberFormat = part.formats as string[][];
        range.formulas = part.put as Entry[][];
      }
      return;
    case "cover": {
      // A name that follows something by itself, such as a table, is left to follow it.
      if (state.kind === "covered" && (isFollowing(state) || samePlace(state.place, step.place))) {
        return;
      }
      if (step.region === "table") {
        tables.getItem(step.name).resize(rangeAt(context, step.place));
        return;
      }
      const [sheet, own] = scopeOf(step.name);
      const isNew = state.kind === "covered" && state.formula === null;
      if (isNew) namesOf(context, sheet).add(own, `=${absolute(step.place)}`);
      else namesOf(context, sheet).getItem(own).formula = `=${absolute(step.place)}`;
      return;
    }
    case "uncover": {
      const [sheet, own] = scopeOf(step.name);
      namesOf(context, sheet).getItem(own).delete();
      return;
    }
    case "add sheet":
      worksheets.add(step.name);
      return;
    case "drop sheet":
      worksheets.getItem(step.name).delete();
  }
}

/** The step that leads back from one state to another, or null where there is nothing to do. */
export function inverse(step: Step, before: State, after: State): Step | null {
  if (step.kind === "put" && before.kind === "cells" && after.kind === "cells") {
    return {
      kind: "put",
      place: step.place,
      expect: after.block.entries,
      put: before.block.entries,
      ...(sameFormats(before, after) ? {} : { formats: compact(before.block.formats) }),
    };
  }
  if (before.kind === "covered" && after.kind === "covered") {
    if (isFollowing(before) || samePlace(before.place, after.place)) return null;
    const name = (step as { readonly name: string }).name;
    const region = step.kind === "cover" ? step.region : "name";
    return before.place === null
      ? { kind: "uncover", name }
      : { kind: "cover", region, name, place: before.place };
  }
  if (step.kind === "drop sheet" && step.expect !== undefined) return null;
  if (before.kind === "sheet" && after.kind === "sheet" && before.isThere !== after.isThere) {
    const name = (step as { readonly name: string }).name;
    return { kind: before.isThere ? "add sheet" : "drop sheet", name };
  }
  // A blank that a spill was to come over is filled by it, until the formula is away.
  return null;
}

export function sameState(a: State, b: State): boolean {
  if (a.kind === "cells" && b.kind === "cells") {
    return sameRows(a.block.entries, b.block.entries) && sameFormats(a, b);
  }
  if (a.kind === "covered" && b.kind === "covered") {
    return samePlace(a.place, b.place) && a.formula === b.formula;
  }
  return a.kind === "sheet" && b.kind === "sheet" && a.isThere === b.isThere;
}

/** @returns why the step is not made, or null */
export function unmade(step: Step, after: State): string | null {
  switch (step.kind) {
    case "put":
      return after.kind === "cells" ? turned(step.place, after.block.entries, step.put) : null;
    case "blank":
      return null;
    case "cover":
      return after.kind === "covered" && !samePlace(after.place, step.place)
        ? `${labelOf(step)} would not cover ${address(step.place)}`
        : null;
    case "uncover":
      return after.kind === "covered" && after.formula !== null
        ? `${labelOf(step)} would stay`
        : null;
    case "add sheet":
    case "drop sheet": {
      const isMade = after.kind === "sheet" && after.isThere === (step.kind === "add sheet");
      return isMade ? null : `${labelOf(step)} would not be as asked`;
    }
  }
}

function scopeOf(name: string): readonly [sheet: string | null, own: string] {
  const at = name.lastIndexOf("!");
  if (at < 0) return [null, name];
  const sheet = name.slice(0, at);
  const inQuotes = /^'(.*)'$/.exec(sheet)?.[1]?.replaceAll("''", "'");
  return [inQuotes ?? sheet, name.slice(at + 1)];
}

/** A name over something else than a plain range. */
export function isFollowing(state: State): boolean {
  return (
    state.kind === "covered" && state.formula !== null && placeOf(state.formula.slice(1)) === null
  );
}

function untouched(place: Place): State {
  const rows = <T>(value: T) =>
    Array.from({ length: place.rows }, () => Array.from({ length: place.columns }, () => value));
  const block: Block = { place, values: rows(""), entries: rows(""), formats: rows("General") };
  return { kind: "cells", block, isAnyRowHidden: false, isAnyColumnHidden: false, tables: [] };
}

function namesOf(context: Excel.RequestContext, sheet: string | null): Excel.NamedItemCollection {
  const { names, worksheets } = context.workbook;
  return sheet === null ? names : worksheets.getItem(sheet).names;
}

function sameFormats(a: State, b: State): boolean {
  return a.kind === "cells" && b.kind === "cells" && sameRows(a.block.formats, b.block.formats);
}

function sameRows<T>(a: readonly (readonly T[])[], b: readonly (readonly T[])[]): boolean {
  return a.every((row, r) => row.every((cell, c) => cell === b[r]![c]));
}

/** One format for all cells where it is one. */
function compact(formats: readonly (readonly string[])[]): string | readonly (readonly string[])[] {
  const first = formats[0]![0]!;
  return formats.every((row) => row.every((format) => format === first)) ? first : formats;
}
