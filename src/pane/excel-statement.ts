import { Refusal } from "../core/refusal.js";
import { layoutOf } from "../functions/statement-layout.js";
import type { Statement } from "../functions/statement-model.js";
import { addChart } from "./excel-chart.js";
import { drawCells, setPage } from "./excel-draw.js";
import { loadBlock } from "./excel-read.js";
import { isOfficeError, run, whyOf, type OfficeError } from "./excel-run.js";
import type { Block, Handed } from "./port.js";
import { turned } from "./stands.js";
import { fitName, freeName } from "./start/names.js";
import { gridOf, type Grid } from "./statement/grid.js";
import { texts } from "./texts.js";

/** What a statement can be read without, where an Excel cannot make it. */
type Extra = keyof typeof texts.statement.leftOut;

/** A sheet on its way: it has the draft's name until all stands on it. */
interface Names {
  readonly draft: string;
  readonly sheet: string;
}

/**
 * Makes a statement a sheet of its own in two syncs: one reads which names are taken, one draws. It
 * is drawn under a name that nobody else gives, and gets its own last, so that a sheet by that name
 * is whole, and one by the other is ours to put away.
 */
export async function writeStatement(name: string, statement: Statement): Promise<Handed> {
  const taken = await namesTaken();
  const names = {
    draft: `~${crypto.randomUUID().slice(0, 8)}`,
    sheet: freeName(fitName(name) || texts.views.statement, taken),
  };
  return drawn(names, statement, new Set(["chart", "page"]));
}

async function namesTaken(): Promise<readonly string[]> {
  try {
    return await run(async (context) => {
      // Hidden and empty sheets too.
      const sheets = context.workbook.worksheets.load("items/name");
      const protection = context.workbook.protection.load("protected");
      await context.sync();
      if (protection.protected) throw new Refusal("the workbook's structure is protected");
      return sheets.items.map((sheet) => sheet.name);
    });
  } catch (error) {
    throw new Refusal(`${whyOf(error)}: nothing was written`);
  }
}

async function drawn(
  names: Names,
  statement: Statement,
  extras: ReadonlySet<Extra>,
): Promise<Handed> {
  const layout = layoutOf(statement);
  const grid = gridOf(layout, statement.moneyDecimals);
  let block: Block | null;
  try {
    block = await run(async (context) => {
      const sheet = context.workbook.worksheets.add(names.draft);
      drawCells(sheet, layout, statement, grid);
      if (extras.has("chart")) addChart(sheet, layout, statement.widths.length);
      if (extras.has("page")) setPage(sheet, layout, statement);
      sheet.name = names.sheet;
      const read = loadBlock(context, placeOf(names.sheet, grid));
      await context.sync();
      return read();
    });
  } catch (error) {
    if (!isOfficeError(error)) throw error;
    block = await settled(names, grid, whyOf(error));
    const extra = extraOf(error);
    if (block === null && extra !== null && extras.has(extra)) {
      return drawn(names, statement, new Set([...extras].filter((one) => one !== extra)));
    }
    if (block === null) throw new Refusal(`${whyOf(error)}: nothing was written`);
  }
  const why = turned(block.place, block.entries, grid.entries);
  if (why !== null) {
    await removed(names.sheet, why);
    throw new Refusal(`${why}: nothing was written`);
  }
  const { place, entries } = block;
  const without = (["chart", "page"] as const).filter((extra) => !extras.has(extra));
  return {
    sentence: texts.statement.added(names.sheet, without),
    undo: [{ kind: "drop sheet", name: names.sheet, expect: { place, entries } }],
  };
}

/** After a sync that failed: what stands, where all was made after all, else null and the draft is away. */
async function settled({ draft, sheet }: Names, grid: Grid, why: string): Promise<Block | null> {
  const isDraft = await isThere(draft, why);
  if (isDraft) await removed(draft, why);
  else if (await isThere(sheet, why)) {
    const block = await left(sheet, why, async (context) => {
      const read = loadBlock(context, placeOf(sheet, grid));
      await context.sync();
      return read();
    });
    // A co-author may have made a sheet by that name.
    return turned(block.place, block.entries, grid.entries) === null ? block : null;
  }
  return null;
}

async function isThere(name: string, why: string): Promise<boolean> {
  return left(name, why, async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name).load("name");
    await context.sync();
    return !sheet.isNullObject;
  });
}

async function removed(name: string, why: string): Promise<void> {
  return left(name, why, async (context) => {
    context.workbook.worksheets.getItem(name).delete();
    await context.sync();
  });
}

/** @throws Refusal that names the sheet which may be left where this fails too */
async function left<T>(
  name: string,
  why: string,
  batch: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  try {
    return await run(batch);
  } catch (error) {
    if (!isOfficeError(error)) throw error;
    throw new Refusal(`${why}, and not all could be put back: look at the sheet ${name}`);
  }
}

/** Where Office says that it failed at the chart or at the page, as without a printer. */
function extraOf(error: OfficeError): Extra | null {
  const where = error.debugInfo?.errorLocation ?? "";
  if (/chart/i.test(where)) return "chart";
  return /page|header|footer/i.test(where) ? "page" : null;
}

function placeOf(sheet: string, { entries }: Grid): Block["place"] {
  return { sheet, row: 0, column: 0, rows: entries.length, columns: entries[0]!.length };
}
