import { useCallback } from "preact/hooks";
import { isOnSheet } from "../address.js";
import type { Block, Place, Workbook } from "../port.js";
import { texts } from "../texts.js";
import { useWatched } from "../watched.js";

/** What stands in a place now: null while it is read, and where it cannot be, with the reason. */
export function usePlace(place: Place | null): {
  readonly block: Block | null;
  readonly why: string | null;
} {
  const key = JSON.stringify(place);
  const read = useCallback(
    async (workbook: Workbook) => {
      const at = JSON.parse(key) as Place | null;
      return { key, block: at && isOnSheet(at) ? (await workbook.read([at]))[0]! : null };
    },
    [key],
  );
  const { value, why } = useWatched(read);
  if (place !== null && !isOnSheet(place)) return { block: null, why: texts.columns.edge };
  // What was read last may be the place before.
  return { block: why === null && value?.key === key ? value.block : null, why };
}
