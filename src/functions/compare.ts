import { difference } from "../core/compare.js";
import { mean } from "../core/mean.js";
import { sum } from "../core/estimate.js";
import { Refusal } from "../core/refusal.js";
import { sources } from "../core/sources.js";
import { normalise } from "../core/text.js";
import type { Kind } from "../core/kinds.js";
import { together } from "../core/together.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { checkRows, checkSameRows, type HiveCells } from "./hive-cells.js";
import { confidence, hives } from "./parameters.js";
import { writtenParameters, yearOfRow } from "./written.js";

const parameters = [
  hives("lots"),
  hives("frames"),
  optional(hives("brood")),
  optional(hives("capped")),
  confidence("confidence"),
  ...writtenParameters,
] as const;

const HEADINGS = [
  "Lot",
  "Hives",
  "Frames of bees",
  "Brood",
  "Capped, %",
  "Frames ahead of the first",
  "Low",
  "High",
  "Brood ahead of the first",
  "Low",
  "High",
  "Note",
];

/** The figures of one lot's opened hives. */
interface LotFigures {
  readonly name: string;
  readonly frames: number[];
  readonly brood: number[];
  readonly capped: number[];
}

/**
 * Lots against each other: mean frames, brood and share capped, and how far each is ahead of the first, with its interval.
 *
 * @remarks The interval of a difference is Welch's. One yard of a region tells its lots apart, not the
 * regions: hives of one yard share its weather and its keeper. A hive that was not opened stands
 * blank; a dead-out counts as 0 frames. Each row counts as a hive of its own: of a hive that was opened
 * twice, give one look.
 * @example =COMB.COMPARE(B2:B61,E2:F61,G2:G61) spills a row for each lot under a heading row.
 * @customfunction COMPARE
 * @helpurl https://localhost:3000/help.html#COMPARE
 * @param lots A row a hive: the lot it is of.
 * @param frames A row a hive: frames of bees, or the counts of its boxes.
 * @param brood A row a hive: brood, in frames or combs, all in one measure.
 * @param capped A row a hive: percent of its brood that is capped, 0 to 100.
 * @param confidence Confidence of the intervals in percent: 95 where left out.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns A heading row, then one row a lot in the order in which they stand.
 */
export function COMPARE(
  lots: unknown[][],
  frames: unknown[][],
  brood?: unknown[][],
  capped?: unknown[][],
  confidence?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [lots, frames, brood, capped, confidence, written, inspected];
  return answer(
    parameters,
    values,
    (names, frames, brood, capped, confidence, writing, inspected) => {
      checkRows([frames, brood, capped, inspected]);
      checkSameRows(frames, names);
      const yearOf = yearOfRow(inspected, writing);
      const at = (column: HiveCells | null, i: number, kind: Kind): number[] =>
        column === null || column.isEmpty(i)
          ? []
          : [sum(column.estimates(i, kind, writing, yearOf(i))).middle];
      const found = new Map<string, LotFigures>();
      for (let i = 0; i < frames.rows; i++) {
        const name = names.text(i);
        if (frames.isUncounted(i)) continue;
        if (name === null) throw new Refusal(`row ${i + 1} has frames and no lot`);
        const key = normalise(name);
        if (!found.has(key)) found.set(key, { name, frames: [], brood: [], capped: [] });
        const lot = found.get(key)!;
        lot.frames.push(...at(frames, i, "count"));
        lot.brood.push(...at(brood, i, "count"));
        lot.capped.push(...at(capped, i, "percent"));
      }
      const [first, ...others] = found.values();
      if (first === undefined || others.length === 0) {
        throw new Refusal("two lots or more with opened hives are needed to compare");
      }
      return [
        HEADINGS,
        row(first, null, confidence),
        ...others.map((l) => row(l, first, confidence)),
      ];
    },
  );
}

function row(lot: LotFigures, first: LotFigures | null, confidence: number): Cell[] {
  const ahead = (of: "frames" | "brood"): Cell[] => {
    if (first === null || lot[of].length === 0 || first[of].length === 0) return ["", "", ""];
    const { middle, low, high } = difference(lot[of], first[of], confidence);
    return [middle, low ?? "", high ?? ""];
  };
  const means = [mean(lot.frames), mean(lot.brood), mean(lot.capped)].map((m) => m ?? "");
  return [
    lot.name,
    lot.frames.length,
    ...means,
    ...ahead("frames"),
    ...ahead("brood"),
    note(lot, first),
  ];
}

function note(lot: LotFigures, first: LotFigures | null): string {
  const few = sources.fewHives.value;
  const small =
    lot.frames.length < few ? `fewer than ${few} hives: too few to tell lots apart` : "";
  const what = first === null ? "" : "tells these lots apart, not the regions they come from";
  return together(what, small);
}

export const compare: SheetFunction = { id: "COMPARE", parameters, evaluate: COMPARE, table: true };
