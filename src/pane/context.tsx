import { createContext, type ComponentChildren } from "preact";
import { useContext, useMemo, useState } from "preact/hooks";
import { Refusal } from "../core/refusal.js";
import type { Handed, Step, Workbook } from "./port.js";
import { texts } from "./texts.js";

/** A function as functions.json describes it, as far as the pane shows it. */
export interface ListedFunction {
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
}

/** What the pane is opened over. */
export interface Host {
  readonly workbook: Workbook;
  readonly version: string;
  /** Null where the list could not be read. */
  readonly functions: Promise<readonly ListedFunction[] | null>;
}

/** Says a sentence where a screen reader hears it; `undo` offers to take the change back. */
export type Say = (sentence: string, undo?: readonly Step[]) => void;

/** What every view of the pane has at hand. */
export interface Pane extends Host {
  readonly say: Say;
  /**
   * Makes a change, says what was done and offers to take it back, or says why it was not done; then
   * has the views read again what they show. While one is under way another is not begun.
   *
   * @returns whether it was made
   */
  readonly change: (make: () => Promise<Handed>) => Promise<boolean>;
  /** Each reads again what its view shows, and is done once that stands there. */
  readonly readers: Set<() => Promise<void>>;
}

export const PaneContext = createContext<Pane | null>(null);

/** Whether a change is under way. */
export const IsWriting = createContext(false);

/** Gives the views what they have in common. */
export function PaneProvider(props: {
  readonly host: Host;
  /** The same function from one drawing to the next. */
  readonly say: Say;
  readonly children: ComponentChildren;
}) {
  const { host, say, children } = props;
  const { workbook, version, functions } = host;
  const [isWriting, setWriting] = useState(false);
  const pane = useMemo((): Pane => {
    const readers: Pane["readers"] = new Set();
    let isTaken = false;
    const change: Pane["change"] = async (make) => {
      // Asked here: a second press may come before the buttons are drawn again.
      if (isTaken) return false;
      isTaken = true;
      setWriting(true);
      let isMade = false;
      try {
        const { sentence, undo } = await make();
        isMade = true;
        say(sentence, undo);
      } catch (error) {
        say(sentenceOf(error));
      }
      // Until then a view shows what stood before, and would make its change a second time.
      await Promise.all([...readers].map((read) => read()));
      isTaken = false;
      setWriting(false);
      return isMade;
    };
    return { workbook, version, functions, say, change, readers };
  }, [workbook, version, functions, say]);
  return (
    <PaneContext.Provider value={pane}>
      <IsWriting.Provider value={isWriting}>{children}</IsWriting.Provider>
    </PaneContext.Provider>
  );
}

export function usePane(): Pane {
  const pane = useContext(PaneContext);
  if (pane === null) throw new Error("a view stands outside the pane");
  return pane;
}

/** Makes a change of known steps. */
export function useWrite(): (steps: readonly Step[], done: string) => Promise<boolean> {
  const { workbook, change } = usePane();
  return (steps, done) =>
    change(async () => ({ sentence: done, undo: await workbook.write(steps) }));
}

/** What stands in the message of a refusal; anything else is a fault of ours and says so. */
export function sentenceOf(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  return texts.fault(error instanceof Error ? error.message : String(error));
}
