import { BROOD_MEASURES } from "./brood.js";
import type { Contract } from "./contract.js";
import { sources } from "./sources.js";
import { COMB_RULES } from "./strength.js";

/** What may stand in a term's cell. */
export type TermKind =
  | {
      readonly kind: "number";
      readonly unit: string;
      readonly least: number;
      readonly most: number;
    }
  | { readonly kind: "choice"; readonly choices: readonly string[] }
  | { readonly kind: "yes or no" }
  | { readonly kind: "frame" }
  | { readonly kind: "text" };

/** A term of a contract: its label in the Terms table, and what it means in a sentence. */
export interface Term {
  readonly label: string;
  readonly field: keyof Contract;
  readonly value: TermKind;
  /** What a contract says that leaves the term out; a 0 in the sheet is left out too. */
  readonly missing: string | number | boolean;
  readonly meaning: string;
}

const amount = (unit: string, most: number) => ({ kind: "number", unit, least: 0, most }) as const;
const oneOf = <const C extends string>(...choices: readonly C[]) =>
  ({ kind: "choice", choices }) as const;
const yesNo = { kind: "yes or no" } as const;

/** What a term's cell may hold is what the contract's field may be. */
type KindFor<V> = [V] extends [boolean]
  ? { readonly kind: "yes or no" }
  : [V] extends [number]
    ? number extends V
      ? Extract<TermKind, { kind: "number" }>
      : { readonly kind: "choice"; readonly choices: readonly `${V}`[] }
    : [V] extends [string]
      ? string extends V
        ? { readonly kind: "text" }
        : { readonly kind: "choice"; readonly choices: readonly V[] }
      : { readonly kind: "frame" };

function term<F extends keyof Contract>(
  label: string,
  field: F,
  value: KindFor<Contract[F]>,
  missing: Term["missing"],
  meaning: string,
): Term {
  return { label, field, value, missing, meaning };
}

