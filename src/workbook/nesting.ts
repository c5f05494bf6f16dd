import { Problem } from "./problem.js";
import type { Parts } from "./unpack.js";

/** Excel nests XML to about twenty; the library that reads it takes the square of it in time. */
const MOST_DEEP = 1000;

/** What of a workbook is XML. */
const XML = /\.(?:xml|rels|vml)$/i;

/** Refuses a workbook whose XML is nested deeper than any real one's: before it is read. */
export function refuseNested(parts: Parts, name: string): void {
  for (const [path, bytes] of parts) {
    if (!XML.test(path) || !isDeeper(bytes, MOST_DEEP)) continue;
    throw new Problem(
      `${name} is not opened: its part ${path} is nested more than ${MOST_DEEP.toLocaleString("en")} ` +
        "deep, which no spreadsheet writes. Open it in Excel, and save it again.",
    );
  }
}

const [OPEN, CLOSE, SLASH, MARK, ASK, QUOTE, APOSTROPHE] = [..."<>/!?\"'"].map((sign) =>
  sign.charCodeAt(0),
) as [number, number, number, number, number, number, number];

/** Whether elements of an XML text stand within more than so many others. */
export function isDeeper(xml: Uint8Array, most: number): boolean {
  let depth = 0;
  for (let at = next(xml, OPEN, 0); at < xml.length; at = next(xml, OPEN, at)) {
    const sign = xml[at + 1];
    if (sign === MARK || sign === ASK) {
      at = after(xml, at, endOf(xml, at));
      continue;
    }
    const end = endOfTag(xml, at);
    if (end >= xml.length) return false;
    if (sign === SLASH) depth = Math.max(0, depth - 1);
    else if (xml[end - 1] !== SLASH && ++depth > most) return true;
    at = end;
  }
  return false;
}

/** What ends a comment, a block of plain text, an instruction or a declaration that begins here. */
function endOf(xml: Uint8Array, at: number): string {
  const begins = (text: string): boolean =>
    [...text].every((sign, k) => xml[at + k] === sign.charCodeAt(0));
  if (begins("<!--")) return "-->";
  if (begins("<![CDATA[")) return "]]>";
  return begins("<?") ? "?>" : ">";
}

function after(xml: Uint8Array, from: number, text: string): number {
  const signs = [...text].map((sign) => sign.charCodeAt(0));
  for (let at = xml.indexOf(signs[0]!, from); at >= 0; at = xml.indexOf(signs[0]!, at + 1)) {
    if (signs.every((sign, k) => xml[at + k] === sign)) return at + signs.length;
  }
  return xml.length;
}

/** Where a tag ends: not at a `>` within one of its values. */
function endOfTag(xml: Uint8Array, from: number): number {
  for (let at = from; at < xml.length; at++) {
    const sign = xml[at]!;
    if (sign === CLOSE) return at;
    if (sign === QUOTE || sign === APOSTROPHE) at = next(xml, sign, at + 1);
  }
  return xml.length;
}

/** Where a sign stands next, else the end: over the few letters between signs quicker than indexOf. */
function next(xml: Uint8Array, sign: number, from: number): number {
  let at = from;
  while (at < xml.length && xml[at] !== sign) at++;
  return at;
}
