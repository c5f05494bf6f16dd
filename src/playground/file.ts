import type { IWorkbookData } from "@univerjs/core";
import { functions } from "../functions/index.js";
import { calculate } from "../workbook/calculate.js";
import { lossesBetween } from "../workbook/losses.js";
import { settle, type Remark } from "../workbook/outcome.js";
import { Problem } from "../workbook/problem.js";
import { packed, writtenParts } from "../workbook/save.js";
import { openWorkbook } from "../workbook/workbook.js";
import { bringBack, type Edits } from "./from-grid.js";
import { toGrid } from "./to-grid.js";

/** A workbook's file, as it came. */
export interface WorkbookFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file that was read, and can be shown. */
export interface Readied {
  readonly file: WorkbookFile;
  readonly data: IWorkbookData;
  readonly lockedSheets: ReadonlySet<string>;
}

/** Reads a file for the grid. @throws Problem with a sentence where it cannot be read */
export async function readFile(file: WorkbookFile): Promise<Readied> {
  const { name, bytes } = file;
  const { workbook } = await openWorkbook(bytes, name);
  if (workbook.properties.date1904) {
    throw new Problem(
      `${name} counts its days from 1904, which the playground cannot show. In Excel, take ` +
        `"Use 1904 date system" off in the options, and look at the dates before you save.`,
    );
  }
  const locked = workbook.worksheets.filter(({ sheetProtection }) => sheetProtection?.sheet);
  return {
    file,
    data: toGrid(workbook, name),
    lockedSheets: new Set(locked.map((sheet) => sheet.name)),
  };
}

/** A calculated file, and what is to be said before it is kept. */
export interface Written {
  readonly bytes: Uint8Array;
  /** What the file that came had and this one has not, each a few words. */
  readonly losses: readonly string[];
  readonly notCalculated: readonly Remark[];
}

/** The file that came, with what was done in the grid, calculated anew. */
export async function writeFile({ name, bytes }: WorkbookFile, edits: Edits): Promise<Written> {
  const { workbook, parts, restore } = await openWorkbook(bytes, name);
  bringBack(workbook, edits);
  const { notCalculated } = settle(calculate(workbook, functions, () => {}));
  restore();
  const copy = await writtenParts(workbook);
  return { bytes: await packed(copy), losses: lossesBetween(parts, copy), notCalculated };
}
