import {
  absolute,
  address,
  placeOf,
  rangeName,
  SHEET_ROWS,
  within,
} from "../../src/pane/address.js";
import type { Entry, Place } from "../../src/pane/port.js";
import { charts, KNOWN, recorder, type Looks } from "./fake-look.js";
import { FakeOffice, OfficeError } from "./fake-office.js";
import type { Named } from "./memory.js";

interface Kept {
  readonly formula: Entry;
  readonly value: Entry;
  readonly format: string;
  /** Where the formula stands whose result lies in this cell. */
  readonly spilledFrom?: string;
}

const BLANK: Kept = { formula: "", value: "", format: "General" };
const ERRORS = /^#(N\/A|VALUE!|REF!|NAME\?|DIV\/0!|NUM!|NULL!)$/;

/**
 * What plays Excel: cells that read what is typed as Excel does, tables, names, protection, merged
 * and hidden cells, events. It calculates one formula only: `=SPILL(rows,columns)` fills so many
 * cells with 1. Other formulas give 0.
 */
export class FakeExcel {
  readonly sheets = new Map<string, FakeSheet>();
  readonly named: Map<string, Named>;
  /** Names that are no plain range, or of one sheet (`Yard!Terms`), with their formulas. */
  readonly formulas = new Map<string, string>();
  readonly office = new FakeOffice(this);
  readonly handlers: { readonly event: string; readonly handler: () => Promise<void> }[] = [];
  activeAddress = "Yard!A1";
  decimalSeparator = ".";
  isStructureProtected = false;
  /** "Fill formulas in tables to create calculated columns", which acts on what add-ins write too. */
  fillsTableColumns = false;
  apiVersion = 17;
  startup: string | null = null;
  /** What this Excel cannot do. */
  hasNo: "charts" | "printer" | null = null;
  /** What it makes of every text that is put from now on. */
  turnsTextsInto: Entry | null = null;
  /** Called before each sync, with its number. */
  coAuthor: (sync: number) => void = () => undefined;

  constructor(
    sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
    named: Map<string, Named> = new Map(),
  ) {
    this.named = named;
    for (const [name, rows] of Object.entries(sheets)) {
      const sheet = this.addSheet(name);
      rows.forEach((row, r) => row.forEach((entry, c) => sheet.type(r, c, entry)));
    }
  }

  /** Puts Office.js into the global scope, as Microsoft's script does. */
  install(into: object = globalThis, officeTheme?: object): void {
    const { office } = this;
    Object.assign(into, {
      Excel: { run: office.run },
      Office: {
        HostType: { Excel: "Excel" },
        onReady: () => Promise.resolve({ host: "Excel" }),
        StartupBehavior: { load: "Load" },
        addin: {
          setStartupBehavior: async (behavior: string) => {
            this.startup = behavior;
          },
        },
        context: {
          officeTheme,
          requirements: {
            isSetSupported: (_: string, version: string) =>
              Number(version.split(".")[1]) <= this.apiVersion,
          },
        },
      },
    });
  }

  beforeSync(sync: number): void {
    this.coAuthor(sync);
  }

  type(sheet: string, row: number, column: number, entry: Entry, format?: string): void {
    this.sheets.get(sheet)!.type(row, column, entry, format);
    this.fire("worksheets.onChanged");
  }

  protect(sheet: string): void {
    this.sheets.get(sheet)!.isProtected = true;
  }

  merge(place: Place): void {
    this.sheets.get(place.sheet)!.merged.push(place);
  }

  entry(sheet: string, row: number, column: number): Entry {
    return this.sheets.get(sheet)!.get(row, column).formula;
  }

  fire(event: string): void {
    for (const one of [...this.handlers]) if (one.event === event) void one.handler();
  }

  snapshot(): unknown {
    const cells = [...this.sheets].map(([name, { cells }]) => [
      name,
      [...cells].filter(([, cell]) => cell.formula !== "" || cell.format !== "General").sort(),
    ]);
    return structuredClone({
      cells,
      named: [...this.named].sort(),
      formulas: [...this.formulas].sort(),
    });
  }

  // From here on: what Office.js sees.

