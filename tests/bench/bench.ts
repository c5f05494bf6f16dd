import { beside, HEADING } from "./beside.js";
import { contests } from "./contests.js";
import { benchAhead, benchDrops, benchLots } from "./lots.js";

const parts: Readonly<Record<string, () => void>> = {
  ...Object.fromEntries(contests.map((contest) => [contest.name, () => beside(contest)])),
  lots: benchLots,
  ahead: benchAhead,
  drops: benchDrops,
};

/** What may be run, each in a process of its own. */
export const names = Object.keys(parts);
export { HEADING };

export function bench(name: string): void {
  parts[name]!();
}
