/**
 * What figures may differ by through rounding alone: a sum of thirds or tenths may fall short of a
 * whole number by a rounding of the machine's.
 */
export const TOLERANCE = 1e-9;

export function atLeast(has: number, asked: number): boolean {
  return has >= asked - TOLERANCE;
}

export function atMost(has: number, most: number): boolean {
  return has <= most + TOLERANCE;
}
