import type { Contract } from "./contract.js";
import { normalQuantile, tCdf } from "./distributions.js";
import { countLot, type Lot } from "./lot.js";
import { plural } from "./plural.js";
import { observerFrames } from "./observer.js";
import { halfWidth, heldUp, ratioOf, standardError, tailOf, type Ratio } from "./ratio.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { atLeast } from "./tolerance.js";
import { drawnOf, typicalSpread, type Drawn } from "./units.js";

/** The whole lot's average as the opened hives tell it; null for what they cannot tell. */
export interface LotAverage {
  readonly average: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Standard error of the sampling alone, without the observer's; 0 where every hive was opened. */
  readonly se: number | null;
  /** Degrees of freedom of that error: hives, or pallets, that count, less one. */
  readonly df: number | null;
  /** How the interval was made, as a sentence. */
  readonly method: string;
  /** Why there is no interval, or why it may miss more often than it says; else empty. */
  readonly warning: string;
}

/**
 * The whole lot's average under the contract's rules, and the interval for it.
 *
 * The hives, or whole pallets, are taken as drawn at random from the lot. The observer's error is
 * added to the sampling's as the other of two independent errors: no number of hives lessens it.
 *
 * @param confidence - percent, over 0 and under 100
 * @throws Refusal for a confidence that is none, and where only some hives have a pallet
 * @example
 * // 7, 8, 9, 8, 7, 9 and 8 frames of a lot of 48: average 8, from 7.1 to 8.9
 */
export function lotAverage(contract: Contract, lot: Lot, confidence: number): LotAverage {
  const tail = tailOf(confidence);
  const drawn = drawnOf(contract, lot);
  const ratio = ratioOf(drawn.units, drawn.share);
  if (ratio === null) {
    const warning = "no opened hive counts in the average: all are under the minimum";
    return { average: null, low: null, high: null, se: null, df: null, method: "", warning };
  }
  const average = ratio.ratio;
  const typical = typicalOfUnit(contract, drawn, ratio);
  const arm = halfWidth(ratio, tail, typical);
  const observer = normalQuantile(1 - tail) * observerFrames(contract, average);
  const reach = arm === null ? null : Math.hypot(arm, observer);
  const most = contract.mostFrames || Infinity;
  return {
    average,
    low: reach === null ? null : Math.max(0, average - reach),
    high: reach === null ? null : Math.min(most, average + reach),
    se: standardError(ratio),
    df: ratio.units > 1 ? ratio.units - 1 : null,
    method: methodOf(contract, lot, drawn, ratio),
    warning: warningOf(contract, lot, drawn, ratio, typical),
  };
}

/**
 * The chance that the whole lot's average meets what the contract asks, were every hive opened.
 *
 * It is a prediction: the mean of the unopened hives is spread about that of the opened ones by
 * Student's t, a typical spread counting as one of them, and the opened ones are known. It assumes
 * that hives (or pallets) were drawn at random, that the rest are judged by the same eyes, and that
 * nothing else is known of the lot.
 *
 * @returns 0 to 1; 0 or 1 where every hive was opened
 * @throws Refusal where the contract asks no average, and of kind `unknown` where too few count
 * @example
 * // 7, 8, 9, 8, 7, 9 and 8 frames of a lot of 48, 8 asked: a half
 */
export function lotChance(contract: Contract, lot: Lot): number {
  const asked = contract.averageFrames;
  if (asked === 0) throw new Refusal(`contract "${contract.name}" asks no average of a lot`);
  if (lot.hives.length === lot.size) return countLot(contract, lot).averageMet ? 1 : 0;
  const drawn = drawnOf(contract, lot);
  const ratio = ratioOf(drawn.units, drawn.share);
  if (ratio === null || ratio.spread === null) {
    throw new Refusal(
      `fewer than two ${drawn.kind} count in the average, and one shows no spread`,
      "unknown",
    );
  }
  const { units, spread } = ratio;
  const typical = typicalOfUnit(contract, drawn, ratio);
  const se = heldUp(units, spread, typical) * Math.sqrt((1 - ratio.drawn) / units);
  if (se === 0) return atLeast(ratio.ratio, asked) ? 1 : 0;
  return tCdf((ratio.ratio - asked) / se, units);
}

/** The typical spread of what was drawn: of a hive, or of the mean of a pallet whose hives are unlike. */
function typicalOfUnit(contract: Contract, { units }: Drawn, ratio: Ratio): number {
  const counts = units.reduce((sum, { count }) => sum + count, 0);
  return typicalSpread(contract, ratio.ratio) / Math.sqrt(counts / ratio.units);
}

function methodOf(contract: Contract, lot: Lot, { kind, units, inLot }: Drawn, ratio: Ratio) {
  const observer =
    contract.observerError === 0 ? "" : `; observers' error ${contract.observerError} % added`;
  if (lot.hives.length === lot.size) return `every hive was opened${observer}`;
  const counting = ratio.units === units.length ? "" : `, ${ratio.units} counting in the average`;
  return (
    `${units.length} of ${plural(Math.round(inLot), kind.slice(0, -1))} drawn${counting}: Student's t for a finite lot, ` +
    `widened for skew, a typical spread counting as one of the ${kind}${observer}`
  );
}

function warningOf(
  contract: Contract,
  lot: Lot,
  { kind }: Drawn,
  { units: n, spread, skew }: Ratio,
  typical: number,
): string {
  if (lot.hives.length === lot.size) return "";
  const one = kind.slice(0, -1);
  if (spread === null) return `one ${one} alone counts and shows no spread: open more`;
  const enough = sources.sureFrom.value;
  const parts: string[] = [];
  if (n < enough) {
    parts.push(
      `only ${n} ${kind} count: under ${enough} the interval may miss more often than it says`,
    );
  }
  if (spread === 0) {
    parts.push(
      typical > 0
        ? `all ${kind} are equal: the interval rests on how hives usually differ`
        : `all ${kind} are equal: they show no spread to make an interval from`,
    );
  } else if (spread < (sources.alike.value / 100) * typical) {
    parts.push(`the ${kind} are more alike than usual: the interval is wider than they alone give`);
  }
  if (Math.abs(skew) >= sources.extremeSkew.value) {
    parts.push(`a few ${kind} far ${skew < 0 ? "under" : "over"} the others sway the average`);
  }
  if (kind === "hives" && contract.openedBy === "pallets") {
    parts.push(
      "the sheet names no pallets: hives of one pallet are alike, and the interval too narrow",
    );
  }
  if (contract.openedBy === "hives" && seemsByPallet(lot)) {
    parts.push(
      'the opened hives stand together on their pallets: where whole pallets were opened, set "opened by" ' +
        "to pallets, since hives of one pallet are alike and the interval is then too narrow",
    );
  }
  return parts.join("; ");
}

/** Of a lot of which less than half is opened, single hives drawn by lot seldom share a pallet. */
function seemsByPallet({ hives, size }: Lot): boolean {
  const pallets = new Set(hives.map(({ pallet }) => pallet));
  return !pallets.has(null) && hives.length >= 2 * pallets.size && 2 * hives.length <= size;
}
