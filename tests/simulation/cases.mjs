/** What is simulated, and what came of it. */
import { CONTRACTS, SHAPES } from "./lots.mjs";

/** @typedef {"hives" | "pallets"} By */
/** @typedef {{ shape: string, terms: string, by: By, size: number, opened: number }} Case */
/** @typedef {Case & { held: number, plain: number, warned: number, none: number }} Coverage */
/** @typedef {Case & { told: number, met: number }} Chance */
/** @typedef {{ shape: string, size: number, counted: number, held: number, gain: number }} Quick */

const LOTS = [24, 48, 96, 240, 480];
/** @type {Record<By, number[]>} */
export const OPENED = { hives: [6, 9, 13, 20, 30, 40, 60], pallets: [8, 12, 20, 32, 60] };

/** @type {By[]} */
const BOTH = ["hives", "pallets"];

/** @type {Case[]} */
export const CASES = BOTH.flatMap((by) =>
  Object.keys(SHAPES).flatMap((shape) =>
    Object.keys(CONTRACTS).flatMap((terms) =>
      LOTS.flatMap((size) =>
        OPENED[by]
          .filter((opened) => opened < size)
          .map((opened) => ({ shape, terms, by, size, opened })),
      ),
    ),
  ),
);

export const CHANCE_CASES = CASES.filter(
  ({ size, opened }) => [24, 96, 480].includes(size) && [6, 8, 13, 20, 30, 32].includes(opened),
);

export const QUICK_CASES = Object.keys(SHAPES).flatMap((shape) =>
  [48, 240].flatMap((size) => [9, 15, 20, 40].map((counted) => ({ shape, size, counted }))),
);
