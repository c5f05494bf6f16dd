import type { AskYear } from "../core/date-count.js";
import { DEEP } from "../core/comb.js";
import { bees as beesOn } from "../core/bees.js";
import { scale, sum, type Estimate } from "../core/estimate.js";
import {
  ENOUGH_IN_SPRING,
  FEEDS,
  honeyUsed,
  shortOfTarget,
  STORES_OF_FEED,
  type Feed,
} from "../core/feed.js";
import { quote, Refusal } from "../core/refusal.js";
import { sources } from "../core/sources.js";
import { perPound, STORES_UNITS, storesInPounds, WEIGHTS, type Weight } from "../core/stores.js";
import { normalise } from "../core/text.js";
import { together } from "../core/together.js";
import type { Writing } from "../core/writing.js";
import type { Cell } from "./cells.js";
import { answer, optional, type Parameter, type SheetFunction } from "./declare.js";
import { boxFrames } from "./frames.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { choice, hives, number, option } from "./parameters.js";
import { checkSingle } from "./rows.js";
import { weightsOrCounts } from "./stores.js";
import { writtenParameters, yearOfRow } from "./written.js";

const PARTS = ["feed", "low", "high", "short", "target", "note"] as const;

/** 2:1 and 1:1 as a spreadsheet keeps them once typed: one or two hours and a minute, of a day. */
const AS_TIMES: readonly (readonly [Feed, number])[] = [
  ["2:1", 121 / 1440],
  ["1:1", 61 / 1440],
];

const feedParameter: Parameter<Feed> = option<Feed>("feed", "2:1", (value) => {
  const time = AS_TIMES.find(([, t]) => typeof value === "number" && Math.abs(value - t) < 1e-6);
  if (time) return time[0];
  const word = normalise(String(value));
  const found = FEEDS.find((feed) => feed === word || (feed === "dry sugar" && word === "dry"));
  if (found) return found;
  const expected = FEEDS.map(quote).join(" or ");
  throw new Refusal(`${quote(String(value))} stands where ${expected} was expected`);
});

const GIVES = ["gallons", "litres", "lb", "kg"] as const;
type Give = (typeof GIVES)[number];

const parameters = [
  hives("stores"),
  choice("stores_in", STORES_UNITS),
  optional(hives("target")),
  choice("target_in", WEIGHTS),
  feedParameter,
  option<Give | null>("give", null, choice("give", GIVES).read),
  optional(hives("bees")),
  choice("bees_in", ["frames", "bees"]),
  number("days", 365),
  optional(hives("brood")),
  optional(hives("box_frames")),
  choice("part", [...PARTS, "all"]),
  ...writtenParameters,
] as const;

/**
 * Feed for what a hive's stores lack: of a target, or of what its bees use in so many days.
 *
 * @remarks A US gallon of 2:1 syrup by weight makes about 7 lb of stores (two feeding guides), of 1:1
 * 5 lb, a pound of dry sugar about one, a fifth lost in handling. Bees use 4.2 to 6.7 mg of honey a day
 * in winter (Harbo 1983); that is no brood-rearing rate, and with brood given what it takes to rear it
 * is added (0.142 g a bee from memory, to 0.222 g). 20 to 30 lb at the end of winter is enough for now
 * by common practice: look again within weeks. Cold bees do not take syrup: below about 57 F give dry
 * sugar. Spilled or open feed sets hives robbing each other: feed inside, towards evening.
 * @example =COMB.FEED(1) gives 1.86; =COMB.FEED(10,"lb",30,"lb","1:1","litres") gives 15.1.
 * @customfunction FEED
 * @helpurl https://localhost:3000/help.html#FEED
 * @param stores A row a hive: full frames of honey, a column a box, or the weight of the stores; write none for none.
 * @param stores_in "frames" (also where left out), "lb" or "kg".
 * @param target Weight of stores to reach, one or a row each; where left out with bees and days, 20 lb.
 * @param target_in "lb" (also where left out) or "kg": the target, and what is short.
 * @param feed "2:1" syrup by weight (also where left out), "1:1", or "dry sugar" when it is cold.
 * @param give "gallons" (US; also where left out) or "litres" of syrup; "lb" (also where left out) or "kg" of dry sugar.
 * @param bees A row a hive, or one: bees to hold, in place of a target; needs days.
 * @param bees_in "frames" of bees (also where left out; a column a box) or "bees".
 * @param days Days to hold them.
 * @param brood A row a hive, or one: full deep frames of brood that stay as many; left out for none.
 * @param box_frames The frame of the stores' combs: deep (also where left out), medium, shallow, or the comb's size inside the frame such as 42 x 27 cm; one, or a row of one for each column.
 * @param part "feed" (also where left out), its "low" and "high", "short" and "target" in target_in, "note", or "all" six beside each other.
 * @param written How figures are written, where not plainly: "decimal comma", "whole frames" (2 January can only have been 1-2), "fractions" (0.6 for 60 %), "1904 dates"; several with commas.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns The feed or the part asked for, a row a hive; blank for a hive whose stores were not judged.
 */
