import { quote } from "../core/refusal.js";

/**
 * The longest text that Excel takes in a formula (from memory, and as pages about Excel say; tried in
 * no Excel); it calls a file with a longer one damaged.
 */
const LONGEST = 255;

/** Why a formula cannot hold a contract's name; null where it can. */
export function unfitName(contract: string): string | null {
  if (contract.length <= LONGEST) return null;
  return (
    `the contract ${quote(contract)} has a name of ${contract.length.toLocaleString("en")} signs, and a ` +
    `formula can name one of up to ${LONGEST} signs: give it a shorter name`
  );
}
