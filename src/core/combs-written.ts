import type { Estimate } from "./estimate.js";
import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { normalise, tokens } from "./text.js";

const SEAMS = new Set(["seam", "seams"]);
/** What a text without them cannot say need not be looked for word by word. */
const LIKE_SEAMS = /seam/i;

/** Refuses seams where combs are counted: a seam of bees covers far less than a comb. */
export function refuseSeams(cell: unknown): void {
  if (typeof cell !== "string" || !LIKE_SEAMS.test(cell)) return;
  if (!tokens(normalise(cell)).some(({ text }) => SEAMS.has(text))) return;
  throw new Refusal(
    `${quote(cell)} counts seams, and a seam is no comb: write the combs, or give seams their own columns`,
  );
}

/**
 * Refuses more combs than can be: `45` is `4-5` without its dash.
 *
 * @param isOneBox - the column is of one box, and not perhaps of a whole hive
 */
export function refuseTooMany({ middle }: Estimate, isOneBox: boolean): void {
  const most = (isOneBox ? sources.mostCombsOfBox : sources.mostCombsOfHive).value;
  if (middle <= most) return;
  const where = `${middle} combs in one ${isOneBox ? "box" : "hive"}`;
  const [, low = "", high = ""] = /^([1-9])([1-9])$/.exec(String(middle)) ?? [];
  if (low < high) throw new Refusal(`${where}: is it ${low}-${high}?`);
  throw new Refusal(`${where}: more than ${most} are taken for a slip`);
}
