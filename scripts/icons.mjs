/** Draws the add-in's icons: a piece of comb with five tally strokes on it. `node scripts/icons.mjs` */
import { writeFileSync } from "node:fs";
import { png } from "./png.mjs";

const AMBER = [240, 166, 28];
const WALL = [252, 214, 120];
const INK = [58, 34, 12];
/** Each pixel is the mean of SAMPLES x SAMPLES points. */
const SAMPLES = 8;

const SQRT3 = Math.sqrt(3);

/** How far a point is from a hexagon's middle, 1 on its edge; the hexagon stands on a corner. */
function hexagon(/** @type {number} */ x, /** @type {number} */ y, /** @type {number} */ inner) {
  const across = Math.abs(x);
  const slanted = (Math.abs(x) + SQRT3 * Math.abs(y)) / 2;
  return Math.max(across, slanted) / inner;
}

/** Whether the point lies in the wall between two cells of a comb with a cell in the middle. */
function isWall(/** @type {number} */ x, /** @type {number} */ y, /** @type {number} */ inner) {
  const height = SQRT3 * inner;
  let nearest = Infinity;
  for (let row = -2; row <= 2; row++) {
    for (let column = -3; column <= 3; column++) {
      const cx = 2 * inner * column + (row % 2 === 0 ? 0 : inner);
      nearest = Math.min(nearest, hexagon(x - cx, y - row * height, inner));
    }
  }
  return nearest > 0.87;
}

/** Whether the point lies on a stroke with round ends. */
function onStroke(
  /** @type {number} */ x,
  /** @type {number} */ y,
  /** @type {number[]} */ [x1 = 0, y1 = 0, x2 = 0, y2 = 0],
) {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const along = ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - x1 - t * dx, y - y1 - t * dy) <= STROKE_WIDTH / 2;
}

/** Placed and sized so that the upright strokes fill whole pixels at all four sizes. */
const STROKE_WIDTH = 0.125;
const STROKES = [
  ...[-0.5625, -0.1875, 0.1875, 0.5625].map((x) => [x, -0.5, x, 0.5]),
  [-0.76, 0.34, 0.76, -0.34],
];

/** The colour at a point of the picture, which spans -1 to 1; null is see-through. */
function colour(/** @type {number} */ x, /** @type {number} */ y, /** @type {number} */ size) {
  if (hexagon(x, y, SQRT3 / 2) > 1) return null;
  if (STROKES.some((stroke) => onStroke(x, y, stroke))) return INK;
  // At 16 pixels the walls would only blur the strokes.
  return size >= 32 && isWall(x, y, SQRT3 / 2 / 3) ? WALL : AMBER;
}

function draw(/** @type {number} */ size) {
  const pixels = new Uint8Array(size * size * 4);
  for (let i = 0; i < size * size; i++) {
    const sum = [0, 0, 0];
    let hits = 0;
    for (let s = 0; s < SAMPLES * SAMPLES; s++) {
      const x = (i % size) + ((s % SAMPLES) + 0.5) / SAMPLES;
      const y = Math.floor(i / size) + (Math.floor(s / SAMPLES) + 0.5) / SAMPLES;
      const seen = colour((2 * x) / size - 1, (2 * y) / size - 1, size);
      if (!seen) continue;
      hits++;
      seen.forEach((value, k) => (sum[k] = (sum[k] ?? 0) + value));
    }
    pixels.set([...sum.map((v) => v / (hits || 1)), (255 * hits) / SAMPLES ** 2], i * 4);
  }
  return png(size, pixels);
}

for (const size of [16, 32, 64, 80]) {
  const file = new URL(`../manifest/assets/icon-${size}.png`, import.meta.url);
  writeFileSync(file, draw(size));
}
