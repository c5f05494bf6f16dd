import { between, exactly, type Estimate } from "./estimate.js";
import { KINDS, type Kind } from "./kinds.js";
import type { Writing } from "./writing.js";
import { quote, Refusal } from "./refusal.js";
import type { Token } from "./text.js";

const NONE = new Set(["-", "none", "nil", "no", "nothing", "zero", "empty", "no bees", "no brood"]);
const DEAD = new Set([
  "dead",
  "dead out",
  "dead-out",
  "deadout",
  "dead hive",
  "do",
  "d / o",
  "d.o",
  "d. o",
  "d. o.",
]);
const ABOUT = new Set(
  "~ ≈ about approx approx. approximately around roughly circa ca ca. c.".split(" "),
);
const COUNT_WORDS =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty".split(
    " ",
  );
const PART_WORDS: Readonly<Record<string, number>> = {
  half: 1 / 2,
  "a half": 1 / 2,
  "one half": 1 / 2,
  third: 1 / 3,
  "a third": 1 / 3,
  "one third": 1 / 3,
  "two thirds": 2 / 3,
  quarter: 1 / 4,
  "a quarter": 1 / 4,
  "one quarter": 1 / 4,
  "three quarters": 3 / 4,
};
const COMB = new Set(["frame", "comb", "full"]);
const COMMON_FRACTION = /^(?:1\/2|[12]\/3|[13]\/4)$/;

const joined = (words: readonly Token[]): string => words.map((w) => w.text).join(" ");
const compactly = (words: readonly Token[]): string => joined(words).replaceAll(" - ", "-");

/** Whether a text says of a hive that it is dead, and no more (common practice, no source). */
export function saysDead(words: readonly Token[]): boolean {
  return DEAD.has(compactly(words));
}

/** Walks over the tokens of one figure. */
interface Walk {
  readonly words: readonly Token[];
  readonly kind: Kind;
  readonly writing: Writing;
  readonly cell: string;
  at: number;
}

/**
 * The figure that the tokens of a cell say, null where they say none that is known.
 *
 * @param cell - the cell as it stands, for messages
 * @throws Refusal where the figure could mean two things
 */
export function readFigure(
  words: readonly Token[],
  kind: Kind,
  writing: Writing,
  cell: string,
): Estimate | null {
  const whole = joined(words);
  const compact = compactly(words);
  if (NONE.has(compact)) return exactly(0);
  if (saysDead(words)) return { ...exactly(0), dead: true };
  if (kind === "percent" && whole === "full") return exactly(100);

  const unit = KINDS[kind].words;
  const walk: Walk = { words, kind, writing, cell, at: 0 };
  const atLeast = take(walk, "at", "least") || take(walk, "≥");
  const isBetween = !atLeast && take(walk, "between");
  const about = !atLeast && !isBetween && takeAny(walk, ABOUT);
  const low = value(walk);
  if (low === null) return null;
  takeAny(walk, unit);
  const open = take(walk, "+") || take(walk, "plus") || take(walk, "or", "more") || atLeast;
  const orSo = !open && (take(walk, "ish") || take(walk, "-", "ish") || take(walk, "or", "so"));
  if (!open && !orSo) {
    const either = !isBetween && take(walk, "or");
    const dash = !isBetween && !either && take(walk, "-");
    if (isBetween ? take(walk, "and") : either || dash || take(walk, "to")) {
      const isPart = dash && kind === "count" && partAhead(walk);
      const high = value(walk);
      takeAny(walk, unit);
      if (high === null || !atEnd(walk)) return null;
      // `6-1/2` is six and a half (common practice, no source): no range goes down to a part.
      if (isPart && low > 0 && Number.isInteger(low)) {
        return about ? giveOrTake(low + high, kind) : exactly(low + high);
      }
      return range(low, high, either, cell);
    }
  }
  takeAny(walk, unit);
  if (!atEnd(walk) || isBetween) return null;
  if (open) return openEnded(low);
  return about || orSo ? giveOrTake(low, kind) : exactly(low);
}

function range(from: number, to: number, either: boolean, cell: string): Estimate {
  if (to < from && !either) {
    throw new Refusal(`${quote(cell)} goes down: write the smaller figure first, ${to}-${from}`);
  }
  return between(Math.min(from, to), Math.max(from, to));
}

function openEnded(low: number): Estimate {
  return { low, middle: low, high: null, dead: false, note: `${low} or more, counted as ${low}` };
}

function giveOrTake(middle: number, kind: Kind): Estimate | null {
  const { about, most } = KINDS[kind];
  if (about === null) return null;
  const margin = Math.min(about, middle, most - middle);
  return { low: middle - margin, middle, high: middle + margin, dead: false, note: "" };
}

