import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { normalise } from "./text.js";

export const CM_PER_INCH = 2.54;
/** Square centimetres in a square inch. */
export const CM2_PER_IN2 = CM_PER_INCH * CM_PER_INCH;

/**
 * A frame's size, one side in cm2, as the sources give it: the sheet of foundation, the comb inside
 * the frame, or both. The two differ by a few percent and are never divided by each other.
 */
export interface FrameSize {
  readonly name: string;
  readonly foundation: number | null;
  readonly comb: number | null;
}

const langstroth = sources.deepFoundationWidth.value;
const national = sources.nationalFoundationWidth.value;

function fromFoundation(name: string, width: number, height: number): FrameSize {
  return { name, foundation: width * height * CM2_PER_IN2, comb: null };
}

/** The deep that every other frame is compared with; the only one whose two sizes are both known. */
export const DEEP = {
  name: "deep",
  foundation: langstroth * sources.deepFoundationHeight.value * CM2_PER_IN2,
  comb: sources.deepCombArea.value * CM2_PER_IN2,
} satisfies FrameSize;

/** The frames known by name; any other is given by its size. */
export const FRAMES: readonly FrameSize[] = [
  DEEP,
  fromFoundation("medium", langstroth, sources.mediumFoundationHeight.value),
  fromFoundation("shallow", langstroth, sources.shallowFoundationHeight.value),
  fromFoundation("national deep", national, sources.nationalDeepHeight.value),
  fromFoundation("national shallow", national, sources.nationalShallowHeight.value),
  fromFoundation("national 14x12", national, sources.national14x12Height.value),
  { name: "dadant", foundation: null, comb: sources.dadantCombArea.value },
  { name: "zander", foundation: null, comb: sources.zanderCombArea.value },
];

/**
 * The frame that a name or a size stands for.
 *
 * @param text - one of the names of FRAMES, or width x height with its unit: `42 x 27 cm`,
 *   `16.75 x 8.625 in foundation`; a size is that of the comb inside the frame, which a ruler can
 *   measure in a drawn comb and the sources' bees stand on, unless `foundation` is added
 * @throws Refusal that lists the names
 * @example frameOf("42 x 27 cm").comb // 1134
 */
export function frameOf(text: string): FrameSize {
  const name = normalise(text).replace(/ frames?$/, "");
  const known = FRAMES.find((frame) => frame.name === name);
  if (known) return known;
  const size =
    /^(\d+(?:\.\d+)?) ?[x×] ?(\d+(?:\.\d+)?) ?(in|inch|inches|"|cm|mm)(?: (comb|foundation))?$/.exec(
      name,
    );
  const [, width, height, unit, basis] = size ?? [];
  const area = Number(width) * Number(height) * (CM2_OF[unit!] ?? CM2_PER_IN2);
  if (!size || !(area > 0)) {
    const names = FRAMES.map((frame) => frame.name).join(", ");
    throw new Refusal(
      `${quote(text)} is no frame that is known: give ${names}, or the comb's size inside the frame with its unit, such as 42 x 27 cm`,
    );
  }
  return basis === "foundation"
    ? { name, foundation: area, comb: null }
    : { name, foundation: null, comb: area };
}

const CM2_OF: Readonly<Record<string, number>> = { cm: 1, mm: 0.01 };

/**
 * How many deep combs one comb of this frame makes: foundation to foundation or comb to comb.
 *
 * @example deepEquivalent(frameOf("shallow")) // 0.5652
 */
export function deepEquivalent(frame: FrameSize): number {
  return frame.foundation === null
    ? (frame.comb ?? DEEP.comb) / DEEP.comb
    : frame.foundation / DEEP.foundation;
}

/** How many combs of frame `to` one comb of frame `from` makes. */
export function equivalent(from: FrameSize, to: FrameSize): number {
  return deepEquivalent(from) / deepEquivalent(to);
}

/** The area of one side of a comb inside its frame, in cm2. */
export function sideArea(frame: FrameSize): number {
  return frame.comb ?? deepEquivalent(frame) * DEEP.comb;
}
