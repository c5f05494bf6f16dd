import type { Contract } from "./contract.js";
import { rounded, type Estimate } from "./estimate.js";
import { requirementsOf, reasonOf, type Hive } from "./grade.js";
import { droneVerdict, solidness, type DronePlace } from "./pattern.js";
import { plural } from "./plural.js";
import { sources } from "./sources.js";
import { honeyOfFrame, perPound } from "./stores.js";
import { atLeast } from "./tolerance.js";

/** What may be seen of a hive beside its strength; null for what nobody judged. */
export interface Signs {
  readonly eggs: boolean | null;
  /** Percent of the cells of a brood patch that are filled, or the word for it. */
  readonly pattern: Estimate | "solid" | "spotty" | null;
  /** Percent of brood area that is drone brood, or where it stands. */
  readonly drone: Estimate | DronePlace | "normal" | null;
  /** What a lift or a glance says of the stores, where no figure does. */
  readonly stores: "light" | "enough" | null;
}

/**
 * What to do with an opened hive: where it goes, and `feed` beside it where it is light.
 *
 * `place`: it has what the contract asks of every hive. `hold back`: it has not. `combine`: too weak
 * to stand alone. `look again`: something is to be understood first. `take out`: dead.
 */
export interface Action {
  readonly action: "place" | "hold back" | "combine" | "look again" | "take out";
  readonly feed: boolean;
  /** Why, as a sentence. */
  readonly reason: string;
}

const ASK = "no diagnosis: ask the apiary inspector";

/**
 * The action for an opened hive, each from a rule that the contract's terms state, by the middle of
 * each figure.
 *
 * A hive that is to be looked at again is not combined before: a sick one would take the other with
 * it.
 *
 * @example
 * // 3 frames of bees, 1 of brood, 5 lb: { action: "combine", feed: true, … }
 */
export function actionOf(contract: Contract, hive: Hive, signs: Signs): Action {
  if (hive.frames.dead) {
    const reason = `dead: close it against robbing, and ask the apiary inspector before its combs are used again`;
    return { action: "take out", feed: false, reason };
  }
  const doubts = doubtsOf(contract, hive, signs);
  const weak = under("frames of bees", hive.frames, contract.combineUnder);
  const asked = requirementsOf(contract, hive);
  const lacks = asked.some(({ verdict }) => verdict === "not met");
  const light = lightness(contract, hive, signs);
  const action =
    doubts.length > 0 ? "look again" : weak.is ? "combine" : lacks ? "hold back" : "place";
  const parts = [
    ...doubts,
    ...(doubts.length > 0 ? [ASK] : []),
    weak.text,
    reasonOf(contract, hive, null),
    light === null ? "stores not judged" : light.text,
  ];
  const reason = saidOnce(parts.flatMap((part) => part.split("; "))).join("; ");
  return { action, feed: light?.is ?? false, reason };
}

/** Whether a hive is to be fed; null where nobody judged its stores. */
function lightness(contract: Contract, { stores }: Hive, signs: Signs): Under | null {
  if (stores !== null) return under("stores", stores, feedUnder(contract), contract.storesUnit);
  if (signs.stores === null) return null;
  const is = signs.stores === "light";
  return { is, text: is ? "stores light" : "" };
}

/** Without what is blank, or only begins what was said before. */
function saidOnce(parts: readonly string[]): string[] {
  return parts.filter(
    (part, i) => part !== "" && !parts.slice(0, i).some((said) => said.startsWith(part)),
  );
}

/** Stores under which a hive is fed, in the contract's unit; enough for now in spring if not said. */
export function feedUnder({ feedUnder, storesUnit, boxFrame }: Contract): number {
  if (feedUnder > 0) return feedUnder;
  const pounds = sources.storesInSpring.value;
  if (storesUnit !== "frames") return pounds * perPound(storesUnit);
  const { least, most } = honeyOfFrame(boxFrame);
  return (2 * pounds) / (least + most);
}

/** Why a hive is to be looked at again; empty where nothing calls for it. */
function doubtsOf(contract: Contract, hive: Hive, signs: Signs): string[] {
  const doubts: string[] = [];
  const { frames, brood, queen } = hive;
  if (frames.middle === 0) doubts.push("no bees, and not said to be dead");
  if (queen === false) doubts.push("no laying queen: requeen or combine once that is sure");
  if (signs.eggs === false) doubts.push("no eggs seen");
  if (isSpotty(signs.pattern)) doubts.push("spotty brood");
  if (isOddDrone(signs.drone)) {
    const scattered = signs.drone === "scattered";
    doubts.push(scattered ? "drone brood scattered in worker cells" : "much drone brood");
  }
  const full = brood?.fullFrames ?? null;
  const needed = (full?.middle ?? 0) * contract.beesForBrood;
  if (frames.middle > 0 && !atLeast(frames.middle, needed)) {
    doubts.push(
      `${plural(rounded(frames.middle), "frame")} of bees for ${rounded(full!.middle)} of brood: fewer than it needs, ${rounded(needed)}`,
    );
  }
  for (const { name, verdict } of requirementsOf(contract, hive)) {
    if (verdict === "not judged") doubts.push(`${name} is asked for and not judged`);
  }
  return doubts;
}

function isSpotty(pattern: Signs["pattern"]): boolean {
  if (pattern === null || pattern === "solid") return false;
  return pattern === "spotty" || solidness(pattern).verdict === "spotty";
}

function isOddDrone(drone: Signs["drone"]): boolean {
  if (drone === null || drone === "normal") return false;
  const [share, place] = typeof drone === "string" ? [1, drone] : [drone.middle, null];
  return droneVerdict(share, null, place).verdict === "look again";
}

interface Under {
  readonly is: boolean;
  readonly text: string;
}

/** Whether the middle is under a line, and what is to be said where it or an end is. */
function under(name: string, has: Estimate, line: number, unit = ""): Under {
  const is = !atLeast(has.middle, line);
  const [low, middle] = [has.low, has.middle].map(rounded);
  const said = unit === "" ? `${name} ${middle}` : `${name} ${middle} ${unit}`;
  if (is) {
    const open =
      has.high === null
        ? `, and ${middle}+ may be more`
        : atLeast(has.high, line)
          ? `, not at the high end of ${rounded(has.high)}`
          : "";
    return { is, text: `${said}, under ${rounded(line)}${open}` };
  }
  const open = !atLeast(has.low, line);
  return { is, text: open ? `${said}, at the low end of ${low} under ${rounded(line)}` : "" };
}
