/** The eye guide as one page to print: the words of docs/eye-guide.md, then the pictures. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Marked } from "marked";
import { runnerImport } from "vite";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(`../${name}`, import.meta.url));

export const EYE_GUIDE = path("docs/eye-guide.html");

/**
 * A picture of the guide: bees, or brood in a pattern, on so many percent of a comb's side.
 * @typedef {{
 *   what: "bees" | import("../src/core/comb-brood.js").Pattern,
 *   percent: number,
 *   seed: number,
 *   name: string,
 *   caption: string,
 * }} Picture
 */

/** @type {(what: Picture["what"], percent: number, seed: number, name: string, caption: string) => Picture} */
const picture = (what, percent, seed, name, caption) => ({ what, percent, seed, name, caption });

/** The sheets of the guide, four pictures each. */
export const SHEETS = [
  {
    title: "Bees: from a tenth to a half",
    pictures: [
      picture(
        "bees",
        10,
        3,
        "A tenth",
        "One knot of bees and some strays. Nearly all is bare comb.",
      ),
      picture("bees", 25, 4, "A quarter", "Pushed together, they fill one of four equal parts."),
      picture(
        "bees",
        33,
        2,
        "A third",
        "Three such sides make one full side. Two thirds of the comb are bare.",
      ),
      picture(
        "bees",
        50,
        5,
        "Half",
        "Pushed together, they fill the comb to its middle. As much is bare as is covered: count the corners.",
      ),
    ],
  },
  {
    title: "Bees: from two thirds to all",
    pictures: [
      picture(
        "bees",
        67,
        4,
        "Two thirds",
        "A third is bare: corners and one end. Some contracts count a comb whole from here.",
      ),
      picture(
        "bees",
        75,
        5,
        "Three quarters",
        "The bare parts together are a quarter. Other contracts count a comb whole from here, on both sides.",
      ),
      picture(
        "bees",
        90,
        2,
        "Nine tenths",
        "A corner or an edge shows, and chinks between the bees.",
      ),
      picture(
        "bees",
        100,
        3,
        "All",
        "Chinks alone. More bees than these stand on each other and cover no more comb.",
      ),
    ],
  },
  {
    title: "Capped brood: from a tenth to a half",
    pictures: [
      picture("solid", 10, 2, "A tenth", "An oval of about 5 by 3½ inches, 13 by 9 cm."),
      picture(
        "solid",
        25,
        5,
        "A quarter",
        "An oval six tenths as long and six tenths as high as the comb.",
      ),
      picture("solid", 33, 3, "A third", "Pollen beside it, honey above: neither is brood."),
      picture(
        "solid",
        50,
        2,
        "Half",
        "The outline goes round a little more than half: one cell in twelve of the patch is empty, and not counted.",
      ),
    ],
  },
  {
    title: "Capped brood: from two thirds to all",
    pictures: [
      picture("solid", 67, 4, "Two thirds", "Only the ends and corners have none."),
      picture(
        "solid",
        75,
        5,
        "Three quarters",
        "The corners, and the empty cells in the patch, are together a quarter.",
      ),
      picture("solid", 90, 2, "Nine tenths", "Wall to wall, with corners left."),
      picture("solid", 100, 3, "All", "Every cell of the side, to compare with."),
    ],
  },
  {
    title: "Brood by its stage",
    pictures: [
      picture(
        "eggs",
        40,
        5,
        "Eggs",
        "A white stroke on the bottom of the cell, the first three days. Tilt the comb to the sun.",
      ),
      picture(
        "young larvae",
        40,
        4,
        "Young larvae",
        "A small white curl in its food, from the fourth day.",
      ),
      picture(
        "old larvae",
        40,
        3,
        "Old larvae",
        "Fat and white, filling the cell; capped on about the ninth day.",
      ),
      picture(
        "clear centre",
        50,
        4,
        "Eggs in a clear centre",
        "The middle looks empty beside the capped ring. It is not: bees have emerged there, and the queen has laid again. These eggs are 3 in 10 of this brood.",
      ),
    ],
  },
  {
    title: "Capped brood by its pattern",
    pictures: [
      picture("solid", 45, 4, "Solid", "Few cells are empty: 5 to 20 % is usual (from memory)."),
      picture(
        "spotty",
        45,
        4,
        "Spotty",
        "Three cells in ten are empty. Look again, and ask someone who knows.",
      ),
      picture(
        "drone patch",
        45,
        4,
        "A drone patch",
        "Domed caps together at the edge: 8 in 100 of this brood. Normal in build-up and summer.",
      ),
      picture(
        "drone scattered",
        45,
        4,
        "Drones scattered",
        "Domed caps here and there in worker cells, a quarter of this brood. A warning at any share: look again, and ask someone who knows.",
      ),
    ],
  },
];

export async function eyeGuidePage() {
  const { module: core } = await runnerImport(path("src/core/comb-picture.ts"));
  const { module: drawing } = await runnerImport(path("src/core/comb-drawing.ts"));
  const { combWithBees, combWithBrood } =
    /** @type {typeof import("../src/core/comb-picture.js")} */ (core);
  const { drawComb } = /** @type {typeof import("../src/core/comb-drawing.js")} */ (drawing);
  const draw = (/** @type {Picture} */ { what, percent, seed }, /** @type {string} */ id) =>
    drawComb(
      what === "bees" ? combWithBees(percent, seed) : combWithBrood(what, percent, seed),
      id,
    );
  const sheets = SHEETS.map(({ title, pictures }, s) => {
    const figures = pictures.map((of, p) => figure(of, draw(of, `s${s}p${p}`)));
    return `<section>\n<h2>${title}</h2>\n${figures.join("\n")}\n</section>`;
  });
  return readFileSync(path("scripts/eye-guide.html"), "utf8")
    .replace("<!-- words -->", words())
    .replace("<!-- pictures -->", sheets.join("\n"));
}

/** @type {(picture: Picture, svg: string) => string} */
function figure({ what, percent, name, caption }, svg) {
  const holds = what === "bees" ? "under bees" : "with brood";
  return (
    `<figure><div role="img" aria-label="${name}: ${percent} % ${holds}">${svg}</div>\n` +
    `<figcaption><strong>${name}</strong><span class="percent">${percent} % ${holds}</span>${caption}</figcaption></figure>`
  );
}

/** The handwritten words; what leads out of them, or is for the handbook alone, stays away. */
function words() {
  const marked = new Marked({
    renderer: {
      link({ tokens }) {
        return this.parser.parseInline(tokens);
      },
      image: () => "",
      paragraph({ tokens }) {
        const inner = this.parser.parseInline(tokens);
        return inner === "" ? "" : `<p>${inner}</p>\n`;
      },
    },
  });
  return /** @type {string} */ (marked.parse(readFileSync(path("docs/eye-guide.md"), "utf8")));
}
