/** The text of docs/simulation.md. */
import { OPENED } from "./cases.mjs";

/** @typedef {import("./cases.mjs").Coverage} Coverage */
/** @typedef {import("./cases.mjs").Chance} Chance */
/** @typedef {import("./cases.mjs").Quick} Quick */

const LEAST = 0.9;
const NEAR = { least: 0.93, most: 0.97 };

const percent = (/** @type {number} */ share) => (100 * share).toFixed(1);
const mean = (/** @type {number[]} */ values) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const isNear = (/** @type {number} */ held) => held >= NEAR.least && held <= NEAR.most;

/**
 * @param {string[]} headings
 * @param {(string | number)[][]} rows
 */
function table(headings, rows) {
  const line = (/** @type {(string | number)[]} */ cells) => `| ${cells.join(" | ")} |`;
  return [line(headings), line(headings.map(() => "---")), ...rows.map(line)].join("\n");
}

/**
 * @template T
 * @param {readonly T[]} items
 * @param {(item: T) => string} key
 * @returns {[string, T[]][]}
 */
function groups(items, key) {
  /** @type {Map<string, T[]>} */
  const found = new Map();
  for (const item of items) found.set(key(item), [...(found.get(key(item)) ?? []), item]);
  return [...found];
}

/**
 * @param {readonly Coverage[]} cases
 * @param {import("./cases.mjs").By} by
 */
function coverageOf(cases, by) {
  const rows = groups(cases, (c) => `${c.shape} | ${c.terms}`).map(([kind, own]) => [
    kind,
    ...OPENED[by].map((opened) => {
      const held = own.filter((c) => c.opened === opened).map((c) => c.held);
      return `${percent(mean(held))} (${percent(Math.min(...held))})`;
    }),
  ]);
  const far = cases.filter((c) => !isNear(c.held));
  const near = cases.filter((c) => isNear(c.held));
  const plain = cases.map((c) => c.plain);
  const held = cases.map((c) => c.held);
  const unwarned = far.filter((c) => c.warned < 0.995);
  const many = near.filter((c) => c.opened >= 20);
  return [
    table(
      ["strengths", "contract", ...OPENED[by].map((opened) => `${opened} hives`)],
      rows.map((row) => row),
    ),
    "",
    `- Lowest of the ${cases.length} cases: ${percent(Math.min(...held))} %. Student's t alone: ${percent(Math.min(...plain))} %.`,
    `- Outside 93 to 97 %: ${far.length} of ${cases.length} cases, ${percent(far.length / cases.length)} % (${far.filter((c) => c.held < NEAR.least).length} under, ${far.filter((c) => c.held > NEAR.most).length} over). Student's t alone: ${plain.filter((h) => !isNear(h)).length}, of which ${plain.filter((h) => h < LEAST).length} under 90 %.`,
    `- In ${far.length - unwarned.length} of those ${far.length} the function warned at every sample${unwarned.length === 0 ? "" : `; in the others at ${unwarned.map((c) => percent(c.warned)).join(", ")} %`}.`,
    `- It always warns where fewer than 15 ${by} count. In the cases inside 93 to 97 % with 20 hives and more opened it warned at ${percent(mean(many.map((c) => c.warned)))} % of the samples.`,
    `- Samples without an interval, since one ${by.slice(0, -1)} or none counted: at the most ${percent(Math.max(...cases.map((c) => c.none)))} % of a case. They are left out of its share.`,
    "",
    far.length === 0 ? "" : "The cases outside:",
    "",
    table(
      ["strengths", "contract", "hives in the lot", "opened", "held, %", "t alone, %", "warned, %"],
      far.map((c) => [
        c.shape,
        c.terms,
        c.size,
        c.opened,
        percent(c.held),
        percent(c.plain),
        percent(c.warned),
      ]),
    ),
  ].join("\n");
}

/**
 * What was aimed at, and what came of it.
 *
 * @param {Record<string, readonly Coverage[]>} parts
 * @param {(string | number)[][]} chances
 */
function aims(parts, chances) {
  const met = chances.map((row) => Number(row[2]));
  return [
    table(
      ["95 % interval", "cases", "lowest, %", "outside 93 to 97 %", "of these warned"],
      Object.entries(parts).map(([name, cases]) => {
        const far = cases.filter((c) => !isNear(c.held));
        return [
          name,
          cases.length,
          percent(Math.min(...cases.map((c) => c.held))),
          `${percent(far.length / cases.length)} %`,
          `${far.filter((c) => c.warned >= 0.995).length} of ${far.length}`,
        ];
      }),
    ),
    "",
    `Of lots that were told a chance of 80 %, give or take 5, from ${Math.min(...met)} to ${Math.max(...met)} % met what was asked, by whatever they are grouped.`,
  ].join("\n");
}

