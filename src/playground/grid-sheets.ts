import { CellValueType, CommandType, type ICellData } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { CellError, type ErrorCode } from "../functions/cells.js";
import { absolute, placeOf } from "../pane/address.js";
import type { Block, Entry, Place } from "../pane/port.js";
import { isFormula, typed } from "../pane/stands.js";
import { withThisRow } from "./grid-formula.js";
import type { Named, Sheets } from "./sheets.js";

const ERRORS = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!)$/;

/** Changes that are no change of what stands in the cells. */
const QUIET = /selection|scroll|zoom|active|set-worksheet-row-(?:auto-)?height/;

/** How long the grid has to be still before those who watch are told, in milliseconds. */
const STILL = 30;

/** The grid's workbook, for the pane. */
export class GridSheets implements Sheets {
  /** @param protectedSheets - names of the sheets that the file locks */
  constructor(
    private readonly workbook: FWorkbook,
    private readonly protectedSheets: ReadonlySet<string>,
  ) {}

  visible(): readonly string[] {
    return this.workbook
      .getSheets()
      .filter((sheet) => !sheet.isSheetHidden())
      .map((sheet) => sheet.getSheetName());
  }

  has(name: string): boolean {
    return this.find(name) !== null;
  }

  isProtected(name: string): boolean {
    return this.protectedSheets.has(name);
  }

  used(name: string): Place | null {
    const sheet = this.sheet(name);
    let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
    const fill = (row: number, column: number) => {
      [top, left] = [Math.min(top, row), Math.min(left, column)];
      [bottom, right] = [Math.max(bottom, row), Math.max(right, column)];
    };
    sheet
      .getSheet()
      .getCellMatrix()
      .forValue((row, column, cell) => {
        if (cell && (cell.f || cell.si || !isBlank(cell.v))) fill(row, column);
      });
    const spilled = this.spilled(sheet);
    for (const [row, cells] of Object.entries(spilled)) {
      for (const column of Object.keys(cells)) fill(Number(row), Number(column));
    }
    if (bottom < 0) return null;
    const [rows, columns] = [bottom - top + 1, right - left + 1];
    return { sheet: name, row: top, column: left, rows, columns };
  }

  block(place: Place): Block {
    const sheet = this.sheet(place.sheet);
    const matrix = sheet.getSheet().getCellMatrix();
    const styles = this.workbook.getWorkbook().getStyles();
    const spilled = this.spilled(sheet);
    const model = this.formulas();
    const ids = [this.workbook.getId(), sheet.getSheetId()] as const;
    const cells = Array.from({ length: place.rows }, (_, r) =>
      Array.from({ length: place.columns }, (_, c) => {
        const [row, column] = [place.row + r, place.column + c];
        const cell = matrix.getValue(row, column) as ICellData | undefined;
        const value = valueOf(spilled[row]?.[column] ?? cell);
        const format = styles.getStyleByCell(cell)?.n?.pattern ?? "General";
        const formula =
          cell?.f || cell?.si
            ? (model.getFormulaStringByCell(row, column, ids[1], ids[0]) ?? null)
            : null;
        return { value, format, entry: formula ?? entryOf(value, format) };
      }),
    );
    return {
      place,
      values: cells.map((row) => row.map(({ value }) => value)),
      entries: cells.map((row) => row.map(({ entry }) => entry)),
      formats: cells.map((row) => row.map(({ format }) => format)),
    };
  }

  active(): Place {
    const range = this.workbook.getActiveRange();
    if (range === null) {
      const sheet = this.workbook.getActiveSheet().getSheetName();
      return { sheet, row: 0, column: 0, rows: 1, columns: 1 };
    }
    const { startRow: row, startColumn: column, endRow, endColumn } = range.getRange();
    const [rows, columns] = [endRow - row + 1, endColumn - column + 1];
    return { sheet: range.getSheetName(), row, column, rows, columns };
  }

  decimalSign(): "." | "," {
    return ".";
  }

  merged(name: string): readonly Place[] {
    return this.sheet(name)
      .getMergedRanges()
      .map((range) => ({
        sheet: name,
        row: range.getRow(),
        column: range.getColumn(),
        rows: range.getHeight(),
        columns: range.getWidth(),
      }));
  }

  named(): readonly Named[] {
    const tables = this.workbook.getSheets().flatMap((sheet) =>
      sheet.getSubTableInfos().map(({ name, range }): Named => {
        const [rows, columns] = [
          range.endRow - range.startRow + 1,
          range.endColumn - range.startColumn + 1,
        ];
        const at = { row: range.startRow, column: range.startColumn, rows, columns };
        return { kind: "table", name, place: { sheet: sheet.getSheetName(), ...at } };
      }),
    );
    const names = this.workbook.getDefinedNames().flatMap((name): Named[] => {
      const place = placeOf(name.getFormulaOrRefString().replace(/^=/, ""));
      return place === null ? [] : [{ kind: "name", name: name.getName(), place }];
    });
    return [...tables, ...names];
  }

