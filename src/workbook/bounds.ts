import { spanOf, sizeOf } from "./area.js";
import { Problem } from "./problem.js";
import type { Parts } from "./unpack.js";

/** A cell in memory takes about 400 bytes, with the copy that is written about a thousand. */
const MOST_CELLS = 3_000_000;

const SHEET = /^xl\/worksheets\/[^/]+\.xml$/;
const BOOK = /^xl\/workbook\.xml$/;
const TABLE = /^xl\/tables\/[^/]+\.xml$/;

/** A few letters of XML can ask for every cell of a sheet: what they ask for, and where it stands. */
interface Asked {
  readonly path: RegExp;
  /** Without it there is no such tag: looked for first, since it is found many times as quickly. */
  readonly word: string;
  readonly tag: RegExp;
  readonly what: string;
}

const ASKED: readonly Asked[] = [
  {
    path: SHEET,
    word: "mergeCell",
    tag: /<(?:\w+:)?mergeCell\s[^>]*\bref="([^"]*)"/g,
    what: "merged blocks",
  },
  {
    path: SHEET,
    word: 't="array"',
    tag: /<(?:\w+:)?f\s(?=[^>]*\bt="array")[^>]*\bref="([^"]*)"/g,
    what: "formulas that fill blocks",
  },
  {
    path: BOOK,
    word: "definedName",
    tag: /<(?:\w+:)?definedName\s[^>]*>[^<]*!([$A-Z\d:]*)</g,
    what: "names",
  },
  {
    path: TABLE,
    word: "table",
    tag: /<(?:\w+:)?table\s[^>]*\bref="([^"]*)"/g,
    what: "tables",
  },
];

/** Refuses a workbook with more cells, or blocks of more cells, than memory holds: before it is opened. */
export function refuseBoundless(parts: Parts, name: string): void {
  const asked = new Map<string, number>();
  const add = (what: string, cells: number): void => {
    const sum = (asked.get(what) ?? 0) + cells;
    asked.set(what, sum);
    if (sum > MOST_CELLS) throw tooMany(name, what);
  };
  for (const [path, bytes] of parts) {
    const asking = ASKED.filter((asked) => asked.path.test(path));
    if (asking.length === 0) continue;
    const text = new TextDecoder().decode(bytes);
    if (SHEET.test(path)) {
      add("sheets", countOf(text, "<c ") + countOf(text, ":c "));
      if (lastColumn(text) > 16_384)
        throw new Problem(`${name} is damaged: a sheet has no more than 16,384 columns.`);
    }
    for (const { word, tag, what } of asking) {
      if (!text.includes(word)) continue;
      for (const [, ref = ""] of text.matchAll(tag)) add(what, cellsOf(ref));
    }
  }
}

function tooMany(name: string, what: string): Problem {
  return new Problem(
    `${name} has ${what} of more than ${MOST_CELLS.toLocaleString("en")} cells together, which is ` +
      "more than is read. Save the yard sheet and its terms in a workbook of their own.",
  );
}

function countOf(text: string, sign: string): number {
  let count = 0;
  for (let at = text.indexOf(sign); at >= 0; at = text.indexOf(sign, at + 1)) count++;
  return count;
}

function lastColumn(text: string): number {
  let last = 0;
  for (const [, max] of text.matchAll(/<(?:\w+:)?col\s[^>]*\bmax="(\d+)"/g)) {
    last = Math.max(last, Number(max));
  }
  return last;
}

/** What is no address is left for the library to refuse. */
const cellsOf = (ref: string): number => (ADDRESS.test(ref) ? sizeOf(spanOf(ref)) : 0);

const ADDRESS = /^\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?$/i;
