/**
 * Judges the forecast on counts of colonies that were looked at again 8 to 32 days later:
 * `node tests/simulation/forecast.mjs colonies.csv`. The file has a heading row and the columns study,
 * colony, date (month/day/year), adults, capped_cells, larvae_cells and egg_cells. Each look is
 * forecast from itself alone; nothing in the first two tables is fitted to the file. Where it holds
 * several studies a third table fits the constants to all studies but one, and judges them on that one.
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
 * @typedef {{ study?: string, season: string, group: string, days: number, same: number, left: number, told: import("../../src/core/forecast.js").Forecast, came: number }} Pair
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
      study: look.study,
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

/** @param {Pair} p @param {number} pull */
const pulled = (p, pull) => p.same * (p.left / p.same) ** pull;

/** @param {readonly number[]} values */
const meanOf = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** @param {readonly number[]} values @param {number} share */
function quantile(values, share) {
  const inOrder = [...values].sort((a, b) => a - b);
  const at = share * (inOrder.length - 1);
  const [low = 0, high = low] = inOrder.slice(Math.floor(at));
  return low + (at - Math.floor(at)) * (high - low);
}

/**
 * The constants by some pairs alone: the part of the way with the least squares of error in bees;
 * the two parts of the logarithm's error by analysis of variance over lots; the ends of nine in ten.
 * @param {Pair[]} pairs
 */
function fit(pairs) {
  const pulls = Array.from({ length: 21 }, (_, i) => i / 20);
  const squares = (/** @type {number} */ pull) =>
    meanOf(pairs.map((p) => (pulled(p, pull) - p.came) ** 2));
  const pull = pulls.reduce((best, next) => (squares(next) < squares(best) ? next : best));
  const error = (/** @type {Pair} */ p) => Math.log(p.came / pulled(p, pull));
  const lots = [...grouped(pairs, (p) => p.group).values()].filter((l) => l.length >= LEAST_GROUP);
  const errors = lots.map((lot) => lot.map(error));
  const means = errors.map(meanOf);
  const [all, centre] = [errors.flat().length, meanOf(means)];
  const inside = errors.flatMap((lot, k) => lot.map((e) => (e - (means[k] ?? 0)) ** 2));
  const within = inside.reduce((sum, s) => sum + s, 0) / (all - lots.length);
  const among = means.reduce((sum, m) => sum + (m - centre) ** 2, 0) / (lots.length - 1);
  const share = meanOf(errors.map((lot) => 1 / lot.length));
  const logs = pairs.map(error);
  return {
    pull,
    within: Math.sqrt(within),
    between: Math.sqrt(Math.max(0, among - within * share)),
    ends: [quantile(logs, 0.05), quantile(logs, 0.95)],
  };
}

/** One study's pairs judged by constants that were fitted to the others alone. @param {string} study */
function judgedByOthers(study) {
  const own = pairs.filter((p) => p.study === study);
  const { pull, within, between, ends } = fit(pairs.filter((p) => p.study !== study));
  const [down = 0, up = 0] = ends;
  const told = own.map((p) => {
    const middle = pulled(p, pull);
    return { ...p, told: { middle, low: middle * Math.exp(down), high: middle * Math.exp(up) } };
  });
  const lots = lotsOf(told).map((lot) => {
    const hives = told.filter((p) => p.group === lot.group).length;
    const reach = 1.645 * Math.hypot(between, within / Math.sqrt(hives));
    const { middle } = lot.told;
    const band = { middle, low: middle * Math.exp(-reach), high: middle * Math.exp(reach) };
    return { ...lot, told: band };
  });
  const inBand = (/** @type {Pair[]} */ list) => rowOf(list)["in band, %"];
  return {
    n: own.length,
    "part of the way": pull,
    within,
    between,
    "error / same": rowOf(told)["error / same"],
    "hives in band, %": inBand(told),
    "lots in band, %": inBand(lots),
    "score / same's best band": rowOf(told)["score / same's best band"],
    squares: told.reduce((sum, p) => sum + (p.told.middle - p.came) ** 2, 0),
  };
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

const studies = [...new Set(pairs.map((p) => p.study ?? ""))];
if (studies.length > 1) {
  console.log("\neach study judged by constants fitted to the others");
  const judged = studies.map((study) => judgedByOthers(study));
  const same = pairs.reduce((sum, p) => sum + (p.same - p.came) ** 2, 0);
  const ours = judged.reduce((sum, row) => sum + row.squares, 0);
  const rounded = judged.map(({ squares: _, ...row }) =>
    Object.fromEntries(Object.entries(row).map(([k, v]) => [k, +v.toFixed(2)])),
  );
  console.table(Object.fromEntries(studies.map((study, k) => [study, rounded[k]])));
  console.log(`error of all, of "same as today": ${Math.sqrt(ours / same).toFixed(2)}`);
  const { pull, within, between, ends } = fit(pairs);
  const figures = [pull, within, between, ...ends].map((v) => v.toFixed(2));
  console.log(
    `fitted to all: part of the way, within, between, ends of the band: ${figures.join(", ")}`,
  );
}
