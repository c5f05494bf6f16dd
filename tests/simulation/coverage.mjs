/**
 * `node tests/simulation/coverage.mjs`: how often the interval of a lot's average holds the whole
 * lot's average, and how often a lot meets its contract that was told a chance of 80 %. Writes
 * docs/simulation.md; takes about two minutes.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { format } from "prettier";
import { runnerImport } from "vite";
import { CASES, CHANCE_CASES, OTHER_CASES, QUICK_CASES } from "./cases.mjs";
import { CONTRACTS, draw, makeLot, OTHER_SHAPES, quickLookAt, random, SHAPES } from "./lots.mjs";
import { report } from "./report.mjs";

/** @typedef {import("../../src/core/contract.js").Contract} Contract */
/** @typedef {import("../../src/core/lot.js").OpenedHive} OpenedHive */

const at = (/** @type {string} */ path) => fileURLToPath(new URL(path, import.meta.url));
/** @type {{ module: typeof import("./core.js") }} */
const { module: core } = await runnerImport(at("core.ts"));

const ALL_SHAPES = { ...SHAPES, ...OTHER_SHAPES };
const RUNS = 2000;
/** Samples drawn out of each made lot. */
const DRAWS = 4;

/**
 * @param {string} name
 * @param {import("./cases.mjs").By} openedBy
 * @returns {Contract}
 */
function contractOf(name, openedBy) {
  const standard = core.standardContract("Almond Board of California");
  return { ...standard, ...CONTRACTS[name], averageFrames: 8, openedBy };
}

/** @param {Contract} contract @param {OpenedHive[]} hives */
function averageOf(contract, hives) {
  return core.countLot(contract, { hives, size: hives.length }).average ?? 0;
}

/** @type {Map<number | null, number>} */
const quantiles = new Map();
/** @param {number | null} df */
function quantile(df) {
  const known = quantiles.get(df) ?? core.tQuantile(0.975, df ?? 1);
  quantiles.set(df, known);
  return known;
}

/**
 * Makes lots of one kind and draws samples out of each.
 *
 * @param {import("./cases.mjs").Case} c
 * @param {number} seed
 * @param {number} runs
 * @param {(sample: OpenedHive[], truth: number, next: () => number) => void} look
 */
function eachSample(c, seed, runs, look) {
  const r = random(seed);
  const contract = contractOf(c.terms, c.by);
  for (let run = 0; run < runs / DRAWS; run++) {
    const lot = makeLot(contract, ALL_SHAPES[c.shape], c.size, r);
    const truth = averageOf(contract, lot);
    for (let k = 0; k < DRAWS; k++) look(draw(lot, c.opened, c.by === "pallets", r), truth, r.next);
  }
}

/**
 * @param {import("./cases.mjs").Case} c
 * @param {number} seed
 * @returns {import("./cases.mjs").Coverage}
 */
function coverage(c, seed) {
  const contract = contractOf(c.terms, c.by);
  let [held, plain, warned, none] = [0, 0, 0, 0];
  eachSample(c, seed, RUNS, (hives, truth) => {
    const { average, low, high, se, df, warning } = core.lotAverage(
      contract,
      { hives, size: c.size },
      95,
    );
    if (warning !== "") warned++;
    if (average === null || low === null || high === null) {
      none++;
      return;
    }
    if (truth >= low - 1e-9 && truth <= high + 1e-9) held++;
    if (Math.abs(truth - average) <= quantile(df) * (se ?? 0) + 1e-9) plain++;
  });
  const told = RUNS - none;
  return { ...c, held: held / told, plain: plain / told, warned: warned / RUNS, none: none / RUNS };
}

/**
 * What is asked lies anywhere from three frames under such lots' usual average to three over it, so
 * that nothing but the sample speaks of the lot.
 *
 * @param {import("./cases.mjs").Case} c
 * @param {number} seed
 * @returns {import("./cases.mjs").Chance}
 */
function chance(c, seed) {
  const contract = contractOf(c.terms, c.by);
  const usual = averageOf(contract, makeLot(contract, ALL_SHAPES[c.shape], 4000, random(seed)));
  let [told, met] = [0, 0];
  eachSample(c, seed + 1, 2 * RUNS, (hives, truth, next) => {
    const averageFrames = usual + 3 * (2 * next() - 1);
    const lot = { hives, size: c.size };
    if (core.lotAverage(contract, lot, 95).df === null) return;
    const share = core.lotChance({ ...contract, averageFrames }, lot);
    if (share < 0.75 || share > 0.85) return;
    told++;
    if (truth >= averageFrames) met++;
  });
  return { ...c, told, met };
}

/**
 * @param {{ shape: string, size: number, counted: number }} c
 * @param {number} seed
 * @returns {import("./cases.mjs").Quick}
 */
function quick({ shape, size, counted }, seed) {
  const r = random(seed);
  const contract = contractOf("no cap, all counted", "hives");
  let [held, widthOfQuick, widthOfFull] = [0, 0, 0];
  for (let run = 0; run < RUNS; run++) {
    const lot = makeLot(contract, ALL_SHAPES[shape], size, r);
    const chosen = new Set(draw(lot, counted, false, r));
    const looks = lot.map((hive) => ({
      quick: quickLookAt(hive.frames, r),
      full: chosen.has(hive) ? hive.frames : null,
    }));
    const found = core.quickLook(looks, 95);
    const truth = averageOf(contract, lot);
    if (truth >= (found.low ?? NaN) - 1e-9 && truth <= (found.high ?? NaN) + 1e-9) held++;
    widthOfQuick += (found.high ?? 0) - (found.low ?? 0);
    const alone = core.lotAverage(contract, { hives: [...chosen], size }, 95);
    widthOfFull += (alone.high ?? 0) - (alone.low ?? 0);
  }
  return { shape, size, counted, held: held / RUNS, gain: widthOfQuick / widthOfFull };
}

const begun = Date.now();
const text = report(
  CASES.map((c, i) => coverage(c, 7919 * (i + 1))),
  OTHER_CASES.map((c, i) => coverage(c, 15485863 * (i + 1))),
  CHANCE_CASES.map((c, i) => chance(c, 104729 * (i + 1))),
  QUICK_CASES.map((c, i) => quick(c, 611953 * (i + 1))),
  RUNS,
);
writeFileSync(at("../../docs/simulation.md"), await format(text, { parser: "markdown" }));
console.log(text);
console.log(`${Math.round((Date.now() - begun) / 1000)} s`);