/** One amount: `7`, `7.5`, `7 1/2`, `7½`, `½`, `1/2`, `seven`, `half a frame`, `five and a half`. */
function value(walk: Walk): number | null {
  const part = eighthsAhead(walk) ? null : partOf(walk);
  if (part !== null) {
    // Half in a column of eighths could be half a side or half an eighth.
    if (walk.kind === "eighths") return null;
    const isOfComb = walk.kind === "percent" && !unitAhead(walk);
    if (isOfComb || walk.kind === "count") takeComb(walk);
    return isOfComb ? part * 100 : part;
  }
  const whole = eighthsOf(walk) ?? numberOf(walk) ?? wordOf(walk);
  if (whole === null) return null;
  const mark = walk.at;
  const joined = take(walk, "and");
  // Two half frames are one, or two and a half.
  if (!joined && partWord(walk.words[mark]?.text ?? "") !== undefined) return null;
  const rest = partOf(walk);
  if (rest === null) walk.at = mark;
  return whole + (rest ?? 0);
}

/** A fraction in figures, and nothing whole before it. */
function partAhead({ words, at }: Walk): boolean {
  const [first, slash] = words.slice(at, at + 2);
  return first?.kind === "fraction" || (first?.kind === "number" && slash?.text === "/");
}

/** Half, and then `a frame`, `of the comb` or `full`. */
function takeComb(walk: Walk): void {
  const before = walk.at;
  take(walk, "of");
  if (!take(walk, "a")) take(walk, "the");
  if (!takeAny(walk, COMB)) walk.at = before;
}

/** `3/8` in a column of eighths: three of them. */
function eighthsOf(walk: Walk): number | null {
  if (!eighthsAhead(walk)) return null;
  const top = numberOf(walk);
  walk.at += 2;
  return top;
}

function eighthsAhead({ kind, words, at }: Walk): boolean {
  const [top, slash, bottom] = words.slice(at, at + 3);
  return (
    kind === "eighths" && top?.kind === "number" && slash?.text === "/" && bottom?.text === "8"
  );
}

function numberOf(walk: Walk): number | null {
  const token = walk.words[walk.at];
  if (token?.kind !== "number") return null;
  if (token.mark !== "" && token.mark !== walk.writing.decimal) {
    throw new Refusal(
      `${quote(walk.cell)} has a "${token.mark}", and the decimal sign is "${walk.writing.decimal}": ` +
        `set the decimal sign, or write it with "${walk.writing.decimal}"`,
    );
  }
  walk.at++;
  return Number(token.text.replace(",", "."));
}

function wordOf(walk: Walk): number | null {
  const token = walk.words[walk.at];
  const count = token?.kind === "word" ? COUNT_WORDS.indexOf(token.text) : -1;
  if (count < 0) return null;
  walk.at++;
  return count;
}

/** `½ %` is half a percent, and `½` alone half of the comb. */
function unitAhead({ kind, words, at }: Walk): boolean {
  return KINDS[kind].words.has(words[at]?.text ?? "");
}

function partWord(text: string): number | undefined {
  return Object.hasOwn(PART_WORDS, text) ? PART_WORDS[text] : undefined;
}

/** A part of one: a fraction sign, `1/2`, or a word. */
function partOf(walk: Walk): number | null {
  const [first, slash, second] = walk.words.slice(walk.at, walk.at + 3);
  if (first?.kind === "fraction") {
    walk.at++;
    return first.value;
  }
  if (first?.kind === "number" && slash?.text === "/" && second?.kind === "number") {
    return slashed(walk, first.text, second.text);
  }
  if (first?.kind !== "word") return null;
  const two = slash?.kind === "word" ? partWord(`${first.text} ${slash.text}`) : undefined;
  const one = partWord(first.text);
  if (two === undefined && one === undefined) return null;
  walk.at += two === undefined ? 1 : 2;
  return two ?? one ?? null;
}

/** `7 5/8` can be nothing else; a bare `7/8` may be two boxes, so only the common parts stand alone. */
function slashed(walk: Walk, top: string, bottom: string): number {
  const afterWhole = walk.words[walk.at - 1]?.kind === "number";
  const part = Number(top) / Number(bottom);
  const plain = /^[1-9]$/.test(top) && /^[2-9]$/.test(bottom) && part < 1;
  if (!plain || (!afterWhole && !COMMON_FRACTION.test(`${top}/${bottom}`))) {
    throw new Refusal(
      part < 1
        ? `${quote(walk.cell)} could be a fraction, ${top} to ${bottom}, or two boxes: write ${top}-${bottom}, ` +
            `a decimal number, or give each box a column`
        : `${quote(walk.cell)} could be a fraction or two boxes: write a decimal number, or give each box a column`,
    );
  }
  walk.at += 3;
  return part;
}

function take(walk: Walk, ...texts: string[]): boolean {
  const found = texts.every((text, i) => walk.words[walk.at + i]?.text === text);
  if (found) walk.at += texts.length;
  return found;
}

function takeAny(walk: Walk, texts: ReadonlySet<string>): boolean {
  const found = texts.has(walk.words[walk.at]?.text ?? "");
  if (found) walk.at++;
  return found;
}

function atEnd(walk: Walk): boolean {
  return walk.at === walk.words.length;
}
