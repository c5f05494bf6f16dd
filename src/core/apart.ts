import { toPlaces } from "./places.js";
import { TOLERANCE } from "./tolerance.js";

const MOST_DECIMALS = 9;

/**
 * Decimals that a figure needs so that rounding does not carry it onto or over what it is held
 * against: an average of 7.9996 is not shown as 8 where 8 are asked.
 *
 * @param least - decimals that are shown anyway
 * @example decimalsApart(7.9996, 8) // 4
 * @example decimalsApart(7.97, 8) // 2
 */
export function decimalsApart(value: number, asked: number, least = 2): number {
  const side = sideOf(value, asked);
  let decimals = least;
  while (decimals < MOST_DECIMALS && sideOf(toPlaces(value, decimals), asked) !== side) {
    decimals++;
  }
  return decimals;
}

/** The figure as text with so many decimals as it needs beside what is asked, and no idle noughts. */
export function shownApart(value: number, asked: number): string {
  return String(toPlaces(value, decimalsApart(value, asked)));
}

function sideOf(value: number, asked: number): number {
  return Math.abs(value - asked) < TOLERANCE ? 0 : Math.sign(value - asked);
}
