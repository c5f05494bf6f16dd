/** Arithmetic mean; null of nothing. */
export function mean(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Variance of what the values were drawn from; null of a single one. */
export function variance(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const centre = mean(values)!;
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1);
}