  get workbook(): object {
    const name = (item: string) => (this.named.has(item) || this.formulas.has(item) ? item : null);
    return {
      worksheets: {
        items: [...this.sheets.values()],
        getItem: (sheet: string) => this.sheets.get(sheet) ?? notFound(),
        getItemOrNullObject: (sheet: string) => this.sheets.get(sheet) ?? null,
        add: (sheet: string) => this.addSheet(sheet),
        ...this.events("worksheets", [
          "onChanged",
          "onCalculated",
          "onAdded",
          "onDeleted",
          "onNameChanged",
          "onVisibilityChanged",
        ]),
      },
      tables: {
        items: this.tables(),
        getItem: (table: string) => this.tables().find((one) => one.name === table) ?? notFound(),
        ...this.events("tables", ["onAdded", "onDeleted"]),
      },
      names: this.namesOf((item) => !item.includes("!") && name(item) !== null, ""),
      application: { decimalSeparator: this.decimalSeparator },
      protection: { protected: this.isStructureProtected },
      getSelectedRange: () => {
        const place = placeOf(this.activeAddress);
        if (place === null) throw new OfficeError("InvalidSelection");
        return this.range(place);
      },
    };
  }

  tables() {
    return [...this.named].flatMap(([name, { kind, place, totals = false }]) =>
      kind !== "table"
        ? []
        : [
            {
              name,
              showTotals: totals,
              getRange: () => this.range(place),
              resize: ({ place: to }: FakeRange) => {
                if (to.row !== place.row || within(to, place) === null) {
                  throw new OfficeError("InvalidArgument");
                }
                this.named.set(name, { kind, place: to, ...(totals && { totals }) });
                for (let c = to.column; c < to.column + to.columns; c += 1) {
                  const sheet = this.sheets.get(to.sheet)!;
                  if (sheet.get(to.row, c).value === "") sheet.type(to.row, c, `Column${c}`);
                }
              },
            },
          ],
    );
  }

  /** The names of the workbook, or of one sheet, whose names begin with `Sheet!` here. */
  namesOf(isIn: (name: string) => boolean, scope: string) {
    const all = [
      ...[...this.named].flatMap(([name, { kind }]) => (kind === "name" ? [name] : [])),
      ...this.formulas.keys(),
    ].filter(isIn);
    const item = (name: string) => new FakeName(this, `${scope}${name}`, name);
    const items = all.map((name) => item(name.slice(scope.length)));
    const find = (name: string) => items.find((one) => one.name === name);
    return {
      items,
      getItem: (name: string) => find(name) ?? notFound(),
      getItemOrNullObject: (name: string) => find(name) ?? null,
      add: (name: string, formula: string) => {
        item(name).formula = formula;
      },
    };
  }

  range(place: Place): FakeRange {
    return new FakeRange(this, this.sheets.get(place.sheet)!, place);
  }

  rename(sheet: FakeSheet, name: string): void {
    if (this.sheets.has(name)) throw new OfficeError("ItemAlreadyExists");
    this.sheets.delete(sheet.name);
    this.sheets.set(name, sheet);
  }

  /** What a co-author does. */
  workbookAdd(name: string): void {
    this.addSheet(name);
  }

  private addSheet(name: string): FakeSheet {
    if (this.sheets.has(name)) throw new OfficeError("ItemAlreadyExists");
    const sheet = new FakeSheet(this, name);
    this.sheets.set(name, sheet);
    return sheet;
  }

  private events(of: string, names: readonly string[]): Record<string, unknown> {
    const add = (event: string) => (handler: () => Promise<void>) => {
      const one = { event, handler };
      this.handlers.push(one);
      return { remove: () => void this.handlers.splice(this.handlers.indexOf(one), 1) };
    };
    return Object.fromEntries(names.map((name) => [name, { add: add(`${of}.${name}`) }]));
  }
}

class FakeName {
  readonly visible = true;

  constructor(
    private readonly excel: FakeExcel,
    private readonly key: string,
    readonly name: string,
  ) {}

  get formula(): string {
    const place = this.excel.named.get(this.key)?.place;
    return place === undefined ? this.excel.formulas.get(this.key)! : `=${absolute(place)}`;
  }

