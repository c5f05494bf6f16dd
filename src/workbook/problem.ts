/** The exit codes of the program, besides 0. */
const REFUSED = 1;
export const USAGE = 2;
export const NOT_ALL_CALCULATED = 3;

/** Why the program stops, in a sentence for whoever started it. */
export class Problem extends Error {
  constructor(
    message: string,
    readonly exitCode: typeof REFUSED | typeof USAGE = REFUSED,
  ) {
    super(message);
    this.name = "Problem";
  }
}

/** What a library or the system said, to be put behind our own sentence. */
export function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
