import { layoutOf } from "../../src/functions/statement-layout.js";
import type { Statement } from "../../src/functions/statement-model.js";
import { LocalWorkbook } from "../../src/playground/local-workbook.js";
import type { Named as NamedPlace, Sheets } from "../../src/playground/sheets.js";
import type { Block, Entry, Handed, Place, Step } from "../../src/pane/port.js";
import { isFormula, typed } from "../../src/pane/stands.js";
import { fitName, freeName } from "../../src/pane/start/names.js";
import { gridOf } from "../../src/pane/statement/grid.js";
import { texts } from "../../src/pane/texts.js";

/** A table or defined name of a workbook in memory, over a place. */
export type Named = Omit<NamedPlace, "name">;

interface Kept {
  /** A text stands without the apostrophe that it was typed with. */
  readonly value: Entry;
  readonly isFormula: boolean;
  readonly format: string;
  /** What is typed where a formula gives the value: nothing where it stands in another cell. */
  readonly entry?: Entry;
}

const BLANK: Kept = { value: "", isFormula: false, format: "General" };

/** A workbook in memory: it keeps what is typed, and calculates nothing. */
export class MemoryWorkbook extends LocalWorkbook {
  private readonly memory: MemorySheets;
  /** By their names. */
  readonly names: Map<string, Named>;

  /** @param sheets - each sheet's cells from A1 on */
  constructor(
    sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
    names: Map<string, Named> = new Map(),
  ) {
    const memory = new MemorySheets(sheets, names);
    super(memory);
    this.memory = memory;
    this.names = names;
  }

  /** What a hand types into a cell, which the pane hears of. */
  type(sheet: string, row: number, column: number, entry: Entry, format?: string): void {
    this.memory.set(sheet, row, column, entry, format);
    this.memory.tell();
  }

  /**
   * A formula with what it gives, over as many cells as that takes.
   *
   * @param typed - what a host gives as the entries of the further cells
   */
  spill(
    sheet: string,
    row: number,
    column: number,
    formula: string,
    gives: readonly (readonly Entry[])[],
    typed: "nothing" | "value" | "formula" = "nothing",
  ): void {
    this.memory.spill(sheet, row, column, formula, gives, typed);
    this.memory.tell();
  }

  protect(sheet: string): void {
    this.memory.protectedSheets.add(sheet);
  }

  merge(place: Place): void {
    this.memory.mergedPlaces.push(place);
  }

  entry(sheet: string, row: number, column: number): Entry {
    return entryOf(this.memory.get(sheet, row, column));
  }

  set activePlace(place: Place) {
    this.memory.activePlace = place;
  }

  set sign(sign: "." | ",") {
    this.memory.sign = sign;
  }

  /** As a sheet of its own, of which the values and their formats are kept. */
  async statement(name: string, statement: Statement): Promise<Handed> {
    const sheet = freeName(fitName(name), [...this.memory.sheets.keys()]);
    const { entries, formats } = gridOf(layoutOf(statement), statement.moneyDecimals);
    const place = { sheet, row: 0, column: 0, rows: entries.length, columns: entries[0]!.length };
    const expect = entries.map((row) => row.map(() => ""));
    await this.write([
      { kind: "add sheet", name: sheet },
      { kind: "put", place, expect, put: entries, formats },
    ]);
    const undo: Step = { kind: "drop sheet", name: sheet, expect: { place, entries } };
    return { sentence: texts.statement.added(sheet, []), undo: [undo] };
  }

  /** Every filled or formatted cell, to compare a workbook with what it was. */
  snapshot(): unknown {
    const cells = [...this.memory.sheets].map(([name, kept]) => [
      name,
      [...kept].filter(([, cell]) => cell.value !== "" || cell.format !== "General").sort(),
    ]);
    return { cells, names: [...this.names].sort() };
  }
}

class MemorySheets implements Sheets {
  readonly sheets = new Map<string, Map<string, Kept>>();
  private readonly listeners = new Set<() => void>();
  readonly protectedSheets = new Set<string>();
  readonly mergedPlaces: Place[] = [];
  activePlace: Place;
  sign: "." | "," = ".";

