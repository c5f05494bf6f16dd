import type { Estimate } from "../core/estimate.js";
import { print } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import type { HiveCells } from "./hive-cells.js";
import { choice, hives, yesNo } from "./parameters.js";
import { optional } from "./declare.js";

/** The parameters that say how figures are written, last in every function that has no Terms. */
export const writtenParameters = [
  choice("decimal", [".", ","]),
  yesNo("whole_frames"),
  optional(hives("inspected")),
  choice("percents_as", ["percent", "fraction"]),
  choice("date_system", ["1900", "1904"]),
] as const;

/** What those parameters say: the way of writing, and the year of each row's inspection. */
export function written(
  decimal: Writing["decimal"],
  wholeFrames: boolean,
  inspected: HiveCells | null,
  percentsAs: Writing["percentsAs"],
  dateSystem: "1900" | "1904",
): { writing: Writing; yearOf: (i: number) => number | null } {
  const writing: Writing = {
    decimal,
    wholeFrames,
    percentsAs,
    dateSystem: dateSystem === "1904" ? 1904 : 1900,
  };
  return { writing, yearOf: (i) => inspected?.year(i, writing) ?? null };
}

/** The parts of an estimate that a caller may ask for. */
export const PARTS = ["middle", "low", "high", "text", "note"] as const;
export type Part = (typeof PARTS)[number];

/** One part of an estimate as a cell. */
export function partOf(estimate: Estimate, part: Part, decimal: Writing["decimal"] = "."): Cell {
  if (part === "text") return print(estimate, decimal);
  const value = estimate[part];
  if (value !== null) return value;
  throw new Refusal(`${print(estimate, decimal)} has no upper end`, "unknown");
}
