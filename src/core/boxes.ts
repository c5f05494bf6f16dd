import { wordsOf } from "./headings.js";

const words = (text: string): ReadonlySet<string> => new Set(text.split(" "));

/** Words that name one box by its place; two of them name two. */
const ONE_PLACE = words(
  "top bottom bot btm upper lower middle mid first second third d1 d2 d3 d4 m1 m2 s1 s2 1 2 3 4 5 6 one two three four",
);
const PLACE = words(`box bx body super ${[...ONE_PLACE].join(" ")}`);

/** Words of frames, which name the boxes of one frame beside those of others. */
const FRAME = words("deep deeps medium mediums med shallow shallows national dadant zander");
const SEVERAL = words("deeps mediums shallows");

/** Words that say when it was looked. */
const LOOK = words("now today arrival");

const saying = (heading: string, of: ReadonlySet<string>): string =>
  wordsOf(heading)
    .filter((word) => of.has(word))
    .join(" ");

/** When a heading says that it was looked, empty where it does not say. */
export const lookOf = (heading: string): string => saying(heading, LOOK);

/** The box that a heading names by its place and its frame, empty where it says no place. */
export function placeOf(heading: string): string {
  return saying(heading, PLACE) && saying(heading, new Set([...PLACE, ...FRAME]));
}

/** Whether a column can be of one box alone, so that no more combs stand in it than a box holds. */
export function isOneBox(heading: string): boolean {
  return placeOf(heading) !== "" && !namesSeveral(heading) && saying(heading, SEVERAL) === "";
}

function namesSeveral(heading: string): boolean {
  const parts = wordsOf(heading);
  const places = parts.filter((word) => ONE_PLACE.has(word));
  return places.length > 1 || parts.some((word) => word === "boxes" || word === "bodies");
}

/** Whether a heading is that of a column which says of each row which box it is. */
export function headsBoxes(heading: string): boolean {
  const parts = wordsOf(heading);
  return parts.some((word) => BOX.has(word)) && parts.every((word) => BOX_AND.has(word));
}

const BOX = words("box bx body");
const BOX_AND = words("box bx body no nr number # name position place which");

/** Whether a cell holds the name of a box, as the second of two heading rows does. */
export function isBoxName(cell: unknown): boolean {
  const parts = typeof cell === "string" ? wordsOf(cell) : [];
  return parts.length > 0 && parts.every((word) => BOX_NAME.has(word));
}

const BOX_NAME = words(
  `top bottom bot btm upper lower middle box body super t b d1 d2 d3 d4 m1 m2 s1 s2 ${[...FRAME].join(" ")}`,
);

/**
 * Whether a heading says of which box its column is: by its place, by its frame, or as the first of
 * columns that are numbered from 2 on, as a table does with a heading that stands twice.
 */
export function namesBox(heading: string, all: readonly string[]): boolean {
  if (namesSeveral(heading)) return false;
  if (placeOf(heading) !== "" || saying(heading, FRAME) !== "") return true;
  const numbered = (n: number): boolean =>
    all.some((other) => wordsOf(other).join(" ") === [...wordsOf(heading), n].join(" "));
  return numbered(2) && !numbered(1);
}
