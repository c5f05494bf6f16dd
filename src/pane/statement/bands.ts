/** Rows one below the other that have something in common. */
export interface Band<T> {
  readonly value: T;
  readonly from: number;
  readonly rows: number;
}

/** What rows have, each time as long as it goes on, so that it is asked of them all at once. */
export function bands<R, T>(rows: readonly R[], of: (row: R) => readonly T[]): readonly Band<T>[] {
  const ended: Band<T>[] = [];
  let open = new Map<string, Band<T>>();
  rows.forEach((row, from) => {
    const next = new Map<string, Band<T>>();
    for (const value of of(row)) {
      const key = JSON.stringify(value);
      const band = open.get(key) ?? { value, from, rows: 0 };
      next.set(key, { ...band, rows: band.rows + 1 });
    }
    for (const [key, band] of open) if (!next.has(key)) ended.push(band);
    open = next;
  });
  return [...ended, ...open.values()];
}
