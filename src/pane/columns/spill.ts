import { yardColumns } from "../../functions/yard.js";
import { cellName, cellOf, rangeName, within } from "../address.js";
import { cells, evaluate, formula, literal, type Argument } from "../formula.js";
import type { Block, Place, Region, Step } from "../port.js";
import { nameArgument, termsArgument, type ContractChoice } from "./contracts.js";
import { yardReference, type Yard } from "./yard.js";

/** The call that gives the chosen columns of a whole sheet, as a cell on the sheet `from` holds it. */
export function spillArguments(
  yard: Yard,
  contract: ContractChoice,
  columns: readonly string[],
  from: string,
): readonly Argument[] {
  return [
    cells(yardReference(yard, from), yard.values),
    termsArgument(contract, from),
    nameArgument(contract),
    { ...literal(columns.join(",")), value: [[columns.join(",")]] },
  ];
}

export const spillFormula = (args: readonly Argument[]): string => formula(yardColumns, args);
export const spillResult = (args: readonly Argument[]): unknown[][] => evaluate(yardColumns, args);

/** Beside a sheet, with one empty column between. */
export function besideOf({ place }: Yard): Place {
  return cellOf(place, 0, place.columns + 1);
}

/** What stands in the way of writing into a place. */
export interface InTheWay {
  readonly kind: "filled" | "table" | "yard";
  readonly address: string;
  readonly holds: string;
}

/**
 * The first thing that stands in the way of cells that are to be written, null where they are free.
 *
 * @param block - what stands in the place now
 */
export function inTheWay(block: Block, yard: Yard, regions: readonly Region[]): InTheWay | null {
  const { place } = block;
  for (const [r, row] of block.entries.entries()) {
    for (const [c, entry] of row.entries()) {
      const value = block.values[r]![c];
      if (entry === "" && (value === "" || value === null)) continue;
      const holds = String(entry === "" ? value : entry);
      return { kind: "filled", address: cellName(place.row + r, place.column + c), holds };
    }
  }
  if (within(place, yard.place) !== null) {
    return { kind: "yard", address: rangeName(yard.place), holds: yard.region.name };
  }
  const table = regions.find((r) => r.kind === "table" && within(r.place, place) !== null);
  return table ? { kind: "table", address: rangeName(table.place), holds: table.name } : null;
}

/** Writes one formula whose results come over free cells, all of them in the General format. */
export function spillSteps(block: Block, written: string): Step[] {
  const { place } = block;
  const right = { ...place, column: place.column + 1, rows: 1, columns: place.columns - 1 };
  const under = { ...place, row: place.row + 1, rows: place.rows - 1 };
  // No cell is in two steps: each is checked against the sheet as it was before.
  return [
    ...[right, under].filter((p) => p.rows * p.columns > 0).map((p) => leftBlank(block, p)),
    {
      kind: "put",
      place: cellOf(place, 0, 0),
      expect: [[""]],
      put: [[written]],
      formats: "General",
    },
  ];
}

function leftBlank(block: Block, place: Place): Step {
  const [top, left] = [place.row - block.place.row, place.column - block.place.column];
  const formats = block.formats
    .slice(top, top + place.rows)
    .map((row) => row.slice(left, left + place.columns));
  if (formats.flat().every((format) => format === "General")) return { kind: "blank", place };
  const blanks = formats.map((row) => row.map(() => ""));
  return { kind: "put", place, expect: blanks, put: blanks, formats: "General" };
}
