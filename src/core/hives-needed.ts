import { quote, Refusal } from "./refusal.js";
import { sources, type Source } from "./sources.js";
import { normalise } from "./text.js";

export const AREAS = ["acres", "hectares"] as const;
export type Area = (typeof AREAS)[number];

/** Hives that a crop is published to need, an acre. */
export interface CropRate {
  readonly least: number;
  readonly most: number;
  readonly note: string;
}

const {
  acresPerHectare,
  almondHives,
  appleHivesLeast,
  appleHivesMost,
  cherryHivesLeast,
  cherryHivesMost,
  pearHivesLeast,
  pearHivesMost,
  blueberryHivesLeast,
  blueberryHivesMost,
  kiwifruitHivesLeast,
  kiwifruitHivesMost,
} = sources;

function rate(least: Source, most: Source, more = ""): CropRate {
  const an = least.unit === "hives/ha" ? acresPerHectare.value : 1;
  const range = least.value === most.value ? `${least.value}` : `${least.value} to ${most.value}`;
  return {
    least: least.value / an,
    most: most.value / an,
    note: `${range}${more} ${least.unit === "hives/ha" ? "a hectare" : "an acre"}: ${least.source}`,
  };
}

/** The crops whose rate is known, by name. */
const CROPS: Readonly<Record<string, CropRate>> = {
  almond: rate(almondHives, almondHives),
  apple: rate(appleHivesLeast, appleHivesMost),
  cherry: rate(cherryHivesLeast, cherryHivesMost),
  pear: rate(pearHivesLeast, pearHivesMost),
  blueberry: rate(blueberryHivesLeast, blueberryHivesMost, " or more"),
  kiwifruit: rate(kiwifruitHivesLeast, kiwifruitHivesMost),
};

/** @throws Refusal that lists the crops */
export function cropRate(crop: string): CropRate {
  const name = normalise(crop)
    .replace(/^sweet /, "")
    .replace(/ies$/, "y")
    .replace(/s$/, "");
  if (Object.hasOwn(CROPS, name)) return CROPS[name]!;
  throw new Refusal(
    `no rate is published here for ${quote(crop)}: give ${Object.keys(CROPS).join(", ")}, or a rate of your own`,
  );
}

/** How many of one area's unit make an acre's. */
export function acresIn(unit: Area): number {
  return unit === "hectares" ? acresPerHectare.value : 1;
}

/** Whole hives, rounded up: 10.0000001 by the machine's rounding is 10. */
export function wholeHives(hives: number): number {
  return Math.ceil(hives - 1e-6);
}
