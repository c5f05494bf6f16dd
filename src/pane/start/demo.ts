import { HEADINGS, rows, SIZES, TERMS } from "../../../examples/yard.mjs";
import { NAMESPACE } from "../../functions/namespace.js";
import { absolute, rangeName } from "../address.js";
import type { Step } from "../port.js";
import { placeOf, plain, put, type Formatted } from "./steps.js";
import { termsSheet } from "./terms-sheet.js";

/** What the demo's sheets, and the name of its Terms, are called in this workbook. */
export interface DemoNames {
  readonly yard: string;
  readonly terms: string;
  readonly lots: string;
  readonly name: string;
}

const CONTRACT = "Cherry";
/** Columns from one lot's settlement to the next: three of its own and an empty one. */
const STEP = 4;

/** The demo: an invented outfit's yard sheet with its computed columns, two contracts, three lots. */
export function demo({ yard, terms, lots, name }: DemoNames): Step[] {
  const sheet = [HEADINGS.map(plain), ...rows.map((row) => row.map(formatted))];
  const place = placeOf(yard, sheet);
  const columns = `=${NAMESPACE}.YARD_COLUMNS(${rangeName(place)},${name},"${CONTRACT}")`;
  const hives = absolute(place, lots);
  return [
    // A formula finds only what stands already.
    ...termsSheet(terms, name, TERMS),
    { kind: "add sheet", name: yard },
    put(yard, sheet),
    put(yard, [[plain(columns)]], 0, place.columns + 1),
    { kind: "add sheet", name: lots },
    ...Object.entries(SIZES).map(([lot, size], i) => {
      const settled = `=${NAMESPACE}.LOT(${hives},${size},${name},"${CONTRACT}","${lot}")`;
      return put(lots, [[plain(settled)]], 0, i * STEP);
    }),
  ];
}

/** The demo's days, and the count that became one. */
function formatted(cell: (typeof rows)[number][number]): Formatted {
  if (typeof cell !== "object") return plain(cell);
  if ("day" in cell) return { entry: cell.day!, format: "d-mmm-yy" };
  return { entry: cell.date!, format: "d-mmm" };
}
