import { samePlace, within, cellOf } from "./address.js";
import { loadRange } from "./excel-read.js";
import { rangeAt } from "./excel-run.js";
import type { State } from "./excel-state.js";
import type { Put } from "./excel-parts.js";
import type { Block, Step } from "./port.js";
import { isFormula } from "./stands.js";

/**
 * Where a formula is put into a table, Excel may fill it into the whole column, past the place that
 * was asked for ("Fill formulas in tables to create calculated columns", on unless switched off,
 * and reported to act on what add-ins write). So the columns are read before and after.
 *
 * @returns null where there is nothing to fear
 */
export function lookBeside(
  context: Excel.RequestContext,
  step: Step,
  state: State,
): (() => Block) | null {
  if (step.kind !== "put" || state.kind !== "cells") return null;
  const [table] = state.tables;
  if (table === undefined || !step.put.flat().some(isFormula)) return null;
  const whole = context.workbook.tables.getItem(table).getRange();
  return loadRange(rangeAt(context, step.place).getEntireColumn().getIntersection(whole));
}

/** What Excel filled besides what was asked for, as if it were a step that was made. */
export interface Fill {
  readonly step: Put;
  readonly before: State;
  readonly after: State;
}

export function fillOf(before: Block, after: Block, steps: readonly Step[]): Fill | null {
  if (!samePlace(before.place, after.place)) return null;
  const { place } = after;
  const isFilled = after.entries.some((row, r) =>
    row.some((entry, c) => entry !== before.entries[r]![c]! && !isAsked(steps, place, r, c)),
  );
  if (!isFilled) return null;
  const hidden = { isAnyRowHidden: true, isAnyColumnHidden: false, tables: [] };
  return {
    step: { kind: "put", place, expect: before.entries, put: after.entries },
    before: { kind: "cells", block: before, ...hidden },
    after: { kind: "cells", block: after, ...hidden },
  };
}

function isAsked(steps: readonly Step[], place: Block["place"], r: number, c: number): boolean {
  const cell = cellOf(place, r, c);
  return steps.some((step) => step.kind === "put" && within(step.place, cell) !== null);
}
