import type { Spot } from "./comb-bees.js";
import { middleOf, type Lattice } from "./comb-lattice.js";
import { sources } from "./sources.js";

/** Brood as it stands in a cell. */
export const BROOD = ["egg", "young larva", "old larva", "capped worker", "capped drone"] as const;

/** What a cell holds. */
export const CONTENTS = [...BROOD, "honey", "pollen", "empty"] as const;
export type Content = (typeof CONTENTS)[number];

/** How brood lies on a comb. */
export const PATTERNS = [
  "eggs",
  "young larvae",
  "old larvae",
  "solid",
  "spotty",
  "drone patch",
  "drone scattered",
  "clear centre",
] as const;
export type Pattern = (typeof PATTERNS)[number];

/** Part of the brood that is drone brood, in its patch and scattered; drawn so, measured nowhere. */
const DRONE = { patch: 0.08, scattered: 0.25 };
/** Part of the brood that the clear centre is. */
const CENTRE = 0.3;

/**
 * The cells of one side: a patch of brood of so many cells about a spot, with pollen round it and
 * honey in the upper corners.
 *
 * @param wanted - cells that hold brood, all of them at the most
 */
export function broodOn(
  lattice: Lattice,
  pattern: Pattern,
  wanted: number,
  spot: Spot,
  random: () => number,
): Content[] {
  const spotty = pattern === "spotty" || pattern === "drone scattered";
  const empty = spotty ? 1.5 * sources.spottyEmpty.value : 1.6 * sources.solidEmpty.value;
  const distance = distances(lattice, spot, random);
  const order = [...distance.keys()].sort((one, other) => distance[one]! - distance[other]!);
  const skipped = order.map(() => random() < empty / 100);
  const filled = order.filter((_, i) => !skipped[i]);
  const drones = pattern === "drone patch" ? corner(lattice, Math.round(DRONE.patch * wanted)) : [];
  const isDrone = new Set(drones);
  const workers = [...filled, ...order.filter((_, i) => skipped[i])].filter(
    (cell) => !isDrone.has(cell),
  );
  const brood = [...drones, ...workers].slice(0, wanted);
  const edge = brood.reduce(
    (far, cell) => (isDrone.has(cell) ? far : Math.max(far, distance[cell]!)),
    0,
  );
  const contents: Content[] = [];
  for (const cell of order) contents[cell] = around(lattice, cell, distance[cell]! - edge, random);
  const centre = wanted * CENTRE;
  brood.forEach((cell, i) => {
    const drone =
      isDrone.has(cell) || (pattern === "drone scattered" && random() < DRONE.scattered);
    contents[cell] = drone ? "capped drone" : worker(pattern, i < centre);
  });
  return contents;
}

function worker(pattern: Pattern, inCentre: boolean): Content {
  switch (pattern) {
    case "eggs":
      return "egg";
    case "young larvae":
      return "young larva";
    case "old larvae":
      return "old larva";
    case "clear centre":
      return inCentre ? "egg" : "capped worker";
    default:
      return "capped worker";
  }
}

/** How far each cell is from the middle of the patch, an ellipse that is not quite even. */
function distances(lattice: Lattice, [left, top]: Spot, random: () => number): number[] {
  const { width, height, columns, rows } = lattice;
  const waves = [2, 3, 4].map((n) => [n, 0.05, random() * 7] as const);
  return Array.from({ length: columns * rows }, (_, cell) => {
    const [x, y] = middleOf(lattice, cell);
    const [across, down] = [(x - left * width) / width, (1.5 * (y - top * height)) / width];
    const angle = Math.atan2(down, across);
    const uneven = waves.reduce((sum, [n, much, at]) => sum + much * Math.sin(n * angle + at), 1);
    return Math.hypot(across, down) / uneven + (random() - 0.5) * 0.02;
  });
}

/** The cells nearest to the lower left corner's usual place of drone comb. */
function corner(lattice: Lattice, howMany: number): number[] {
  const far = (cell: number): number => {
    const [x, y] = middleOf(lattice, cell);
    return Math.hypot(x - 0.2 * lattice.width, 1.5 * (y - 0.95 * lattice.height));
  };
  const cells = [...Array(lattice.columns * lattice.rows).keys()];
  return cells.sort((one, other) => far(one) - far(other)).slice(0, howMany);
}

/** What stands beside the brood: nothing in it, a band of pollen, honey above. */
function around(lattice: Lattice, cell: number, beyond: number, random: () => number): Content {
  const [x, y] = middleOf(lattice, cell);
  if (beyond > 0 && beyond < 0.05) return random() < 0.65 ? "pollen" : "empty";
  const aside = Math.abs(x / lattice.width - 0.5);
  const isHigh = y / lattice.height < 0.16 + aside * 0.7;
  return beyond >= 0.05 && isHigh && random() < 0.97 ? "honey" : "empty";
}
