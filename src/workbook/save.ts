import { Workbook, type Cell } from "@cj-tech-master/excelts";
import { zip } from "@cj-tech-master/excelts/archive";
import { GatheredParts } from "./gathered-parts.js";
import type { Parts } from "./unpack.js";

/** When a file says neither when it was made nor when it was changed, the copy must not say today. */
const UNKNOWN_DATE = new Date(Date.UTC(2000, 0, 1));

export function newWorkbook(): Workbook {
  const workbook = new Workbook();
  workbook.created = workbook.modified = UNKNOWN_DATE;
  return workbook;
}

/** The bytes of the workbook as an .xlsx; the same workbook gives the same bytes. */
export async function saveWorkbook(workbook: Workbook): Promise<Uint8Array> {
  return packed(await writtenParts(workbook));
}

/** The parts of the workbook as a file holds them, before they are packed into one. */
export async function writtenParts(workbook: Workbook): Promise<Parts> {
  workbook.created ??= UNKNOWN_DATE;
  workbook.modified ??= workbook.created;
  nameRules(workbook);
  shareLooks(workbook);
  const gathered = new GatheredParts();
  await (workbook.xlsx as unknown as Writer).writeToZip(gathered, {});
  mendPatterns(gathered.parts);
  return gathered.parts;
}

/** What the library's own ways of writing all end in. */
interface Writer {
  writeToZip(zip: GatheredParts, options: object): Promise<void>;
}

/** One time for all parts, in the order they were written, so that the same parts give the same bytes. */
export async function packed(parts: Parts): Promise<Uint8Array> {
  const archive = zip({ reproducible: true, noSort: true });
  for (const [path, bytes] of parts) archive.add(path, bytes);
  return archive.bytes();
}

/** Data bars are known by an id, which the library draws by lot where the file had none. */
function nameRules(workbook: Workbook): void {
  let number = 0;
  for (const sheet of workbook.worksheets) {
    for (const rule of sheet.conditionalFormattings.flatMap(({ rules }) => rules)) {
      const named = rule as { type: string; x14Id?: string };
      const digits = (++number).toString(16).toUpperCase().padStart(12, "0");
      if (/^(?:dataBar|iconSet)$/.test(named.type)) {
        named.x14Id ??= `{00000000-0000-4000-8000-${digits}}`;
      }
    }
  }
}

/** The library spells a look out for each row and cell that has one of its own, if only an empty one. */
function shareLooks(workbook: Workbook): void {
  const looks = new Map<string, Cell["style"]>();
  const shared = (style: Cell["style"], type: number | string): Cell["style"] => {
    const key = type + JSON.stringify(style);
    if (!looks.has(key)) looks.set(key, style);
    return looks.get(key)!;
  };
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) => {
      row.style = shared(row.style, "row");
      row.eachCell({ includeEmpty: true }, (cell) => {
        // A number and a date without a format are written in different ones.
        cell.style = shared(cell.style, cell.effectiveType);
      });
    });
  }
}

const STYLES = "xl/styles.xml";

/**
 * Most fills of conditional formats leave out their pattern, and so may those of cells. The library
 * writes "undefined" for it, which Excel offers to repair.
 */
function mendPatterns(parts: Map<string, Uint8Array>): void {
  const styles = new TextDecoder().decode(parts.get(STYLES));
  parts.set(STYLES, new TextEncoder().encode(styles.replaceAll(' patternType="undefined"', "")));
}
