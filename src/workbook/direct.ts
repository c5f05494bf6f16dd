import type { Worksheet } from "@cj-tech-master/excelts";
import type { Cell } from "../functions/cells.js";
import type { SheetFunction } from "../functions/declare.js";
import { areaAt, areaOn, valuesIn, type Area } from "./area.js";
import type { Constants } from "./constants.js";
import { ask } from "./engine.js";
import { pieces } from "./formula-text.js";
import { eachCellOf, type Formula } from "./formulas.js";
import { ourCall, withoutTables } from "./rewrite.js";
import { filledBy, toCellValue, type Rows } from "./spread.js";
import type { SheetTable } from "./tables.js";

/** What must be known of a workbook to answer a call without the engine. */
export interface Ground {
  readonly functions: ReadonlyMap<string, SheetFunction>;
  readonly tables: readonly SheetTable[];
  readonly constants: Constants;
}

/**
 * What those formulas come to that need no engine, by their numbers: one call of ours each, from
 * cells that nothing calculates. The engine takes a note of each cell that each formula reads: for a
 * sheet of a hundred thousand hives that is most of its time and memory. None does without it where
 * a formula fills cells of which the file does not know yet: another might read them.
 */
export function answered(
  formulas: readonly Formula[],
  ground: Ground,
  reasons: ReadonlyMap<number, string>,
): ReadonlyMap<number, readonly (readonly Cell[])[]> {
  const answers = new Map<number, readonly (readonly Cell[])[]>();
  const isAlone = formulas.length === 1;
  for (const [number, formula] of formulas.entries()) {
    if (reasons.has(number)) continue;
    const rows = direct(formula, ground);
    if (rows) answers.set(number, rows);
    const known = rows ? isWithin(filledBy(formula, rows), formula.area) : formula.fills === "one";
    if (!known && !isAlone) return new Map();
  }
  return answers;
}

/** Null where the formula needs the engine. */
function direct(
  formula: Formula,
  { functions, tables, constants }: Ground,
): readonly (readonly Cell[])[] | null {
  const { cell } = formula;
  const call = ourCall(withoutTables(formula.text, tables, cell));
  const fn = call && functions.get(call.id);
  const written = call && argumentsOf(call.inside);
  if (!fn || !written || written.length > fn.parameters.length) return null;
  const blocks: (readonly (readonly unknown[])[])[] = [];
  for (const text of written) {
    const block = valueOf(text, cell.worksheet, constants);
    if (block === null) return null;
    blocks.push(block);
  }
  const rows = ask(
    fn,
    fn.parameters.map((parameter, i) => passed(blocks[i] ?? NOTHING, parameter)),
  );
  return hasRoom(formula, rows) ? rows : null;
}

/** Puts what a formula came to into its cells, as values from which the engine may go on. */
export function putIn({ cell }: Formula, rows: Rows): void {
  rows.forEach((row, r) => {
    const place = cell.worksheet.getRow(cell.row + r);
    row.forEach((value, c) => (place.getCell(cell.col + c).value = toCellValue(value)));
  });
}

const isWithin = (inner: Area, outer: Area): boolean =>
  inner.bottom <= outer.bottom && inner.right <= outer.right;

const NOTHING = [[null]];

/** The arguments of a call as they are written, null where one is more than a value or a reference. */
function argumentsOf(inside: string): string[] | null {
  const written = [""];
  for (const piece of pieces(inside)) {
    if (/^[({]$/.test(piece)) return null;
    if (piece === ",") written.push("");
    else written[written.length - 1] += piece;
  }
  return written.map((text) => text.trim());
}

function valueOf(
  text: string,
  sheet: Worksheet,
  constants: Constants,
): readonly (readonly unknown[])[] | null {
  if (text === "") return NOTHING;
  if (/^"(?:[^"]|"")*"$/.test(text)) return [[text.slice(1, -1).replaceAll('""', '"')]];
  if (/^\d+(?:\.\d+)?$/.test(text)) return [[Number(text)]];
  if (RELATIVE.test(text)) return untouched(areaOn(sheet, text), constants);
  const fixed = constants.numberOf(text, sheet.name);
  if (fixed !== null) return constants.block(fixed);
  const area = areaNamed(text, sheet);
  return area && untouched(area, constants);
}

const untouched = (area: Area, constants: Constants): unknown[][] | null =>
  constants.isUntouched(area) ? valuesIn(area) : null;

/** A reference that differs from row to row is not worth remembering, as those with signs of dollar are. */
const RELATIVE = /^[A-Z]{1,3}\d{1,7}(?::[A-Z]{1,3}\d{1,7})?$/i;
const ADDRESS = /^\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?$/i;

function areaNamed(text: string, sheet: Worksheet): Area | null {
  if (text.includes("!")) return areaAt(sheet.workbook, text);
  return ADDRESS.test(text) ? areaOn(sheet, text) : null;
}

/** As the engine passes it: what is blank and may be left out is, and one value is no block. */
function passed(
  block: readonly (readonly unknown[])[],
  { matrix, optional }: SheetFunction["parameters"][number],
): unknown {
  const isOne = block.length === 1 && block[0]!.length === 1;
  if (isOne && block[0]![0] === null && optional) return null;
  return matrix || !isOne ? block : block[0]![0];
}

const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;

/** Whether a spill finds its cells empty; where it does not, the engine says so. */
function hasRoom({ cell, fills }: Formula, rows: readonly (readonly Cell[])[]): boolean {
  if (fills === "block") return false;
  if (fills === "one") return rows.length === 1 && rows[0]!.length === 1;
  const { worksheet: sheet, row: top, col: left } = cell;
  const [bottom, right] = [top + rows.length - 1, left + (rows[0]?.length ?? 1) - 1];
  if (bottom > MOST_ROWS || right > MOST_COLUMNS) return false;
  let room = !cell.isMerged;
  eachCellOf({ sheet, top, left, bottom, right }, (r, c) => {
    const other = sheet.findCell(r, c);
    if (other && other !== cell) room &&= !other.isMerged && (other.value ?? null) === null;
  });
  return room;
}
