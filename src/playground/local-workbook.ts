import { Refusal } from "../core/refusal.js";
import { address, cellOf, samePlace, within } from "../pane/address.js";
import type { Statement } from "../functions/statement-model.js";
import type { Block, Entry, Handed, Place, Region, Step, Workbook } from "../pane/port.js";
import { checkShape, filled, labelOf, unexpected } from "../pane/stands.js";
import type { Named, Sheets } from "./sheets.js";

type Put = Extract<Step, { kind: "put" }>;
type WayBack = () => Step[];

/** A workbook whose sheets stand in this program: nothing comes between the look and the change. */
export abstract class LocalWorkbook implements Workbook {
  constructor(private readonly sheets: Sheets) {}

  async regions(): Promise<readonly Region[]> {
    const filledParts = this.sheets.visible().flatMap((name): Region[] => {
      const place = this.sheets.used(name);
      return place === null ? [] : [{ kind: "sheet", name, place }];
    });
    return [...this.sheets.named(), ...filledParts];
  }

  async read(places: readonly Place[]): Promise<readonly Block[]> {
    for (const { sheet } of places) {
      if (!this.sheets.has(sheet)) throw new Refusal(`there is no sheet ${sheet}`);
    }
    return places.map((place) => this.sheets.block(place));
  }

  async active(): Promise<Place> {
    return this.sheets.active();
  }

  async decimalSign(): Promise<"." | ","> {
    return this.sheets.decimalSign();
  }

  watch(changed: () => void): () => void {
    return this.sheets.watch(changed);
  }

  async write(steps: readonly Step[]): Promise<readonly Step[]> {
    for (const step of steps) {
      const why = this.refused(step, steps);
      if (why !== null) throw new Refusal(`${why}: nothing was written`);
    }
    const back = steps.map((step) => this.wayBack(step));
    for (const [made, step] of steps.entries()) {
      try {
        this.make(step);
      } catch (error) {
        const why = `${labelOf(step)} would not be made (${messageOf(error)})`;
        throw new Refusal(why + this.settled(undoing(back.slice(0, made))));
      }
    }
    return undoing(back);
  }

  abstract statement(name: string, statement: Statement): Promise<Handed>;

  /** Takes back what was made of a change, and says what is left of it. */
  private settled(undo: readonly Step[]): string {
    const left = undo.filter((step) => {
      try {
        this.make(step);
        return false;
      } catch {
        return true;
      }
    });
    if (left.length === 0) return ": nothing was written";
    return `; ${left.map(labelOf).join(" and ")} ${left.length > 1 ? "are" : "is"} left of it`;
  }

  private refused(step: Step, all: readonly Step[]): string | null {
    switch (step.kind) {
      case "put":
        return this.place(step.place, all) ?? this.refusedPut(step);
      case "blank":
        return this.place(step.place, all) ?? this.refusedBlank(step.place);
      case "cover": {
        const was = this.find(step.name);
        if (step.region === "name") return null;
        if (was?.kind !== "table") return `there is no table ${step.name}`;
        return was.place.row !== step.place.row || within(was.place, step.place) === null
          ? `the table ${step.name} keeps its heading row, and some of its columns`
          : null;
      }
      case "uncover":
        return this.find(step.name) ? null : `there is no name ${step.name}`;
      case "add sheet":
        return this.sheets.has(step.name) ? `there is a sheet ${step.name} already` : null;
      case "drop sheet": {
        if (!this.sheets.has(step.name)) return `there is no sheet ${step.name}`;
        const used = this.sheets.used(step.name);
        if (used === null) return null;
        if (step.expect === undefined) return filled(used, this.entriesAfter(used, all));
        return this.otherThan(step.expect, used);
      }
    }
  }

  private place({ sheet }: Place, all: readonly Step[]): string | null {
    const isNew = all.some((step) => step.kind === "add sheet" && step.name === sheet);
    return this.sheets.has(sheet) || isNew ? null : `there is no sheet ${sheet}`;
  }

  private refusedBlank(place: Place): string | null {
    if (!this.sheets.has(place.sheet)) return null;
    const table = this.sheets
      .named()
      .find((named) => named.kind === "table" && within(named.place, place) !== null);
    const inTable = table ? `${address(place)} lies in the table ${table.name}` : null;
    return filled(place, this.sheets.block(place).entries) ?? this.mergedIn(place) ?? inTable;
  }

