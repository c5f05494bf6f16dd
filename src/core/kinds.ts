import { sources } from "./sources.js";

/** What sort of figure a cell holds: its unit, the most it may be, and how it may be written. */
export interface FigureKind {
  readonly unit: string;
  readonly most: number;
  readonly expected: string;
  /** How far `about 5` reaches to either side; null for a figure that is never said so. */
  readonly about: number | null;
  /** Words of its unit that may be written behind a figure. */
  readonly words: ReadonlySet<string>;
}

const words = (text: string): ReadonlySet<string> => new Set(text.split(" "));

/** The sorts of figure that a sheet holds. */
export const KINDS = {
  count: {
    unit: "frames",
    most: sources.mostFrames.value,
    expected: "a count such as 7, 7-8, 7½, about 7, 12+, half, none or dead",
    about: sources.aboutFrames.value,
    words: words("full f f. fr fr. frs frame frames comb combs seam seams"),
  },
  percent: {
    unit: "percent",
    most: 100,
    expected: "a percent such as 60, 60%, 55-65, about 60, half or none",
    about: sources.aboutPercent.value,
    words: words("% percent pct pct."),
  },
  eighths: {
    unit: "eighths of a side",
    most: 8,
    expected: "eighths of a side such as 3, 3-4, 2½ or none",
    about: sources.aboutFrames.value,
    words: words("eighth eighths"),
  },
  amount: {
    unit: "in all",
    most: 1e7,
    expected: "an amount such as 12, 12.5, 10-12 or none",
    about: null,
    words: words("bees cells lb lbs kg"),
  },
} satisfies Record<string, FigureKind>;

export type Kind = keyof typeof KINDS;
