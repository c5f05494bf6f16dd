import { HEADINGS, rows, TERMS } from "../../../examples/yard.mjs";
import type { Entry } from "../../../src/pane/port.js";
import { readSheets, type Sheets, type Yard } from "../../../src/pane/columns/yard.js";
import { MemoryWorkbook, type Named } from "../memory.js";

/** The demo's yard sheet as a workbook holds it: days and counts that became days are numbers. */
export const DEMO: readonly (readonly Entry[])[] = [
  HEADINGS,
  ...rows.map((row) =>
    row.map((cell) => (typeof cell === "object" ? Object.values(cell)[0]! : cell)),
  ),
];

const TERMS_PLACE = {
  sheet: "Terms",
  row: 0,
  column: 0,
  rows: TERMS.length,
  columns: TERMS[0]!.length,
};

/** A workbook with a yard sheet, and Terms as the demo has them. */
export function workbookOf(
  yard: readonly (readonly Entry[])[] = DEMO,
  terms: Named["kind"] | "none" = "name",
): MemoryWorkbook {
  const names = new Map<string, Named>();
  if (terms !== "none") names.set("Terms", { kind: terms, place: TERMS_PLACE });
  return new MemoryWorkbook({ Yard: yard, ...(terms === "none" ? {} : { Terms: TERMS }) }, names);
}

export async function sheetsOf(
  workbook: MemoryWorkbook,
): Promise<{ readonly sheets: Sheets; readonly yard: Yard }> {
  const sheets = await readSheets(workbook, null);
  return { sheets, yard: sheets.yard! };
}

export async function yardOf(yard: readonly (readonly Entry[])[]): Promise<Yard> {
  return (await sheetsOf(workbookOf(yard, "none"))).yard;
}