export function FEED(
  stores: unknown[][],
  stores_in?: unknown,
  target?: unknown[][],
  target_in?: unknown,
  feed?: unknown,
  give?: unknown,
  bees?: unknown[][],
  bees_in?: unknown,
  days?: unknown,
  brood?: unknown[][],
  box_frames?: unknown[][],
  part?: unknown,
  written?: unknown,
  inspected?: unknown[][],
): unknown[][] {
  const values = [stores, stores_in, target, target_in, feed, give, bees, bees_in, days, brood];
  return answer(
    parameters,
    [...values, box_frames, part, written, inspected],
    (
      cells,
      storesIn,
      targets,
      targetIn,
      feed,
      give,
      bees,
      beesIn,
      days,
      brood,
      sizes,
      part,
      writing,
      inspected,
    ) => {
      checkAsked(targets, bees, days, brood);
      checkSingle([targets, brood]);
      const perFeed = perOfFeed(feed, give);
      const frames = boxFrames(sizes, cells.width, DEEP);
      const parts = part === "all" ? PARTS : [part];
      const yearOf = yearOfRow(inspected, writing);
      return eachHive([cells, targets, bees, brood, inspected], parts.length, (i) => {
        const year = yearOf(i);
        const boxes = weightsOrCounts(cells, i, storesIn, writing, year);
        const there = sum(boxes.map((box, k) => storesInPounds(box, storesIn, frames[k]!)));
        const broodAt = brood && broodOf(brood, i, writing);
        const wanted =
          bees === null
            ? targetAt(targets, i, targetIn, writing)
            : honeyUsed(beesAt(bees, i, beesIn, writing, year), days!, broodAt);
        const short = shortOfTarget(there, wanted);
        const amount = scale(short, perFeed / STORES_OF_FEED[feed]);
        const inUnit = perPound(targetIn);
        const found: Record<(typeof PARTS)[number], () => Cell> = {
          feed: () => amount.middle,
          low: () => amount.low,
          high: () => openEnd(amount.high, part),
          short: () => short.middle * inUnit,
          target: () => wanted.middle * inUnit,
          note: () =>
            together(
              short.note,
              noteOf(feed, short, bees === null && targets === null, bees, broodAt),
            ),
        };
        return parts.map((p) => found[p]());
      });
    },
  );
}

function checkAsked(
  target: HiveCells | null,
  bees: HiveCells | null,
  days: number | null,
  brood: HiveCells | null,
): void {
  if (target !== null && bees !== null) {
    throw new Refusal("target and bees are both given: give a target, or bees and days");
  }
  if ((bees === null) !== (days === null)) {
    throw new Refusal(
      bees === null ? "days: given without bees" : "days: left out, and bees need it",
    );
  }
  if (brood !== null && bees === null) throw new Refusal("brood: given without bees and days");
}

/** How many of what is to be given a US gallon of syrup or a pound of sugar makes. */
function perOfFeed(feed: Feed, give: Give | null): number {
  const isDry = feed === "dry sugar";
  const unit = give ?? (isDry ? "lb" : "gallons");
  if (isDry !== (unit === "lb" || unit === "kg")) {
    const wants = isDry ? '"lb" or "kg"' : '"gallons" or "litres"';
    throw new Refusal(
      `give: ${feed === "dry sugar" ? feed : `${feed} syrup`} is given in ${wants}`,
    );
  }
  if (unit === "litres") return sources.litresPerGallon.value;
  return unit === "kg" ? perPound("kg") : 1;
}

function targetAt(targets: HiveCells | null, i: number, unit: Weight, writing: Writing): Estimate {
  if (targets === null) return ENOUGH_IN_SPRING;
  if (targets.isEmpty(i)) throw new Refusal("the target is blank: write none for none", "unknown");
  const target = weightsOrCounts(targets, i, unit, writing);
  return scale(sum(target), 1 / perPound(unit));
}

function beesAt(
  bees: HiveCells,
  i: number,
  unit: "frames" | "bees",
  writing: Writing,
  year: AskYear,
): Estimate {
  if (bees.isEmpty(i)) throw new Refusal("bees is blank, and the need hangs on them", "unknown");
  const figures = bees.estimates(i, unit === "frames" ? "count" : "amount", writing, year);
  return unit === "frames" ? beesOn(sum(figures)) : sum(figures);
}

function broodOf(column: HiveCells, i: number, writing: Writing): Estimate | null {
  return column.isEmpty(i) ? null : sum(column.estimates(i, "count", writing));
}

function openEnd(high: number | null, part: string): Cell {
  if (high !== null) return high;
  if (part === "all") return "";
  throw new Refusal("a figure has no upper end, so neither has the feed", "unknown");
}

function noteOf(
  feed: Feed,
  short: Estimate,
  isUsual: boolean,
  bees: HiveCells | null,
  brood: Estimate | null,
): string {
  const { storesInSpring, pollenPatty, clusterBelow } = sources;
  const rearing = (brood?.middle ?? 0) > 0;
  const isShort = short.middle > 0;
  return together(
    isUsual
      ? `${storesInSpring.value} to 30 lb at the end of winter is enough for now (common practice): look again within weeks`
      : "",
    bees !== null && !rearing
      ? "at the winter rate, which is no brood-rearing rate: with brood they use far more"
      : "",
    bees !== null && rearing
      ? `bees at the winter rate, and the brood's rearing added; bees that fly use more: look again within weeks; a pollen patty of ${pollenPatty.value} lb where no pollen comes in (common practice)`
      : "",
    isShort && feed !== "dry sugar" ? `dry sugar instead below about ${clusterBelow.value} F` : "",
    isShort ? "feed inside the hive, towards evening: spilled feed starts robbing" : "",
  );
}

export const feed: SheetFunction = { id: "FEED", parameters, evaluate: FEED };