  put(
    place: Place,
    entries: readonly (readonly Entry[])[],
    formats: readonly (readonly string[])[] | null,
  ): void {
    const sheet = this.sheet(place.sheet);
    this.makeRoom(sheet, place);
    const before = this.block(place).formats;
    const cells = entries.map((row, r) =>
      row.map((entry, c): ICellData => {
        const format = formats?.[r]?.[c] ?? before[r]![c]!;
        return {
          ...cellOf(entry, format),
          ...(formats && { s: { n: format === "General" ? null : { pattern: format } } }),
        };
      }),
    );
    sheet.getRange(place.row, place.column, place.rows, place.columns).setValues(cells);
  }

  cover({ kind, name, place }: Named): void {
    if (kind === "table") {
      const table = this.tables().find((other) => other.name === name)!;
      void table.sheet.setTableRange(table.id, {
        startRow: place.row,
        startColumn: place.column,
        endRow: place.row + place.rows - 1,
        endColumn: place.column + place.columns - 1,
      });
      return;
    }
    const known = this.workbook.getDefinedName(name);
    if (known) known.setFormula(absolute(place));
    else this.workbook.insertDefinedName(name, absolute(place));
  }

  uncover(name: string): void {
    this.workbook.deleteDefinedName(name);
  }

  addSheet(name: string): void {
    const open = this.workbook.getActiveSheet();
    const index = this.workbook.getSheets().length;
    this.workbook.insertSheet(name, { index, sheet: { rowCount: 200, columnCount: 40 } });
    this.workbook.setActiveSheet(open);
  }

  dropSheet(name: string): void {
    this.workbook.deleteSheet(this.sheet(name));
  }

  watch(changed: () => void): () => void {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const heard = this.workbook.onCommandExecuted(({ id, type }) => {
      if (type !== CommandType.MUTATION || QUIET.test(id)) return;
      clearTimeout(timer);
      timer = setTimeout(changed, STILL);
    });
    return () => {
      clearTimeout(timer);
      heard.dispose();
    };
  }

  private tables() {
    return this.workbook
      .getSheets()
      .flatMap((sheet) => sheet.getSubTableInfos().map(({ id, name }) => ({ id, name, sheet })));
  }

  private find(name: string): FWorksheet | null {
    return this.workbook.getSheetByName(name);
  }

  private sheet(name: string): FWorksheet {
    const sheet = this.find(name);
    if (sheet === null) throw new Error(`no sheet ${name}`);
    return sheet;
  }

  private formulas(): FormulaDataModel {
    return this.workbook.getActiveSheet().getInject().get(FormulaDataModel);
  }

  /** What array formulas have put into the cells of a sheet. */
  private spilled(sheet: FWorksheet): Record<number, Record<number, ICellData>> {
    const all = this.formulas().getArrayFormulaCellData();
    const own = all[this.workbook.getId()]?.[sheet.getSheetId()];
    return (own ?? {}) as Record<number, Record<number, ICellData>>;
  }

  private makeRoom(sheet: FWorksheet, { row, column, rows, columns }: Place): void {
    if (row + rows > sheet.getMaxRows()) sheet.setRowCount(row + rows);
    if (column + columns > sheet.getMaxColumns()) sheet.setColumnCount(column + columns);
  }
}

function isBlank(value: unknown): boolean {
  return value === undefined || value === null || value === "";
}

function valueOf(cell: ICellData | undefined | null): unknown {
  if (!cell || isBlank(cell.v)) return "";
  if (cell.t === CellValueType.BOOLEAN) return cell.v === true || cell.v === 1 || cell.v === "1";
  if (typeof cell.v !== "string") return cell.v;
  if (cell.t === CellValueType.NUMBER) return Number(cell.v);
  return cell.t !== CellValueType.FORCE_STRING && ERRORS.test(cell.v)
    ? new CellError(cell.v as ErrorCode)
    : cell.v;
}

function entryOf(value: unknown, format: string): Entry {
  if (value instanceof CellError) return value.code;
  return typeof value === "string" ? typed(value, format) : (value as Entry);
}

function cellOf(entry: Entry, format: string): ICellData {
  const bare: ICellData = { v: null, t: null, f: null, si: null, p: null };
  if (entry === "") return bare;
  if (isFormula(entry) && format !== "@") return { ...bare, f: withThisRow(entry, null) };
  if (typeof entry === "number") return { ...bare, v: entry, t: CellValueType.NUMBER };
  if (typeof entry === "boolean") {
    return { ...bare, v: entry ? 1 : 0, t: CellValueType.BOOLEAN };
  }
  const text = format === "@" ? entry : entry.replace(/^'/, "");
  return { ...bare, v: text, t: CellValueType.FORCE_STRING };
}
