/** What is simulated, and what came of it. */
import { CONTRACTS, OTHER_SHAPES, SHAPES } from "./lots.mjs";

/** @typedef {"hives" | "pallets"} By */
/** @typedef {{ shape: string, terms: string, by: By, size: number, opened: number }} Case */
/** @typedef {Case & { held: number, plain: number, warned: number, none: number }} Coverage */
/** @typedef {Case & { told: number, met: number }} Chance */
/** @typedef {{ shape: string, size: number, counted: number, held: number, gain: number }} Quick */

const LOTS = [24, 48, 96, 240, 480];
/** @type {Record<By, number[]>} */
export const OPENED = { hives: [6, 9, 13, 20, 30, 40, 60], pallets: [8, 12, 20, 32, 60] };

/**
 * @param {By} by
 * @param {string[]} shapes
 * @param {number[]} sizes
 * @returns {Case[]}
 */
const casesOf = (by, shapes, sizes) =>
  shapes.flatMap((shape) =>
    Object.keys(CONTRACTS).flatMap((terms) =>
      sizes.flatMap((size) =>
        OPENED[by]
          .filter((opened) => opened < size)
          .map((opened) => ({ shape, terms, by, size, opened })),
      ),
    ),
  );

export const CASES = [
  ...casesOf("hives", Object.keys(SHAPES), LOTS),
  ...casesOf("pallets", Object.keys(SHAPES), LOTS),
];

export const OTHER_CASES = casesOf("hives", Object.keys(OTHER_SHAPES), [48, 240]);

export const CHANCE_CASES = CASES.filter(
  ({ size, opened }) => [24, 96, 480].includes(size) && [6, 8, 13, 20, 30, 32].includes(opened),
);

export const QUICK_CASES = Object.keys(SHAPES).flatMap((shape) =>
  [48, 240].flatMap((size) => [9, 15, 20, 40].map((counted) => ({ shape, size, counted }))),
);
