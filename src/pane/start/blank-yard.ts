import { HEADINGS } from "../../../examples/yard.mjs";
import { matchHeadings } from "../../core/headings.js";
import type { Step } from "../port.js";
import { plain, put, type Formatted } from "./steps.js";

/** Rows that are ready for hives; more may be written under them. */
const READY_ROWS = 500;

/** A lot or a count that is not text may become a date as it is typed. */
function formatOf(heading: string): string {
  const role = matchHeadings([heading]).roles[0];
  return role === "date" ? "yyyy-mm-dd" : role === "notes" ? "General" : "@";
}

/**
 * A blank yard sheet: a line on how counts are written, then the headings, then rows whose cells are
 * text, so that `7-8` stays `7-8`.
 */
export function blankYard(sheet: string, line: string): Step[] {
  const row: readonly Formatted[] = HEADINGS.map((h) => ({ entry: "", format: formatOf(h) }));
  return [
    { kind: "add sheet", name: sheet },
    put(sheet, [[plain(line)]]),
    put(sheet, [HEADINGS.map(plain), ...Array.from({ length: READY_ROWS }, () => row)], 2),
  ];
}
