import type { Contract } from "./contract.js";
import { DEAD_OUT, NO_GRADE } from "./contract-check.js";
import { gradeOf, gradesOf, requirementsOf, type Hive } from "./grade.js";
import { firstOf } from "./listing.js";
import { plural } from "./plural.js";
import { quote, Refusal } from "./refusal.js";
import { atLeast, atMost } from "./tolerance.js";

/** One look into a hive of a lot. */
export interface Look {
  readonly id: string;
  /** The pallet it stands on; null where the sheet does not say. */
  readonly pallet: string | null;
  /** Serial number of the day; null where the sheet does not say. */
  readonly day: number | null;
  readonly hive: Hive;
}

/** An opened hive as the contract counts it. */
export interface OpenedHive {
  readonly id: string;
  readonly pallet: string | null;
  /** Frames of bees as judged, in the contract's frame. */
  readonly frames: number;
  /** The same, at most the contract's cap. */
  readonly counted: number;
  readonly grade: string;
  /** Has bees, and what the contract asks of every hive: its minimum, brood, laying queen, stores. */
  readonly accepted: boolean;
  readonly dead: boolean;
}

/** The opened hives of a lot and how many hives it has in all. */
export interface Lot {
  readonly hives: readonly OpenedHive[];
  readonly size: number;
}

/** What the opened hives come to under the contract; no word yet on how sure. */
export interface LotCount {
  readonly opened: number;
  readonly deadOuts: number;
  /** Hives that lack what is asked of every hive, dead-outs among them. */
  readonly under: number;
  /** Hives that the average is taken over. */
  readonly counted: number;
  /** Mean frames of the hives counted, each at most the cap; null where none is counted. */
  readonly average: number | null;
  readonly averageMet: boolean;
  /** Whether the hives under the minimum are within what is forgiven, or do not reject the load. */
  readonly underMet: boolean;
  readonly met: boolean;
  /** Hives by grade, best grade first, then those without, then dead-outs. */
  readonly grades: ReadonlyMap<string, number>;
}

/**
 * The opened hives of a lot, each hive once by its latest look.
 *
 * @param looks - in the order of the sheet
 * @param inLot - hives in the lot, opened or not; null where every hive was opened
 * @throws Refusal for an empty sample, a lot smaller than it, and a hive seen twice without days
 */
export function lotOf(contract: Contract, looks: Iterable<Look>, inLot: number | null): Lot {
  const latest = latestLooks(Array.from(looks, (look) => judged(contract, look)));
  if (latest.length === 0) throw new Refusal("no hive is opened: give the yard sheet's rows");
  const size = inLot ?? latest.length;
  if (!Number.isInteger(size)) throw new Refusal(`a lot of ${size} hives: give a whole number`);
  if (size < latest.length) {
    throw new Refusal(`a lot of ${plural(size, "hive")} cannot have ${latest.length} opened`);
  }
  return { hives: accountedFor(latest), size };
}

/** The hives as counted; refused with every hive of which it cannot be said how it counts. */
function accountedFor(latest: readonly JudgedLook[]): OpenedHive[] {
  const refused = latest.flatMap(({ opened }) => (opened instanceof Refusal ? [opened] : []));
  if (refused.length > 1) {
    const isUnknown = refused.every(({ kind }) => kind === "unknown");
    const sentences = firstOf(refused.map(({ message }) => message));
    throw new Refusal(sentences, isUnknown ? "unknown" : "wrong");
  }
  return latest.map(({ opened }) => {
    if (opened instanceof Refusal) throw opened;
    return opened;
  });
}

/** A look as the contract counts it, or why it cannot, which is told only where the look counts. */
interface JudgedLook extends Pick<Look, "id" | "day"> {
  readonly opened: OpenedHive | Refusal;
}

/** Judged as soon as it is read, so that of a large lot no figures need be kept. */
function judged(contract: Contract, look: Look): JudgedLook {
  const { id, day } = look;
  try {
    return { id, day, opened: openedHive(contract, look) };
  } catch (error) {
    if (error instanceof Refusal) return { id, day, opened: error };
    throw error;
  }
}

/** How a look stands among those into its hive: it counts, a later one does, or no day says which. */
export type Turn = "counts" | "earlier" | "unclear";

interface Told extends Pick<Look, "id" | "day"> {
  /** Where looks of several lots are held together: the same number in another is another hive. */
  readonly lot?: string;
}

/** The looks into one hive: how many, the latest day, and how many there are of it. */
interface Looks {
  all: number;
  undated: number;
  latest: number;
  ofLatest: number;
}

