import { REACH, type Bee } from "./comb-bees.js";
import { BROOD, CONTENTS, type Content } from "./comb-brood.js";
import { CELL, ROW } from "./comb-lattice.js";
import type { CombPicture } from "./comb-picture.js";

/** A stroke along a path: colour, width, the dashes along it and where the first begins. */
interface Stroke {
  readonly colour: string;
  readonly width: number;
  readonly dash?: string;
  readonly from?: number;
  readonly round?: true;
}

/**
 * How the cells of a content are drawn: the colour of their walls or caps, and round marks in their
 * middle, each as colour, width and length. No colour stands for two contents, so that the parts of
 * a picture can be counted.
 */
type Look = readonly [walls: string, ...marks: (readonly [string, number, number?])[]];
const WALLS = "#f0dcae";
const HOLLOW = "#d9b97c";
const LOOKS: Readonly<Record<Content, Look>> = {
  egg: ["#c9a46a", ["#7d572c", 11], ["#ffffff", 2, 4]],
  "young larva": ["#c9a46b", ["#7d572d", 11], ["#fdfdf6", 5]],
  "old larva": ["#c9a46c", ["#7d572e", 12], ["#fbfbf0", 9.5], ["#b3a27a", 2.5, 2]],
  "capped worker": ["#a8702f", ["#b98040", 11]],
  "capped drone": ["#7c4d1c", ["#cf9f60", 12.5], ["#f2dcb4", 6]],
  empty: [WALLS, [HOLLOW, 12.5]],
  honey: ["#f3e6c4", ["#fcf5e1", 12]],
  pollen: [WALLS, ["#d9822b", 10]],
};

/** Cells at whose edge what stands beside them is drawn over them. */
const OVERDRAWN: ReadonlySet<Content> = new Set(BROOD);

/**
 * A hexagon as three bricks, height and width: together they have its area and leave no gap between
 * cells.
 */
const HEXAGON = [
  [10, CELL],
  [ROW, 10],
  [16, 5],
] as const;

const SHADOW = "#54402a";
const OUTLINE = "#21170d";
/** A bee, over a line from its tail to its head: outlines, tail, abdomen, bands, thorax, head. */
const BEE: readonly Stroke[] = [
  part(OUTLINE, 12, 0),
  part(OUTLINE, 16, 4, 6),
  part(OUTLINE, 13.5, 17),
  part(OUTLINE, 10.5, 22.5),
  part("#3b2812", 10, 0),
  part("#c08030", 14, 4, 6),
  { colour: "#3b2812", width: 14, dash: "1.5 2.7 1.5 2.7 1.5 99", from: 0.5 },
  part("#8d6a3a", 12, 17),
  part("#33240f", 9, 22.5),
];

function part(colour: string, width: number, from: number, length = 0.01): Stroke {
  return { colour, width, dash: `${length} 99`, from, round: true };
}

/**
 * One side of a comb in its frame, as SVG text. What is under bees is dark, the comb is light.
 *
 * @param id - begins every id in it, so that several pictures can stand on one page
 */
export function drawComb(picture: CombPicture, id: string): string {
  const { width, height } = picture.lattice;
  const [left, top] = [-CELL / 4, ROW / 2];
  const cells = CONTENTS.map((content, i) => drawCells(picture, content, `${id}c${i}`)).join("");
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-70 -50 ${width + 140} ${height + 90}" fill="none">` +
    `<path fill="${WALLS}" d="M0 0h${width}v${height}h-${width}z"/>` +
    `<g transform="translate(${left} ${top})">${cells}</g>` +
    `<path fill="#cfae7c" stroke="#8d6b3c" stroke-width="2" fill-rule="evenodd" d="${frame(width, height)}"/>` +
    `${drawBees(picture.bees, id)}</svg>`
  );
}

/** The wood: top bar with its lugs, side bars and bottom bar, with a hole for the comb. */
function frame(width: number, height: number): string {
  const outside = `M-70-50h${width + 140}v40h-40v${height + 46}h${-width - 60}v${-height - 46}h-40z`;
  return `${outside}M-1-1v${height + 2}h${width + 2}v${-height - 2}z`;
}

function drawCells(picture: CombPicture, content: Content, id: string): string {
  const d = runs(picture, content);
  if (d === "") return "";
  const [walls, ...marks] = LOOKS[content];
  // Brood is drawn a little over its edge, and what is beside it is drawn over that.
  const over = OVERDRAWN.has(content) ? 0.4 : 0;
  const bricks = HEXAGON.map(([high, wide]) => inCells(walls, high + over, wide + over));
  const dots = marks.map(([colour, size, long = 0.01]): Stroke => {
    return { ...inCells(colour, size, long), round: true };
  });
  return path(id, d) + [...bricks, ...dots].map((stroke) => use(id, stroke)).join("");
}

/** A stroke once in each cell, in its middle; as one where cells meet. */
function inCells(colour: string, width: number, length: number): Stroke {
  if (length >= CELL) return { colour, width };
  return { colour, width, dash: `${length} ${CELL - length}`, from: (CELL - length) / 2 };
}

/**
 * The runs of cells of a content along each row, as lines through their middles. The outermost cells
 * are drawn once more outside, since the frame cuts the hexagons at its sides.
 */
function runs({ lattice: { columns, rows }, contents }: CombPicture, content: Content): string {
  const inside = (n: number, most: number) => Math.min(most - 1, Math.max(0, n));
  let d = "";
  for (let row = -1; row <= rows; row++) {
    const isHere = (column: number): boolean =>
      contents[inside(row, rows) * columns + inside(column, columns)] === content;
    const shift = row % 2 === 0 ? 0 : CELL / 2;
    let to = 0;
    for (let from = -1; from <= columns; from = to + 1) {
      to = from;
      while (to <= columns && isHere(to)) to++;
      if (to > from) d += `M${from * CELL + shift} ${row * ROW}h${(to - from) * CELL}`;
    }
  }
  return d;
}

function drawBees(bees: readonly Bee[], id: string): string {
  if (bees.length === 0) return "";
  const layers = [0, 1, 2].map((layer) => bees.filter((bee) => bee.layer === layer));
  const lines = layers.map((of, i) => path(`${id}b${i}`, of.map(lineOf).join("")));
  const shadow: Stroke = { colour: SHADOW, width: 2 * REACH, round: true };
  const shadows = layers.map((_, i) => use(`${id}b${i}`, shadow));
  const bodies = layers.flatMap((_, i) => BEE.map((stroke) => use(`${id}b${i}`, stroke)));
  return [...lines, ...shadows, ...bodies].join("");
}

function lineOf({ x, y, dx, dy }: Bee): string {
  return `M${x - dx} ${y - dy}l${2 * dx} ${2 * dy}`;
}

function path(id: string, d: string): string {
  return `<defs><path id="${id}" d="${d}"/></defs>`;
}

function use(id: string, { colour, width, dash, from = 0, round }: Stroke): string {
  const dashes = dash === undefined ? "" : ` stroke-dasharray="${dash}"`;
  const offset = from === 0 ? "" : ` stroke-dashoffset="${-from}"`;
  const cap = round ? ` stroke-linecap="round"` : "";
  return `<use href="#${id}" stroke="${colour}" stroke-width="${width}"${dashes}${offset}${cap}/>`;
}
