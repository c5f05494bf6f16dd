import type { AskYear } from "../core/date-count.js";
import { print, type Estimate } from "../core/estimate.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { PLAIN_WRITING, type Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { optional } from "./declare.js";
import type { HiveCells } from "./hive-cells.js";
import { hives, option } from "./parameters.js";

/** What may be said of how a sheet is written, and what each means. */
const WORDS: Readonly<Record<string, Partial<Writing>>> = {
  "decimal comma": { decimal: "," },
  "whole frames": { wholeFrames: true },
  fractions: { percentsAs: "fraction" },
  "1904 dates": { dateSystem: 1904 },
  "day first": { dates: "day first" },
  "month first": { dates: "month first" },
};

/** How the figures are written, in every function that reads some without a Terms table. */
export const writtenParameter = option("written", PLAIN_WRITING, readWriting);

/** The last parameters of a function that reads counts, which a spreadsheet may have made dates. */
export const writtenParameters = [writtenParameter, optional(hives("inspected"))] as const;

function readWriting(value: unknown): Writing {
  const words = normalise(String(value)).split(/ ?[,;] ?/);
  const said = words.filter((word) => word !== "");
  return said.reduce<Writing>((writing, word) => {
    if (Object.hasOwn(WORDS, word)) return { ...writing, ...WORDS[word] };
    const known = Object.keys(WORDS).map(quote).join(", ");
    throw new Refusal(`${quote(word)} stands where one or more of ${known} were expected`);
  }, PLAIN_WRITING);
}

/** The year of each row's inspection: as an argument it is read in every row, and refused there. */
export function yearOfRow(inspected: HiveCells | null, writing: Writing): (i: number) => AskYear {
  return (i) => {
    const year = inspected?.year(i, writing) ?? null;
    return () => year;
  };
}

/** The parts of an estimate that a caller may ask for. */
export const PARTS = ["middle", "low", "high", "text", "note"] as const;
export type Part = (typeof PARTS)[number];

/** One part of an estimate as a cell. */
export function partOf(
  estimate: Estimate,
  part: Part,
  { decimal }: Writing,
  sign: "" | "%" = "",
): Cell {
  if (part === "text") return print(estimate, decimal, sign);
  const value = estimate[part];
  if (value !== null) return value;
  throw new Refusal(`${print(estimate, decimal)} has no upper end`, "unknown");
}
