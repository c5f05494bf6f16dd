import { DEEP, frameOf, type FrameSize } from "../core/comb.js";
import { normalise } from "../core/text.js";
import { BEES_PER_FRAME } from "../core/bees.js";
import { CELL_DENSITIES, cellsPerCm2, type CellDensity } from "../core/cells.js";
import { quote, Refusal } from "../core/refusal.js";
import { CellError, isBlankOrZero } from "./cells.js";
import { toBlock, type Parameter } from "./declare.js";
import { HiveCells } from "./hive-cells.js";

/** Columns of the yard sheet, one hive a row: a cell, a column, or a block of several columns. */
export function hives<N extends string>(name: N): Parameter<HiveCells> {
  return {
    name,
    optional: false,
    matrix: true,
    read: (value) => new HiveCells(name, toBlock(value)),
  };
}

/** A block of cells with a heading row: a Terms table or a whole yard sheet. */
export function block(name: string): Parameter<unknown[][]> {
  return { name, optional: false, matrix: true, read: toBlock };
}

/** A text of one cell, null where it is left out. */
export function text(name: string): Parameter<string | null> {
  return option<string | null>(name, null, (value) => String(value).trim());
}

/** A frame's name or size; the deep where it is left out. */
export function frameSize(name: string): Parameter<FrameSize> {
  return option<FrameSize>(name, DEEP, (value) => frameOf(String(value)));
}

/** Bees on one deep frame: a published figure by its name, or a number of the user's own. */
export function perFrame(name: string): Parameter<number> {
  const names = Object.keys(BEES_PER_FRAME) as (keyof typeof BEES_PER_FRAME)[];
  return option(name, BEES_PER_FRAME["well covered"], (value) => {
    if (typeof value === "number" && value > 0 && value <= 10000) return value;
    const known = names.find((n) => n === normalise(String(value)));
    if (known) return BEES_PER_FRAME[known];
    const expected = `${orList(names)} or a number up to 10,000`;
    throw new Refusal(`${quote(String(value))} stands where ${expected} was expected`);
  });
}

/** Worker and drone cells a cm2: a published density by its name, or a cell's width in mm. */
export function cellDensity(name: string): Parameter<CellDensity> {
  const names = Object.keys(CELL_DENSITIES) as (keyof typeof CELL_DENSITIES)[];
  return option<CellDensity>(name, CELL_DENSITIES.counted, (value) => {
    if (typeof value === "number" && value >= 4 && value <= 8) {
      const density = cellsPerCm2(value / 10);
      return { worker: density, drone: density };
    }
    const known = names.find((n) => n === normalise(String(value)));
    if (known) return CELL_DENSITIES[known];
    const expected = `${orList(names)} or a cell's width from 4 to 8 mm`;
    throw new Refusal(`${quote(String(value))} stands where ${expected} was expected`);
  });
}

/** A number of one cell from over 0 to `most`, null where it is left out. */
export function number(name: string, most: number): Parameter<number | null> {
  return option<number | null>(name, null, (value) => {
    if (typeof value === "number" && value > 0 && value <= most) return value;
    const expected = `a number over 0 and up to ${most.toLocaleString("en")}`;
    throw new Refusal(`${quote(String(value))} stands where ${expected} was expected`);
  });
}

/** A confidence in percent, over 0 and under 100; 95 where it is left out. */
export function confidence(name: string): Parameter<number> {
  return option(name, 95, (value) => {
    if (typeof value === "number" && value >= 1 && value < 100) return value;
    const expected = "a confidence in percent was expected, from 1 to under 100, such as 95";
    throw new Refusal(`${quote(String(value))} stands where ${expected}`);
  });
}

/** One of a list of words; nothing, and the 0 that a blank cell may become, is the first of them. */
export function choice<const C extends string>(
  name: string,
  choices: readonly [C, ...C[]] | readonly C[],
): Parameter<C> {
  return option<C>(name, choices[0]!, (value) => {
    const found = choices.find((c) => c.toLowerCase() === normalise(String(value)));
    if (found !== undefined) return found;
    throw new Refusal(`${quote(String(value))} stands where ${orList(choices)} was expected`);
  });
}

/** The value of one cell that may be left out; a 0 is left out, as a blank cell may have become one. */
export function option<T>(name: string, otherwise: T, read: (value: unknown) => T): Parameter<T> {
  return {
    name,
    optional: true,
    matrix: false,
    read: (value) => {
      const cell = Array.isArray(value) ? toBlock(value)[0]![0] : value;
      if (cell instanceof CellError) throw cell;
      return isBlankOrZero(cell) ? otherwise : read(cell);
    },
  };
}

function orList(words: readonly string[]): string {
  return words.map(quote).join(" or ");
}
