import type { Contract } from "../core/contract.js";
import { countLot, latestLooks, lotOf, type Look, type Lot } from "../core/lot.js";
import { lotPay } from "../core/pay.js";
import { Refusal } from "../core/refusal.js";
import { lotChance } from "../core/sampling.js";
import { dayOfSerial, serialOfDay } from "../core/serial.js";
import { normalise } from "../core/text.js";
import { atLeast } from "../core/tolerance.js";
import { CellError } from "./cells.js";
import { contractOfLot } from "./lot-contract.js";
import { countLines, saysFees, sureLines, type LotLine } from "./lot-lines.js";
import { lotInSheet } from "./lot-sheet.js";
import { settlement } from "./pay.js";
import { chanceNote } from "./sampling.js";
import { chartOf, computedOf, hivesSection } from "./statement-hives.js";
import type { Paper, Section, Statement, StatementCell, StatementRow } from "./statement-model.js";
import {
  count,
  fact,
  frames,
  inShort,
  labelled,
  LINE,
  row,
  section,
  sentence,
  WIDTHS,
  type Piece,
} from "./statement-rows.js";
import { termsSection } from "./statement-terms.js";

/** The word of each party by which the hives were drawn. */
export type Words = readonly [one: string, other: string];

export interface StatementAsk {
  /** The yard sheet with its heading row. */
  readonly yard: unknown[][];
  /** The Terms table; null where the contract is a published standard. */
  readonly terms: unknown[][] | null;
  readonly contract: string | null;
  readonly lot: string | null;
  /** Hives in the lot, or agreed; null where all of them stand in the sheet. */
  readonly size: number | null;
  /** Hives that came, where fewer than agreed. */
  readonly delivered: number | null;
  /** Names of both parties, null for a line to write on. */
  readonly grower: string | null;
  readonly beekeeper: string | null;
  readonly words: Words | null;
  /** How the hives were picked, in the user's own words. */
  readonly picked: string | null;
  readonly paper: Paper;
}

const CONFIDENCE = 95;

/**
 * The statement on a lot for a grower: what LOT, LOT_PAY, LOT_CHANCE and YARD_COLUMNS say of it, put
 * into sections to be printed and signed.
 *
 * @throws Refusal or CellError that names the row or the term, as those functions do
 */
export function lotStatement(ask: StatementAsk): Statement {
  const { yard, terms, size, delivered, words } = ask;
  if (words?.some((word) => normalise(word) === "")) {
    throw new Refusal("a seed is blank: each party gives a word");
  }
  if (size === null && delivered !== null) {
    throw new Refusal("delivered: give the size of the lot too, the hives that were agreed");
  }
  const contract = contractOfLot(terms, ask.contract, yard, ask.lot);
  const { looks, size: sizeOf, remark } = lotInSheet(yard, contract, ask.lot);
  const lot = lotOf(contract, looks, sizeOf(size));
  const latest = latestLooks(looks);
  const days = daysOf(contract, latest);
  const rows = latest.map((look) => look.row);
  return {
    title: ask.lot === null ? "Statement" : `Statement for lot ${ask.lot}`,
    settlement: [
      factsSection(ask, contract, days),
      pickedSection(ask, contract),
      contractSection(contract, lot, remark),
      sureSection(contract, lot),
      paySection(contract, lot, delivered, days),
      cautions,
      signatures(ask),
    ],
    terms: termsSection(contract),
    chart: chartOf(contract, lot),
    hives: hivesSection(contract, lot, computedOf(yard, terms, contract, rows), words),
    widths: WIDTHS,
    moneyDecimals: decimalsOf(contract.moneyRounding),
    paper: ask.paper,
  };
}

/** First and last day on which hives were opened, in the 1900 system; null where a row has none. */
type Days = readonly [first: number, last: number] | null;

