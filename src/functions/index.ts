import { cellsFunction, cover, patchFunction } from "./area.js";
import { beesFunction, beeWeight, coverToBees } from "./bees.js";
import { broodFrames } from "./brood.js";
import { broodStart, daysAheadFunction } from "./brood-start.js";
import { compare } from "./compare.js";
import { daysToEmergeFunction, eggDateFunction, emergeDateFunction } from "./clock.js";
import { conditions } from "./conditions.js";
import type { SheetFunction } from "./declare.js";
import { drops } from "./drops.js";
import { feed } from "./feed.js";
import { emergenceFunction } from "./emergence.js";
import { food } from "./food.js";
import { forecastDays, forecastFunction } from "./forecast.js";
import { grade, hiveCheck, shortOfFunction } from "./grade.js";
import { eggsPerDay } from "./laying.js";
import { droneShareFunction, pattern } from "./pattern.js";
import { lot } from "./lot.js";
import { lotForecastFunction } from "./lot-forecast.js";
import { openMoreFunction } from "./open-more.js";
import { hivePayFunction, lotPayFunction } from "./pay.js";
import { pickHives } from "./pick.js";
import { hivesNeeded, loadsFunction } from "./placing.js";
import { reading } from "./reading.js";
import { lotChanceFunction, toOpenFunction } from "./sampling.js";
import { observerErrorFunction, quickLookFunction } from "./second-look.js";
import { deepEquivalentFunction, framesOfBeesFunction, seams } from "./strength.js";
import { stores } from "./stores.js";
import { sources, standards } from "./tables.js";
import { whatIf } from "./what-if.js";
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
  food,
  pattern,
  droneShareFunction,
  eggsPerDay,
  daysToEmergeFunction,
  emergeDateFunction,
  eggDateFunction,
  emergenceFunction,
  broodStart,
  daysAheadFunction,
  forecastFunction,
  forecastDays,
  lotForecastFunction,
  conditions,
  grade,
  shortOfFunction,
  hiveCheck,
  yardColumns,
  lot,
  lotChanceFunction,
  toOpenFunction,
  openMoreFunction,
  pickHives,
  quickLookFunction,
  observerErrorFunction,
  lotPayFunction,
  hivePayFunction,
  whatIf,
  compare,
  stores,
  feed,
  hivesNeeded,
  loadsFunction,
  drops,
  standards,
  sources,
];
