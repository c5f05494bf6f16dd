import type { Contract } from "../core/contract.js";
import { gradesOf } from "../core/grade.js";
import { isCounted, type Lot, type OpenedHive } from "../core/lot.js";
import { ticketOf } from "../core/pick.js";
import { CellError } from "./cells.js";
import { toBlock } from "./declare.js";
import type { Words } from "./statement.js";
import type { Section, StatementChart } from "./statement-model.js";
import { frames, row, section } from "./statement-rows.js";
import { YARD_COLUMNS } from "./yard.js";

/** Digits of a ticket that are shown, as PICK_HIVES shows them. */
const DIGITS = 8;
/** Lines that a chart in black and white keeps apart. */
const MOST_LINES = 4;

/** The hives opened, one a row as the contract counts them. */
export function hivesSection(
  contract: Contract,
  lot: Lot,
  shown: readonly (readonly [brood: number | null, note: string])[],
  words: Words | null,
): Section {
  const brood = contract.broodMeasure === "combs" ? "combs" : "full frames";
  return section(
    "Hives opened",
    row(
      "headings",
      [0, 1, "Hive"],
      [1, 1, "Pallet"],
      [2, 1, "Frames of bees", "right"],
      [3, 1, `Brood, ${brood}`, "right"],
      [4, 1, "Grade"],
      [5, 1, "In the average", "right"],
      [6, 1, words ? "Ticket" : "Note"],
      [7, 1, words ? "Note" : ""],
    ),
    ...lot.hives.map((hive, i) => {
      const [brood, note] = shown[i]!;
      return row(
        "plain",
        [0, 1, hive.id],
        [1, 1, hive.pallet ?? ""],
        [2, 1, frames(contract, hive.frames)],
        [3, 1, brood === null ? "" : { kind: "frames", value: brood }],
        [4, 1, hive.grade],
        [5, 1, isCounted(contract, hive) ? frames(contract, hive.counted) : "left out", "right"],
        [6, 1, words ? ticket(contract, words, hive) : ""],
        [words ? 7 : 6, words ? 1 : 2, note],
      );
    }),
  );
}

/** What the computed columns of the yard sheet say of rows of it, counted from 1 under the headings. */
export function computedOf(
  yard: unknown[][],
  terms: unknown[][] | null,
  contract: Contract,
  rows: readonly number[],
): (readonly [brood: number | null, note: string])[] {
  const brood = contract.broodMeasure === "combs" ? "brood combs" : "brood full";
  const columns = YARD_COLUMNS(yard, terms ?? undefined, [[contract.name]], [[`${brood}, note`]]);
  return rows.map((at) => {
    const [figure, note] = columns[at] ?? toBlock(columns)[0]!;
    if (figure instanceof CellError) throw figure;
    return [typeof figure === "number" ? figure : null, String(note)];
  });
}

/** Strongest first, so that it is seen at a glance how many reach a line. */
export function chartOf(contract: Contract, lot: Lot): StatementChart {
  const hives = [...lot.hives].sort((a, b) => b.frames - a.frames);
  const levels = [...thresholds(contract)];
  return {
    title: "Frames of bees of the hives opened, strongest first",
    headings: ["Hive", "Frames of bees", ...levels.map(([at, names]) => `${at}: ${names}`)],
    rows: hives.map(({ id, frames }) => [id, frames, ...levels.map(([at]) => at)]),
  };
}

/** What is asked of the lot, then of a hive; then the grades where few enough lines come of it. */
function thresholds({ averageFrames, minimumFrames, ...rest }: Contract): Map<number, string> {
  const asked: [number, string][] = [
    [averageFrames, "average asked"],
    [minimumFrames, "least a hive"],
  ];
  const contract = { averageFrames, minimumFrames, ...rest };
  const grades = gradesOf(contract).map(({ frames, name }): [number, string] => [frames, name]);
  const all = byLevel([...asked, ...(contract.grades.length > 0 ? grades : [])]);
  return all.size <= MOST_LINES ? all : byLevel(asked);
}

function byLevel(named: readonly [number, string][]): Map<number, string> {
  const levels = new Map<number, string>();
  for (const [at, name] of named) {
    if (at <= 0) continue;
    const before = levels.get(at);
    levels.set(at, before === undefined ? name : `${before}, ${name}`);
  }
  return levels;
}

/** Of the hive, or of its pallet where whole pallets are drawn. */
function ticket({ openedBy }: Contract, words: Words, { id, pallet }: OpenedHive): string {
  const name = openedBy === "pallets" ? pallet : id;
  return name === null ? "" : ticketOf(words, name).slice(0, DIGITS);
}
