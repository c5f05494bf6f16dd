import { countOfDateText, countOfSerial, isDateSerial, type AskYear } from "./date-count.js";
import { readFigure } from "./figure.js";
import { quote, Refusal } from "./refusal.js";
import { PLAIN_WRITING, type Writing } from "./writing.js";
import { exactly, type Estimate } from "./estimate.js";
import { KINDS, type Kind } from "./kinds.js";
import { normalise, tokens } from "./text.js";

const LONGEST = 60;

/**
 * Reads a figure as people write it: a count of combs or seams, a percent, eighths, an amount.
 *
 * @param cell - a number or a text
 * @param kind - `count` in frames, 0 to 60; `percent`, 0 to 100; `eighths` of a side, 0 to 8;
 *   `amount` of anything, 0 to ten million
 * @param writing - decimal sign and the rest of how the sheet is written
 * @param inspected - asks for the year of the inspection: a count that became a date carries the
 *   year in which it was typed
 * @returns low, middle and high in the kind's unit
 * @throws Refusal that quotes the text and says what was expected
 * @example read("7-8", "count") // { low: 7, middle: 7.5, high: 8, dead: false, note: "" }
 */
export function read(
  cell: number | string,
  kind: Kind,
  writing: Writing = PLAIN_WRITING,
  inspected: AskYear = () => null,
): Estimate {
  if (typeof cell === "number") return readNumber(cell, kind, writing, inspected);
  if (cell.length > LONGEST) refuse(cell, kind);
  const text = normalise(cell);
  const words = tokens(text);
  const found =
    (kind === "count"
      ? countOfDateText(text, words, quote(cell), writing.wholeFrames, inspected)
      : null) ?? readFigure(words, kind, writing, cell);
  if (found === null) return refuse(cell, kind);
  const unmarked = words.every((w) => w.kind === "number");
  if (kind === "percent" && unmarked) refuseFraction(found.middle);
  return within(found, kind, quote(cell));
}

function readNumber(value: number, kind: Kind, writing: Writing, inspected: AskYear): Estimate {
  if (kind === "percent") {
    if (writing.percentsAs === "fraction") return within(exactly(value * 100), kind, `${value}`);
    refuseFraction(value);
  } else if (kind === "count" && isDateSerial(value)) {
    return countOfSerial(value, writing, inspected);
  }
  return within(exactly(value), kind, `${value}`);
}

/** 0.6 in a percent column is sixty percent in a cell formatted so, or a slip: only the user knows. */
function refuseFraction(value: number): void {
  if (value <= 0 || value >= 1) return;
  const percent = +(value * 100).toPrecision(6);
  throw new Refusal(
    `${value} may be ${percent} % or ${value} %: write ${percent}, ` +
      `or say that percents are written as fractions`,
  );
}

function within(estimate: Estimate, kind: Kind, shown: string): Estimate {
  const { most, unit } = KINDS[kind];
  const top = estimate.high ?? estimate.middle;
  if (estimate.low >= 0 && top <= most) return estimate;
  throw new Refusal(`${shown} is out of range: 0 to ${most} ${unit} were expected`);
}

function refuse(text: string, kind: Kind): never {
  throw new Refusal(`${quote(text)} is not understood: ${KINDS[kind].expected} was expected`);
}
