import { CELL_DENSITIES } from "./cells.js";
import { CM_PER_INCH, DEEP, sideArea, type FrameSize } from "./comb.js";
import { sources } from "./sources.js";

/**
 * A cell from flat to flat, and from one row to the next, in the units of a picture: 13 of 15 is the
 * hexagon's ratio, half the root of 3, to one in a thousand, and keeps drawings in whole numbers.
 */
export const CELL = 15;
export const ROW = 13;

/** One side of a comb as rows of cells; every second row begins half a cell later. */
export interface Lattice {
  readonly columns: number;
  readonly rows: number;
  /** In units of the picture; the cells have this area together. */
  readonly width: number;
  readonly height: number;
}

/**
 * The worker cells of one side as they are counted on managed comb, in the proportions of the frame:
 * as wide as a deep, as tall as its area makes it.
 *
 * @example latticeOf(DEEP) // 79 columns, 43 rows: 3,397 cells
 */
export function latticeOf(frame: FrameSize = DEEP): Lattice {
  const wide = sources.deepFoundationWidth.value * CM_PER_INCH;
  const cell = Math.sqrt(2 / (Math.sqrt(3) * CELL_DENSITIES.counted.worker));
  const columns = Math.round(wide / cell);
  const rows = Math.round(sideArea(frame) / wide / (cell * (ROW / CELL)));
  return { columns, rows, width: columns * CELL, height: rows * ROW };
}

/** The middle of a cell, cells counted row by row; rows lie a quarter cell to the left and right in turn. */
export function middleOf({ columns }: Lattice, cell: number): readonly [x: number, y: number] {
  const row = Math.floor(cell / columns);
  const shift = row % 2 === 0 ? CELL / 4 : (CELL * 3) / 4;
  return [(cell % columns) * CELL + shift, row * ROW + ROW / 2];
}