  private refusedPut(step: Put): string | null {
    const { place } = step;
    checkShape(place, step.expect);
    checkShape(place, step.put);
    const { entries, formats } = this.blockOf(place);
    const other = unexpected(place, entries, step.expect) ?? this.mergedIn(place);
    if (other !== null) return other;
    if (this.sheets.isProtected(place.sheet)) return `${address(place)} is protected`;
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

  private mergedIn(place: Place): string | null {
    const merged = this.sheets.has(place.sheet)
      ? this.sheets.merged(place.sheet).find((other) => within(other, place) !== null)
      : undefined;
    return merged ? `${address(place)} has merged cells, ${address(merged)}` : null;
  }

  /** What stands on a sheet besides what is expected there. */
  private otherThan({ place, entries }: Pick<Block, "place" | "entries">, used: Place) {
    const rest = this.sheets
      .block(used)
      .entries.map((row, r) =>
        row.map((entry, c) => (within(place, cellOf(used, r, c)) === null ? entry : "")),
      );
    return unexpected(place, this.sheets.block(place).entries, entries) ?? filled(used, rest);
  }

  /** What a sheet's cells hold once the steps are made. */
  private entriesAfter(used: Place, all: readonly Step[]): Entry[][] {
    return this.sheets.block(used).entries.map((row, r) =>
      row.map((entry, c) => {
        const cell = cellOf(used, r, c);
        const put = all.find((s): s is Put => s.kind === "put" && within(s.place, cell) !== null);
        return put ? put.put[cell.row - put.place.row]![cell.column - put.place.column]! : entry;
      }),
    );
  }

  /** Takes note of what is there now; called after the change, it answers the step back. */
  private wayBack(step: Step): WayBack | null {
    switch (step.kind) {
      case "blank":
        return null;
      case "put": {
        const { place } = step;
        const before = this.blockOf(place);
        return () => {
          const after = this.blockOf(place);
          const formats = sameCells(after.formats, before.formats)
            ? {}
            : { formats: before.formats };
          return [{ kind: "put", place, expect: after.entries, put: before.entries, ...formats }];
        };
      }
      case "cover":
      case "uncover": {
        const { name } = step;
        const was = this.find(name);
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
        this.sheets.put(step.place, step.put, formatsOf(step));
        return;
      case "cover":
        this.sheets.cover({ kind: step.region, name: step.name, place: step.place });
        return;
      case "uncover":
        this.sheets.uncover(step.name);
        return;
      case "add sheet":
        this.sheets.addSheet(step.name);
        return;
      case "drop sheet":
        this.sheets.dropSheet(step.name);
    }
  }

  private find(name: string): Named | undefined {
    return this.sheets.named().find((named) => named.name === name);
  }

  /** What stands in a place; on a sheet that is to be added, or was dropped, nothing. */
  private blockOf(place: Place): Block {
    if (this.sheets.has(place.sheet)) return this.sheets.block(place);
    const all = <T>(cell: T): T[][] =>
      Array.from({ length: place.rows }, () => new Array<T>(place.columns).fill(cell));
    return { place, values: all<unknown>(""), entries: all<Entry>(""), formats: all("General") };
  }
}

function undoing(back: readonly (WayBack | null)[]): Step[] {
  return back.flatMap((undo) => undo?.() ?? []).reverse();
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function formatOf({ formats }: Put, row: number, column: number): string | undefined {
  return typeof formats === "string" ? formats : formats?.[row]?.[column];
}

function formatsOf(step: Put): readonly (readonly string[])[] | null {
  if (step.formats === undefined) return null;
  if (typeof step.formats !== "string") return step.formats;
  const { formats } = step;
  return step.put.map((row) => row.map(() => formats));
}

function sameCells(a: Block["formats"], b: Block["formats"]): boolean {
  return a.every((row, r) => row.every((cell, c) => cell === b[r]![c]));
}

/** What every spreadsheet makes a number, a date, a truth value of as it is typed. */
function wouldTurn(text: string): boolean {
  return (
    (/\d/.test(text) && /^[\d\s.,:/%+()$€£-]+$/.test(text)) ||
    /^\d{1,2}[- ]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i.test(text) ||
    /^(true|false)$/i.test(text)
  );
}
