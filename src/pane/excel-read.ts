import { Refusal } from "../core/refusal.js";
import { CellError, type ErrorCode } from "../functions/cells.js";
import { placeOf, SHEET_COLUMNS, SHEET_ROWS, within } from "./address.js";
import { CALL_CELLS, grouped, isOfficeError, rangeAt, run, slices, whyOf } from "./excel-run.js";
import type { Block, Entry, Place, Region } from "./port.js";
import { typed } from "./stands.js";

/** Names that Excel gives to cells itself, to print or to filter them. */
const RESERVED = /^(?:_|Print_(?:Area|Titles)$)/;

/** Tables, names and filled parts of the visible sheets: two syncs, however many there are. */
export async function readRegions(): Promise<readonly Region[]> {
  try {
    return await run(async (context) => {
      const { worksheets, tables, names } = context.workbook;
      worksheets.load("items/name,items/visibility");
      tables.load("items/name,items/showTotals");
      names.load("items/name,items/type,items/value,items/visible");
      await context.sync();
      const sheets = worksheets.items.filter(({ visibility }) => visibility === "Visible");
      const perSheet = sheets.map((sheet) => ({
        name: sheet.name,
        used: sheet.getUsedRangeOrNullObject(true).load("address"),
        names: sheet.names.load("items/name,items/type,items/value,items/visible"),
      }));
      const perTable = tables.items.map((table) => ({
        name: table.name,
        totals: table.showTotals,
        range: table.getRange().load("address"),
      }));
      await context.sync();
      const used = new Map(
        perSheet.flatMap(({ name, used }) => {
          const place = used.isNullObject ? null : placeOf(used.address);
          return place === null ? [] : [[name, place] as const];
        }),
      );
      const visible = new Set(sheets.map(({ name }) => name));
      const named = [
        ...names.items.map((item) => ({ item, name: item.name })),
        // A name of one sheet is qualified, as a formula on another sheet must write it.
        ...perSheet.flatMap((sheet) =>
          sheet.names.items.map((item) => ({ item, name: scoped(sheet.name, item.name) })),
        ),
      ];
      return [
        ...perTable.flatMap(({ name, totals, range }) =>
          region("table", name, placeOf(range.address)).map((table) =>
            totals ? { ...table, totals } : table,
          ),
        ),
        ...named.flatMap(({ item, name }) =>
          item.visible && item.type === "Range" && !RESERVED.test(item.name)
            ? region("name", name, clipped(placeOf(String(item.value)), used))
            : [],
        ),
        ...[...used].flatMap(([name, place]) => region("sheet", name, place)),
      ].filter(({ place }) => visible.has(place.sheet));
    });
  } catch (error) {
    throw new Refusal(whyOf(error));
  }
}

/** What stands in places; one sync where they are small, else one for each part. */
export async function readBlocks(places: readonly Place[]): Promise<readonly Block[]> {
  try {
    return await readParts(places, CALL_CELLS);
  } catch (error) {
    throw new Refusal(
      whyOf(
        error,
        places.map(({ sheet }) => `sheet ${sheet}`),
      ),
    );
  }
}

async function readParts(places: readonly Place[], cells: number): Promise<readonly Block[]> {
  try {
    return await run(async (context) => {
      const parts = places.map((place) => slices(place, cells).map((part) => ({ part })));
      const read = new Map<object, Block>();
      for (const group of grouped(parts.flat(), ({ part }) => part.rows * part.columns, cells)) {
        const loaded = group.map((key) => ({ key, finish: loadBlock(context, key.part) }));
        // One sync a part is the point: all at once is more than Excel on the web passes on.
        await context.sync();
        for (const { key, finish } of loaded) read.set(key, finish());
      }
      return places.map((place, n) =>
        joined(
          place,
          parts[n]!.map((key) => read.get(key)!),
        ),
      );
    });
  } catch (error) {
    // Long texts: the same in smaller parts.
    const isTooMuch = isOfficeError(error) && error.code === "ResponsePayloadSizeLimitExceeded";
    if (!isTooMuch || cells < 100) throw error;
    return readParts(places, Math.floor(cells / 10));
  }
}

/** Asks for a block; what is answered reads it once the context is synced. */
export function loadBlock(context: Excel.RequestContext, place: Place): () => Block {
  return loadRange(rangeAt(context, place));
}

/** The same of a range that Excel finds. */
export function loadRange(found: Excel.Range): () => Block {
  const range = found.load("address,values,formulas,numberFormat,valueTypes");
  return () => {
    const place = placeOf(range.address)!;
    const types = range.valueTypes;
    const formats = range.numberFormat as string[][];
    return {
      place,
      values: range.values.map((row, r) => row.map((value, c) => valueOf(value, types[r]![c]!))),
      entries: range.formulas.map((row: Entry[], r) =>
        row.map((formula, c) =>
          types[r]![c] === "String" && formula === range.values[r]![c]
            ? typed(String(formula), formats[r]![c]!)
            : formula,
        ),
      ),
      formats,
    };
  };
}

export async function readActive(): Promise<Place> {
  try {
    return await run(async (context) => {
      const range = context.workbook.getSelectedRange().load("address");
      await context.sync();
      const place = placeOf(range.address);
      if (place === null) throw new Refusal("several ranges are chosen: choose one");
      return place;
    });
  } catch (error) {
    throw new Refusal(whyOf(error));
  }
}

export async function readDecimalSign(): Promise<"." | ","> {
  try {
    return await run(async (context) => {
      const application = context.workbook.application.load("decimalSeparator");
      await context.sync();
      return application.decimalSeparator === "," ? "," : ".";
    });
  } catch (error) {
    throw new Refusal(whyOf(error));
  }
}

/** A name of one sheet, written as a formula elsewhere must write it: `'North yard'!Terms`. */
function scoped(sheet: string, name: string): string {
  return `'${sheet.replaceAll("'", "''")}'!${name}`;
}

function region(kind: Region["kind"], name: string, place: Place | null): Region[] {
  return place === null ? [] : [{ kind, name, place }];
}

/** Of a name over whole columns or rows, the part that is filled. */
function clipped(place: Place | null, used: ReadonlyMap<string, Place>): Place | null {
  if (place === null || (place.rows < SHEET_ROWS && place.columns < SHEET_COLUMNS)) return place;
  const filled = used.get(place.sheet);
  return filled === undefined ? null : within(place, filled);
}

function valueOf(value: unknown, type: string): unknown {
  if (type === "Empty") return "";
  return type === "Error" ? new CellError(value as ErrorCode) : value;
}

function joined(place: Place, parts: readonly Block[]): Block {
  return {
    place,
    values: parts.flatMap(({ values }) => values),
    entries: parts.flatMap(({ entries }) => entries),
    formats: parts.flatMap(({ formats }) => formats),
  };
}
