import type { DateOrder } from "./date-text.js";
import type { DateSystem } from "./serial.js";

/** How the figures of a sheet are written; nothing of it is guessed from a figure. */
export interface Writing {
  readonly decimal: "." | ",";
  /** Counts are whole frames, so that 2 Jan can only have been `1-2`, never a half. */
  readonly wholeFrames: boolean;
  /** A number in a percent column is written 60 (`percent`), or is 0.6 shown as 60 % (`fraction`). */
  readonly percentsAs: "percent" | "fraction";
  readonly dateSystem: DateSystem;
  /** Which comes first in a date that stands as text; `one way` where that is not said. */
  readonly dates: DateOrder;
}

export const PLAIN_WRITING: Writing = {
  decimal: ".",
  wholeFrames: false,
  percentsAs: "percent",
  dateSystem: 1900,
  dates: "one way",
};
