import type { Region } from "../port.js";

/** Names that sheets, tables and defined names of a workbook have already. */
export function takenNames(regions: readonly Region[]): string[] {
  return regions.flatMap(({ name, place }) => [name, place.sheet]);
}

/** Signs that no name of a sheet may hold; a number behind it must fit too. */
const UNFIT = /[:\\/?*[\]]+/g;
const LONGEST = 27;

/** A text as a sheet may be called by it. */
export function fitName(text: string): string {
  return text
    .replace(UNFIT, " ")
    .replace(/\s+/g, " ")
    .slice(0, LONGEST)
    .replace(/^[\s']+|[\s']+$/g, "");
}

/** The name, or the next one that is free: `Yard`, `Yard 2`. Capitals make no difference. */
export function freeName(name: string, taken: readonly string[], between = " "): string {
  const known = new Set(taken.map((other) => other.toLowerCase()));
  for (let n = 1; ; n++) {
    const candidate = n === 1 ? name : `${name}${between}${n}`;
    if (!known.has(candidate.toLowerCase())) return candidate;
  }
}
