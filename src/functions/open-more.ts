import { sum } from "../core/estimate.js";
import {
  openMore,
  palletMeans,
  usualMost,
  usualSpread,
  type SequentialPlan,
  type Standing,
} from "../core/open-more.js";
import { plural } from "../core/plural.js";
import { read } from "../core/reading.js";
import { quote, Refusal } from "../core/refusal.js";
import { sources } from "../core/sources.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { answer, needed, optional, type Parameter, type SheetFunction } from "./declare.js";
import { checkRows, type HiveCells } from "./hive-cells.js";
import { choice, hives, number, option } from "./parameters.js";
import { checkSingle } from "./rows.js";
import { writtenParameters, yearOfRow } from "./written.js";

const MOST_HIVES = 1e6;
const OWN_CHECK =
  "for your own check alone: pay needs the fixed sample, since stopping when ahead flatters";

/** Each part as a cell; blank where there is none yet. */
const PARTS = {
  verdict: ({ verdict }: Standing): Cell => verdict,
  more: ({ more }: Standing): Cell => more,
  average: ({ average }: Standing): Cell => average ?? "",
  "fails at": ({ failsAt }: Standing): Cell => failsAt ?? "",
  "passes at": ({ passesAt }: Standing): Cell => passesAt ?? "",
};
const ALL = ["verdict", "more", "average", "fails at", "passes at", "note"] as const;
type Part = (typeof ALL)[number];

const parameters = [
  hives("frames"),
  needed(number("good", sources.mostFrames.value)),
  needed(number("bad", sources.mostFrames.value)),
  chance("alpha"),
  chance("beta"),
  number("most", MOST_HIVES),
  number("spread", sources.mostFrames.value),
  optional(hives("pallets")),
  number("size", MOST_HIVES),
  choice<Part | "all">("part", ["all", ...ALL]),
  ...writtenParameters,
] as const;

/**
 * For your own check before the inspector comes: pass, fail or open more, after each hive or pallet.
 *
 * @remarks Wald's sequential probability ratio test of the average (1947, from memory), the spread
 * the larger of the one stated and the one seen (Hall 1962, from memory): a lot as good as the good
 * level fails, and one as bad as the bad level passes, no oftener than stated. For hives drawn at
 * random, in the order opened. Pay needs the fixed sample, since stopping when ahead flatters. One
 * hive always gives open more; "undecided" comes after the most to open. A blank row, or a 0, is
 * not opened: write none or dead. Where whole pallets are opened, look when a pallet is complete.
 * @example =COMB.OPEN_MORE(B2:B4,9,7,,,,2.4) with 12, 11 and 12 gives pass, 0, 11.67, 5.79, 10.21 and a sentence.
 * @customfunction OPEN_MORE
 * @helpurl https://localhost:3000/help.html#OPEN_MORE
 * @param frames A row a hive in the order opened: frames of bees, or the counts of its boxes.
 * @param good Average frames of bees of a lot that should pass.
 * @param bad Average of a lot that should fail, under the good level; the closer the two, the more to open.
 * @param alpha Chance that a lot at the good level fails: 5 or 0.05 for 5 %; 10 % where left out.
 * @param beta Chance that a lot at the bad level passes: 5 or 0.05 for 5 %; 10 % where left out.
 * @param most Most hives to open, or pallets where they are given; three times the fixed sample where left out.
 * @param spread Standard deviation of the lot's hives, or of its pallets' averages, no less than it is; 30 % of the average for hives where left out.
 * @param pallets The pallet of each hive, where whole pallets are opened: a pallet's average then counts as one.
 * @param size Hives in the lot; a small lot needs fewer opened.
 * @param part "all" six beside each other (also where left out), "verdict", "more", "average", "fails at", "passes at" or "note".
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns One row: the verdict, how many more at the average so far, that average, the averages that fail and pass now (blank where none does), and a sentence.
 */
