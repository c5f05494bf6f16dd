import { cellsFunction, cover, patchFunction } from "./area.js";
import { beesFunction, beeWeight, coverToBees } from "./bees.js";
import { broodFrames } from "./brood.js";
import type { SheetFunction } from "./declare.js";
import { grade, hiveCheck, shortOfFunction } from "./grade.js";
import { reading } from "./reading.js";
import { deepEquivalentFunction, framesOfBeesFunction, seams } from "./strength.js";
import { sources, standards } from "./tables.js";
import { yardColumns } from "./yard.js";

/** Every function of the add-in, in the order of the handbook. */
export const functions: readonly SheetFunction[] = [
  reading,
  framesOfBeesFunction,
  seams,
  deepEquivalentFunction,
  beesFunction,
  coverToBees,
  beeWeight,
  cellsFunction,
  cover,
  patchFunction,
  broodFrames,
  grade,
  shortOfFunction,
  hiveCheck,
  yardColumns,
  standards,
  sources,
];
