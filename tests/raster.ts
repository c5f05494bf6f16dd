import { Resvg } from "@resvg/resvg-js";

/**
 * Percent of a rectangle of a picture that is painted in some colours, counted pixel by pixel on
 * what resvg makes of the SVG text: these colours are painted black first and all others white. A
 * pixel at an edge counts by its shade.
 *
 * @param box - x, y, width and height in the picture's own units
 */
export function paintedShare(
  svg: string,
  colours: readonly string[],
  [x, y, width, height]: readonly [number, number, number, number],
): number {
  const twoTone = svg
    .replace(/#[0-9a-f]{6}\b/g, (colour) => (colours.includes(colour) ? "#000" : "#fff"))
    .replace(/viewBox="[^"]*"/, `viewBox="${x} ${y} ${width} ${height}"`);
  const { pixels } = new Resvg(twoTone, {
    background: "#fff",
    font: { loadSystemFonts: false },
    fitTo: { mode: "width", value: width * Number(process.env["S"] ?? 1) },
  }).render();
  let white = 0;
  for (let i = 0; i < pixels.length; i += 4) white += pixels[i]! / 255;
  return 100 - (400 * white) / pixels.length;
}

/** The colours of what is claimed to be covered. */
export const BEE_COLOURS = ["#54402a", "#21170d", "#3b2812", "#c08030", "#8d6a3a", "#33240f"];
export const BROOD_COLOURS = [
  ...["#c9a46a", "#7d572c", "#ffffff"],
  ...["#c9a46b", "#7d572d", "#fdfdf6"],
  ...["#c9a46c", "#7d572e", "#fbfbf0", "#b3a27a"],
  ...["#a8702f", "#b98040"],
  ...["#7c4d1c", "#cf9f60", "#f2dcb4"],
];

/** The comb of a deep in a picture: 79 cells of 15 units, 43 rows of 13, from its own corner. */
export const DEEP_COMB = [0, 0, 79 * 15, 43 * 13] as const;
