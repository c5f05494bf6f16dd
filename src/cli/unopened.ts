import { ABSENCE_NOTES } from "../functions/yard.js";
import type { Line } from "./hives.js";

export function isUnopened({ note }: Line): boolean {
  return note === ABSENCE_NOTES["not opened"];
}

/** A sentence a lot on its hives that were not opened, numbers that follow each other as a range. */
export function unopenedIn(lines: readonly Line[]): string[] {
  const byLot = new Map<string, string[]>();
  for (const { hive, lot } of lines.filter(isUnopened)) {
    byLot.set(lot, [...(byLot.get(lot) ?? []), hive]);
  }
  return [...byLot].map(
    ([lot, hives]) => `Not opened${lot === "" ? "" : ` in ${lot}`}: ${ranges(hives).join(", ")}`,
  );
}

/** `S01-S03, S07`: of three and more that follow each other the first and the last. */
function ranges(hives: readonly string[]): string[] {
  const runs: string[][] = [];
  for (const hive of hives) {
    const run = runs.at(-1);
    if (run && after(run.at(-1)!) === hive) run.push(hive);
    else runs.push([hive]);
  }
  return runs.flatMap((run) => (run.length > 2 ? `${run[0]}-${run.at(-1)!}` : run));
}

/** The name that follows one which ends in a number; null for any other. */
function after(hive: string): string | null {
  const [, before, number] = /^(.*?)(\d{1,9})$/.exec(hive) ?? [];
  if (number === undefined) return null;
  return before! + String(Number(number) + 1).padStart(number.length, "0");
}
