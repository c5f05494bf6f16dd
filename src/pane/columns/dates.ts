import type { Contract } from "../../core/contract.js";
import { isDateSerial } from "../../core/date-count.js";
import { print } from "../../core/estimate.js";
import type { Role } from "../../core/headings.js";
import { Refusal } from "../../core/refusal.js";
import { dayOfSerial, showDay } from "../../core/serial.js";
import { PLAIN_WRITING, type Writing } from "../../core/writing.js";
import { HiveCells } from "../../functions/hive-cells.js";
import { cellName, cellOf } from "../address.js";
import { orWhy } from "../or-why.js";
import type { Step } from "../port.js";
import { holdsFormula } from "../stands.js";
import { columnsOf, type Yard } from "./yard.js";

/** A count that became a date: `8 Jul 2026` stands where `7-8` was typed. */
export interface DateCell {
  readonly row: number;
  readonly column: number;
  readonly address: string;
  readonly holds: string;
}

export interface Dates {
  readonly repairs: readonly (DateCell & { readonly range: string })[];
  /** Cells of which the pane does not know what was typed, with the reason in words. */
  readonly left: readonly (DateCell & { readonly why: string })[];
}

/** Roles whose columns hold counts. */
export const COUNTS: ReadonlySet<Role> = new Set([
  "bees",
  "seams above",
  "seams below",
  "brood",
  "stores",
]);

/**
 * Finds the counts of a yard sheet that became dates, read as every function reads them.
 *
 * @param contractOf - the contract of a row, null where it is not known: it says how figures are written
 */
export function datesIn(yard: Yard, contractOf: (i: number) => Contract | null): Dates {
  const { roles } = columnsOf(yard);
  const body = yard.values.slice(1);
  const columnAt = (k: number): HiveCells =>
    new HiveCells(yard.headings[k]!, yard.values, {
      columns: [k],
      headings: [yard.headings[k]!],
      firstRow: yard.place.row + 2,
    });
  const inspected = roles.includes("date") ? columnAt(roles.indexOf("date")) : null;
  const repairs: Dates["repairs"][number][] = [];
  const left: Dates["left"][number][] = [];
  roles.forEach((role, column) => {
    if (role === null || !COUNTS.has(role)) return;
    const counts = columnAt(column);
    body.forEach((cells, i) => {
      const value = cells[column];
      if (typeof value !== "number" || !isDateSerial(value)) return;
      const writing: Writing = contractOf(i) ?? PLAIN_WRITING;
      const row = i + 1;
      const address = cellName(yard.place.row + row, yard.place.column + column);
      const cell = { row, column, address, holds: showDay(dayOfSerial(value, writing.dateSystem)) };
      const range = orWhy(() => {
        if (holdsFormula(yard, row, column)) {
          throw new Refusal("a formula calculates it: change the formula");
        }
        const year = () => inspected?.year(i, writing) ?? null;
        return print(counts.estimate(i, 0, "count", writing, year)!, writing.decimal);
      });
      if ("value" in range) repairs.push({ ...cell, range: range.value });
      else left.push({ ...cell, why: withoutPlace(range.why) });
    });
  });
  return { repairs, left };
}

/** Puts the ranges back as text, in cells that are text from then on. */
export function repairSteps(yard: Yard, repairs: Dates["repairs"]): Step[] {
  return repairs.map(({ row, column, range }) => ({
    kind: "put",
    place: cellOf(yard.place, row, column),
    expect: [[yard.entries[row]![column]!]],
    put: [[range]],
    formats: "@",
  }));
}

/** The address stands beside it: the column and the row need not be said twice. */
function withoutPlace(why: string): string {
  return why.replace(/^".*", row \d+: (?:the cell holds a date, [^:,]+[:,] )?/, "");
}
