import { CommandType } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/facade";
import type { Workbook } from "../pane/port.js";
import type { Readied, WorkbookFile, Written } from "./file.js";
import type { Grid } from "./grid.js";
import { GridSheets } from "./grid-sheets.js";
import { stateOf } from "./grid-state.js";
import { GridWorkbook } from "./grid-workbook.js";

/** Changes by which cells come to stand elsewhere, so that a file's other parts no longer fit them. */
const MOVES =
  /mutation\.(?:insert-(?:row|col|range)|remove-(?:rows?|col)|delete-range|move-(?:rows|columns|range))$/;

/** Changes that the grid can make and the saved file does not take over, in words. */
const NOT_KEPT: readonly (readonly [RegExp, string])[] = [
  [/mutation\.set-frozen/, "frozen rows and columns"],
  [/mutation\.set-worksheet-row-(?:height|is-auto)/, "heights of rows"],
  [/mutation\.set-(?:row|col)-(?:hidden|visible)/, "rows and columns that were hidden or shown"],
  [/filter/, "filters"],
  [/mutation\.set-tab-color/, "colours of tabs"],
  [/mutation\.toggle-gridlines/, "lines of the grid"],
];

/** One workbook, open in the grid. */
export interface Session {
  readonly file: WorkbookFile;
  readonly workbook: Workbook;
  readonly grid: FWorkbook;
  /** Whether something was done here since it was opened or saved. */
  readonly isChanged: () => boolean;
  /** What was done here and will not be in the saved file. */
  readonly notKept: () => readonly string[];
  /** Names of the sheets whose rows or columns moved. */
  readonly movedSheets: () => readonly string[];
  readonly write: () => Promise<Written>;
  /** To be told when what was written is in the user's hands. */
  readonly saved: () => void;
  readonly close: () => void;
}

export async function openSession(
  grid: Grid,
  { file, data, lockedSheets }: Readied,
): Promise<Session> {
  const shown = await grid.show(data);
  const before = stateOf(shown);
  const moved = new Set<string>();
  const notKept = new Set<string>();
  let isChanged = false;
  const heard = shown.onCommandExecuted(({ id, type, params }) => {
    if (type !== CommandType.MUTATION) return;
    const { subUnitId } = (params ?? {}) as { subUnitId?: string };
    if (MOVES.test(id) && subUnitId) moved.add(subUnitId);
    for (const [change, words] of NOT_KEPT) if (change.test(id)) notKept.add(words);
    isChanged ||= /^sheet\.mutation\.(?!set-selection|scroll)|defined-name|table/.test(id);
  });
  return {
    file,
    workbook: new GridWorkbook(new GridSheets(shown, lockedSheets), grid.calculated),
    grid: shown,
    isChanged: () => isChanged,
    notKept: () => [...notKept],
    movedSheets: () =>
      before.sheets.filter(({ id }) => moved.has(id)).map(({ name }) => `"${name}"`),
    async write() {
      const { writeFile } = await import("./file.js");
      return writeFile(file, { before, after: stateOf(shown), moved });
    },
    saved: () => void (isChanged = false),
    close: () => heard.dispose(),
  };
}