  set formula(formula: string) {
    const place = placeOf(formula.slice(1));
    this.delete();
    if (place === null || this.key.includes("!")) this.excel.formulas.set(this.key, formula);
    else this.excel.named.set(this.key, { kind: "name", place });
  }

  get type(): string {
    return this.place === null ? "Error" : "Range";
  }

  get value(): string {
    return this.place === null ? "#REF!" : absolute(this.place);
  }

  delete(): void {
    this.excel.named.delete(this.key);
    this.excel.formulas.delete(this.key);
  }

  private get place(): Place | null {
    const text = this.formula.slice(1);
    const table = this.excel.named.get(text.replace("[#All]", ""));
    return placeOf(text) ?? table?.place ?? null;
  }
}

export class FakeSheet {
  readonly cells = new Map<string, Kept>();
  readonly looks: Looks = new Map();
  merged: Place[] = [];
  comments = { items: [] as { readonly id: string }[] };
  readonly hiddenRows = new Set<number>();
  readonly hiddenColumns = new Set<number>();
  readonly unlocked = new Set<string>();
  isProtected = false;
  visibility = "Visible";

  constructor(
    private readonly excel: FakeExcel,
    private called: string,
  ) {}

  get name(): string {
    return this.called;
  }

  set name(name: string) {
    this.excel.rename(this, name);
    this.called = name;
    this.merged = this.merged.map((place) => ({ ...place, sheet: name }));
  }

  set showGridlines(are: boolean) {
    this.looks.set("showGridlines", are);
  }

  get charts(): object {
    if (this.excel.hasNo === "charts")
      throw new OfficeError("GeneralException", "ChartCollection.add");
    return charts(this.looks);
  }

  get pageLayout(): object {
    // As an Excel on the desktop may that knows no printer.
    if (this.excel.hasNo === "printer")
      throw new OfficeError("GeneralException", "PageLayout.zoom");
    return recorder(KNOWN.PAGE, (path, value) => this.looks.set(`page ${path}`, value));
  }

  get horizontalPageBreaks(): object {
    return { add: (cell: string) => this.looks.set("page break", cell) };
  }

  get protection(): object {
    return { protected: this.isProtected, options: { allowFormatCells: false } };
  }

  get names(): object {
    return this.excel.namesOf((name) => name.startsWith(`${this.name}!`), `${this.name}!`);
  }

  getRangeByIndexes(row: number, column: number, rows: number, columns: number): FakeRange {
    return this.excel.range({ sheet: this.name, row, column, rows, columns });
  }

  getUsedRangeOrNullObject(valuesOnly: boolean): FakeRange | null {
    const used = [...this.cells]
      .filter(([, { value, format }]) => value !== "" || (!valuesOnly && format !== "General"))
      .map(([key]) => key.split(",").map(Number) as [number, number]);
    if (used.length === 0) return null;
    const most = (k: 0 | 1, of: (a: number, b: number) => number) =>
      used.map((at) => at[k]).reduce((a, b) => of(a, b));
    const [row, column] = [most(0, Math.min), most(1, Math.min)];
    const [last, right] = [most(0, Math.max), most(1, Math.max)];
    return this.getRangeByIndexes(row, column, last - row + 1, right - column + 1);
  }

  delete(): void {
    this.excel.sheets.delete(this.name);
  }

  get(row: number, column: number): Kept {
    return this.cells.get(`${row},${column}`) ?? BLANK;
  }

  /** Reads what is typed as Excel does. */
  type(row: number, column: number, entry: Entry, given?: string): void {
    const format = given ?? this.get(row, column).format;
    this.clearSpill(row, column);
    this.cells.set(`${row},${column}`, { format, ...readAs(entry, format) });
    const [, rows = 0, columns = 0] = /^=SPILL\((\d+),(\d+)\)$/.exec(String(entry)) ?? [];
    if (Number(rows) > 0 && format !== "@") this.spill(row, column, Number(rows), Number(columns));
  }

  setFormat(row: number, column: number, format: string): void {
    this.cells.set(`${row},${column}`, { ...this.get(row, column), format });
  }