function daysOf({ dateSystem }: Contract, looks: readonly Look[]): Days {
  const days: number[] = [];
  for (const { day } of looks) {
    if (day === null) return null;
    days.push(serialOfDay(dayOfSerial(day, dateSystem)));
  }
  return [Math.min(...days), Math.max(...days)];
}

function factsSection({ lot, grower, beekeeper }: StatementAsk, contract: Contract, days: Days) {
  const opened =
    days === null
      ? [fact("Hives opened on", LINE)]
      : days[0] === days[1]
        ? [fact("Hives opened on", date(days[0]))]
        : [fact("Hives opened from", date(days[0])), fact("to", date(days[1]))];
  return section(
    "",
    fact("Lot", lot ?? "all hives of the yard sheet"),
    fact("Contract", contract.name),
    ...opened,
    fact("Grower", grower ?? LINE),
    fact("Beekeeper", beekeeper ?? LINE),
  );
}

function pickedSection({ words, picked }: StatementAsk, { openedBy }: Contract): Section {
  const unit = openedBy === "pallets" ? "pallet" : "hive";
  const drawn = words
    ? [
        fact("Words of the two parties", `"${words[0].trim()}" and "${words[1].trim()}"`),
        sentence(
          `By these words each ${unit} of the lot has a ticket: SHA-256 of both words and its name, ` +
            `of which the first 8 digits stand beside each hive opened. The ${unit}s with the least ` +
            `tickets are the ones to open; to check that, draw again from the list of the whole lot.`,
        ),
      ]
    : [];
  const said =
    picked !== null || words === null ? [fact("Picked, and by whom", picked ?? LINE)] : [];
  return section("How the hives were picked", ...said, ...drawn);
}

function contractSection(contract: Contract, lot: Lot, remark: string): Section {
  const { grades, opened } = countLot(contract, lot);
  const share = opened / lot.size;
  const asked = contract.openedShare;
  const fewer = !atLeast(share, asked / 100) ? ": fewer were opened" : "";
  const seen = [...grades].filter(([, hives]) => hives > 0);
  const lines = countLines(contract, lot, remark);
  return section(
    "By the contract",
    ...lines.slice(0, -1).flatMap((line) => ofLine(contract, line)),
    ...(asked > 0
      ? labelled("Share opened", { kind: "percent", value: share }, `${asked} % asked${fewer}`)
      : []),
    row(
      "plain",
      [0, 4, "Grades of the hives opened"],
      [4, 4, seen.map(([grade, hives]) => `${hives} ${grade}`).join(", ")],
    ),
    ...ofLine(contract, lines.at(-1)!, "strong"),
  );
}

function sureSection(contract: Contract, lot: Lot): Section {
  const left = lot.size - lot.hives.length;
  const none = left === 0 ? "none left: every hive of the lot was opened" : "";
  return section(
    "How sure",
    ...inShort(
      ...labelled("Hives not opened", count(left), none),
      ...sureLines(contract, lot, CONFIDENCE).flatMap((line) => ofLine(contract, line)),
      ...(left > 0 && contract.averageFrames > 0 ? chanceRows(contract, lot) : []),
    ),
  );
}

function chanceRows(contract: Contract, lot: Lot): StatementRow[] {
  const label = "Chance that the whole lot's average is met";
  try {
    return labelled(label, chanceCell(lotChance(contract, lot)), chanceNote(contract, lot));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return labelled(label, "not known", error.message);
  }
}

/** What is nearly sure is not to be read as certain. */
function chanceCell(chance: number): StatementCell | string {
  if (chance > 0 && chance < 0.001) return "under 0.1 %";
  if (chance < 1 && chance > 0.999) return "over 99.9 %";
  return { kind: "percent", value: chance };
}

