import { Refusal } from "../../core/refusal.js";
import type { StatementAsk } from "../../functions/statement.js";
import type { Paper } from "../../functions/statement-model.js";
import type { ContractChoice } from "../columns/contracts.js";
import type { Yard } from "../columns/yard.js";
import { texts } from "../texts.js";

const t = texts.statement;

/** What the user typed of a statement; blank is left out. */
export interface Wish {
  readonly size: string;
  readonly delivered: string;
  readonly beekeeper: string;
  readonly grower: string;
  readonly picked: string;
  readonly one: string;
  readonly other: string;
  readonly paper: Paper;
}

export const NOTHING_SAID: Wish = {
  size: "",
  delivered: "",
  beekeeper: "",
  grower: "",
  picked: "",
  one: "",
  other: "",
  paper: "letter",
};

/** @throws Refusal that names what was typed and is no number of hives */
export function askOf(
  wish: Wish,
  yard: Yard,
  lot: string | null,
  { terms, name }: ContractChoice,
): StatementAsk {
  const { one, other } = wish;
  return {
    yard: yard.values.map((row) => [...row]),
    terms: terms && terms.values.map((row) => [...row]),
    contract: name,
    lot,
    size: hivesOf(t.size, wish.size),
    delivered: hivesOf(t.delivered, wish.delivered),
    grower: filled(wish.grower),
    beekeeper: filled(wish.beekeeper),
    words: filled(one) === null && filled(other) === null ? null : [one, other],
    picked: filled(wish.picked),
    paper: wish.paper,
  };
}

function filled(text: string): string | null {
  return text.trim() === "" ? null : text.trim();
}

/**
 * A number of hives as it is typed; null where it is left blank.
 *
 * @throws Refusal that quotes what is none
 */
export function hivesOf(label: string, typed: string): number | null {
  const text = typed.trim();
  if (text === "") return null;
  if (/^\d{1,7}$/.test(text) && Number(text) > 0) return Number(text);
  throw new Refusal(t.wholeNumber(label, text));
}
