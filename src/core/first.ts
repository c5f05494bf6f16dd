/** The first whole number from `low` to `high` for which it holds; `high` where it does for none below. */
export function first(low: number, high: number, holds: (n: number) => boolean): number {
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
