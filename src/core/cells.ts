import { sideArea, type FrameSize } from "./comb.js";
import { combine, type Estimate } from "./estimate.js";
import { Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { atMost } from "./tolerance.js";

export const COMB_CASTES = ["worker", "drone"] as const;
export type CombCaste = (typeof COMB_CASTES)[number];

/** Cells in a cm2 of one side, of worker and of drone comb. */
export type CellDensity = Readonly<Record<CombCaste, number>>;

const eighth = sources.zanderCombArea.value / 8;

/**
 * The published densities: `counted` on managed comb; `liebefeld`, the round figures of that method;
 * `wild`, by geometry from cells measured in wild nests, of which 8 % more fit than are counted.
 */
export const CELL_DENSITIES = {
  counted: {
    worker: sources.workerCellsPerCm2.value,
    drone: sources.droneCellsPerCm2.value,
  },
  liebefeld: {
    worker: sources.workerCellsPerEighth.value / eighth,
    drone: sources.droneCellsPerEighth.value / eighth,
  },
  wild: {
    worker: cellsPerCm2(sources.workerCellWidth.value),
    drone: cellsPerCm2(sources.droneCellWidth.value),
  },
} satisfies Record<string, CellDensity>;

/**
 * Cells in a cm2 of one side, by the hexagon's geometry.
 *
 * @param width - a cell from flat to flat, in cm
 * @example cellsPerCm2(0.52) // 4.27
 */
export function cellsPerCm2(width: number): number {
  return 2 / (Math.sqrt(3) * width * width);
}

/**
 * Cells in a part of one side of a comb.
 *
 * @param percent - share of the side, 0 to 100
 * @param density - cells a cm2; the count of worker cells on managed comb where left out
 * @returns cells; a deep side has about 3,420 worker cells by the count on managed comb
 * @example cellsOfSide(DEEP, 50, 3.96) // 1711.7
 */
export function cellsOfSide(
  frame: FrameSize,
  percent: number,
  density: number = CELL_DENSITIES.counted.worker,
): number {
  return (sideArea(frame) * density * percent) / 100;
}

/**
 * The percent of one side that so many cells take: the way back of `cellsOfSide`.
 *
 * @throws Refusal where there are more cells than the side holds
 */
export function coverOfCells(frame: FrameSize, cells: number, density: number): number {
  const percent = (100 * cells) / cellsOfSide(frame, 100, density);
  if (atMost(percent, 100)) return percent;
  const most = Math.floor(cellsOfSide(frame, 100, density));
  throw new Refusal(
    `${Math.round(cells)} cells are more than one side of the frame (${frame.name}) holds: ${most}`,
  );
}

export const PATCH_SHAPES = ["ellipse", "rectangle"] as const;
export type PatchShape = (typeof PATCH_SHAPES)[number];

/**
 * The area of a patch of brood from its length and width, in their unit squared. A patch of brood
 * is nearest to an ellipse; length x width alone over-counts one by 1.27.
 *
 * @example patchArea(10, 6, "ellipse") // 47.12
 */
export function patchArea(length: number, width: number, shape: PatchShape): number {
  return shape === "ellipse" ? (Math.PI / 4) * length * width : length * width;
}

/** The area of a patch whose length and width are themselves judged. */
export function patchOf(length: Estimate, width: Estimate, shape: PatchShape): Estimate {
  return combine(length, width, (a, b) => patchArea(a, b, shape));
}
