import { isTerm } from "./sheet-end.js";

/** Columns of one row that stand together, as the heading row of a block might; they count from 0. */
export interface Segment {
  readonly left: number;
  readonly headings: readonly string[];
}

/** One row, whosesoever it is. */
export interface Row {
  readonly width: number;
  readonly textAt: (column: number) => string;
  /** Whether a formula that fills several cells fills this one: what is computed was not written. */
  readonly isFilled: (column: number) => boolean;
}

/**
 * Cuts a row where two columns are empty, where a computed block begins, and before a heading
 * `Term`: a sheet may hold its terms, or the columns computed before, beside the hives. One empty
 * column may stand within a yard sheet.
 *
 * @param computed - the headings by which columns are known that were computed, and kept as values
 */
export function segmentsIn(
  { width, textAt, isFilled }: Row,
  computed: readonly string[],
): Segment[] {
  const segments: Segment[] = [];
  let left = 0;
  let headings: string[] = [];
  let gap = 0;
  const close = (): void => {
    if (headings.length > 0) segments.push({ left, headings });
    headings = [];
  };
  const texts = Array.from({ length: width }, (_, i) => textAt(i));
  texts.forEach((text, i) => {
    const blank = text === "" || isFilled(i);
    gap = blank ? gap + 1 : 0;
    const begins = isTerm(text) || isComputed(texts, i, computed);
    if (begins || gap === 2 || (gap === 1 && isTerm(headings[0] ?? ""))) close();
    if (blank) return;
    if (headings.length === 0) left = i;
    while (headings.length < i - left) headings.push("");
    headings.push(text);
  });
  close();
  return segments;
}

function isComputed(texts: readonly string[], i: number, computed: readonly string[]): boolean {
  return computed.length > 1 && computed.every((text, k) => texts[i + k] === text);
}