/** The label of each term, one row of the Terms table each, in the order of the handbook. */
export const TERMS: readonly Term[] = [
  term(
    "average frames",
    "averageFrames",
    amount("frames", 60),
    0,
    "Frames of bees that the lot must have on average. Left out: no average is asked.",
  ),
  term(
    "minimum frames",
    "minimumFrames",
    amount("frames", 60),
    0,
    "Frames of bees that each hive must have.",
  ),
  term(
    "under minimum",
    "underMinimum",
    oneOf("left out", "counted", "rejects the load"),
    "left out",
    "What a hive under the minimum does: it is left out of the average, counted in it, or the whole load is rejected.",
  ),
  term(
    "share under minimum forgiven",
    "forgivenShare",
    amount("%", 100),
    0,
    "Percent of hives under the minimum that is forgiven: they do not reject the load, and are not paid.",
  ),
  term(
    "forgiven against",
    "forgivenAgainst",
    oneOf("hives opened", "hives in the lot", "hives above the minimum"),
    "hives opened",
    "What that percent is taken of. Against hives above the minimum it is taken of the hives opened, and as many must be over the minimum as are under it.",
  ),
  term(
    "comb rule",
    "combRule",
    oneOf(...COMB_RULES),
    "two-thirds",
    "When a comb counts as a frame of bees: two-thirds covered; three-quarters on both sides with lesser combs pooled; the sum of covered parts; or a cluster count of seams from above and below.",
  ),
  term(
    "frame size",
    "frame",
    { kind: "frame" },
    "deep",
    "The frame in which the contract counts: deep, medium, shallow, national deep, or the comb's size inside the frame such as 42 x 27 cm.",
  ),
  term(
    "box frames",
    "boxFrame",
    { kind: "frame" },
    "",
    "The frame that stands in the boxes, where a heading of the yard sheet does not name another. Left out: the contract's.",
  ),
  term(
    "most frames a hive",
    "mostFrames",
    amount("frames", 60),
    0,
    "A hive with more frames than this counts as this many in the average. Left out: no cap.",
  ),
  term(
    "part frame",
    "partFrame",
    oneOf("down", "nearest", "as it is", "between"),
    "as it is",
    "How 7.5 frames is read against grades and the minimum: as 7 (down), as 8 (nearest), or as it is. A hive is paid the fee of its grade; between reads 7.5 as it is and pays it between the fees of 7 and 8.",
  ),
  term(
    "brood",
    "brood",
    amount("frames", 60),
    0,
    "Brood that each hive must have, in the measure of the next term.",
  ),
  term(
    "brood counted as",
    "broodMeasure",
    oneOf(...BROOD_MEASURES),
    "full frames",
    "Whether brood is counted in full-frame equivalents or in combs that hold some.",
  ),
  term(
    "brood comb covered",
    "broodCombCover",
    amount("%", 100),
    0,
    "Percent of a comb that brood must cover for the comb to count, where brood is counted in combs.",
  ),
  term("laying queen", "layingQueen", yesNo, false, "Whether each hive must have a laying queen."),
  term("stores", "stores", amount("as said", 200), 0, "Stores that each hive must have."),
  term(
    "stores unit",
    "storesUnit",
    oneOf("frames", "lb", "kg"),
    "frames",
    "What stores are counted in, in the contract and in the yard sheet.",
  ),
  term(
    "feed under",
    "feedUnder",
    amount("as stores", 200),
    0,
    "For the action: a hive with less stores than this is fed, in the stores' unit. Left out: 20 lb (9.1 kg, 2.9 deep frames), enough for now at the end of winter by common practice.",
  ),
  term(
    "combine under",
    "combineUnder",
    amount("frames", 60),
    sources.combineUnder.value,
    "For the action: a hive with fewer frames of bees than this is combined (common practice, no source).",
  ),
  term(
    "bees for brood",
    "beesForBrood",
    amount("frames", 10),
    sources.beesForBrood.value,
    "For the action: frames of bees that each full frame of brood needs; a hive with fewer is looked at again (common practice, no source).",
  ),
  term(
    "base fee",
    "baseFee",
    amount("money", 1e6),
    0,
    "Fee of a hive that meets the contract, where grades carry no fee of their own.",
  ),
  term(
    "bonus a frame",
    "bonus",
    amount("money", 1e6),
    0,
    "Paid for each frame over the average, a hive.",
  ),
  term(
    "bonus by",
    "bonusBy",
    oneOf("lot", "hive"),
    "lot",
    "Whether the bonus is worked out on the lot's average or hive by hive.",
  ),
  term(
    "bonus ceiling",
    "bonusCeiling",
    amount("money", 1e6),
    0,
    "Most bonus a hive. Left out: no ceiling.",
  ),
  term(
    "pro rata",
    "proRata",
    yesNo,
    false,
    "Whether a lot under the average is paid in proportion: 6 of 8 frames, six eighths of the fee.",
  ),
  term("currency", "currency", { kind: "text" }, "", "Currency of all fees, as it is to be shown."),
  term(
    "round money",
    "moneyRounding",
    amount("money", 1000),
    0.01,
    "What a sum of money is rounded to: 0.01 for the cent.",
  ),
  term(
    "round hives",
    "hiveRounding",
    oneOf("exact", "whole"),
    "exact",
    "Whether a grade's share of the lot is paid exactly (46.67 hives) or in whole hives.",
  ),
  term("share opened", "openedShare", amount("%", 100), 0, "Percent of hives to open."),
  term(
    "opened by",
    "openedBy",
    oneOf("hives", "pallets"),
    "hives",
    "Whether single hives or whole pallets are drawn.",
  ),
  term(
    "inspect from day",
    "inspectFromDay",
    amount("days", 365),
    0,
    "Days after delivery before hives may be opened; left out: at delivery.",
  ),
  term(
    "inspect above temperature",
    "inspectAbove",
    amount("degrees", 130),
    0,
    "Least temperature of the air for an inspection.",
  ),
  term("temperature unit", "temperatureUnit", oneOf("F", "C"), "F", "Unit of that temperature."),
  term(
    "inspect from hour",
    "inspectFromHour",
    amount("hour of the day", 24),
    0,
    "Hour of the day from which hives may be opened.",
  ),
  term(
    "inspect to hour",
    "inspectToHour",
    amount("hour of the day", 24),
    24,
    "Hour of the day until which hives may be opened.",
  ),
  term(
    "re-inspection",
    "reinspection",
    yesNo,
    false,
    "Whether either party may ask for a second inspection.",
  ),
  term(
    "replace dead-outs",
    "replaceDead",
    yesNo,
    false,
    "Whether dead hives are replaced by the beekeeper.",
  ),
  term("deposit", "deposit", amount("%", 100), 0, "Percent of the fee that is paid beforehand."),
  term(
    "balance due",
    "balanceDays",
    amount("days", 365),
    0,
    "Days after the inspection until the rest is due.",
  ),
  term(
    "short delivery",
    "shortDelivery",
    oneOf("paid as delivered", "pro rata", "refused"),
    "paid as delivered",
    "What happens when fewer hives come than were agreed: those that came are paid; or the lot is settled as agreed, less the share that did not come (pro rata); or it is refused.",
  ),
  term(
    "observer error",
    "observerError",
    amount("%", 100),
    0,
    "Percent by which the averages of two people who judge the same hives differ; it does not shrink with more hives.",
  ),
  term(
    "whole frames",
    "wholeFrames",
    yesNo,
    false,
    "Whether counts are whole frames, so that 2 January in a count can only have been typed 1-2.",
  ),
  term(
    "decimal sign",
    "decimal",
    oneOf(".", ","),
    ".",
    "The decimal sign of figures typed as text.",
  ),
  term(
    "percents written as",
    "percentsAs",
    oneOf("percent", "fraction"),
    "percent",
    "Whether a number in a percent column is 60, or is 0.6 shown as 60 %.",
  ),
  term(
    "dates written",
    "dates",
    oneOf("one way", "day first", "month first"),
    "one way",
    "Which comes first in dates that stand as text, such as 3/4/2026 in a saved file. Left out: only texts that can be one day are read.",
  ),
  term(
    "date system",
    "dateSystem",
    oneOf("1900", "1904"),
    "1900",
    "The workbook's date system; 1904 for some workbooks begun on an old Mac.",
  ),
];

/** The parts of a grade's label: `grade 1 name`, `grade 1 frames`, `grade 1 brood`, `grade 1 fee`. */
export const GRADE_PARTS = {
  name: { kind: "text" },
  frames: amount("frames", 60),
  brood: amount("frames", 60),
  fee: amount("money", 1e6),
} satisfies Record<string, TermKind>;
