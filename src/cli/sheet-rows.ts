const ROWS = /"[^"]*"|\brows? \d+(?:, \d+)*(?: and \d+)?/g;

/**
 * A sentence on rows that are counted from a sheet's headings, with the rows' numbers in the sheet; what
 * is quoted stays as it is.
 *
 * @param top - the row of the sheet in which the headings stand
 * @example inSheetRows('"Bees", row 2: …', 3) // '"Bees", row 4: …'
 */
export function inSheetRows(text: string, top: number): string {
  return text.replace(ROWS, (found) =>
    found.startsWith('"') ? found : found.replace(/\d+/g, (row) => String(Number(row) + top - 1)),
  );
}
