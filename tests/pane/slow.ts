import type { MemoryWorkbook } from "./memory.js";

/** What a workbook is asked for waits until it is let go. */
export interface Held {
  /** How often it was asked for. */
  readonly asked: () => number;
  /** Lets go what waits, and does not hold what comes after. */
  readonly release: () => void;
}

/** Makes one of a workbook's own calls slow, as Excel on a poor line is. */
export function hold(book: MemoryWorkbook, call: "write" | "read" | "statement"): Held {
  const real = book[call].bind(book) as (...args: unknown[]) => Promise<unknown>;
  let waiting: (() => void)[] | null = [];
  let asked = 0;
  const held = async (...args: unknown[]) => {
    asked++;
    if (waiting !== null) await new Promise<void>((go) => waiting!.push(go));
    return real(...args);
  };
  Object.assign(book, { [call]: held });
  return {
    asked: () => asked,
    release: () => {
      const all = waiting ?? [];
      waiting = null;
      for (const go of all) go();
    },
  };
}
