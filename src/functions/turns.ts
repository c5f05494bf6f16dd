import type { Contract } from "../core/contract.js";
import { turnsOf, type Turn } from "../core/lot.js";
import { Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import { CellError } from "./cells.js";
import { dayAt } from "./dates.js";
import { standingAt } from "./look.js";
import type { YardSheet } from "./yard-sheet.js";

/** What is noted of a row whose hive stands in the sheet more than once. */
export const TURN_NOTES: Readonly<Record<Turn, string>> = {
  counts: "",
  earlier: "an earlier look: the later one counts",
  unclear: "stands twice: give each of its looks its own date, so that the later one counts",
};

/**
 * The turn of each row, by the rule by which a lot takes each hive once. The same number in another
 * lot is another hive.
 */
export function turnsIn(
  sheet: YardSheet,
  contractOf: (i: number) => Contract,
): (i: number) => Turn {
  const firstRow = new Map<string, number>();
  const again = new Map<string, number[]>();
  for (let i = 0; i < sheet.rows; i++) {
    if (!sheet.isHive(i)) continue;
    const hive = hiveOf(sheet, i);
    const first = firstRow.get(hive);
    if (first === undefined) firstRow.set(hive, i);
    else if (again.has(hive)) again.get(hive)!.push(i);
    else again.set(hive, [first, i]);
  }
  const turns = new Map<number, Turn>();
  for (const [id, rows] of again) {
    const looks = rows.flatMap((i) => lookAt(sheet, i, contractOf, id));
    turnsOf(looks).forEach((turn, k) => turns.set(looks[k]!.row, turn));
  }
  return (i) => turns.get(i) ?? "counts";
}

function hiveOf(sheet: YardSheet, i: number): string {
  const lot = sheet.column("lot")?.raw(i) ?? "";
  return `${String(sheet.column("hive")!.raw(i)).trim()}\n${normalise(String(lot))}`;
}

/** A row that cannot be read says so in its own note, and is no look. */
function lookAt(
  sheet: YardSheet,
  row: number,
  contractOf: (i: number) => Contract,
  id: string,
): { id: string; day: number | null; row: number }[] {
  try {
    const contract = contractOf(row);
    if (standingAt(sheet.looks(contract), row) !== "opened") return [];
    return [{ id, day: dayAt(sheet.column("date"), row, contract), row }];
  } catch (error) {
    if (error instanceof Refusal || error instanceof CellError) return [];
    throw error;
  }
}
