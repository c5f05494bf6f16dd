import { ageOf, development, type Caste, type Stage } from "./clock.js";
import { stageSurvival, survival } from "./laying.js";
import { sources } from "./sources.js";

/** Brood that is seen in one stage: how many cells hold it. */
export interface BroodInStage {
  readonly stage: Stage;
  readonly cells: number;
}

/**
 * Bees that emerge on each day after brood was seen.
 *
 * What is seen in a stage is spread evenly over the days of that stage, so that `capped` worker
 * brood emerges in equal parts over 12 days; `just capped` and `emerging` place it.
 *
 * @param brood - cells in each stage
 * @param alive - share that lives to emerge; null for what the daily losses leave of a stage from its
 *   middle on
 * @returns bees on day 1, 2, … up to the last day of the caste's brood; their sum is cells x share
 * @example emergence([{ stage: "capped", cells: 1200 }], "worker", 1) // 100 on each of 12 days, then none
 */
export function emergence(
  brood: readonly BroodInStage[],
  caste: Caste,
  alive: number | null = null,
): number[] {
  const total = development(caste).expected;
  const days = Array<number>(Math.ceil(total)).fill(0);
  for (const { stage, cells } of brood) {
    const { youngest, oldest } = boundsOf(stage, caste, total);
    const bees = cells * (alive ?? stageSurvival((youngest + oldest) / 2, caste));
    const [first, last] = [total - oldest, total - youngest];
    for (let day = 0; day < days.length; day++) {
      const share = (Math.min(last, day + 1) - Math.max(first, day)) / (last - first);
      if (share > 0) days[day]! += bees * share;
    }
  }
  return days;
}

/** The ages between which brood of a stage lies; what emerges is in its last day. */
function boundsOf(stage: Stage, caste: Caste, total: number): { youngest: number; oldest: number } {
  if (stage === "emerging") return { youngest: total - 1, oldest: total };
  const { youngest, oldest } = ageOf(stage, caste);
  return { youngest, oldest: Math.min(oldest ?? total, total) };
}

/**
 * Worker brood whose stages nobody told apart, shared out as it was found in the field: eggs, open
 * and capped 1 : 1.5 : 3.2.
 *
 * @example ofAllStages(5700) // 3,200 capped, 1,500 larvae, 1,000 eggs
 */
export function ofAllStages(cells: number): BroodInStage[] {
  const [open, capped] = [sources.fieldOpen.value, sources.fieldCapped.value];
  const parts = 1 + open + capped;
  return [
    { stage: "capped", cells: (cells * capped) / parts },
    { stage: "larva", cells: (cells * open) / parts },
    { stage: "egg", cells: cells / parts },
  ];
}

/**
 * The same days, and those after them in which workers emerge whose eggs were laid after the look.
 *
 * @param emerging - bees by day from the brood that was seen
 * @param eggsADay - laying that goes on
 * @param days - how far
 */
export function withLaying(
  emerging: readonly number[],
  eggsADay: number,
  days: number,
): readonly number[] {
  if (eggsADay === 0 || days <= emerging.length) return emerging;
  const bees = eggsADay * survival(0, emerging.length);
  return [...emerging, ...Array<number>(days - emerging.length).fill(bees)];
}