  private spill(row: number, column: number, rows: number, columns: number): void {
    const spilledFrom = `${row},${column}`;
    for (let r = row; r < row + rows; r += 1) {
      for (let c = column; c < column + columns; c += 1) {
        const { format, formula } = this.get(r, c);
        this.cells.set(`${r},${c}`, { format, formula: formula || 1, value: 1, spilledFrom });
      }
    }
  }

  private clearSpill(row: number, column: number): void {
    if (this.get(row, column).spilledFrom !== `${row},${column}`) return;
    for (const [key, cell] of this.cells) {
      if (cell.spilledFrom !== `${row},${column}`) continue;
      this.cells.set(key, { ...BLANK, format: cell.format });
    }
  }
}

class FakeRange {
  constructor(
    private readonly excel: FakeExcel,
    private readonly sheet: FakeSheet,
    readonly place: Place,
  ) {}

  get address(): string {
    return address(this.place);
  }

  get values(): Entry[][] {
    return this.map(({ value }) => value);
  }

  get formulas(): Entry[][] {
    return this.map(({ formula }) => formula);
  }

  set formulas(entries: readonly (readonly Entry[])[]) {
    if (entries.length !== this.place.rows || entries[0]!.length !== this.place.columns) {
      throw new OfficeError("InvalidArgument");
    }
    this.refuseLocked();
    const isMixed = this.rowHidden === null;
    const isWide = this.columnHidden === null;
    entries.forEach((row, r) =>
      row.forEach((entry, c) => {
        const [at, to] = [this.place.row + r, this.place.column + c];
        // As seen: of a block over a filter, the first row lands in every row that shows.
        if (isMixed && this.sheet.hiddenRows.has(at)) return;
        if (isWide && this.sheet.hiddenColumns.has(to)) return;
        const cell = { ...this.place, row: at, column: to, rows: 1, columns: 1 };
        const merged = this.sheet.merged.find((area) => within(area, cell) !== null);
        if (merged !== undefined && (merged.row !== at || merged.column !== to)) return;
        const put = entries[isMixed ? 0 : r]![isWide ? 0 : c]!;
        const { turnsTextsInto } = this.excel;
        const isTurned = turnsTextsInto !== null && typeof put === "string" && put !== "";
        this.sheet.type(at, to, isTurned ? turnsTextsInto : put);
        this.fillTableColumn(cell, entry);
      }),
    );
  }

  get numberFormat(): string[][] {
    return this.map(({ format }) => format);
  }

  set numberFormat(formats: string | readonly (readonly string[])[]) {
    if (this.sheet.isProtected) throw new OfficeError("AccessDenied");
    this.each((row, column, r, c) =>
      this.sheet.setFormat(row, column, typeof formats === "string" ? formats : formats[r]![c]!),
    );
  }

  get valueTypes(): string[][] {
    return this.map(({ value, formula }) => {
      if (formula === "") return "Empty";
      if (typeof value === "number") return "Double";
      if (typeof value === "boolean") return "Boolean";
      return ERRORS.test(value) ? "Error" : "String";
    });
  }

  get rowHidden(): boolean | null {
    return allOrNone(this.rows().map((row) => this.sheet.hiddenRows.has(row)));
  }

  get columnHidden(): boolean | null {
    const { column, columns } = this.place;
    const all = Array.from({ length: columns }, (_, c) => column + c);
    return allOrNone(all.map((c) => this.sheet.hiddenColumns.has(c)));
  }

  get hasSpill(): boolean | null {
    return allOrNone(this.map(({ spilledFrom }) => spilledFrom !== undefined).flat());
  }

  get format(): object {
    const locked: boolean[] = [];
    this.each((row, column) => locked.push(!this.sheet.unlocked.has(`${row},${column}`)));
    const where = rangeName(this.place);
    return recorder(
      KNOWN.RANGE,
      (path, value) => this.sheet.looks.set(`${where} ${path}`, value),
      {
        protection: { locked: allOrNone(locked) },
      },
      "format/",
    );
  }

