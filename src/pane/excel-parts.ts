import { CALL_CELLS, slices } from "./excel-run.js";
import type { Step } from "./port.js";

export type Put = Extract<Step, { kind: "put" }>;

export interface Hidden {
  readonly isAnyRowHidden: boolean;
  readonly isAnyColumnHidden: boolean;
}

/** A long text travels four times: read before and after, each time as value and as entry. */
const CHARACTERS_A_CELL = 50;

/** What a step costs of a call, in cells. */
export function costOf(step: Step): number {
  if (step.kind !== "put" && step.kind !== "blank") return 1;
  const cells = step.place.rows * step.place.columns;
  if (step.kind === "blank") return cells;
  const text = [step.expect, step.put].flat(2).reduce((n: number, e) => n + String(e).length, 0);
  return cells + Math.ceil(text / CHARACTERS_A_CELL);
}

/** Cuts a step that is more than a call carries, by rows. */
export function cut(step: Step): readonly Step[] {
  if (step.kind === "blank") return slices(step.place).map((place) => ({ ...step, place }));
  if (step.kind !== "put" || costOf(step) <= CALL_CELLS || step.place.rows === 1) return [step];
  const half = Math.ceil(step.place.rows / 2);
  return [rowsOf(step, 0, half), rowsOf(step, half, step.place.rows)].flatMap(cut);
}

/**
 * Excel on the desktop has put a block over rows hidden by a filter into the wrong rows (known to
 * its makers since 2018); rows written one by one were seen to land right. So parts without hidden
 * lines inside, and what stands is read back in the same sync.
 */
export function parts(step: Put, hidden: Hidden): readonly Put[] {
  const lines = hidden.isAnyRowHidden
    ? Array.from({ length: step.place.rows }, (_, row) => rowsOf(step, row, row + 1))
    : [step];
  if (!hidden.isAnyColumnHidden) return lines;
  return lines.flatMap((line) =>
    Array.from({ length: step.place.columns }, (_, column) => columnOf(line, column)),
  );
}

export function cellStep(step: Put, row: number, column: number): Put {
  return columnOf(rowsOf(step, row, row + 1), column);
}

function rowsOf(step: Put, from: number, to: number): Put {
  return {
    ...step,
    place: { ...step.place, row: step.place.row + from, rows: to - from },
    expect: step.expect.slice(from, to),
    put: step.put.slice(from, to),
    ...(Array.isArray(step.formats) ? { formats: step.formats.slice(from, to) } : {}),
  };
}

function columnOf(step: Put, column: number): Put {
  const only = <T>(rows: readonly (readonly T[])[]) => rows.map((row) => [row[column]!]);
  return {
    ...step,
    place: { ...step.place, column: step.place.column + column, columns: 1 },
    expect: only(step.expect),
    put: only(step.put),
    ...(Array.isArray(step.formats) ? { formats: only(step.formats) } : {}),
  };
}

export function sheetsOf(
  steps: readonly Step[],
  kind: "add sheet" | "drop sheet",
): ReadonlySet<string> {
  return new Set(steps.flatMap((step) => (step.kind === kind ? [step.name] : [])));
}

export function isOn(step: Step, sheets: ReadonlySet<string>): boolean {
  return (step.kind === "put" || step.kind === "blank") && sheets.has(step.place.sheet);
}

/** What must be in the workbook for the steps to be made. */
export function neededBy(steps: readonly Step[]): readonly string[] {
  const added = sheetsOf(steps, "add sheet");
  return steps.flatMap((step) => {
    if (step.kind === "cover" && step.region === "table") return [`table ${step.name}`];
    if (step.kind === "drop sheet") return [`sheet ${step.name}`];
    const isOwn = (step.kind !== "put" && step.kind !== "blank") || isOn(step, added);
    return isOwn ? [] : [`sheet ${step.place.sheet}`];
  });
}
