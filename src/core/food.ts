import { sideArea, type FrameSize } from "./comb.js";
import { scale, type Estimate } from "./estimate.js";
import { sources } from "./sources.js";

/** Food on a cm2 of one side, in g: the Liebefeld method's 125 g an eighth of a Zander side. */
const PER_CM2 = (8 * sources.foodPerEighth.value) / sources.zanderCombArea.value;

/**
 * Food on one side of a comb.
 *
 * @param percent - of the side that holds food, 0 to 100
 * @returns g
 * @example foodOnSide(exactly(50), frameOf("zander")).middle // 500
 */
export function foodOnSide(percent: Estimate, frame: FrameSize): Estimate {
  return scale(percent, (sideArea(frame) * PER_CM2) / 100);
}
