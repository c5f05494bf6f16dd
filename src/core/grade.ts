import { shownApart } from "./apart.js";
import type { Brood } from "./brood.js";
import { DEAD_OUT, NO_GRADE } from "./contract-check.js";
import type { Contract, Grade } from "./contract.js";
import { exactly, print, type Estimate } from "./estimate.js";
import { Refusal } from "./refusal.js";
import { atLeast } from "./tolerance.js";

/** A hive as it was looked at; null for what nobody judged. */
export interface Hive {
  /** Frames of bees, in the contract's frame. */
  readonly frames: Estimate;
  readonly brood: Brood | null;
  readonly queen: boolean | null;
  /** Stores in the contract's unit. */
  readonly stores: Estimate | null;
}

export type Verdict = "met" | "not met" | "not judged" | "not asked";

/** One thing that the contract asks of a hive. */
export interface Requirement {
  readonly name: "frames" | "brood" | "queen" | "stores";
  /** What is asked, in the contract's measure; 1 for a laying queen. */
  readonly asked: number;
  /** What meets it: for frames, by the way in which the contract reads a part frame. */
  readonly least: number;
  readonly has: Estimate | null;
  readonly verdict: Verdict;
}

/** A hive's grade, and the grades between which its figures leave it. */
export interface GradeOfHive {
  readonly name: string;
  /** By the low and by the high end of every figure; the same as `name` where there is no doubt. */
  readonly worst: string;
  readonly best: string;
}

/**
 * What a hive is short of the next better grade; 0 where it is the other that is short, and null for
 * brood that is asked for and was not judged.
 */
export interface Shortfall {
  readonly grade: string;
  readonly frames: number;
  readonly brood: number | null;
}

/**
 * The grades that the contract tells hives apart by. A contract without grades of its own still
 * tells a hive at the average from one at the minimum.
 */
export function gradesOf(contract: Contract): readonly Grade[] {
  if (contract.grades.length > 0) return contract.grades;
  const { averageFrames: average, minimumFrames: minimum, baseFee: fee } = contract;
  const grades: Grade[] = [];
  if (average > 0) grades.push({ name: "at average", frames: average, brood: 0, fee });
  if (minimum > 0 && minimum !== average) {
    grades.push({ name: "at minimum", frames: minimum, brood: 0, fee });
  }
  const asksElse = contract.brood > 0 || contract.layingQueen || contract.stores > 0;
  if (grades.length === 0 && asksElse) grades.push({ name: "met", frames: 0, brood: 0, fee });
  if (grades.length > 0) return grades;
  throw new Refusal(
    `contract "${contract.name}" asks nothing of a hive: give it average frames, minimum frames or grades`,
  );
}

/**
 * Each thing that the contract asks of a hive, met or not.
 *
 * The frames asked are the minimum of a hive, or else those of the contract's lowest grade: an
 * average is asked of the lot and not of each hive. Judged by the
 * middle of each figure.
 */
export function requirementsOf(contract: Contract, hive: Hive): Requirement[] {
  const { minimumFrames, grades } = contract;
  const lowest = minimumFrames || (grades[grades.length - 1]?.frames ?? 0);
  return [
    requirement("frames", lowest, hive.frames, leastFrames(contract, lowest)),
    requirement("brood", contract.brood, broodAsCounted(contract, hive.brood)),
    requirement("queen", contract.layingQueen ? 1 : 0, yesAsOne(hive.queen)),
    requirement("stores", contract.stores, hive.stores),
  ];
}

/**
 * The grade of a hive under its contract: the best whose frames and brood it has, by the middle of
 * each figure. A hive that lacks what the contract asks of every hive beside frames (brood, laying
 * queen, stores) has no grade; neither has one below all grades; a dead-out is named so.
 *
 * @throws Refusal of kind `unknown` where the grade hangs on something that nobody judged
 * @example
 * gradeOf(standardContract("Almond Board of California"), hive(7.5)).name // "at minimum"
 */
export function gradeOf(contract: Contract, hive: Hive): GradeOfHive {
  const name = gradeAt(contract, hive, "middle");
  if (isCertain(hive)) return { name, worst: name, best: name };
  const atEnd = (end: End): string => {
    try {
      return gradeAt(contract, hive, end);
    } catch (error) {
      if (error instanceof Refusal) return name;
      throw error;
    }
  };
  return { name, worst: atEnd("low"), best: atEnd("high") };
}

/**
 * What the hive is short of the grade above its own, by the middle of each figure; null for a hive
 * of the best grade.
 */
export function shortOf(contract: Contract, hive: Hive): Shortfall | null {
  const grades = gradesOf(contract);
  const name = gradeAt(contract, hive, "middle");
  const index = grades.findIndex((grade) => grade.name === name);
  const next = grades[index < 0 ? grades.length - 1 : index - 1];
  if (!next) return null;
  const brood = at(broodAsCounted(contract, hive.brood), "middle");
  const broodAsked = Math.max(next.brood, contract.brood);
  return {
    grade: next.name,
    frames: Math.max(0, leastFrames(contract, next.frames) - hive.frames.middle),
    brood: broodAsked > 0 && brood === null ? null : Math.max(0, broodAsked - (brood ?? 0)),
  };
}

