import { ValueType, Workbook, type Table } from "@cj-tech-master/excelts";
import { installFormulaEngine } from "@cj-tech-master/excelts/formula";
import { refuseBoundless } from "./bounds.js";
import { takeLinksOff } from "./links.js";
import { refuseNested } from "./nesting.js";
import { Problem, reason } from "./problem.js";
import { toSheetTable } from "./tables.js";
import { unpack, type Parts } from "./unpack.js";

export interface OpenedWorkbook {
  readonly workbook: Workbook;
  readonly parts: Parts;
  /** Puts back, before the workbook is saved, what stood in the way of calculating it. */
  readonly restore: () => void;
}

/** Opens a workbook, or says why it cannot be opened. */
export async function openWorkbook(bytes: Uint8Array, name: string): Promise<OpenedWorkbook> {
  if (isCompoundFile(bytes)) {
    throw new Problem(
      `${name} is locked with a password, or is an old Excel file under a new name. ` +
        `Open it in Excel, take the password off, and save it as an Excel Workbook (.xlsx).`,
    );
  }
  const parts = await unpack(bytes, name);
  const book = textOf(parts, "xl/workbook.xml");
  if (book === null) throw new Problem(`${name} is not an Excel workbook, or is damaged.`);
  if ([...parts.keys()].some((path) => /vbaProject\.bin$/i.test(path))) {
    throw new Problem(
      `${name} holds macros, which would be lost. Save it in Excel as an Excel Workbook (.xlsx) first.`,
    );
  }
  if (book.includes("http://purl.oclc.org/ooxml/")) {
    throw new Problem(
      `${name} is saved as Strict Open XML. Save it in Excel as an Excel Workbook (.xlsx) first.`,
    );
  }
  refuseNested(parts, name);
  refuseBoundless(parts, name);
  try {
    const workbook = await load(parts);
    return { workbook, parts, restore: takeLinksOff(workbook) };
  } catch (error) {
    throw new Problem(`${name} is damaged, or holds what cannot be read: ${reason(error)}.`);
  }
}

/** What files with a password, and Excel's of before 2007, begin with. */
function isCompoundFile(bytes: Uint8Array): boolean {
  return [0xd0, 0xcf, 0x11, 0xe0].every((byte, i) => bytes[i] === byte);
}

export function textOf(parts: Parts, path: string): string | null {
  const bytes = parts.get(path);
  return bytes ? new TextDecoder().decode(bytes) : null;
}

function hasFolder(parts: Parts, folder: string): boolean {
  return [...parts.keys()].some((path) => path.startsWith(folder));
}

async function load(parts: Parts): Promise<Workbook> {
  // Before loading: names that stand for a formula are told from others by it.
  installFormulaEngine();
  if (hasFolder(parts, "xl/charts/") || hasFolder(parts, "xl/chartsheets/")) {
    const { installChartSupport } = await import("@cj-tech-master/excelts/chart");
    installChartSupport();
  }
  const workbook = new Workbook();
  await workbook.xlsx.loadFromFiles(Object.fromEntries(parts));
  if (!hasFolder(parts, "xl/theme/")) workbook.clearThemes();
  await restoreTotals(workbook, parts);
  keepWhatIfValues(workbook);
  return workbook;
}

/** The library writes its own word over the first cell of a table's totals; a second look has it right. */
async function restoreTotals(workbook: Workbook, parts: Parts): Promise<void> {
  const tables = workbook.worksheets
    .flatMap((sheet) => sheet.getTables())
    .filter((t) => t.totalsRow);
  if (tables.length === 0) return;
  const untouched = new Workbook();
  await untouched.xlsx.loadFromFiles(Object.fromEntries(parts), { ignoreNodes: ["tableParts"] });
  for (const table of tables) copyTotals(table, untouched);
}

function copyTotals(table: Table, from: Workbook): void {
  const whole = toSheetTable(table);
  const sheet = from.getWorksheet(table.worksheet.name);
  if (!sheet) return;
  table.model.columns.forEach((column, i) => {
    const value = sheet.getCell(whole.bottom, whole.left + i).value;
    table.worksheet.getCell(whole.bottom, whole.left + i).value = value;
    if (typeof value !== "string") delete column.totalsRowLabel;
  });
}

/** What-if tables hold no formula that the library could write again: their values stay. */
function keepWhatIfValues(workbook: Workbook): void {
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.type === ValueType.Formula && !cell.formula) cell.value = cell.result;
      }),
    );
  }
}
