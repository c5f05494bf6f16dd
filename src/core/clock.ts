import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { normalise } from "./text.js";

export const CASTES = ["worker", "drone", "queen"] as const;
export type Caste = (typeof CASTES)[number];

export type Stage =
  "egg" | "grafted" | "larva" | "ready to cap" | "just capped" | "capped" | "emerging";

/** What people call each stage; a word `brood` behind it is left away. */
const WORDS: Readonly<Record<Stage, readonly string[]>> = {
  egg: ["egg", "eggs"],
  grafted: ["grafted", "graft"],
  larva: ["larva", "larvae", "open", "uncapped", "unsealed"],
  "ready to cap": ["ready to cap", "about to cap", "pre cap", "precap"],
  "just capped": ["just capped", "freshly capped", "just sealed", "freshly sealed"],
  capped: ["capped", "sealed", "pupa", "pupae"],
  emerging: ["emerging"],
};
const STAGES = Object.keys(WORDS) as Stage[];

/** Days, or a date, with its ends; null where nothing sets the end. */
export interface Span<E = number | null> {
  readonly earliest: E;
  readonly expected: number;
  readonly latest: number;
}

/** Days from laying in which brood is seen in a stage; null where it may be of any greater age. */
export interface Age {
  readonly youngest: number;
  readonly expected: number;
  readonly oldest: number | null;
}

/** Days from laying at which a caste hatches, is capped and emerges. */
export interface Life {
  readonly hatching: number;
  readonly capping: number;
  readonly emergence: Span<number>;
}

const {
  workerEmergence: { value: measured },
  workerEmergenceSd: { value: sd },
  droneEmergenceSpread: { value: droneSpread },
  queenEmergenceSpread: { value: queenSpread },
  stageWidth: { value: width },
} = sources;

function life(egg: number, open: number, capped: number, ends: (total: number) => number[]): Life {
  const expected = egg + open + capped;
  const [earliest, latest] = ends(expected) as [number, number];
  return { hatching: egg, capping: egg + open, emergence: { earliest, expected, latest } };
}

/** Measured workers emerge before the life table's day, so its day and theirs set an end each. */
const LIVES: Readonly<Record<Caste, Life>> = {
  worker: life(
    sources.workerEggDays.value,
    sources.workerOpenDays.value,
    sources.workerCappedDays.value,
    (total) => [measured - 2 * sd, total + 2 * sd],
  ),
  drone: life(
    sources.droneEggDays.value,
    sources.droneOpenDays.value,
    sources.droneCappedDays.value,
    (total) => [total - droneSpread, total + droneSpread],
  ),
  queen: life(
    sources.queenEggDays.value,
    sources.queenOpenDays.value,
    sources.queenCappedDays.value,
    (total) => [total - queenSpread, total + queenSpread],
  ),
};

const from = (youngest: number, oldest: number): Age => ({
  youngest,
  expected: (youngest + oldest) / 2,
  oldest,
});

/** The spread is known of emergence alone, so hatching and capping keep the life table's day. */
const AGES: Readonly<Record<Stage, (life: Life) => Age>> = {
  egg: ({ hatching }) => from(0, hatching),
  grafted: ({ hatching }) => from(hatching, hatching + width),
  larva: ({ hatching, capping }) => from(hatching, capping),
  "ready to cap": ({ capping }) => from(capping - width, capping),
  "just capped": ({ capping }) => from(capping, capping + width),
  capped: ({ capping, emergence: { expected, latest } }) => ({
    ...from(capping, expected),
    oldest: latest,
  }),
  emerging: ({ emergence: { earliest, expected } }) => ({
    youngest: earliest,
    expected,
    oldest: null,
  }),
};

/** The caste that a word names; the worker where there is none. */
export function casteOf(text: string | null): Caste {
  if (text === null) return "worker";
  const word = normalise(text).replace(/ (?:cells?|brood)$|s$/, "");
  const caste = CASTES.find((name) => name === word);
  if (caste !== undefined) return caste;
  throw new Refusal(`${quote(text)} stands where "worker", "drone" or "queen" was expected`);
}

/**
 * The stage that a word names.
 *
 * @throws Refusal that names the caste and its stages, also for a stage that the caste has not
 * @example stageOf("open brood", "worker") // "larva"
 */
export function stageOf(text: string, caste: Caste): Stage {
  const word = normalise(text)
    .replaceAll("-", " ")
    .replace(/ brood$/, "");
  const stage = STAGES.find((name) => WORDS[name].includes(word));
  const own = STAGES.filter((name) => name !== "grafted" || caste === "queen");
  if (stage !== undefined && own.includes(stage)) return stage;
  throw new Refusal(`${quote(text)} is no stage of a ${caste}: its stages are ${own.join(", ")}`);
}

/** Days from laying at which a caste hatches, is capped and emerges. */
export function lifeOf(caste: Caste): Life {
  return LIVES[caste];
}

/** Days from laying to emergence. */
export function development(caste: Caste): Span<number> {
  return LIVES[caste].emergence;
}

/** Days since brood was laid that is seen in a stage. Emerging brood shows only the least. */
export function ageOf(stage: Stage, caste: Caste): Age {
  return AGES[stage](LIVES[caste]);
}

/**
 * Days until brood emerges that is seen in a stage: from what would be the oldest of an early brood
 * to the youngest of a late one.
 *
 * @example daysToEmerge("just capped", "worker") // earliest 9.1, expected 11.5, latest 13.2
 */
export function daysToEmerge(stage: Stage, caste: Caste): Span<number> {
  const { youngest, expected, oldest } = ageOf(stage, caste);
  if (oldest === null) return { earliest: 0, expected: 0, latest: 0 };
  const total = development(caste);
  return {
    earliest: Math.max(0, total.earliest - oldest),
    expected: total.expected - expected,
    latest: total.latest - youngest,
  };
}

/**
 * The date on which brood emerges that is seen in a stage, in whole days that hold both ends.
 *
 * @param date - serial number of the day on which it is seen
 */
export function emergeDate(date: number, stage: Stage, caste: Caste): Span<number> {
  const { earliest, expected, latest } = daysToEmerge(stage, caste);
  return {
    earliest: Math.floor(date + earliest),
    expected: Math.round(date + expected),
    latest: Math.ceil(date + latest),
  };
}

/** The date on which brood was laid that is seen in a stage; earliest null where it is emerging. */
export function eggDate(date: number, stage: Stage, caste: Caste): Span {
  const { youngest, expected, oldest } = ageOf(stage, caste);
  return {
    earliest: oldest === null ? null : Math.floor(date - oldest),
    expected: Math.round(date - expected),
    latest: Math.ceil(date - youngest),
  };
}