  /** Of merged cells only the first keeps what stands in it. */
  merge(across: boolean): void {
    const { row, column, rows, columns } = this.place;
    if (!across) throw new Error("all rows into one cell is nothing the pane asks for");
    for (let r = row; r < row + rows; r += 1) {
      this.sheet.merged.push({ ...this.place, row: r, rows: 1 });
      for (let c = column + 1; c < column + columns; c += 1) this.sheet.type(r, c, "");
    }
  }

  getResizedRange(rows: number, columns: number): FakeRange {
    const { place } = this;
    const wider = { rows: place.rows + rows, columns: place.columns + columns };
    return this.excel.range({ ...place, ...wider });
  }

  getEntireColumn(): FakeRange {
    return this.excel.range({ ...this.place, row: 0, rows: SHEET_ROWS });
  }

  getIntersection(other: FakeRange): FakeRange {
    return this.excel.range(within(this.place, other.place)!);
  }

  getTables(): object {
    const items = this.excel.tables().filter((one) => within(one.getRange().place, this.place));
    return { items };
  }

  getMergedAreasOrNullObject(): object | null {
    if (this.excel.apiVersion < 13) throw new OfficeError("ApiNotFound");
    const areas = this.sheet.merged.filter((area) => within(area, this.place) !== null);
    return areas.length === 0 ? null : { address: areas.map((place) => address(place)).join() };
  }

  private refuseLocked(): void {
    if (!this.sheet.isProtected) return;
    this.each((row, column) => {
      if (!this.sheet.unlocked.has(`${row},${column}`)) throw new OfficeError("AccessDenied");
    });
  }

  private fillTableColumn(cell: Place, entry: Entry): void {
    if (!this.excel.fillsTableColumns || !String(entry).startsWith("=")) return;
    const table = this.excel.tables().find((one) => within(one.getRange().place, cell) !== null);
    if (table === undefined) return;
    const { row, rows } = table.getRange().place;
    for (let r = row + 1; r < row + rows; r += 1) {
      const { formula } = this.sheet.get(r, cell.column);
      const isConstant = formula !== "" && !String(formula).startsWith("=");
      if (!isConstant) this.sheet.type(r, cell.column, entry);
    }
  }

  private rows(): readonly number[] {
    return Array.from({ length: this.place.rows }, (_, r) => this.place.row + r);
  }

  private map<T>(of: (cell: Kept) => T): T[][] {
    const { row, column, rows, columns } = this.place;
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => of(this.sheet.get(row + r, column + c))),
    );
  }

  private each(visit: (row: number, column: number, r: number, c: number) => void): void {
    const { row, column, rows, columns } = this.place;
    for (let r = 0; r < rows; r += 1) {
      for (let c = 0; c < columns; c += 1) visit(row + r, column + c, r, c);
    }
  }
}

/** What Excel makes of what is typed, as far as the trade types it. */
function readAs(entry: Entry, format: string): Omit<Kept, "format"> & { format?: string } {
  if (typeof entry === "number") {
    const kept = Number(entry.toPrecision(15));
    return { formula: kept, value: kept };
  }
  if (typeof entry !== "string") return { formula: entry, value: entry };
  if (format === "@" || entry === "") return { formula: entry, value: entry };
  if (entry.startsWith("'")) return { formula: entry.slice(1), value: entry.slice(1) };
  if (entry.startsWith("=")) {
    const spelt = entry.replace(/"[^"]*"|\b[a-z]+(?=\()/g, (part) =>
      part.startsWith('"') ? part : part.toUpperCase(),
    );
    return { formula: spelt, value: 0 };
  }
  if (/^-?\d+(\.\d+)?$/.test(entry)) return { formula: Number(entry), value: Number(entry) };
  // Lotus began its formulas so, and Excel goes on with it.
  if (/^[+\-@]/.test(entry)) return { formula: `=${entry}`, value: 0 };
  // Any serial does: which one is the calendar's business.
  if (/^\d{1,2}[-/]\d{1,2}$/.test(entry))
    return { formula: 46_211, value: 46_211, format: "d-mmm" };
  return { formula: entry, value: entry };
}

function allOrNone(all: readonly boolean[]): boolean | null {
  return all.every((one) => one === all[0]) ? all[0]! : null;
}

function notFound(): never {
  throw new OfficeError("ItemNotFound");
}
