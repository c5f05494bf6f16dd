/** As many as somebody reads through, parted by semicolons, and how many more there are. */
export function firstOf(texts: readonly string[], most = 12): string {
  const more = texts.length - most;
  return [...texts.slice(0, most), ...(more > 0 ? [`and ${more} more`] : [])].join("; ");
}

/** `row 3 has`, `rows 3, 4 and 7 have`; of many rows the first dozen, and how many more. */
export function rowsHave(rows: readonly number[], most = 12): string {
  if (rows.length === 1) return `row ${rows[0]} has`;
  const named = rows.slice(0, most).map(String);
  const last = rows.length > most ? `${rows.length - most} more` : named.pop()!;
  return `rows ${named.join(", ")} and ${last} have`;
}
