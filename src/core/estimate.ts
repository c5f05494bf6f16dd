import { toPlaces } from "./places.js";
import { Refusal } from "./refusal.js";
import { together } from "./together.js";

/**
 * A figure judged by eye: `7-8` is low 7, middle 7.5, high 8. `12+` has no upper end: its high is
 * null.
 */
export interface Estimate {
  readonly low: number;
  readonly middle: number;
  readonly high: number | null;
  /** Written as `dead`: a dead-out, not merely no bees seen. */
  readonly dead: boolean;
  /** What the reader should know, such as a date that was read back as a count; else empty. */
  readonly note: string;
}

/** An estimate without doubt, as a plain number is. */
export function exactly(value: number): Estimate {
  return { low: value, middle: value, high: value, dead: false, note: "" };
}

/** A range whose middle lies half way. */
export function between(low: number, high: number, note = ""): Estimate {
  return { low, middle: (low + high) / 2, high, dead: false, note };
}

/**
 * The sum of a hive's boxes. Lows add to the low and highs to the high: the hive's true count lies
 * between, if each box's does. Dead only where every box with a count is.
 */
export function sum(boxes: readonly Estimate[]): Estimate {
  if (boxes.length === 1) return boxes[0]!;
  let [low, middle, high]: [number, number, number | null] = [0, 0, 0];
  let note = "";
  for (const box of boxes) {
    low += box.low;
    middle += box.middle;
    high = high === null || box.high === null ? null : high + box.high;
    note = bothNotes(note, box.note);
  }
  const dead = middle === 0 && boxes.some((box) => box.dead);
  return { low, middle, high, dead, note };
}

/** What is to be known of two figures of which one is made. */
export function bothNotes(first: string, second: string): string {
  return first === second ? first : together(first, second);
}

/** An estimate made of two, by what grows with either; dead as the first is. */
export function combine(
  first: Estimate,
  second: Estimate,
  make: (first: number, second: number) => number,
): Estimate {
  return {
    low: make(first.low, second.low),
    middle: make(first.middle, second.middle),
    high: first.high === null || second.high === null ? null : make(first.high, second.high),
    dead: first.dead,
    note: bothNotes(first.note, second.note),
  };
}

/** An estimate in another unit, by a conversion under which more stays more. */
export function map(estimate: Estimate, convert: (value: number) => number): Estimate {
  const { low, middle, high } = estimate;
  return {
    ...estimate,
    low: convert(low),
    middle: convert(middle),
    high: high === null ? null : convert(high),
  };
}

/** An estimate in another unit: every end times the factor. */
export function scale(estimate: Estimate, factor: number): Estimate {
  return factor === 1 ? estimate : map(estimate, (value) => value * factor);
}

/**
 * An estimate written the way it would be said: `7.5`, `7-8`, `12+`, with a unit sign `60%`; read
 * again it is itself.
 */
export function print(
  { low, middle, high, dead }: Estimate,
  decimal: "." | "," = ".",
  sign = "",
): string {
  if (dead) return "dead";
  const text =
    high === null
      ? `${plain(middle)}+`
      : low === high
        ? plain(low)
        : `${plain(low)}-${plain(high)}`;
  return (decimal === "," ? text.replaceAll(".", ",") : text) + sign;
}

/** A number without an exponent, as people write one. */
function plain(value: number): string {
  const text = String(value);
  return text.includes("e") ? value.toFixed(20).replace(/\.?0+$/, "") : text;
}

/** Refuses columns that belong together two and two, where one is left over. */
export function checkPairs(columns: readonly Estimate[], are: string): void {
  if (columns.length % 2 === 0) return;
  throw new Refusal(
    `${are} stand two and two: give an even number of columns, not ${columns.length}`,
  );
}

/** A figure to two places, to be read in a sentence. */
export function rounded(value: number): number {
  return toPlaces(value, 2);
}
