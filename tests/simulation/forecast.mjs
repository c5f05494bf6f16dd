/**
 * Judges the forecast on counts of colonies that were looked at again 8 to 32 days later:
 * `node tests/simulation/forecast.mjs colonies.csv`. The file has a heading row and the columns study,
 * colony, date (month/day/year), adults, capped_cells, larvae_cells and egg_cells. Each look is
 * forecast from itself alone; nothing here is fitted to the file.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const core = fileURLToPath(new URL("./core.ts", import.meta.url));
const { module } = await runnerImport(core);
const { adultLoss, averageForecast, cohort, emergence, forecast, serialOfDay } =
  /** @type {typeof import("./core.js")} */ (module);

/**
 * @typedef {{ study: string, colony: string, day: number, month: number, bees: number, capped: number, open: number, eggs: number }} Look
 * @typedef {{ season: string, group: string, days: number, same: number, left: number, told: import("../../src/core/forecast.js").Forecast, came: number }} Pair
 */

const SEASONS = ["March-April", "May-June", "July-August", "September-October"];
const LEAST_GROUP = 5;

/** @param {string} file */
function looksOf(file) {
  const [heading = "", ...lines] = readFileSync(file, "utf8").trim().split(/\r?\n/);
  const names = heading.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    const text = (/** @type {string} */ name) => cells[names.indexOf(name)] ?? "";
    const figure = (/** @type {string} */ name) => (text(name) === "" ? NaN : Number(text(name)));
    const [month = 0, day = 0, year = 0] = text("date").split("/").map(Number);
    return {
      study: text("study"),
      colony: text("colony"),
      day: serialOfDay({ year, month, day }),
      month,
      bees: figure("adults"),
      capped: figure("capped_cells"),
      open: figure("larvae_cells"),
      eggs: figure("egg_cells"),
    };
  });
}

/** @param {Look[]} looks */
function pairsOf(looks) {
  const colonies = grouped(looks, (look) => `${look.study} ${look.colony}`);
  return [...colonies.values()].flatMap((list) => {
    const inOrder = list.sort((a, b) => a.day - b.day);
    return inOrder.slice(1).flatMap((next, i) => pairOf(inOrder[i], next));
  });
}

/**
 * @param {Look | undefined} look
 * @param {Look} next
 * @returns {Pair[]}
 */
function pairOf(look, next) {
  if (look === undefined) return [];
  const days = next.day - look.day;
  const { bees, capped, open, eggs } = look;
  const known = [bees, capped, open, eggs, next.bees].every(Number.isFinite);
  if (!known || days < 8 || days > 32 || bees <= 0 || next.bees <= 0) return [];
  const emerging = emergence(
    [
      { stage: "capped", cells: capped },
      { stage: "larva", cells: open },
      { stage: "egg", cells: eggs },
    ],
    "worker",
  );
  const loss = adultLoss(null, capped + open + eggs > 0);
  const colony = { bees, emerging };
  const season = SEASONS[Math.min(3, Math.max(0, Math.ceil(look.month / 2) - 2))] ?? "";
  return [
    {
      season,
      group: `${look.study} ${look.day} ${next.day}`,
      days,
      same: bees,
      left: cohort(colony, look.day, days, loss),
      told: forecast(colony, look.day, days, loss),
      came: next.bees,
    },
  ];
}

/** Every lot of five hives or more of one study that was looked at on the same two days. */
function lotsOf(/** @type {Pair[]} */ pairs) {
  const lots = [...grouped(pairs, (p) => p.group).values()].filter((l) => l.length >= LEAST_GROUP);
  return lots.map((lot) => {
    const [{ season = "", group = "", days = 0 } = {}] = lot;
    const mean = (/** @type {(p: Pair) => number} */ of) =>
      lot.reduce((sum, p) => sum + of(p), 0) / lot.length;
    const told = averageForecast(
      lot.map((p) => p.told.middle),
      days,
      0,
    );
    return {
      season,
      group,
      days,
      same: mean((p) => p.same),
      left: mean((p) => p.left),
      told,
      came: mean((p) => p.came),
    };
  });
}

/** @param {Pair[]} pairs */
function rowOf(pairs) {
  const rmse = (/** @type {(p: Pair) => number} */ of) =>
    Math.sqrt(pairs.reduce((sum, p) => sum + (of(p) - p.came) ** 2, 0) / pairs.length);
  const same = rmse((p) => p.same);
  const inBand = pairs.filter((p) => p.came >= p.told.low && p.came <= p.told.high).length;
  const ours = meanScore(pairs, (p) => p.told);
  const [low, high] = bestBand(pairs);
  const theirs = meanScore(pairs, (p) => ({ low: p.same * low, high: p.same * high }));
  return {
    n: pairs.length,
    "error / same": rmse((p) => p.told.middle) / same,
    "error / cohort": rmse((p) => p.told.middle) / rmse((p) => p.left),
    "half and half / same": rmse((p) => (p.same + p.left) / 2) / same,
    "in band, %": (100 * inBand) / pairs.length,
    "score / same's best band": ours / theirs,
  };
}

/**
 * The interval score of nine in ten (Gneiting & Raftery 2007): width, and twenty times what falls outside.
 * @param {Pair[]} pairs
 * @param {(p: Pair) => { low: number, high: number }} band
 */
function meanScore(pairs, band) {
  const scores = pairs.map((p) => {
    const { low, high } = band(p);
    return high - low + 20 * (Math.max(0, low - p.came) + Math.max(0, p.came - high));
  });
  return scores.reduce((sum, score) => sum + score, 0) / scores.length;
}

/** The factors that make of today's count the band that scores best on these very pairs. */
function bestBand(/** @type {Pair[]} */ pairs) {
  const steps = Array.from({ length: 40 }, (_, i) => Math.exp((i + 1) / 25));
  let best = { score: Infinity, band: [1, 1] };
  for (const down of steps) {
    for (const up of steps) {
      const score = meanScore(pairs, (p) => ({ low: p.same / down, high: p.same * up }));
      if (score < best.score) best = { score, band: [1 / down, up] };
    }
  }
  return /** @type {[number, number]} */ (best.band);
}

/**
 * @template T
 * @param {readonly T[]} list
 * @param {(item: T) => string} key
 * @returns {Map<string, T[]>}
 */
function grouped(list, key) {
  const groups = new Map();
  for (const item of list) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return groups;
}

const [file] = process.argv.slice(2);
if (file === undefined) throw new Error("give the file of counts");
const pairs = pairsOf(looksOf(file));
for (const [title, all] of /** @type {const} */ ([
  ["hives", pairs],
  ["lots' averages", lotsOf(pairs)],
])) {
  console.log(`\n${title}`);
  const rows = [...SEASONS, "all"].map((season) => {
    const own = all.filter((p) => season === "all" || p.season === season);
    return own.length === 0 ? [] : [[season, rowOf(own)]];
  });
  console.table(
    Object.fromEntries(
      rows
        .flat()
        .map(([season, row]) => [
          season,
          Object.fromEntries(
            Object.entries(/** @type {Record<string, number>} */ (row)).map(([k, v]) => [
              k,
              +v.toFixed(2),
            ]),
          ),
        ]),
    ),
  );
}
