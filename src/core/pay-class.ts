import type { Contract } from "./contract.js";
import { DEAD_OUT, NO_GRADE } from "./contract-check.js";
import { exact, minus, type Exact } from "./exact.js";
import { feeOf, isByGrade, withoutNoise } from "./fees.js";
import type { OpenedHive } from "./lot.js";
import { plural } from "./plural.js";

/** Opened hives that are paid alike. */
export interface PayClass {
  readonly label: string;
  readonly fee: Exact;
  readonly hives: number;
  /** Best paid class first. */
  readonly rank: number;
  /** Frames that are paid between two classes; 0 where the class is paid as a whole. */
  readonly frames: number;
}

/** Hives of which nothing that matters to pay differs, counted: thousands are of a few kinds. */
export interface Alike {
  readonly hive: OpenedHive;
  readonly hives: number;
}

/** The opened hives, each kind once. */
export function alike(hives: readonly OpenedHive[]): Alike[] {
  const kinds = new Map<number, { readonly hive: OpenedHive; hives: number }[]>();
  for (const hive of hives) {
    const near = kinds.get(hive.frames) ?? [];
    const known = near.find(
      (kind) => kind.hive.grade === hive.grade && kind.hive.accepted === hive.accepted,
    );
    if (known === undefined) kinds.set(hive.frames, [...near, { hive, hives: 1 }]);
    else known.hives++;
  }
  return [...kinds.values()].flat();
}

/** The opened hives by what they are paid: the contract's grades, best first, then the unpaid. */
export function payClasses(contract: Contract, kinds: readonly Alike[]): PayClass[] {
  const classes = new Map<string, PayClass>();
  for (const { hive, hives } of kinds) {
    const own = classOf(contract, hive);
    const key = `${own.rank} ${own.frames}`;
    classes.set(key, { ...own, hives: hives + (classes.get(key)?.hives ?? 0) });
  }
  return [...classes.values()].sort((a, b) => a.rank - b.rank || b.frames - a.frames);
}

function classOf(contract: Contract, hive: OpenedHive): Omit<PayClass, "hives"> {
  const { grades } = contract;
  const fee = feeOf(contract, hive);
  if (hive.dead) return { label: DEAD_OUT, fee, rank: grades.length + 2, frames: 0 };
  if (!hive.accepted)
    return { label: "hives not accepted", fee, rank: grades.length + 1, frames: 0 };
  if (!isByGrade(contract)) return { label: "hives accepted", fee, rank: 0, frames: 0 };
  const rank = grades.findIndex((grade) => grade.name === hive.grade);
  if (rank < 0) return { label: NO_GRADE, fee, rank: grades.length, frames: 0 };
  if (minus(fee, exact(grades[rank]!.fee)).top === 0n) {
    return { label: hive.grade, fee, rank, frames: 0 };
  }
  const frames = withoutNoise(hive.frames);
  return { label: `${hive.grade} (${plural(shortly(frames), "frame")})`, fee, rank, frames };
}

/** A figure as a label shows it. */
function shortly(figure: number): string {
  return String(+figure.toFixed(2));
}
