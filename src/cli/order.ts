import type { Progress } from "./progress.js";
import type { ContractSource } from "./source.js";

/** What was asked for on the command line, and how to answer. */
export interface Order {
  readonly input: string;
  readonly output: string;
  readonly contract: ContractSource;
  /** The contract to grade under, by its name in the terms. */
  readonly under: string | null;
  readonly asValues: boolean;
  /** Says only what went wrong, and where the copy is. */
  readonly isQuiet: boolean;
  /** Columns of the terminal. */
  readonly width: number;
  readonly progress: Progress;
}

/** What came of it: text to print, and whether every cell could be calculated. */
export interface Done {
  readonly lines: readonly string[];
  readonly complete: boolean;
}
