import type { IWorkbookData } from "@univerjs/core";
import type { Workbook } from "@cj-tech-master/excelts";
import type { SheetTable } from "../workbook/tables.js";

/** Under which names the grid keeps defined names and tables in what it saves. */
export const NAMES = "SHEET_DEFINED_NAME_PLUGIN";
export const TABLES = "SHEET_TABLE_PLUGIN";

/** The id by which the grid knows the sheet that stands at a place in the file. */
export const sheetId = (index: number): string => `sheet-${index}`;

export interface GridName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
}

export interface GridTable {
  readonly id: string;
  readonly name: string;
  readonly range: {
    readonly startRow: number;
    readonly startColumn: number;
    readonly endRow: number;
    readonly endColumn: number;
  };
  readonly columns: readonly { readonly displayName: string }[];
}

/** The scope that the grid gives to names which all sheets know. */
const EVERYWHERE = "AllDefaultWorkbook";

export function namesResource(workbook: Workbook): string {
  const names = workbook.definedNames
    .getAllEntries()
    .filter(isSeen)
    .map((entry, i) => {
      const id = `name-${i}`;
      const scope = entry.localSheetId === undefined ? EVERYWHERE : sheetId(entry.localSheetId);
      return {
        id,
        name: entry.name,
        formulaOrRefString: entry.formulaExpression ?? entry.ranges.join(","),
        comment: "",
        localSheetId: scope,
      };
    });
  return JSON.stringify(Object.fromEntries(names.map((name) => [name.id, name])));
}

/** Excel keeps print areas and the like as names that nobody sees. */
function isSeen({ name }: { readonly name: string }): boolean {
  return !name.startsWith("_xlnm.") && !name.startsWith("_xl");
}

export function tablesResource(workbook: Workbook, tables: readonly SheetTable[]): string {
  const bySheet: Record<string, { tables: unknown[] }> = {};
  tables.forEach((table, i) => {
    const id = sheetId(workbook.worksheets.indexOf(table.sheet));
    (bySheet[id] ??= { tables: [] }).tables.push({
      id: `table-${i}`,
      name: table.name,
      range: {
        startRow: table.top - 1,
        startColumn: table.left - 1,
        // The grid has no row of totals, which would count as a hive.
        endRow: table.bottom - 1 - table.totals,
        endColumn: table.right - 1,
      },
      options: { showHeader: table.headings === 1, showFooter: false },
      filters: { tableColumnFilterList: [] },
      columns: table.columns.map((displayName, k) => ({
        id: `column-${k}`,
        displayName,
        dataType: "string",
        formula: "",
        meta: {},
        style: {},
      })),
    });
  });
  return JSON.stringify(bySheet);
}

export function namesIn(data: IWorkbookData): GridName[] {
  return Object.values(resource<Record<string, GridName>>(data, NAMES));
}

/** Tables by the id of their sheet. */
export function tablesIn(data: IWorkbookData): Map<string, readonly GridTable[]> {
  const sheets = resource<Record<string, { tables?: GridTable[] }>>(data, TABLES);
  return new Map(Object.entries(sheets).map(([id, { tables }]) => [id, tables ?? []]));
}

function resource<T extends object>({ resources }: IWorkbookData, name: string): T {
  const found = resources?.find((other) => other.name === name)?.data;
  return JSON.parse(found || "{}") as T;
}
