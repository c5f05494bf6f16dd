import { normalise } from "./text.js";

const YES = new Set("yes y true x ✓ ✔".split(" "));
const NO = new Set("no n false".split(" "));

/** Yes or no as a hand writes it; null where a cell says neither. The words are common practice, no source. */
export function yesOrNo(cell: unknown): boolean | null {
  if (typeof cell !== "string" && typeof cell !== "boolean") return null;
  const word = normalise(String(cell));
  if (YES.has(word)) return true;
  return NO.has(word) ? false : null;
}
