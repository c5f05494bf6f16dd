import { createContext } from "preact";
import { useCallback, useContext, useEffect, useState } from "preact/hooks";
import { Refusal } from "../core/refusal.js";
import type { Step, Workbook } from "./port.js";
import { texts } from "./texts.js";

/** A function as functions.json describes it, as far as the pane shows it. */
export interface ListedFunction {
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
}

/** What every view of the pane has at hand. */
export interface Pane {
  readonly workbook: Workbook;
  readonly version: string;
  /** Null where the list could not be read. */
  readonly functions: Promise<readonly ListedFunction[] | null>;
  /** Says a sentence where a screen reader hears it; `undo` offers to take the change back. */
  readonly say: (sentence: string, undo?: readonly Step[]) => void;
}

export const PaneContext = createContext<Pane | null>(null);

export function usePane(): Pane {
  const pane = useContext(PaneContext);
  if (pane === null) throw new Error("a view stands outside the pane");
  return pane;
}

/** Something read from the workbook, and read again when the workbook changes. */
export type Watched<T> =
  | { readonly state: "reading" }
  | { readonly state: "refused"; readonly why: string }
  | { readonly state: "read"; readonly value: T };

/**
 * @param read - must be the same function from one drawing to the next: wrap it in `useCallback`
 * @returns what was read, and a way to read it again
 */
export function useWatched<T>(
  read: (workbook: Workbook) => Promise<T>,
): readonly [Watched<T>, () => void] {
  const { workbook } = usePane();
  const [watched, setWatched] = useState<Watched<T>>({ state: "reading" });
  const [round, setRound] = useState(0);
  const again = useCallback(() => setRound((n) => n + 1), []);
  useEffect(() => workbook.watch(again), [workbook, again]);
  useEffect(() => {
    let isLatest = true;
    const show = (next: Watched<T>) => isLatest && setWatched(next);
    read(workbook).then(
      (value) => show({ state: "read", value }),
      (error: unknown) => show({ state: "refused", why: sentenceOf(error) }),
    );
    return () => {
      isLatest = false;
    };
  }, [workbook, read, round]);
  return [watched, again];
}

/** Makes a change, says what was done and offers to take it back, or says why it was not done. */
export function useWrite(): (steps: readonly Step[], done: string) => Promise<boolean> {
  const { workbook, say } = usePane();
  return async (steps, done) => {
    try {
      say(done, await workbook.write(steps));
      return true;
    } catch (error) {
      say(sentenceOf(error));
      return false;
    }
  };
}

/** What stands in the message of a refusal; anything else is a fault of ours and says so. */
export function sentenceOf(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  return texts.fault(error instanceof Error ? error.message : String(error));
}
