import { createContext } from "preact";
import { useContext, useEffect, useMemo, useRef, useState } from "preact/hooks";
import { sentenceOf, usePane } from "./context.js";
import type { Workbook } from "./port.js";

/** Whether the view is the one that is shown: others read nothing until they are. */
export const IsOpen = createContext(true);

/** Something read from the workbook, and read again when the workbook changes. */
export interface Watched<T> {
  /** As it was read last; null until it was. */
  readonly value: T | null;
  /** Why it could not be read since, in a sentence. */
  readonly why: string | null;
}

/** @param read - must be the same function from one drawing to the next: wrap it in `useCallback` */
export function useWatched<T>(read: (workbook: Workbook) => Promise<T>): Watched<T> {
  const { workbook, readers } = usePane();
  const isOpen = useContext(IsOpen);
  const [last, setLast] = useState<Watched<T>>({ value: null, why: null });
  const latest = useRef(read);
  latest.current = read;
  /** The reading after which nothing has changed. */
  const upToDate = useRef<unknown>(null);
  const again = useMemo(() => {
    const reading = oneAtATime(async () => {
      upToDate.current = reading;
      const show = (next: (before: typeof last) => typeof last) =>
        latest.current === read && setLast(next);
      try {
        const value = await read(workbook);
        show(() => ({ value, why: null }));
      } catch (error) {
        upToDate.current = null;
        show(({ value }) => ({ value, why: sentenceOf(error) }));
      }
    });
    return reading;
  }, [workbook, read]);
  useEffect(() => {
    const changed = async () => {
      upToDate.current = null;
      if (isOpen) await again();
    };
    readers.add(changed);
    const unwatch = workbook.watch(() => void changed());
    return () => {
      readers.delete(changed);
      unwatch();
    };
  }, [workbook, readers, again, isOpen]);
  useEffect(() => {
    if (isOpen && upToDate.current !== again) void again();
  }, [again, isOpen]);
  return last;
}

/** The decimal sign that the user types, which no change of the workbook changes. */
export function useSign(): "." | "," {
  const { workbook } = usePane();
  const isOpen = useContext(IsOpen);
  const [sign, setSign] = useState<"." | ",">(".");
  useEffect(() => {
    if (isOpen) workbook.decimalSign().then(setSign, () => undefined);
  }, [workbook, isOpen]);
  return sign;
}

/** Whoever asks while it runs gets one more run after it, however many ask. */
function oneAtATime(run: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | null = null;
  let isAsked = false;
  const runs = async () => {
    while (isAsked) {
      isAsked = false;
      await run();
    }
    running = null;
  };
  return () => {
    isAsked = true;
    return (running ??= runs());
  };
}
