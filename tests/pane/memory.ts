import { Refusal } from "../../src/core/refusal.js";
import type { Block, Entry, Place, Region, Step, Workbook } from "../../src/pane/port.js";

/** A table or defined name of a workbook in memory, over a place. */
export interface Named {
  readonly kind: "table" | "name";
  readonly place: Place;
}

interface Kept {
  readonly entry: Entry;
  readonly format: string;
}

const BLANK: Kept = { entry: "", format: "General" };

/** A workbook in memory: it keeps what is typed, and calculates nothing. */
export class MemoryWorkbook implements Workbook {
  private readonly sheets = new Map<string, Map<string, Kept>>();
  private readonly listeners = new Set<() => void>();
  activePlace: Place;
  sign: "." | "," = ".";

  /** @param sheets - each sheet's cells from A1 on */
  constructor(
    sheets: Readonly<Record<string, readonly (readonly Entry[])[]>>,
    readonly names: Map<string, Named> = new Map(),
  ) {
    for (const [name, rows] of Object.entries(sheets)) {
      this.sheets.set(name, new Map());
      rows.forEach((row, r) => row.forEach((entry, c) => this.set(name, r, c, { entry })));
    }
    this.activePlace = { sheet: Object.keys(sheets)[0]!, row: 0, column: 0, rows: 1, columns: 1 };
  }

  /** What a hand types into a cell, which the pane hears of. */
  type(sheet: string, row: number, column: number, entry: Entry, format?: string): void {
    this.set(sheet, row, column, { entry, ...(format === undefined ? {} : { format }) });
    this.tell();
  }

  entry(sheet: string, row: number, column: number): Entry {
    return this.get(sheet, row, column).entry;
  }

  /** Every filled or formatted cell, to compare a workbook with what it was. */
  snapshot(): unknown {
    const cells = [...this.sheets].map(([name, kept]) => [
      name,
      [...kept].filter(([, cell]) => cell.entry !== "" || cell.format !== "General").sort(),
    ]);
    return { cells, names: [...this.names].sort() };
  }

  regions(): Promise<readonly Region[]> {
    const named = (["table", "name"] as const).flatMap((kind) =>
      [...this.names].flatMap(([name, { kind: own, place }]) =>
        own === kind ? [{ kind, name, place }] : [],
      ),
    );
    const sheets = [...this.sheets].flatMap(([name, cells]): Region[] => {
      const at = [...cells].filter(([, { entry }]) => entry !== "").map(([key]) => spot(key));
      if (at.length === 0) return [];
      const [top, left] = [0, 1].map((k) => Math.min(...at.map((p) => p[k]!))) as [number, number];
      const [last, right] = [0, 1].map((k) => Math.max(...at.map((p) => p[k]!))) as [
        number,
        number,
      ];
      const place = {
        sheet: name,
        row: top,
        column: left,
        rows: last - top + 1,
        columns: right - left + 1,
      };
      return [{ kind: "sheet", name, place }];
    });
    return Promise.resolve([...named, ...sheets]);
  }

  read(places: readonly Place[]): Promise<readonly Block[]> {
    return Promise.resolve(places.map((place) => this.block(place)));
  }

  active(): Promise<Place> {
    return Promise.resolve(this.activePlace);
  }

  decimalSign(): Promise<"." | ","> {
    return Promise.resolve(this.sign);
  }

  watch(changed: () => void): () => void {
    this.listeners.add(changed);
    return () => this.listeners.delete(changed);
  }

  async write(steps: readonly Step[]): Promise<readonly Step[]> {
    for (const step of steps) this.check(step, steps);
    const undo = steps.map((step) => this.make(step)).reverse();
    this.tell();
    return undo;
  }

  private check(step: Step, all: readonly Step[]): void {
    if (step.kind !== "put" && step.kind !== "blank") return;
    const isNew = all.some((s) => s.kind === "add sheet" && s.name === step.place.sheet);
    if (!this.sheets.has(step.place.sheet) && !isNew) {
      throw new Refusal(`there is no sheet ${step.place.sheet}`);
    }
    const { entries } = this.block(step.place);
    entries.forEach((row, r) =>
      row.forEach((entry, c) => {
        const expected = step.kind === "blank" ? "" : step.expect[r]![c]!;
        if (entry === expected) return;
        throw new Refusal(
          `row ${step.place.row + r + 1}, column ${step.place.column + c + 1} of ${step.place.sheet} ` +
            `holds "${entry}" where "${expected}" stood when it was read: nothing was written`,
        );
      }),
    );
  }

  private make(step: Step): Step {
    switch (step.kind) {
      case "blank":
        return step;
      case "put": {
        const before = this.block(step.place);
        step.put.forEach((row, r) =>
          row.forEach((entry, c) => {
            const format = typeof step.formats === "string" ? step.formats : step.formats?.[r]?.[c];
            this.set(step.place.sheet, step.place.row + r, step.place.column + c, {
              entry,
              ...(format === undefined ? {} : { format }),
            });
          }),
        );
        return {
          kind: "put",
          place: step.place,
          expect: step.put,
          put: before.entries,
          formats: before.formats,
        };
      }
      case "cover": {
        const was = this.names.get(step.name);
        this.names.set(step.name, { kind: step.region, place: step.place });
        return was === undefined
          ? { kind: "uncover", name: step.name }
          : { kind: "cover", region: was.kind, name: step.name, place: was.place };
      }
      case "uncover": {
        const was = this.names.get(step.name)!;
        this.names.delete(step.name);
        return { kind: "cover", region: was.kind, name: step.name, place: was.place };
      }
      case "add sheet":
        this.sheets.set(step.name, new Map());
        return { kind: "drop sheet", name: step.name };
      case "drop sheet":
        this.sheets.delete(step.name);
        return { kind: "add sheet", name: step.name };
    }
  }

  private block(place: Place): Block {
    const cells = Array.from({ length: place.rows }, (_, r) =>
      Array.from({ length: place.columns }, (_, c) =>
        this.get(place.sheet, place.row + r, place.column + c),
      ),
    );
    const entries = cells.map((row) => row.map(({ entry }) => entry));
    return {
      place,
      values: entries,
      entries,
      formats: cells.map((row) => row.map((c) => c.format)),
    };
  }

  private get(sheet: string, row: number, column: number): Kept {
    return this.sheets.get(sheet)?.get(`${row},${column}`) ?? BLANK;
  }

  private set(sheet: string, row: number, column: number, change: Partial<Kept>): void {
    const kept = { ...this.get(sheet, row, column), ...change };
    this.sheets.get(sheet)!.set(`${row},${column}`, kept);
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

function spot(key: string): readonly number[] {
  return key.split(",").map(Number);
}
