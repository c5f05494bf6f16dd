/** A sum in the machine may end a digit short of the half that it is: 6.475 times 100 is 647.4999…. */
const NEARLY = 1 + 2 ** -50;

/**
 * A figure with so many decimals, as a hand rounds it: a half away from zero.
 *
 * @example toPlaces(6.475, 2) // 6.48
 */
export function toPlaces(value: number, places: number): number {
  const units = 10 ** places;
  return (Math.sign(value) * Math.round(Math.abs(value) * units * NEARLY)) / units;
}