/**
 * @param {readonly Chance[]} chances
 * @param {(c: Chance) => string} key
 */
function metBy(chances, key) {
  return groups(chances, key).map(([name, own]) => {
    const told = own.reduce((sum, c) => sum + c.told, 0);
    const met = own.reduce((sum, c) => sum + c.met, 0);
    return [name, told, percent(met / told)];
  });
}

/**
 * @param {readonly Coverage[]} cases
 * @param {readonly Coverage[]} others
 * @param {readonly Chance[]} chances
 * @param {readonly Quick[]} quick
 * @param {number} runs
 */
export function report(cases, others, chances, quick, runs) {
  const ofHives = cases.filter((c) => c.by === "hives");
  const ofPallets = cases.filter((c) => c.by === "pallets");
  const met = [
    ...metBy(chances, (c) => `all, ${c.by} drawn`),
    ...metBy(chances, (c) => `${c.opened} hives opened, ${c.by} drawn`),
    ...metBy(chances, (c) => `${c.shape}, ${c.by} drawn`),
    ...metBy(chances, (c) => `${c.terms}, ${c.by} drawn`),
  ];
  return `# How often the figures hold

Made by \`node tests/simulation/coverage.mjs\`, with fixed seeds. Nothing here was measured on bees: lots are made by rules, samples are drawn out of them, and what the functions say of the sample is held against the whole lot.

Lots have 24, 48, 96, 240 and 480 hives. Strengths, judged to half frames:

- a tail of strong hives: 7 frames in the middle, lognormal with a spread of 0.4;
- a tail of weak hives: 13 less a lognormal of 5 in the middle with a spread of 0.5;
- two humps: 70 % of the hives at 10 frames and 30 % at 4, each give or take 1.2;
- two humps: 85 % at 9 give or take 1.2 and 15 % at 3 give or take 1;
- heaped: 8 give or take 2.2, told in even frames for six hives in ten, in whole frames for the rest.

Each under four contracts: with or without a cap of 10 or 12, all hives counted or those under 4 or 6 frames left out. Each case is ${runs} samples, four out of each made lot, so that a share of 95 % is known to about half a point. Extremes over hundreds of cases look a point or so worse than they are.

## What was aimed at

An interval that never holds in under 90 % of samples, at most a tenth of the cases outside 93 to 97 %, and a warning by the function itself in those; of lots told 80 %, 75 to 85 % that meet.

${aims({ "hives drawn singly": ofHives, "whole pallets drawn": ofPallets, "other strengths, hives drawn singly": others }, met)}

Hives drawn singly reach all of it. Whole pallets miss the tenth, most of them on the safe side: the interval of two or three pallets holds more often than it says. So do lots whose hives are more alike than usual, among the other strengths: a typical spread is counted in, and keeps their interval wider than they need. Too few hold where a hump or a tail of weak hives is likely to be missing from the sample: fewer than 15 hives, or some 8 to 15 pallets.

## The 95 % interval, hives drawn singly

How many of a hundred intervals held the whole lot's average: mean over the sizes of lot, and in brackets the lowest.

${coverageOf(ofHives, "hives")}

## The 95 % interval, whole pallets drawn

Four hives a pallet; the strengths of two hives of one pallet are correlated by 0.36.

${coverageOf(ofPallets, "pallets")}

## Other strengths, hives drawn singly

Shapes that had no part in choosing the method, in lots of 48 and 240.

${coverageOf(others, "hives")}

## LOT_CHANCE

Of the lots that were told a chance of 75 to 85 %, how many met what was asked. What is asked lies evenly from three frames under such lots' usual average to three over it: where lots are known beforehand to lie closer together, the sample is not all that is known, and the chance is too sure of itself. Lots of 24, 96 and 480.

${table(["lots", "told 75 to 85 %", "met, %"], met)}

## QUICK_LOOK

A quick look at every hive, a tenth too low on the whole and off by a quarter either way, and a full count of some: how many of a hundred 95 % intervals held the lot's average, and how wide they are beside those of the full counts alone (1 for as wide). Mean over the sizes of lot, 48 and 240.

${table(
  ["strengths", "counted in full", "held, %", "width"],
  groups(quick, (c) => `${c.shape} | ${c.counted}`).map(([kind, own]) => [
    kind,
    percent(mean(own.map((c) => c.held))),
    mean(own.map((c) => c.gain)).toFixed(2),
  ]),
)}
`;
}