export function OPEN_MORE(
  frames: unknown[][],
  good: unknown,
  bad: unknown,
  alpha?: unknown,
  beta?: unknown,
  most?: unknown,
  spread?: unknown,
  pallets?: unknown[][],
  size?: unknown,
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [
    frames,
    good,
    bad,
    alpha,
    beta,
    most,
    spread,
    pallets,
    size,
    part,
    written,
    inspected,
  ];
  return answer(
    parameters,
    values,
    (frames, good, bad, alpha, beta, most, spread, pallets, size, part, writing, inspected) => {
      const opened = openedInOrder(frames, pallets, writing, inspected);
      checkSize(size, opened.hives);
      const perUnit = opened.hives / Math.max(1, opened.strengths.length) || 1;
      const plan = {
        good,
        bad,
        alpha,
        beta,
        spread: spread ?? usualSpread(good, bad, perUnit),
        size: size === null ? Infinity : Math.round(size / perUnit),
      };
      const whole = { ...plan, most: most ?? usualMost(plan) };
      const now = openMore(opened.strengths, whole);
      const unit = pallets === null ? "hive" : "pallet";
      const cell = (part: Part): Cell =>
        part === "note" ? noteOn(now, whole, opened.strengths.length, unit) : PARTS[part](now);
      return [(part === "all" ? ALL : [part]).map(cell)];
    },
  );
}

/** The frames of each opened hive, or of each pallet on average, in the order of the rows. */
function openedInOrder(
  frames: HiveCells,
  pallets: HiveCells | null,
  writing: Writing,
  inspected: HiveCells | null,
): { strengths: number[]; hives: number } {
  checkSingle([pallets]);
  checkRows([frames, pallets, inspected]);
  const yearOf = yearOfRow(inspected, writing);
  const rows = Array.from({ length: frames.rows }, (_, i) => i).filter(
    (i) => !frames.isUncounted(i),
  );
  const strengths = rows.map((i) => sum(frames.estimates(i, "count", writing, yearOf(i))).middle);
  if (pallets === null) return { strengths, hives: rows.length };
  const names = rows.map((i) => {
    const name = pallets.text(i);
    if (name === null) throw new Refusal(`pallets: the hive of row ${i + 1} has none`);
    return name;
  });
  return { strengths: palletMeans(strengths, names), hives: rows.length };
}

function checkSize(size: number | null, opened: number): void {
  if (size !== null && !Number.isInteger(size)) {
    throw new Refusal(`size: ${size} hives: give a whole number`);
  }
  if (size !== null && size < opened) {
    throw new Refusal(`size: a lot of ${plural(size, "hive")} cannot have ${opened} opened`);
  }
}

function noteOn(now: Standing, plan: SequentialPlan, opened: number, unit: string): string {
  const since = opened - now.opened;
  const parts = [verdictNote(now, plan, unit), OWN_CHECK];
  if (since > 0) parts.splice(1, 0, `nothing is changed by ${plural(since, unit)} opened since`);
  return parts.join("; ");
}

function verdictNote(
  { verdict, opened, more }: Standing,
  plan: SequentialPlan,
  unit: string,
): string {
  const { good, bad, alpha, beta, size } = plan;
  const all = opened >= size;
  const after = `${verdict} after ${plural(opened, unit)}`;
  if (all) return `${after}, all of the lot: held against ${(good + bad) / 2}, between the levels`;
  if (verdict === "pass")
    return `${after}: a lot that averages only ${bad} would pass all the same in ${percent(beta)} of such checks at most`;
  if (verdict === "fail")
    return `${after}: a lot that averages ${good} would fail all the same in ${percent(alpha)} of such checks at most`;
  if (verdict === "undecided") return `${after}, the most to open: neither level is shown`;
  if (opened < 2) return `two ${unit}s are the least that tell how much they differ`;
  return `open ${plural(more, unit)} more if they go on at this average, fewer if better or worse`;
}

function percent(share: number): string {
  return `${+(share * 100).toPrecision(4)} %`;
}

/** A chance of error as a share: 0.05 (which a cell shows as 5 %), 5 and "5%" are the same. */
function chance(name: string): Parameter<number> {
  return option(name, sources.sequentialChance.value / 100, (value) => {
    const figure = typeof value === "string" ? read(value, "percent").middle : value;
    if (typeof figure === "number") {
      if (typeof value === "number" && figure >= 0.001 && figure < 0.5) return figure;
      if (figure >= (typeof value === "string" ? 0.1 : 1) && figure < 50) return figure / 100;
    }
    const expected = "a chance was expected, 0.1 % to under 50 %: 5 or 0.05 for 5 %";
    throw new Refusal(`${quote(String(value))} stands where ${expected}`);
  });
}

export const openMoreFunction: SheetFunction = {
  id: "OPEN_MORE",
  parameters,
  evaluate: OPEN_MORE,
};
