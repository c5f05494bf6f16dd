import {
  casteOf,
  daysToEmerge,
  eggDate,
  emergeDate,
  stageOf,
  type Caste,
  type Span,
  type Stage,
} from "../core/clock.js";
import { Refusal } from "../core/refusal.js";
import { toCellError, type Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { dateAt } from "./dates.js";
import { choice, hives } from "./parameters.js";
import { beside, checkSingle } from "./rows.js";
import { writtenParameter } from "./written.js";

const ENDS = ["earliest", "expected", "latest"] as const;
type ClockPart = (typeof ENDS)[number] | "all";

const broodParameters = [
  hives("stage"),
  optional(hives("caste")),
  choice<ClockPart>("part", ["expected", "earliest", "latest", "all"]),
] as const;
const dateParameters = [hives("date"), ...broodParameters, writtenParameter] as const;

/**
 * Days until brood emerges, from the stage in which it is seen.
 *
 * @remarks By the life table (Winston 1987; Jay 1963): worker 3 days egg, 6 larva, 12 capped, drone
 * 3, 7 and 14, queen 3, 5.5 and 7.5. Expected is from the middle of the stage; earliest and latest
 * hold the whole stage and the spread of emergence: workers measured 20.3 days, sd 0.6 (Bartlett,
 * CDP2020 data); drones 2 days and queens 1 to either side, common practice, no source.
 * @example =COMB.DAYS_TO_EMERGE("capped") gives 6; =COMB.DAYS_TO_EMERGE("capped","drone","latest") gives 16.
 * @customfunction DAYS_TO_EMERGE
 * @helpurl https://localhost:3000/help.html#DAYS_TO_EMERGE
 * @param stage A row a hive, or one: egg, larva or open, ready to cap, just capped, capped or sealed, emerging; for queens also grafted.
 * @param caste "worker" (also where left out), "drone" or "queen"; one, or a row each.
 * @param part "expected" (also where left out), "earliest", "latest", or "all" three: earliest, expected, latest.
 * @returns Days, a row a hive; blank where no stage is given.
 */
export function DAYS_TO_EMERGE(
  stage: unknown[][],
  caste?: unknown[][],
  part?: unknown,
): unknown[][] {
  return answer(broodParameters, [stage, caste, part], (stages, castes, part) =>
    eachBrood([stages, castes], part, (i) => {
      const brood = broodAt(stages, castes, i);
      return brood && daysToEmerge(...brood);
    }),
  );
}

/**
 * The date on which brood emerges, from the day and the stage in which it is seen.
 *
 * @remarks DAYS_TO_EMERGE after the date, in whole days: earliest rounded down, latest up, expected
 * to the nearest. Format the cells as dates.
 * @example =COMB.EMERGE_DATE(DATE(2026,3,20),"just capped") gives 1 April 2026; its earliest is 29 March, its latest 3 April.
 * @customfunction EMERGE_DATE
 * @helpurl https://localhost:3000/help.html#EMERGE_DATE
 * @param date A row a hive, or one: the date on which the brood is seen, as the sheet keeps dates.
 * @param stage A row a hive, or one: egg, larva or open, ready to cap, just capped, capped or sealed, emerging; for queens also grafted.
 * @param caste "worker" (also where left out), "drone" or "queen"; one, or a row each.
 * @param part "expected" (also where left out), "earliest", "latest", or "all" three: earliest, expected, latest.
 * @param written How dates that stand as text are written, where they may be two days: "day first" or "month first".
 * @returns A date, a row a hive; blank where no date or no stage is given.
 */
export function EMERGE_DATE(
  date: unknown[][],
  stage: unknown[][],
  caste?: unknown[][],
  part?: unknown,
  written?: unknown,
): unknown[][] {
  return onDates([date, stage, caste, part, written], emergeDate);
}

/**
 * The date on which brood was laid, from the day and the stage in which it is seen.
 *
 * @remarks In whole days: earliest rounded down, latest up, expected to the nearest. Emerging brood
 * shows only that laying began so long ago or longer: its earliest is #N/A.
 * @example =COMB.EGG_DATE(DATE(2026,3,20),"just capped") gives 11 March 2026; its earliest is 10 March, its latest 11 March.
 * @customfunction EGG_DATE
 * @helpurl https://localhost:3000/help.html#EGG_DATE
 * @param date A row a hive, or one: the date on which the brood is seen, as the sheet keeps dates.
 * @param stage A row a hive, or one: egg, larva or open, ready to cap, just capped, capped or sealed, emerging; for queens also grafted.
 * @param caste "worker" (also where left out), "drone" or "queen"; one, or a row each.
 * @param part "expected" (also where left out), "earliest", "latest", or "all" three: earliest, expected, latest.
 * @param written How dates that stand as text are written, where they may be two days: "day first" or "month first".
 * @returns A date, a row a hive; blank where no date or no stage is given.
 */
export function EGG_DATE(
  date: unknown[][],
  stage: unknown[][],
  caste?: unknown[][],
  part?: unknown,
  written?: unknown,
): unknown[][] {
  return onDates([date, stage, caste, part, written], eggDate);
}

function onDates(
  values: readonly unknown[],
  spanOn: (date: number, stage: Stage, caste: Caste) => Span,
): Cell[][] {
  return answer(dateParameters, values, (dates, stages, castes, part, writing) =>
    eachBrood([dates, stages, castes], part, (i) => {
      const date = dateAt(dates, i, writing);
      const brood = broodAt(stages, castes, i);
      return date === null || brood === null ? null : spanOn(date, ...brood);
    }),
  );
}

function eachBrood(
  columns: readonly (HiveCells | null)[],
  part: ClockPart,
  spanAt: (i: number) => Span | null,
): Cell[][] {
  checkSingle(columns);
  const ends = part === "all" ? ENDS : [part];
  return eachHive([beside(columns)], ends.length, (i) => {
    const span = spanAt(i);
    return ends.map((end) => (span === null ? "" : (span[end] ?? notShown())));
  });
}

/** Stands in its own cell alone: the row's other ends are known. */
function notShown(): Cell {
  const message = "emerging brood does not show how long before it laying began";
  return toCellError(new Refusal(message, "unknown"), "");
}

function broodAt(stages: HiveCells, castes: HiveCells | null, i: number): [Stage, Caste] | null {
  const text = stages.text(i);
  if (text === null) return null;
  const caste = castes === null ? casteOf(null) : castes.named(i, 0, () => casteOf(castes.text(i)));
  return [stages.named(i, 0, () => stageOf(text, caste)), caste];
}

export const daysToEmergeFunction: SheetFunction = {
  id: "DAYS_TO_EMERGE",
  parameters: broodParameters,
  evaluate: DAYS_TO_EMERGE,
};
export const emergeDateFunction: SheetFunction = {
  id: "EMERGE_DATE",
  parameters: dateParameters,
  evaluate: EMERGE_DATE,
};
export const eggDateFunction: SheetFunction = {
  id: "EGG_DATE",
  parameters: dateParameters,
  evaluate: EGG_DATE,
};
