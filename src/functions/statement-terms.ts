import type { Contract } from "../core/contract.js";
import { gradesOf } from "../core/grade.js";
import { TERMS, type Term } from "../core/terms.js";
import type { Section, StatementCell, StatementRow } from "./statement-model.js";
import { row, section } from "./statement-rows.js";

/** Terms on how cells are written, and units that stand beside the figures they belong to. */
const NOT_SHOWN: ReadonlySet<keyof Contract> = new Set<keyof Contract>([
  "boxFrame",
  "storesUnit",
  "temperatureUnit",
  "currency",
  "wholeFrames",
  "decimal",
  "percentsAs",
  "dateSystem",
  "dates",
]);

/** Terms by which every hive is counted, shown even where the contract leaves them out. */
const ALWAYS: ReadonlySet<keyof Contract> = new Set<keyof Contract>([
  "underMinimum",
  "combRule",
  "frame",
  "partFrame",
]);

/** What a choice of a contract means, in short, by the term's label. */
export const CHOICES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "under minimum": {
    "left out": "A hive under the minimum is left out of the average and is not paid.",
    counted: "A hive under the minimum counts in the average and is not paid.",
    "rejects the load": "Too many hives under the minimum reject the whole load.",
  },
  "forgiven against": {
    "hives opened": "That percent is taken of the hives opened.",
    "hives in the lot": "That percent is taken of the hives in the lot.",
    "hives above the minimum":
      "That percent is taken of the hives opened, and as many must be over the minimum as are under it.",
  },
  "comb rule": {
    "two-thirds": "A comb counts once two-thirds of it are covered with bees.",
    "three-quarters":
      "A comb counts once both sides are three-quarters covered; lesser combs are pooled.",
    "sum of parts": "The covered parts of all combs are added up.",
    "cluster count": "Seams with bees are counted from above and from below.",
  },
  "part frame": {
    down: "7.5 frames are read as 7 against grades and the minimum.",
    nearest: "7.5 frames are read as 8 against grades and the minimum.",
    "as it is": "7.5 frames are read as they are, and paid by the grade they reach.",
    between: "7.5 frames are read as they are, and paid between the fees of 7 and 8.",
  },
  "brood counted as": {
    "full frames": "Combs with brood are added up to full frames of it.",
    combs: "Combs that hold brood are counted.",
  },
  "bonus by": {
    lot: "The bonus is worked out on the lot's average.",
    hive: "The bonus is worked out hive by hive.",
  },
  "round hives": {
    exact: "A grade's share of the lot is paid exactly, in parts of a hive.",
    whole: "A grade's share of the lot is paid in whole hives.",
  },
  "opened by": {
    hives: "Single hives are drawn.",
    pallets: "Whole pallets are drawn.",
  },
  "short delivery": {
    "paid as delivered": "Where fewer hives come than were agreed, those that came are paid.",
    "pro rata": "Where fewer hives come, the share that did not come is taken off.",
    refused: "Where fewer hives come than were agreed, the lot is refused.",
  },
};

/** What the contract says, as far as it bears on the settlement: label, value, meaning; the grades. */
export function termsSection(contract: Contract): Section {
  const rows = TERMS.filter((term) => matters(contract, term)).map((term) =>
    row(
      "plain",
      [0, 3, term.label],
      [3, 2, valueOf(contract, term)],
      [5, 3, meaningOf(contract, term)],
    ),
  );
  return section(
    `Terms of contract ${contract.name}`,
    row("headings", [0, 3, "Term"], [3, 2, "Value"], [5, 3, "What it means"]),
    ...rows,
    ...gradeRows(contract),
  );
}

function matters(contract: Contract, { field, missing }: Term): boolean {
  if (NOT_SHOWN.has(field)) return false;
  if (field === "broodMeasure")
    return contract.brood > 0 || contract.grades.some((g) => g.brood > 0);
  if (field === "forgivenAgainst") return contract.forgivenShare > 0;
  if (field === "bonusBy") return contract.bonus > 0;
  if (field === "openedBy") return contract.openedShare > 0 || contract.openedBy === "pallets";
  return ALWAYS.has(field) || contract[field] !== missing;
}

function valueOf(contract: Contract, { field, value: kind }: Term): string {
  const value = contract[field];
  if (kind.kind === "frame") return contract.frame.name;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (kind.kind !== "number") return String(value);
  return `${value} ${unitOf(contract, field, kind.unit)}`.trim();
}

function unitOf(contract: Contract, field: keyof Contract, unit: string): string {
  if (unit === "money") return contract.currency;
  if (field === "stores") return contract.storesUnit;
  if (field === "brood") return contract.broodMeasure;
  if (field === "inspectAbove") return contract.temperatureUnit;
  return unit === "hour of the day" ? "o'clock" : unit;
}

/** The sentence on the value chosen, or what the term means without what holds for others. */
function meaningOf(contract: Contract, { label, field, meaning }: Term): string {
  const chosen = CHOICES[label]?.[String(contract[field])];
  return (
    chosen ??
    meaning
      .replace(/ Left out: .*$/, "")
      .replace(/[;:,] .*$/, ".")
      .replace(/\.*$/, ".")
  );
}

function gradeRows(contract: Contract): StatementRow[] {
  const hasFees = gradesOf(contract).some((grade) => grade.fee > 0);
  const fee = contract.currency === "" ? "Fee a hive" : `Fee, ${contract.currency}`;
  const amount = (kind: "frames" | "money", value: number): StatementCell | string =>
    value > 0 ? { kind, value } : "";
  return [
    row(
      "headings",
      [0, 3, "Grade"],
      [3, 2, "Frames from", "right"],
      [5, 1, "Brood from", "right"],
      [6, 1, hasFees ? fee : "", "right"],
    ),
    ...gradesOf(contract).map((grade) =>
      row(
        "plain",
        [0, 3, grade.name],
        [3, 2, amount("frames", grade.frames)],
        [5, 1, amount("frames", grade.brood)],
        [6, 1, amount("money", grade.fee)],
      ),
    ),
  ];
}
