import { saysDead } from "./figure.js";
import { normalise, tokens } from "./text.js";

/** Why a hive of the sheet has no count: nobody opened it, or it is no longer in the lot. */
export type Absence = "not opened" | "gone";

const NOT_OPENED =
  /^(?:not (?:opened|open|looked(?: at| in| into)?|inspected|checked|counted|graded|done)(?: yet)?|unopened|uninspected|closed|left closed|skipped|skip|n\/o|n\/a)$/;
const GONE = /^(?:gone|removed|taken out|taken away|sold|combined|merged|united|joined|moved)\b/;

/**
 * What a hand writes in place of a count where there is none to be had: `not opened`, `skipped`,
 * `combined into 13`. Null where a text says no such thing. The words are common practice, no source.
 *
 * @example absenceOf("combined with 13") // "gone"
 */
export function absenceOf(text: string): Absence | null {
  const said = normalise(text);
  if (NOT_OPENED.test(said)) return "not opened";
  return GONE.test(said) ? "gone" : null;
}

const OF_DEATH = /\b(?:dead|dead ?outs?|died|d\/o|starved|perished)\b/;
const OF_A_LOOK =
  /\b(?:opened|inspected|checked|looked (?:at|in|into)|no bees|empty|robbed|queenless|wax moths?)\b/;
const OF_NO_LOOK = /\b(?:not?|never|un)\b.*\b(?:opened|inspected|checked|looked)\b/;

/**
 * What a note says of a hive whose bees are blank: `dead` where it says that and no more, `looked at`
 * where it speaks of a death or of a look in other words, null where it does neither. The words are
 * common practice, no source.
 *
 * @example saidInNote("dead, mice in the bottom box") // "looked at"
 */
export function saidInNote(note: string): "dead" | "looked at" | null {
  const said = normalise(note).replace(/[.!]+$/, "");
  if (saysDead(tokens(said))) return "dead";
  if (OF_DEATH.test(said)) return "looked at";
  return OF_A_LOOK.test(said) && !OF_NO_LOOK.test(said) ? "looked at" : null;
}
