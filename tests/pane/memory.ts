import { Refusal } from "../../src/core/refusal.js";
import { address, cellOf, samePlace, within } from "../../src/pane/places.js";
import { layoutOf } from "../../src/functions/statement-layout.js";
import type { Statement } from "../../src/functions/statement-model.js";
import type { Block, Entry, Handed, Place, Region, Step, Workbook } from "../../src/pane/port.js";
import { checkShape, filled, isFormula, typed, unexpected } from "../../src/pane/stands.js";
import { fitName, freeName } from "../../src/pane/start/names.js";
import { gridOf } from "../../src/pane/statement/grid.js";
import { texts } from "../../src/pane/texts.js";

/** A table or defined name of a workbook in memory, over a place. */
export interface Named {
  readonly kind: "table" | "name";
  readonly place: Place;
}

interface Kept {
  /** A text stands without the apostrophe that it was typed with. */
  readonly value: Entry;
  readonly isFormula: boolean;
  readonly format: string;
}

const BLANK: Kept = { value: "", isFormula: false, format: "General" };

/** A workbook in memory: it keeps what is typed, and calculates nothing. */
export class MemoryWorkbook implements Workbook {
  private readonly sheets = new Map<string, Map<string, Kept>>();
  private readonly listeners = new Set<() => void>();
  private readonly protectedSheets = new Set<string>();
  private readonly merged: Place[] = [];
  activePlace: Place;
  sign: "." | "," = ".";

  /** @param sheets - each sheet's cells from A1 on */
  constructor(
    sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
    readonly names: Map<string, Named> = new Map(),
  ) {
    for (const [name, rows] of Object.entries(sheets)) {
      this.sheets.set(name, new Map());
      rows.forEach((row, r) => row.forEach((entry, c) => this.set(name, r, c, entry)));
    }
    this.activePlace = { sheet: Object.keys(sheets)[0]!, row: 0, column: 0, rows: 1, columns: 1 };
  }

  /** What a hand types into a cell, which the pane hears of. */
  type(sheet: string, row: number, column: number, entry: Entry, format?: string): void {
    this.set(sheet, row, column, entry, format);
    this.tell();
  }

  protect(sheet: string): void {
    this.protectedSheets.add(sheet);
  }

  merge(place: Place): void {
    this.merged.push(place);
  }

  entry(sheet: string, row: number, column: number): Entry {
    return entryOf(this.get(sheet, row, column));
  }

  /** Every filled or formatted cell, to compare a workbook with what it was. */
  snapshot(): unknown {
    const cells = [...this.sheets].map(([name, kept]) => [
      name,
      [...kept].filter(([, cell]) => cell.value !== "" || cell.format !== "General").sort(),
    ]);
    return { cells, names: [...this.names].sort() };
  }

  regions(): Promise<readonly Region[]> {
    const named = (["table", "name"] as const).flatMap((kind) =>
      [...this.names].flatMap(([name, { kind: own, place }]) =>
        own === kind ? [{ kind, name, place }] : [],
      ),
    );
    const sheets = [...this.sheets.keys()].flatMap((name): Region[] => {
      const place = this.used(name);
      return place === null ? [] : [{ kind: "sheet", name, place }];
    });
    return Promise.resolve([...named, ...sheets]);
  }

  async read(places: readonly Place[]): Promise<readonly Block[]> {
    for (const { sheet } of places) {
      if (!this.sheets.has(sheet)) throw new Refusal(`there is no sheet ${sheet}`);
    }
    return places.map((place) => this.block(place));
  }

  active(): Promise<Place> {
    return Promise.resolve(this.activePlace);
  }

  decimalSign(): Promise<"." | ","> {
    return Promise.resolve(this.sign);
  }

