import { Workbook } from "@cj-tech-master/excelts";
import { editZip, unzip } from "@cj-tech-master/excelts/archive";

/** When a file says neither when it was made nor when it was changed, the copy must not say today. */
const UNKNOWN_DATE = new Date(Date.UTC(2000, 0, 1));

export function newWorkbook(): Workbook {
  const workbook = new Workbook();
  workbook.created = workbook.modified = UNKNOWN_DATE;
  return workbook;
}

/** One time for all parts of a file, so that the same workbook gives the same bytes. */
const ZIP = { modTime: new Date(1980, 0, 1), timestamps: "dos" } as const;

/** The bytes of the workbook as an .xlsx; the same workbook gives the same bytes. */
export async function saveWorkbook(workbook: Workbook): Promise<Uint8Array> {
  workbook.created ??= UNKNOWN_DATE;
  workbook.modified ??= workbook.created;
  nameRules(workbook);
  const bytes = await workbook.xlsx.writeBuffer({ validate: false, zip: ZIP });
  return withoutUndefinedPatterns(bytes);
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

const STYLES = "xl/styles.xml";

/**
 * Most fills of conditional formats leave out their pattern, and so may those of cells. The library
 * writes "undefined" for it, which Excel offers to repair.
 */
async function withoutUndefinedPatterns(bytes: Uint8Array): Promise<Uint8Array> {
  const styles = await (await unzip(bytes).get(STYLES))?.text();
  const sound = styles?.replaceAll(' patternType="undefined"', "");
  if (sound === undefined || sound === styles) return bytes;
  const editor = await editZip(bytes, ZIP);
  editor.set(STYLES, sound);
  return editor.bytes();
}