  constructor(
    sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
    private readonly names: Map<string, Named>,
  ) {
    for (const [name, rows] of Object.entries(sheets)) {
      this.sheets.set(name, new Map());
      rows.forEach((row, r) => row.forEach((entry, c) => this.set(name, r, c, entry)));
    }
    this.activePlace = { sheet: Object.keys(sheets)[0]!, row: 0, column: 0, rows: 1, columns: 1 };
  }

  visible(): readonly string[] {
    return [...this.sheets.keys()];
  }

  has(sheet: string): boolean {
    return this.sheets.has(sheet);
  }

  isProtected(sheet: string): boolean {
    return this.protectedSheets.has(sheet);
  }

  active(): Place {
    return this.activePlace;
  }

  decimalSign(): "." | "," {
    return this.sign;
  }

  merged(sheet: string): readonly Place[] {
    return this.mergedPlaces.filter((place) => place.sheet === sheet);
  }

  named(): readonly NamedPlace[] {
    return (["table", "name"] as const).flatMap((kind) =>
      [...this.names].flatMap(([name, named]) => (named.kind === kind ? [{ ...named, name }] : [])),
    );
  }

  put(
    place: Place,
    entries: readonly (readonly Entry[])[],
    formats: readonly (readonly string[])[] | null,
  ): void {
    entries.forEach((row, r) =>
      row.forEach((entry, c) =>
        this.set(place.sheet, place.row + r, place.column + c, entry, formats?.[r]?.[c]),
      ),
    );
    this.tell();
  }

  cover({ name, kind, place }: NamedPlace): void {
    this.names.set(name, { kind, place });
    this.tell();
  }

  uncover(name: string): void {
    this.names.delete(name);
    this.tell();
  }

  addSheet(name: string): void {
    this.sheets.set(name, new Map());
    this.tell();
  }

  dropSheet(name: string): void {
    this.sheets.delete(name);
    this.tell();
  }

  watch(changed: () => void): () => void {
    const listener = () => changed();
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  block(place: Place): Block {
    const cells = Array.from({ length: place.rows }, (_, r) =>
      Array.from({ length: place.columns }, (_, c) =>
        this.get(place.sheet, place.row + r, place.column + c),
      ),
    );
    return {
      place,
      values: cells.map((row) => row.map(({ value }) => value)),
      entries: cells.map((row) => row.map(entryOf)),
      formats: cells.map((row) => row.map(({ format }) => format)),
    };
  }

  used(sheet: string): Place | null {
    const filledCells = [...(this.sheets.get(sheet) ?? [])].filter(([, { value }]) => value !== "");
    if (filledCells.length === 0) return null;
    const [rows, columns] = [0, 1].map((k) =>
      filledCells.map(([key]) => Number(key.split(",")[k])),
    ) as [number[], number[]];
    const [row, column] = [Math.min(...rows), Math.min(...columns)];
    return {
      sheet,
      row,
      column,
      rows: Math.max(...rows) - row + 1,
      columns: Math.max(...columns) - column + 1,
    };
  }

  get(sheet: string, row: number, column: number): Kept {
    return this.sheets.get(sheet)?.get(`${row},${column}`) ?? BLANK;
  }

  set(sheet: string, row: number, column: number, entry: Entry, given?: string): void {
    const format = given ?? this.get(sheet, row, column).format;
    const isText = typeof entry === "string" && entry.startsWith("'");
    this.sheets.get(sheet)!.set(`${row},${column}`, {
      value: isText ? entry.slice(1) : entry,
      isFormula: isFormula(entry) && format !== "@",
      format,
    });
  }

  spill(
    sheet: string,
    row: number,
    column: number,
    formula: string,
    gives: readonly (readonly Entry[])[],
    typed: "nothing" | "value" | "formula",
  ): void {
    gives.forEach((cells, r) =>
      cells.forEach((value, c) => {
        const entry = r === 0 && c === 0 ? formula : { nothing: "", value, formula }[typed];
        const kept = { value, isFormula: false, format: "General", entry };
        this.sheets.get(sheet)!.set(`${row + r},${column + c}`, kept);
      }),
    );
  }

  tell(): void {
    for (const listener of [...this.listeners]) listener();
  }
}

function entryOf({ value, isFormula, format, entry }: Kept): Entry {
  if (entry !== undefined) return entry;
  return typeof value === "string" && !isFormula ? typed(value, format) : value;
}
