import { lifeOf, type Caste } from "./clock.js";
import { sources } from "./sources.js";

/** The stages of worker brood: days, daily loss, and cells to one of eggs by the two yardsticks. */
const STAGES = [
  {
    days: sources.workerEggDays.value,
    loss: sources.eggLoss.value,
    steady: 1,
    field: 1,
  },
  {
    days: sources.workerOpenDays.value,
    loss: sources.openLoss.value,
    steady: sources.steadyOpen.value,
    field: sources.fieldOpen.value,
  },
  {
    days: sources.workerCappedDays.value,
    loss: sources.cappedLoss.value,
    steady: sources.steadyCapped.value,
    field: sources.fieldCapped.value,
  },
];

export type Rearing = "growing" | "steady" | "shrinking" | "";

/** What the brood of a hive says of its queen's laying; null or empty where a stage is not judged. */
export interface Laying {
  /** Eggs a day over the last 3 days. */
  readonly byEggs: number | null;
  /** Eggs a day 3 to 9 days ago. */
  readonly byOpen: number | null;
  /** Eggs a day 9 to 21 days ago. */
  readonly byCapped: number | null;
  readonly verdict: Rearing;
  readonly note: string;
}

/**
 * The share of worker brood that lives from one age to a later one.
 *
 * @param from - days from laying, 0 to 21
 * @param to - days from laying
 * @example survival(0, 21) // 0.849
 */
export function survival(from: number, to: number): number {
  let start = 0;
  return STAGES.reduce((alive, { days, loss }) => {
    const end = start + days;
    const spent = Math.max(0, Math.min(to, end) - Math.max(from, start));
    start = end;
    return alive * (1 - loss) ** spent;
  }, 1);
}

/**
 * The share of brood of an age that lives to emerge, by the daily losses of worker brood: drones
 * have no figures of their own.
 *
 * @param age - days from laying
 * @example stageSurvival(6, "worker") // 0.959, of larvae at the middle of their stage
 */
export function stageSurvival(age: number, caste: Caste): number {
  const { hatching, capping, emergence } = lifeOf(caste);
  const ends = [hatching, capping, emergence.expected];
  return STAGES.reduce((alive, { loss }, k) => {
    const start = k === 0 ? 0 : ends[k - 1]!;
    return alive * (1 - loss) ** Math.max(0, ends[k]! - Math.max(age, start));
  }, 1);
}

/**
 * The laying that the cells of each stage of worker brood imply, and whether rearing is growing:
 * the younger stages are held against the oldest that was judged, and against what a steady colony
 * and the field would have.
 *
 * @param eggs - cells, null where not judged
 * @param open - cells of open brood
 * @param capped - cells of capped brood
 * @example laying(1000, 2000, 2000).verdict // "growing"
 */
export function laying(eggs: number | null, open: number | null, capped: number | null): Laying {
  const cells = [eggs, open, capped];
  let hatched = 0;
  const [byEggs, byOpen, byCapped] = STAGES.map(({ days }, k) => {
    const middle = hatched + days / 2;
    hatched += days;
    return cells[k] === null ? null : cells[k]! / (days * survival(0, middle));
  }) as [number | null, number | null, number | null];
  return { byEggs, byOpen, byCapped, ...rearing(cells) };
}

function rearing(cells: readonly (number | null)[]): Pick<Laying, "verdict" | "note"> {
  const judged = STAGES.flatMap((stage, k) =>
    cells[k] === null ? [] : [{ ...stage, cells: cells[k]! }],
  );
  const oldest = judged.at(-1);
  const young = judged.slice(0, -1);
  if (oldest === undefined || young.length === 0) {
    return { verdict: "", note: "one stage alone does not show whether rearing grows" };
  }
  if (judged.every((stage) => stage.cells === 0)) return { verdict: "", note: "no brood" };
  const sum = (of: "cells" | "steady" | "field"): number =>
    young.reduce((total, stage) => total + stage[of], 0);
  const clearly = 1 + sources.broodObservers.value / 100;
  const yardsticks = [sum("steady") / oldest.steady, sum("field") / oldest.field];
  const most = clearly * Math.max(...yardsticks) * oldest.cells;
  const least = (Math.min(...yardsticks) * oldest.cells) / clearly;
  const than = `than in a steady colony (1:${STAGES[1]!.steady}:${STAGES[2]!.steady}) or in the field (1:${STAGES[1]!.field}:${STAGES[2]!.field})`;
  if (sum("cells") > most) {
    return { verdict: "growing", note: `clearly more young brood ${than}: rearing is growing` };
  }
  if (sum("cells") < least) {
    return { verdict: "shrinking", note: `clearly less young brood ${than}: rearing is shrinking` };
  }
  return { verdict: "steady", note: "as much young brood as where laying is steady" };
}
