/**
 * `node tests/simulation/open-more.mjs`: the error rates that OPEN_MORE keeps, and the hives it
 * saves against a fixed sample of the same error rates. With `--write` the tables go into
 * docs/open-more.md. Ends with 1 where a rate is over the one stated. The seed is fixed.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { format } from "prettier";
import { runnerImport } from "vite";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));
const core = /** @type {typeof import("../../src/core/open-more.js")} */ (
  (await runnerImport(path("../../src/core/open-more.ts"))).module
);

const RUNS = 10_000;
/** Drawings from one lot before the next is made. */
const DRAWINGS = 20;
/** A lot so large that drawing from it with replacement leaves it as it is. */
const ENDLESS = 4_800;

/** mulberry32, by T. Ettinger; good enough to shuffle hives. */
let state = 20260315;
function random() {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}

/** Box and Muller. */
function normal() {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Mean 0, standard deviation 1, skewness 1: a sum of four exponentials. */
function skewed() {
  let sum = 0;
  for (let i = 0; i < 4; i++) sum -= Math.log(1 - random());
  return (sum - 4) / 2;
}

/**
 * How a lot's hives differ from its average. `step`: counts are written in whole or half frames.
 * `dead`: share of dead-outs.
 *
 * @typedef {{ name: string, off: () => number, step?: number, dead?: number }} Shape
 */

/** @type {Shape} */
const USUAL = { name: "normal, spread 2.5", off: () => 2.5 * normal() };
/** @type {Shape[]} */
const SHAPES = [
  { name: "normal, spread 1.5", off: () => 1.5 * normal() },
  USUAL,
  { name: "normal, spread 3", off: () => 3 * normal() },
  { name: "skewed to strong hives", off: () => 2.5 * skewed() },
  { name: "skewed to weak hives", off: () => -2.5 * skewed() },
  { name: "two humps", off: () => (random() < 0.5 ? -2.5 : 2.5) + 1.2 * normal() },
  { name: "whole frames", off: () => 2.5 * normal(), step: 1 },
  { name: "half frames", off: () => 2 * normal(), step: 0.5 },
  {
    name: "one in ten weak",
    off: () => (random() < 0.1 ? 1.5 * normal() - 5 : 1.8 * normal() + 0.55),
  },
  { name: "one in twenty dead", off: () => 2 * normal(), dead: 0.05 },
];
/**
 * Hives of a lot whose average is `level`, to a step's share of a hive.
 *
 * @returns {number[]}
 */
function lotOf(
  /** @type {Shape} */ { off, step, dead = 0 },
  /** @type {number} */ size,
  level = 0,
) {
  const alive = size - Math.round(dead * size);
  const mean = (level * size) / alive;
  const hives = Array.from({ length: alive }, () => {
    const frames = Math.max(0.5, mean + off());
    return step ? Math.max(step, Math.round(frames / step) * step) : frames;
  });
  let missing = level * size - hives.reduce((sum, frames) => sum + frames, 0);
  if (!step) return [...hives.map((frames) => frames + missing / alive), ...zeros(size - alive)];
  while (Math.abs(missing) >= step / 2) {
    const i = Math.floor(random() * alive);
    const frames = hives[i] ?? 0;
    if (missing < 0 && frames <= step) continue;
    hives[i] = frames + Math.sign(missing) * step;
    missing -= Math.sign(missing) * step;
  }
  return [...hives, ...zeros(size - alive)];
}

function zeros(/** @type {number} */ length) {
  return Array.from({ length }, () => 0);
}

/** The means of pallets of four, which share so much of their hives' variance. */
function palletsOf(/** @type {number} */ share, /** @type {number} */ size, level = 0) {
  const means = Array.from(
    { length: size },
    () => 2.5 * normal() * Math.sqrt(share + (1 - share) / 4),
  );
  const off = level - means.reduce((sum, mean) => sum + mean, 0) / size;
  return means.map((mean) => Math.max(0, mean + off));
}

/** `most` of a lot, in the order in which they are drawn. */
function draw(/** @type {number[]} */ lot, /** @type {number} */ most, isEndless = false) {
  if (isEndless) {
    return Array.from({ length: most }, () => lot[Math.floor(random() * lot.length)] ?? NaN);
  }
  const hives = [...lot];
  for (let i = 0; i < Math.min(most, lot.length); i++) {
    const k = i + Math.floor(random() * (lot.length - i));
    [hives[i], hives[k]] = [hives[k] ?? NaN, hives[i] ?? NaN];
  }
  return hives.slice(0, most);
}

/**
 * @typedef {{ good: number, bad: number, chance: number, spread?: number, hidden?: boolean, most?: number }} Levels
 *   `hidden`: the lot's size is not told to the function.
 * @typedef {{ pass: number, fail: number, undecided: number, opened: number, spread: number }} Rates
 */

/**
 * What comes of many checks of lots at one average.
 *
 * @param {(size: number, level: number) => number[]} make
 * @param {number} size
 * @param {Levels} levels
 * @param {number} level
 * @param {number} onPallet
 * @returns {Rates}
 */
function rates(make, size, levels, level, onPallet = 1) {
  const isEndless = size === Infinity;
  const { good, bad, chance } = levels;
  const known = {
    good,
    bad,
    alpha: chance,
    beta: chance,
    spread: levels.spread ?? core.usualSpread(good, bad, onPallet),
    size: levels.hidden ? Infinity : size,
  };
  const plan = { ...known, most: levels.most ?? core.usualMost(known) };
  const found = { pass: 0, fail: 0, undecided: 0, opened: 0, spread: 0 };
  /** @type {number[]} */
  let lot = [];
  for (let run = 0; run < RUNS; run++) {
    if (run % (isEndless ? RUNS : DRAWINGS) === 0) {
      lot = make(isEndless ? ENDLESS : size, level);
      found.spread += deviation(lot) / (isEndless ? 1 : RUNS / DRAWINGS);
    }
    const { verdict, opened } = core.openMore(draw(lot, plan.most, isEndless), plan);
    found[verdict === "open more" ? "undecided" : verdict] += 1 / RUNS;
    found.opened += opened / RUNS;
  }
  return found;
}

function deviation(/** @type {number[]} */ lot) {
  const mean = lot.reduce((sum, frames) => sum + frames, 0) / lot.length;
  return Math.sqrt(lot.reduce((sum, f) => sum + (f - mean) ** 2, 0) / (lot.length - 1));
}

let isOver = false;

/** One row of a table: both error rates, hives opened, the fixed sample and what is saved. */
function row(
  /** @type {string} */ name,
  /** @type {(size: number, level: number) => number[]} */ make,
  /** @type {number} */ size,
  /** @type {Levels} */ levels,
  onPallet = 1,
  mayBeOver = false,
) {
  const { good, bad, chance } = levels;
  const atGood = rates(make, size, levels, good, onPallet);
  const atBad = rates(make, size, levels, bad, onPallet);
  const spread = (atGood.spread + atBad.spread) / 2;
  const likeIt = { good, bad, alpha: chance, beta: chance, spread, size };
  const fixed = Math.ceil(core.fixedSample(likeIt) - 1e-9);
  const opened = (atGood.opened + atBad.opened) / 2;
  const undecided = (atGood.undecided + atBad.undecided) / 2;
  if (!mayBeOver && Math.max(atGood.fail, atBad.pass) > chance) isOver = true;
  return [
    name,
    spread.toFixed(1),
    percent(atGood.fail),
    percent(atBad.pass),
    percent(undecided),
    atGood.opened.toFixed(1),
    atBad.opened.toFixed(1),
    fixed,
    undecided > 0.1 ? "" : `${Math.round(100 * (1 - opened / fixed))} %`,
  ];
}

function percent(/** @type {number} */ share) {
  return (100 * share).toFixed(1);
}

const HEADINGS = [
  "strengths",
  "spread",
  "good lot fails, %",
  "bad lot passes, %",
  "undecided, %",
  "opened, good lot",
  "opened, bad lot",
  "fixed sample",
  "saved",
];

function table(
  /** @type {(string | number)[]} */ headings,
  /** @type {(string | number)[][]} */ rows,
) {
  const lines = [headings, headings.map((_, k) => (k === 0 ? "---" : "---:")), ...rows];
  return lines.map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}

const make =
  (/** @type {Shape} */ shape) => (/** @type {number} */ size, /** @type {number} */ level) =>
    lotOf(shape, size, level);

/** @type {[string, Levels, number][]} */
const SETTINGS = [
  ["Good 9, bad 8, both chances 10 %, a large lot", { good: 9, bad: 8, chance: 0.1 }, Infinity],
  ["Good 9, bad 8, both chances 10 %, a lot of 240", { good: 9, bad: 8, chance: 0.1 }, 240],
  ["Good 9, bad 8, both chances 10 %, a lot of 48", { good: 9, bad: 8, chance: 0.1 }, 48],
  [
    "The same lot of 48, its size not told",
    { good: 9, bad: 8, chance: 0.1, hidden: true, most: 48 },
    48,
  ],
  ["Good 9, bad 8, both chances 5 %, a large lot", { good: 9, bad: 8, chance: 0.05 }, Infinity],
  ["Good 10, bad 8, both chances 10 %, a large lot", { good: 10, bad: 8, chance: 0.1 }, Infinity],
  ["Good 10, bad 8, both chances 5 %, a lot of 240", { good: 10, bad: 8, chance: 0.05 }, 240],
];

const parts = SETTINGS.map(([title, levels, size]) => {
  const rows = SHAPES.map((shape) => row(shape.name, make(shape), size, levels));
  return `### ${title}\n\n${table(HEADINGS, rows)}`;
});

const ten = { good: 9, bad: 8, chance: 0.1 };
const pallets = [0, 0.2, 0.5].map((share) =>
  row(
    `pallets of four, ${100 * share} % of the variance between pallets`,
    (size, level) => palletsOf(share, size, level),
    60,
    ten,
    4,
  ),
);
parts.push(
  `### Whole pallets, a lot of 60 pallets (240 hives), good 9, bad 8, both chances 10 %\n\n` +
    `Figures are pallets.\n\n${table(HEADINGS, pallets)}`,
);

/** Ten percent, a large lot; `stated`: the spread stated, where it is not left out. */
function aside(
  /** @type {string} */ name,
  /** @type {() => number} */ off,
  /** @type {{ dead?: number, stated?: number, chance?: number, holds?: boolean }} */ more = {},
) {
  const { dead = 0, stated, chance = 0.1, holds = false } = more;
  const levels = { good: 9, bad: 8, chance, ...(stated === undefined ? {} : { spread: stated }) };
  return row(name, make({ name, off, dead }), Infinity, levels, 1, !holds);
}

const outside = [
  aside("normal, spread 3.5", () => 3.5 * normal()),
  aside("normal, spread 3.5, both chances 5 %", () => 3.5 * normal(), { chance: 0.05 }),
  aside("normal, spread 4", () => 4 * normal()),
  aside("skewed to strong hives, spread 3.3", () => 3.3 * skewed()),
  aside("the same, 3.3 stated", () => 3.3 * skewed(), { stated: 3.3, holds: true }),
  aside("one in ten dead", () => 2 * normal(), { dead: 0.1 }),
  aside("the same, 3.5 stated", () => 2 * normal(), { dead: 0.1, stated: 3.5, holds: true }),
  aside("normal, spread 2.5, 1 stated", () => 2.5 * normal(), { stated: 1 }),
  aside("skewed to strong hives, 1 stated", () => 2.5 * skewed(), { stated: 1 }),
  aside("normal, spread 1.5, 1.5 stated", () => 1.5 * normal(), { stated: 1.5, holds: true }),
];
parts.push(
  `### Outside of that, and what a stated spread does (good 9, bad 8, both chances 10 %, a large lot)\n\n` +
    table(HEADINGS, outside),
);

const averages = [6.5, 7.5, 8, 8.5, 9, 9.5, 10.5].map((level) => {
  const { pass, fail, undecided, opened } = rates(make(USUAL), Infinity, ten, level);
  return [level, percent(pass), percent(fail), percent(undecided), opened.toFixed(1)];
});
parts.push(
  `### By the lot's true average (normal, spread 2.5, good 9, bad 8, 10 %, a large lot)\n\n` +
    table(["true average", "pass, %", "fail, %", "undecided, %", "opened"], averages),
);

const report = parts.join("\n\n");
if (process.argv.includes("--write")) {
  const page = path("../../docs/open-more.md");
  const [before, rest = ""] = readFileSync(page, "utf8").split("<!-- tables -->");
  const after = rest.split("<!-- end of tables -->")[1] ?? "\n";
  const text = `${before}<!-- tables -->\n\n${report}\n\n<!-- end of tables -->${after}`;
  writeFileSync(page, await format(text, { parser: "markdown", printWidth: 100 }));
} else {
  console.log(report);
}
if (isOver) {
  console.error("a rate is over the one stated");
  process.exitCode = 1;
}
