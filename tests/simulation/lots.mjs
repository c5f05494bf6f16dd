/** Made lots for the simulation: strengths of several shapes, hives on pallets, contracts. */

/** @typedef {{ next: () => number, normal: () => number }} Random */
/** @typedef {import("../../src/core/contract.js").Contract} Contract */
/** @typedef {import("../../src/core/lot.js").OpenedHive} OpenedHive */

/**
 * The generator mulberry32: the same seed gives the same lots on any machine.
 * @param {number} seed
 * @returns {Random}
 */
export function random(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return { next, normal };
}

/** @param {number} frames */
const toHalf = (frames) => Math.max(0, Math.round(2 * frames) / 2);

/** @typedef {(r: Random) => number} Shape */

/**
 * Frames of bees of one hive, judged to half frames.
 * @type {Record<string, Shape>}
 */
export const SHAPES = {
  "tail of strong hives": (r) => toHalf(7 * Math.exp(0.4 * r.normal())),
  "tail of weak hives": (r) => toHalf(13 - 5 * Math.exp(0.5 * r.normal())),
  "two humps, 70 % at 10 and 30 % at 4": (r) =>
    toHalf((r.next() < 0.7 ? 10 : 4) + 1.2 * r.normal()),
  "two humps, 85 % at 9 and 15 % at 3": (r) =>
    toHalf(r.next() < 0.85 ? 9 + 1.2 * r.normal() : 3 + r.normal()),
  "heaped on whole and even frames": (r) => {
    const frames = 8 + 2.2 * r.normal();
    return Math.max(0, r.next() < 0.6 ? 2 * Math.round(frames / 2) : Math.round(frames));
  },
};

/**
 * Shapes that had no part in choosing the method.
 * @type {Record<string, Shape>}
 */
export const OTHER_SHAPES = {
  "one in ten dead, the others 8 give or take 2": (r) =>
    r.next() < 0.1 ? 0 : toHalf(8 + 2 * r.normal()),
  "alike, 8 give or take 0.8": (r) => toHalf(8 + 0.8 * r.normal()),
  "weak yard, lognormal of 4 with a spread of 0.5": (r) => toHalf(4 * Math.exp(0.5 * r.normal())),
  "three humps at 4, 8 and 12, each give or take 0.8": (r) =>
    toHalf(4 + 4 * Math.floor(3 * r.next()) + 0.8 * r.normal()),
};

/** @type {Record<string, Partial<Contract>>} */
export const CONTRACTS = {
  "no cap, all counted": { minimumFrames: 0, mostFrames: 0, underMinimum: "counted" },
  "cap 10, all counted": { minimumFrames: 0, mostFrames: 10, underMinimum: "counted" },
  "cap 12, under 4 left out": { minimumFrames: 4, mostFrames: 12, underMinimum: "left out" },
  "cap 10, under 6 left out": { minimumFrames: 6, mostFrames: 10, underMinimum: "left out" },
};

const HIVES_A_PALLET = 4;
/** Chance that a hive has the strength of its pallet instead of one of its own. */
const ALIKE = 0.6;

/**
 * A lot of hives, four to a pallet. Where pallets are drawn, hives of a pallet are alike (the
 * correlation of two of them is 0.36).
 *
 * @param {Contract} contract
 * @param {Shape | undefined} shape
 * @param {number} size
 * @param {Random} r
 * @returns {OpenedHive[]}
 */
export function makeLot(contract, shape, size, r) {
  if (shape === undefined) throw new Error("no such shape");
  const byPallet = contract.openedBy === "pallets";
  let ofPallet = 0;
  return Array.from({ length: size }, (_, i) => {
    if (i % HIVES_A_PALLET === 0) ofPallet = shape(r);
    const frames = byPallet && r.next() < ALIKE ? ofPallet : shape(r);
    return {
      id: String(i),
      pallet: byPallet ? String(Math.floor(i / HIVES_A_PALLET)) : null,
      frames,
      counted: Math.min(frames, contract.mostFrames || Infinity),
      grade: "",
      accepted: frames >= contract.minimumFrames,
      dead: false,
    };
  });
}

/**
 * A quick look under the lid: a tenth too low on the whole, and off by a quarter either way.
 *
 * @param {number} frames
 * @param {Random} r
 */
export function quickLookAt(frames, r) {
  return toHalf(0.9 * frames * Math.exp(0.25 * r.normal()));
}

/**
 * Draws hives, or whole pallets, without putting any back.
 *
 * @param {readonly OpenedHive[]} lot
 * @param {number} opened
 * @param {boolean} byPallet
 * @param {Random} r
 */
export function draw(lot, opened, byPallet, r) {
  const step = byPallet ? HIVES_A_PALLET : 1;
  const order = Array.from({ length: lot.length / step }, (_, i) => i);
  const chosen = [];
  for (let k = 0; k < opened / step; k++) {
    const other = k + Math.floor(r.next() * (order.length - k));
    [order[k], order[other]] = [order[other] ?? 0, order[k] ?? 0];
    chosen.push(...lot.slice((order[k] ?? 0) * step, ((order[k] ?? 0) + 1) * step));
  }
  return chosen;
}
