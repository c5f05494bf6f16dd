import { normalise } from "./text.js";

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