  watch(changed: () => void): () => void {
    const listener = () => changed();
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  async write(steps: readonly Step[]): Promise<readonly Step[]> {
    for (const step of steps) {
      const why = this.refused(step, steps);
      if (why !== null) throw new Refusal(`${why}: nothing was written`);
    }
    const before = steps.map((step) => this.inverse(step));
    for (const step of steps) this.make(step);
    this.tell();
    return before.flatMap((undo) => undo?.() ?? []).reverse();
  }

  /** As a sheet of its own, of which the values and their formats are kept. */
  async statement(name: string, statement: Statement): Promise<Handed> {
    const sheet = freeName(fitName(name), [...this.sheets.keys()]);
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

  private refused(step: Step, all: readonly Step[]): string | null {
    switch (step.kind) {
      case "put":
      case "blank":
        return this.refusedCells(step, all);
      case "cover": {
        const was = this.names.get(step.name);
        if (step.region === "name") return null;
        if (was?.kind !== "table") return `there is no table ${step.name}`;
        return was.place.row !== step.place.row || within(was.place, step.place) === null
          ? `the table ${step.name} keeps its heading row, and some of its columns`
          : null;
      }
      case "uncover":
        return this.names.has(step.name) ? null : `there is no name ${step.name}`;
      case "add sheet":
        return this.sheets.has(step.name) ? `there is a sheet ${step.name} already` : null;
      case "drop sheet": {
        const used = this.used(step.name);
        if (!this.sheets.has(step.name)) return `there is no sheet ${step.name}`;
        if (used === null) return null;
        if (step.expect === undefined) return filled(used, this.emptied(used, all));
        return this.otherThan(step.expect, used);
      }
    }
  }

  private refusedCells(
    step: Extract<Step, { kind: "put" | "blank" }>,
    all: readonly Step[],
  ): string | null {
    const { place } = step;
    const isNew = all.some((s) => s.kind === "add sheet" && s.name === place.sheet);
    if (!this.sheets.has(place.sheet) && !isNew) return `there is no sheet ${place.sheet}`;
    const { entries, formats } = this.block(place);
    const merged = this.merged.find((other) => within(other, place) !== null);
    const mergedHere = merged ? `${address(place)} has merged cells, ${address(merged)}` : null;
    if (step.kind === "blank") {
      const inTable = [...this.names].find(
        ([, named]) => named.kind === "table" && within(named.place, place) !== null,
      );
      const lies = inTable ? `${address(place)} lies in the table ${inTable[0]}` : null;
      return filled(place, entries) ?? mergedHere ?? lies;
    }
    checkShape(place, step.expect);
    checkShape(place, step.put);
    const other = unexpected(place, entries, step.expect);
    if (other !== null || mergedHere !== null) return other ?? mergedHere;
    if (this.protectedSheets.has(place.sheet)) return `${address(place)} is protected`;
    for (const [r, row] of step.put.entries()) {
      for (const [c, entry] of row.entries()) {
        const format = formatOf(step, r, c) ?? formats[r]![c]!;
        if (format === "@" || typeof entry !== "string" || !wouldTurn(entry)) continue;
        const at = address(cellOf(place, r, c));
        return `${at} would hold a number or a date where "${entry}" was put`;
      }
    }
    return null;
  }

  /** What stands on a sheet besides what is expected there. */
  private otherThan({ place, entries }: Pick<Block, "place" | "entries">, used: Place) {
    const rest = this.block(used).entries.map((row, r) =>
      row.map((entry, c) => (within(place, cellOf(used, r, c)) === null ? entry : "")),
    );
    return unexpected(place, this.block(place).entries, entries) ?? filled(used, rest);
  }

  /** What a sheet's cells hold once the steps are made. */
  private emptied(used: Place, all: readonly Step[]): Entry[][] {
    return this.block(used).entries.map((row, r) =>
      row.map((entry, c) => {
        const cell = cellOf(used, r, c);
        const put = all.find((s) => s.kind === "put" && within(s.place, cell) !== null);
        if (put?.kind !== "put") return entry;
        return put.put[cell.row - put.place.row]![cell.column - put.place.column]!;
      }),
    );
  }

  /** Takes note of what is there now; called after the change, it answers the step back. */
  private inverse(step: Step): (() => Step[]) | null {
    switch (step.kind) {
      case "blank":
        return null;
      case "put": {
        const { place } = step;
        const before = this.block(place);
        return () => {
          const after = this.block(place);
          const formats = after.formats.flat().some((f, n) => f !== before.formats.flat()[n])
            ? { formats: before.formats }
            : {};
          return [{ kind: "put", place, expect: after.entries, put: before.entries, ...formats }];
        };
      }
      case "cover":
      case "uncover": {
        const was = this.names.get(step.name);
        const { name } = step;
        if (was === undefined) return () => [{ kind: "uncover", name }];
        if (step.kind === "cover" && samePlace(was.place, step.place)) return null;
        return () => [{ kind: "cover", region: was.kind, name, place: was.place }];
      }
      case "add sheet":
        return () => [{ kind: "drop sheet", name: step.name }];
      case "drop sheet":
        return step.expect ? null : () => [{ kind: "add sheet", name: step.name }];
    }
  }

  private make(step: Step): void {
    switch (step.kind) {
      case "blank":
        return;
      case "put":
        step.put.forEach((row, r) =>
          row.forEach((entry, c) => {
            const { sheet, row: top, column: left } = step.place;
            this.set(sheet, top + r, left + c, entry, formatOf(step, r, c));
          }),
        );
        return;
      case "cover":
        this.names.set(step.name, { kind: step.region, place: step.place });
        return;
      case "uncover":
        this.names.delete(step.name);
        return;
      case "add sheet":
        this.sheets.set(step.name, new Map());
        return;
      case "drop sheet":
        this.sheets.delete(step.name);
    }
  }

  private block(place: Place): Block {
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

  private used(sheet: string): Place | null {
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

  private get(sheet: string, row: number, column: number): Kept {
    return this.sheets.get(sheet)?.get(`${row},${column}`) ?? BLANK;
  }

  private set(sheet: string, row: number, column: number, entry: Entry, given?: string): void {
    const format = given ?? this.get(sheet, row, column).format;
    const isText = typeof entry === "string" && entry.startsWith("'");
    this.sheets.get(sheet)!.set(`${row},${column}`, {
      value: isText ? entry.slice(1) : entry,
      isFormula: isFormula(entry) && format !== "@",
      format,
    });
  }

  private tell(): void {
    for (const listener of [...this.listeners]) listener();
  }
}

function entryOf({ value, isFormula, format }: Kept): Entry {
  return typeof value === "string" && !isFormula ? typed(value, format) : value;
}

function formatOf(
  { formats }: Extract<Step, { kind: "put" }>,
  row: number,
  column: number,
): string | undefined {
  return typeof formats === "string" ? formats : formats?.[row]?.[column];
}

/** What every spreadsheet makes a number, a date, a truth value of as it is typed. */
function wouldTurn(text: string): boolean {
  return (
    (/\d/.test(text) && /^[\d\s.,:/%+()$€£-]+$/.test(text)) ||
    /^\d{1,2}[- ]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i.test(text) ||
    /^(true|false)$/i.test(text)
  );
}