/**
 * What the hive lacks and what its figures leave open, as a sentence; empty where there is nothing
 * to say.
 *
 * @param grade - the hive's grade, null where it is not known or not asked
 */
export function reasonOf(contract: Contract, hive: Hive, grade: GradeOfHive | null): string {
  if (hive.frames.dead) return "";
  const parts = requirementsOf(contract, hive).flatMap((r) => {
    if (r.verdict === "not met") {
      return r.name === "queen" ? "no laying queen" : lacking(r, contract);
    }
    const open = enough(at(r.has, "low"), r.least) === false;
    return open ? `${lacking(r, contract)}: not met at the low end` : [];
  });
  if (grade !== null && grade.worst !== grade.best) {
    parts.push(`${grade.worst} at the low end, ${grade.best} at the high end`);
  }
  return parts.join("; ");
}

/** A hive's brood in the measure that the contract counts; null where it was not judged so. */
export function broodAsCounted(contract: Contract, brood: Brood | null): Estimate | null {
  if (brood === null) return null;
  if (contract.broodMeasure === "full frames") return brood.fullFrames;
  const { combs, cover } = brood;
  const least = contract.broodCombCover;
  if (least === 0 || combs === null) return combs;
  if (cover === null) return null;
  const where = <Count>(percent: number, count: Count): Count | 0 =>
    atLeast(percent, least) ? count : 0;
  return {
    ...combs,
    low: where(cover.low, combs.low),
    middle: where(cover.middle, combs.middle),
    high: where(cover.high ?? 100, combs.high),
  };
}

type End = "low" | "middle" | "high";

function gradeAt(contract: Contract, hive: Hive, end: End): string {
  if (hive.frames.dead) return DEAD_OUT;
  const frames = at(hive.frames, end) ?? 0;
  const brood = at(broodAsCounted(contract, hive.brood), end);
  // Judged once a grade's frames are there, since most of the cost of a hive is here.
  let asked: readonly Need[] | null = null;
  for (const grade of gradesOf(contract)) {
    if (!atLeast(frames, leastFrames(contract, grade.frames))) continue;
    asked ??= [
      ["brood", enough(brood, contract.brood)],
      ["a laying queen", contract.layingQueen ? hive.queen : true],
      ["stores", enough(at(hive.stores, end), contract.stores)],
    ];
    const ofGrade = enough(brood, grade.brood);
    if (ofGrade === false || asked.some(isMissing)) continue;
    const unknown = [...asked, ["brood", ofGrade] as Need].find(([, met]) => met === null)?.[0];
    if (unknown === undefined) return grade.name;
    throw new Refusal(
      `contract "${contract.name}" asks for ${unknown}, and that is not judged for this hive`,
      "unknown",
    );
  }
  return NO_GRADE;
}

/** What is asked of every hive beside frames, and whether it is met; null where nobody judged it. */
type Need = readonly [name: string, met: boolean | null];

function isMissing([, met]: Need): boolean {
  return met === false;
}

function enough(has: number | null, asked: number): boolean | null {
  if (asked <= 0) return true;
  return has === null ? null : atLeast(has, asked);
}

/** The least frames that reach a grade, by the way in which the contract reads a part frame. */
function leastFrames({ partFrame }: Contract, frames: number): number {
  if (partFrame === "down") return Math.ceil(frames);
  return partFrame === "nearest" ? Math.ceil(frames) - 1 / 2 : frames;
}

function requirement(
  name: Requirement["name"],
  asked: number,
  has: Estimate | null,
  least = asked,
): Requirement {
  const met = enough(at(has, "middle"), least);
  const verdict = asked <= 0 ? "not asked" : met === null ? "not judged" : met ? "met" : "not met";
  return { name, asked, least, has, verdict };
}

function at(estimate: Estimate | null, end: End): number | null {
  if (estimate === null) return null;
  return end === "high" ? (estimate.high ?? Infinity) : estimate[end];
}

function yesAsOne(queen: boolean | null): Estimate | null {
  return queen === null ? null : exactly(queen ? 1 : 0);
}

function isCertain({ frames, brood, stores }: Hive): boolean {
  if (!isExact(frames) || !isExact(stores)) return false;
  return (
    brood === null || (isExact(brood.fullFrames) && isExact(brood.combs) && isExact(brood.cover))
  );
}

function isExact(figure: Estimate | null): boolean {
  return figure === null || figure.low === figure.high;
}

/** `stores 9.25 of 9.5`, in the decimal sign of the sheet and rounded to no other side of what is asked. */
function lacking({ name, has, asked }: Requirement, { decimal }: Contract): string {
  if (has === null) return name;
  const round = (value: number): number => Number(shownApart(value, asked));
  const { low, middle, high } = has;
  const shown = print(
    {
      ...has,
      low: round(low),
      middle: round(middle),
      high: high === null ? null : round(high),
    },
    decimal,
  );
  return `${name} ${shown} of ${print(exactly(asked), decimal)}`;
}