function paySection(contract: Contract, lot: Lot, delivered: number | null, days: Days): Section {
  if (!saysFees(contract)) {
    if (delivered !== null) throw new Refusal("delivered: the contract gives no fee to settle");
    const none = sentence("The contract gives no fee: nothing is settled here.");
    return section("Pay", ...inShort(none));
  }
  const { headings, lines } = settlement(contract, lot, delivered);
  const paidBack = lotPay(contract, lot, delivered).balance < 0;
  const due = days !== null && contract.balanceDays > 0 && !paidBack;
  return section(
    "Pay",
    row(
      "headings",
      ...placed(headings.map(String)).map(([column, span, text]): Piece => [
        column,
        span,
        text,
        column === 0 ? "left" : "right",
      ]),
    ),
    ...lines.flatMap(({ cells: [label, quantity, rate, amount], isSum }) => {
      const line = row(
        isSum ? "strong" : "plain",
        ...placed([
          String(label),
          number(Number.isInteger(quantity) ? "count" : "quantity", quantity),
          number("rate", rate),
          number("money", amount),
        ]),
      );
      return isSum ? inShort(line) : [line];
    }),
    ...(due
      ? [row("plain", ...placed(["due on", "", "", date(days[1] + contract.balanceDays)]))]
      : []),
  );
}

function placed([label, quantity, rate, amount]: readonly (StatementCell | string)[]) {
  return [
    [0, 4, label!],
    [4, 1, quantity!],
    [5, 1, rate!],
    [6, 1, amount!],
  ] as const;
}

const cautions = section(
  "To be kept in mind",
  sentence(
    "Strength is judged by eye, and two people who open the same hive do not judge it alike. " +
      "What is under “By the contract” and “Pay” rests on the hives opened alone; “How sure” says " +
      "what that leaves open for the others.",
  ),
  sentence(
    "The signed contract and local law come before anything printed here. Both parties should check " +
      "the figures against the yard sheet before they sign or pay.",
  ),
);

function signatures({ grower, beekeeper }: StatementAsk): Section {
  const both = (label: string, one: StatementCell | string, other: StatementCell | string) =>
    row("sign", [0, 1, label], [1, 3, one], [5, 1, label], [6, 2, other]);
  return section(
    "Agreed",
    row("headings", [0, 4, "Beekeeper"], [5, 3, "Grower"]),
    both("Name", beekeeper ?? LINE, grower ?? LINE),
    both("Signature", LINE, LINE),
    both("Date", LINE, LINE),
  );
}

/** Labels that would say again what the heading above them says. */
const UNDER_HEADING: Readonly<Record<string, string>> = {
  "By the contract": "Met or not",
  "How sure": "The whole lot",
};

function ofLine(contract: Contract, line: LotLine, style?: "strong"): StatementRow[] {
  const rows = rowsOfLine(contract, line, style);
  return line[4] === "in short" ? inShort(...rows) : rows;
}

function rowsOfLine(
  contract: Contract,
  [name, figure, remark, kind]: LotLine,
  style?: "strong",
): StatementRow[] {
  const label = UNDER_HEADING[name] ?? name;
  if (figure instanceof CellError) throw figure;
  if (typeof figure !== "number") return labelled(label, String(figure), remark, style);
  if (kind === "frames") return labelled(label, frames(contract, figure), remark, style);
  if (kind !== "percent")
    return labelled(
      label,
      { kind: kind === "text" ? "count" : kind, value: figure },
      remark,
      style,
    );
  // The format of a share shows the sign that the label carries.
  const plain = label.replace(/, %$/, "");
  return labelled(plain, { kind: "percent", value: figure / 100 }, remark, style);
}

function number(
  kind: "count" | "quantity" | "rate" | "money",
  value: unknown,
): StatementCell | string {
  return typeof value === "number" ? { kind, value } : "";
}

function date(value: number): StatementCell {
  return { kind: "date", value };
}

/** Of the smallest sum: two for 0.01, none for 1 and over. */
function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 6; decimals++) {
    if (Number.isInteger(Number((step * 10 ** decimals).toPrecision(12)))) return decimals;
  }
  return 6;
}
