import { useCallback } from "preact/hooks";
import { isOnSheet } from "../address.js";
import { useWatched } from "../context.js";
import type { Block, Place, Workbook } from "../port.js";
import { texts } from "../texts.js";

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
  const [watched] = useWatched(read);
  if (place !== null && !isOnSheet(place)) return { block: null, why: texts.columns.edge };
  // What was read last may be the place before.
  if (watched.state === "read" && watched.value.key === key) {
    return { block: watched.value.block, why: null };
  }
  return { block: null, why: watched.state === "refused" ? watched.why : null };
}
