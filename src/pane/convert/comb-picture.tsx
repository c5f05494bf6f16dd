import { DEEP, frameOf, sideArea } from "../../core/comb.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";

interface Props {
  /** How much of the side is covered, 0 to 100. */
  readonly percent: number;
  /** The frame by its name or its size. */
  readonly frame: string;
}

const WIDTH = 200;
const DEEP_HEIGHT = 100;
/** The wood around the comb, and the lugs of the top bar. */
const WOOD = 5;
const LUG = 12;

/** One side of a comb in its frame, with as much of it covered as is said. */
export function CombPicture({ percent, frame }: Props) {
  const height = (DEEP_HEIGHT * sideArea(frameOf(frame))) / sideArea(DEEP);
  const share = Math.min(100, Math.max(0, percent)) / 100;
  const [width, tall] = [WIDTH * Math.sqrt(share), height * Math.sqrt(share)];
  // Corners are rounded as a patch's are, and the sides moved out by what the corners lose.
  const corner = Math.min(width, tall) * 0.45 * (1 - share);
  const grown = Math.sqrt(1 + ((4 - Math.PI) * corner * corner) / (width * tall || 1));
  const [w, h] = [Math.min(WIDTH, width * grown), Math.min(height, tall * grown)];
  const box = `${-LUG - WOOD} ${-WOOD * 2} ${WIDTH + 2 * (LUG + WOOD)} ${height + WOOD * 3}`;
  return (
    <svg
      class="comb"
      viewBox={box}
      role="img"
      aria-label={texts.convert.picture(shownNumber(percent, "."), frame)}
    >
      <rect
        class="wood"
        x={-LUG - WOOD}
        y={-2 * WOOD}
        width={WIDTH + 2 * (LUG + WOOD)}
        height={2 * WOOD}
      />
      <rect class="wood" x={-WOOD} y={0} width={WIDTH + 2 * WOOD} height={height + WOOD} />
      <rect class="wax" x={0} y={0} width={WIDTH} height={height} />
      {share > 0 && (
        <rect
          class="covered"
          x={(WIDTH - w) / 2}
          y={(height - h) / 2}
          width={w}
          height={h}
          rx={corner}
        />
      )}
    </svg>
  );
}