/** The turn of each look, in their order. */
export function turnsOf(looks: readonly Told[]): Turn[] {
  const byHive = new Map<string, Looks>();
  for (const look of looks) {
    const { day } = look;
    const hive = hiveOf(look);
    const known = byHive.get(hive) ?? { all: 0, undated: 0, latest: -Infinity, ofLatest: 0 };
    known.all++;
    if (day === null) known.undated++;
    else if (day > known.latest) [known.latest, known.ofLatest] = [day, 1];
    else if (day === known.latest) known.ofLatest++;
    byHive.set(hive, known);
  }
  return looks.map((look) => {
    const { all, undated, latest, ofLatest } = byHive.get(hiveOf(look))!;
    if (all === 1) return "counts";
    if (undated > 0) return "unclear";
    if (look.day! < latest) return "earlier";
    return ofLatest === 1 ? "counts" : "unclear";
  });
}

/** A hive as messages name it, which tells it from every other. */
function hiveOf({ id, lot }: Told): string {
  return lot ? `${id} of lot ${quote(lot)}` : id;
}

/**
 * Each hive once, by its latest look.
 *
 * @throws Refusal for hives that stand twice without days that differ
 */
export function latestLooks<T extends Told>(looks: readonly T[]): T[] {
  const turns = turnsOf(looks);
  const unclear = new Set(
    looks.flatMap((look, i) => (turns[i] === "unclear" ? [hiveOf(look)] : [])),
  );
  if (unclear.size > 0) {
    const [hive, ...others] = unclear;
    const more = others.length > 0 ? ` (and so do ${firstOf(others)})` : "";
    throw new Refusal(
      `hive ${hive} stands twice${more}: give each of its looks its own date, so that the later one counts`,
    );
  }
  const byHive = new Map(looks.map((look) => [hiveOf(look), look]));
  looks.forEach((look, i) => turns[i] === "counts" && byHive.set(hiveOf(look), look));
  return [...byHive.values()];
}

function openedHive(contract: Contract, { id, pallet, hive }: Look): OpenedHive {
  const frames = hive.frames.middle;
  const cap = contract.mostFrames || Infinity;
  const asked = requirementsOf(contract, hive);
  const unjudged = asked.find((r) => r.verdict === "not judged" && !hive.frames.dead);
  if (unjudged !== undefined && asked.every((r) => r.verdict !== "not met")) {
    throw new Refusal(`hive ${id}: ${unjudged.name} is asked for and is not judged`, "unknown");
  }
  return {
    id,
    pallet,
    frames,
    counted: Math.min(frames, cap),
    grade: gradeOf(contract, hive).name,
    accepted: frames > 0 && asked.every((r) => r.verdict !== "not met"),
    dead: hive.frames.dead,
  };
}

/** Whether a hive enters the lot's average, by what the contract does with hives under the minimum. */
export function isCounted({ underMinimum }: Contract, hive: OpenedHive): boolean {
  return hive.accepted || underMinimum !== "left out";
}

/** As it is said: `3 of 20 hives under the minimum`. */
export function underOf({ under, opened }: LotCount): string {
  return `${under} of ${plural(opened, "hive")} under the minimum`;
}

/**
 * What the opened hives come to: their average in the contract's way, hives under the minimum, and
 * whether the sample meets the contract. Contracts settle on the sample.
 *
 * @example
 * // 10, 8 and 4 frames, average 8, minimum 6, those under it left out: the average is 9
 */
export function countLot(contract: Contract, { hives, size }: Lot): LotCount {
  const counted = hives.filter((hive) => isCounted(contract, hive));
  const under = hives.filter((hive) => !hive.accepted).length;
  const total = counted.reduce((sum, hive) => sum + hive.counted, 0);
  const average = counted.length === 0 ? null : total / counted.length;
  const averageMet = atLeast(average ?? 0, contract.averageFrames);
  const underMet =
    contract.underMinimum !== "rejects the load" || atMost(under, forgiven(contract, hives, size));
  return {
    opened: hives.length,
    deadOuts: hives.filter((hive) => hive.dead).length,
    under,
    counted: counted.length,
    average,
    averageMet,
    underMet,
    met: averageMet && underMet,
    grades: byGrade(contract, hives),
  };
}

/** Hives under the minimum that the contract forgives among those opened. */
function forgiven(contract: Contract, hives: readonly OpenedHive[], size: number): number {
  const share = contract.forgivenShare / 100;
  if (contract.forgivenAgainst === "hives opened") return share * hives.length;
  if (contract.forgivenAgainst === "hives in the lot") return share * size;
  const above = hives.filter((hive) => !atMost(hive.frames, contract.minimumFrames)).length;
  return Math.min(share * hives.length, above);
}

function byGrade(contract: Contract, hives: readonly OpenedHive[]): Map<string, number> {
  const names = [...gradesOf(contract).map((grade) => grade.name), NO_GRADE, DEAD_OUT];
  return new Map(names.map((name) => [name, hives.filter((hive) => hive.grade === name).length]));
}
