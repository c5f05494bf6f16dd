import { beganBy, beganByAmounts, type Began } from "../core/brood-start.js";
import { casteOf, development, stageOf } from "../core/clock.js";
import { daysAhead, lotStart, type LotStart } from "../core/days-ahead.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { toCellError, type Cell } from "./cells.js";
import { answer, needed, optional, type SheetFunction } from "./declare.js";
import { dateAt } from "./dates.js";
import { checkRows, eachHive, type HiveCells } from "./hive-cells.js";
import { choice, confidence, hives, text } from "./parameters.js";
import { amountAt, beside, checkSingle } from "./rows.js";
import { writtenParameter } from "./written.js";
import { together } from "../core/together.js";
import type { Writing } from "../core/writing.js";

const PARTS = ["latest", "earliest", "days", "note"] as const;

const startParameters = [
  hives("seen"),
  hives("stage"),
  optional(hives("eggs")),
  optional(hives("open")),
  optional(hives("capped")),
  choice("part", [...PARTS, "all"]),
  writtenParameter,
] as const;

/**
 * The date by which a hive had begun to rear worker brood, from the oldest brood that is seen; and what the amounts say beyond that.
 *
 * @remarks "latest" is sure if the stage was judged right: brood of that stage cannot be younger.
 * "earliest" holds if nothing older was overlooked; emerging brood shows only "21 days or more" and
 * gives #N/A there. Where amounts of that stage and the one before it are given, both dates are those
 * by the amounts, if laying was steady since (1:2:4, and 1:1.5:3.2 as found in the field, set the
 * ends); a stage that is full shows only "at least".
 * @example =COMB.BROOD_START(DATE(2026,3,28),"capped") gives 19 March 2026, with 5 March as its earliest.
 * @customfunction BROOD_START
 * @helpurl https://localhost:3000/help.html#BROOD_START
 * @param seen A row a hive, or one: the date on which the brood is seen.
 * @param stage A row a hive, or one: the oldest stage seen: egg, larva or open, ready to cap, just capped, capped, emerging.
 * @param eggs A row a hive: amount of eggs, in cells or any one measure.
 * @param open A row a hive: amount of open brood in the same measure.
 * @param capped A row a hive: amount of capped brood in the same measure.
 * @param part "latest" (also where left out), "earliest", "days" (of rearing, at least), "note", or "all" four beside each other.
 * @param written How figures are written, where not plainly: "decimal comma"; "day first" or "month first" for dates that are text; both with a comma between.
 * @returns The date or the part asked for, a row a hive; blank where no date or no stage is given.
 */
export function BROOD_START(
  seen: unknown[][],
  stage: unknown[][],
  eggs?: unknown[][],
  open?: unknown[][],
  capped?: unknown[][],
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [seen, stage, eggs, open, capped, part, written];
  return answer(startParameters, values, (seen, stages, eggs, open, capped, part, writing) => {
    checkSingle([seen, stages]);
    const parts = part === "all" ? PARTS : [part];
    return eachHive([beside([seen, stages, eggs, open, capped])], parts.length, (i) => {
      const day = dateAt(seen, i, writing);
      const word = stages.text(i);
      if (day === null || word === null) return parts.map(() => "");
      const stage = stages.named(i, 0, () => stageOf(word, casteOf(null)));
      const amount = (column: HiveCells | null): number | null => amountAt(column, i, writing);
      const byAmounts = beganByAmounts(stage, {
        eggs: amount(eggs),
        open: amount(open),
        capped: amount(capped),
      });
      const began = byAmounts ?? beganBy(stage, "worker");
      return parts.map((p) => partOf(p, day, began, byAmounts !== null));
    });
  });
}

function partOf(
  part: (typeof PARTS)[number],
  day: number,
  { least, most }: Began,
  byAmounts: boolean,
): Cell {
  switch (part) {
    case "latest":
      return Math.ceil(day - least);
    case "earliest":
      if (most !== null) return Math.floor(day - most);
      return notShown();
    case "days":
      return least;
    case "note": {
      const basis = byAmounts ? "by the amounts, if laying was steady" : "by the oldest brood seen";
      return most === null ? `at least ${plural(shown(least), "day")}, ${basis}` : basis;
    }
  }
}

/** Stands in its own cell alone: the row's other parts are known. */
function notShown(): Cell {
  const message = "the oldest stage is full: nothing shows how long before";
  return toCellError(new Refusal(message, "unknown"), "");
}

function shown(days: number): string {
  return String(Math.round(10 * days) / 10);
}

const aheadParameters = [
  hives("lots"),
  hives("seen"),
  hives("stage"),
  needed(text("first")),
  confidence("confidence"),
  writtenParameter,
] as const;

const DATES = ["Began at the latest", "Began at the earliest"];
const HEADINGS = ["Lot", "Hives", ...DATES, "Days ahead, low", "Days ahead, high", "Says"];

