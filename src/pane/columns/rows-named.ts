import { texts } from "../texts.js";
import type { Yard } from "./yard.js";

/**
 * What is to be said beside a sentence of a function, which counts rows from the headings that it was
 * given: nothing where it names none, or where the sheet counts them alike.
 */
export function rowsNamed(
  { place }: Pick<Yard, "place">,
  ...sentences: readonly unknown[]
): string {
  const isNamed = sentences.some((text) => typeof text === "string" && /\brows? \d/.test(text));
  return isNamed && place.row > 0 ? ` ${texts.columns.rowsFrom(place.row + 1)}` : "";
}
