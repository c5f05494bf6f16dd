import { ageOf, development, lifeOf, type Caste, type Stage } from "./clock.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";

/** When rearing began, in days before the look; `most` null where nothing shows how long before. */
export interface Began {
  readonly least: number;
  readonly most: number | null;
}

/** Cells, or any measure, of each stage; null for a stage that was not judged. */
export interface StageAmounts {
  readonly eggs: number | null;
  readonly open: number | null;
  readonly capped: number | null;
}

/**
 * How long rearing has gone on, by the oldest brood that is seen.
 *
 * Brood of a stage is at least as old as the youngest of that stage, so rearing began no later. It
 * began no earlier than the oldest of that stage was laid, if none that is older was overlooked.
 * Emerging brood shows only that it began so long ago or longer.
 *
 * @example beganBy("capped", "worker") // 9 to 22.2 days before
 */
export function beganBy(stage: Stage, caste: Caste): Began {
  const { youngest, oldest } = ageOf(stage, caste);
  return { least: youngest, most: oldest };
}

const YOUNGER_THAN_CAPPED: ReadonlySet<Stage> = new Set(["egg", "larva", "ready to cap"]);

/**
 * How long rearing has gone on by the amounts: where laying is steady, a stage that is not full yet
 * shows by how much of it there is beside the stage before it how far it has come.
 *
 * The two yardsticks (1 : 2 : 4 where laying is steady, 1 : 1.5 : 3.2 in the field) set the ends. A
 * stage that is full shows only `at least`.
 *
 * @param oldest - the oldest stage seen: larva or capped
 * @returns null where the stage before it was not judged or has none, and where the stage itself says
 *   more: just capped, ready to cap, emerging
 * @throws Refusal for brood of a stage older than the oldest seen
 * @example
 * // half as much capped brood as where laying is steady, beside open brood: 9 to 15 and more days
 * beganByAmounts("capped", { eggs: 1000, open: 2000, capped: 2000 })
 */
export function beganByAmounts(oldest: Stage, amounts: StageAmounts): Began | null {
  if (YOUNGER_THAN_CAPPED.has(oldest) && (amounts.capped ?? 0) > 0) {
    throw new Refusal(`there is capped brood, and the oldest stage is said to be ${oldest}`);
  }
  if (oldest === "egg" && (amounts.open ?? 0) > 0) {
    throw new Refusal("there is open brood, and the oldest stage is said to be eggs");
  }
  const { hatching, capping } = lifeOf("worker");
  const total = development("worker").expected;
  if (oldest === "capped") {
    const ratios = [
      sources.steadyCapped.value / sources.steadyOpen.value,
      sources.fieldCapped.value / sources.fieldOpen.value,
    ];
    return part(amounts.capped, amounts.open, ratios, capping, total);
  }
  if (oldest !== "larva") return null;
  const ratios = [sources.steadyOpen.value, sources.fieldOpen.value];
  return part(amounts.open, amounts.eggs, ratios, hatching, capping);
}

function part(
  older: number | null,
  younger: number | null,
  full: readonly number[],
  from: number,
  to: number,
): Began | null {
  if (older === null || younger === null || younger <= 0) return null;
  const shares = full.map((ratio) => older / younger / ratio);
  const days = (share: number): number => from + (to - from) * Math.min(1, share);
  return {
    least: days(Math.min(...shares)),
    most: Math.max(...shares) >= 1 ? null : days(Math.max(...shares)),
  };
}