/**
 * Lots against one of them, in days: how long before or after it each began to rear, by the oldest brood in their hives, spilled.
 *
 * @remarks The least and the most days that the brood clock allows, with the sampling's margin. All
 * hives of a lot may stand at the same end of a stage, so more hives do not narrow that part. A lot
 * with emerging brood is past the clock: "at least". It compares these lots; regions differ by more
 * than one yard of each can tell.
 * @example =COMB.DAYS_AHEAD(B2:B61,D2:D61,L2:L61,"Foothill") spills a row for each lot under a heading row.
 * @customfunction DAYS_AHEAD
 * @helpurl https://localhost:3000/help.html#DAYS_AHEAD
 * @param lots A row a hive: the lot it is of.
 * @param seen A row a hive, or one: the date of the inspection.
 * @param stage A row a hive: the oldest stage of worker brood seen: egg, larva or open, ready to cap, just capped, capped, emerging; blank where none or not judged.
 * @param first The lot that the others are held against.
 * @param confidence Confidence of the sampling's margin in percent: 95 where left out.
 * @param written How dates that stand as text are written, where they may be two days: "day first" or "month first".
 * @returns A heading row, then a row a lot: lot, hives judged, latest and earliest date, days ahead from and to, and a sentence.
 */
export function DAYS_AHEAD(
  lots: unknown[][],
  seen: unknown[][],
  stage: unknown[][],
  first: unknown,
  confidence?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [lots, seen, stage, first, confidence, written];
  return answer(aheadParameters, values, (lots, seen, stages, first, confidence, writing) => {
    checkSingle([lots, seen, stages]);
    checkRows([lots, seen, stages]);
    const found = lotsOf(lots, seen, stages, writing);
    const base = found.get(normalise(first));
    if (base === undefined) {
      const names = [...found.values()].map(({ name }) => name).join(", ");
      throw new Refusal(`first: "${first}" has no judged hive; lots with some: ${names || "none"}`);
    }
    const start = lotStart(base.hives, confidence);
    const rows = [...found.values()].map((lot): Cell[] =>
      lot === base
        ? row(lot, start, null, first)
        : row(lot, lotStart(lot.hives, confidence), start, first),
    );
    return [HEADINGS, ...rows];
  });
}

interface JudgedLot {
  readonly name: string;
  readonly hives: { readonly seen: number; readonly began: Began }[];
}

function lotsOf(
  lots: HiveCells,
  seen: HiveCells,
  stages: HiveCells,
  writing: Writing,
): Map<string, JudgedLot> {
  const found = new Map<string, JudgedLot>();
  for (let i = 0; i < lots.rows; i++) {
    const word = stages.text(i);
    const name = lots.text(i);
    if (word === null || name === null) continue;
    const day = dateAt(seen, i, writing);
    if (day === null) throw new Refusal(`row ${i + 1} has a stage and no date`);
    const stage = stages.named(i, 0, () => stageOf(word, "worker"));
    const key = normalise(name);
    if (!found.has(key)) found.set(key, { name, hives: [] });
    found.get(key)!.hives.push({ seen: day, began: beganBy(stage, "worker") });
  }
  return found;
}

function row(
  { name, hives }: JudgedLot,
  own: LotStart,
  base: LotStart | null,
  first: string,
): Cell[] {
  const dates = [
    Math.ceil(own.latest),
    own.earliest === null ? "not shown" : Math.floor(own.earliest),
  ];
  if (base === null) return [name, hives.length, ...dates, "", "", pastOf(own, hives.length)];
  const { low, high } = daysAhead(own, base);
  return [
    name,
    hives.length,
    ...dates,
    low ?? "not shown",
    high ?? "not shown",
    together(verdict(low, high, first), pastOf(own, hives.length)),
  ];
}

function verdict(low: number | null, high: number | null, first: string): string {
  if (low === null && high === null) return "both are past the clock: neither is shown to be ahead";
  if (low !== null && low > 0) return `ahead of ${first} by at least ${plural(shown(low), "day")}`;
  if (high !== null && high < 0)
    return `behind ${first} by at least ${plural(shown(-high), "day")}`;
  return "not shown to be ahead or behind: the stages overlap";
}

function pastOf({ pastClock }: LotStart, hives: number): string {
  if (pastClock === 0) return "";
  const { expected, earliest } = development("worker");
  return (
    `${pastClock} of ${plural(hives, "hive")} past the clock: ${expected} days or more by the life table, ` +
    `${shown(earliest)} as measured`
  );
}

export const broodStart: SheetFunction = {
  id: "BROOD_START",
  parameters: startParameters,
  evaluate: BROOD_START,
};
export const daysAheadFunction: SheetFunction = {
  id: "DAYS_AHEAD",
  parameters: aheadParameters,
  evaluate: DAYS_AHEAD,
  table: true,
  dates: DATES,
};
