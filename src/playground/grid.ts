import { LocaleType, LogLevel, Univer, type ICellData, type IWorkbookData } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import enUS from "@univerjs/preset-sheets-core/locales/en-US";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import "@univerjs/sheets-table/facade";
import { defaultTheme } from "@univerjs/themes";
import { functions } from "../functions/index.js";
import { describedFunctions } from "./described.js";
import { gridDescriptions, gridFunctions, type Called } from "./grid-functions.js";

/** The spreadsheet of the page, with our functions in it. */
export interface Grid {
  /** Shows a workbook in place of the one before; settles when all its formulas are calculated. */
  show(data: IWorkbookData): Promise<FWorkbook>;
  /** Settles when what was last written is calculated. */
  calculated(): Promise<void>;
  /** Gives the keys to the cell that is chosen. */
  focus(): void;
}

/** How long after a change the grid takes to begin to calculate, at most, in milliseconds. */
const BEGINS = 200;
/** How long it is waited for, in milliseconds. */
const WAITED = 20_000;

/** Univer's `FORCED`: every formula is calculated as a workbook is shown. */
const CALCULATE_ALL = 0;

export function startGrid(container: HTMLElement, called: (call: Called) => void): Grid {
  const isDark = matchMedia("(prefers-color-scheme: dark)").matches;
  const univer = new Univer({
    theme: defaultTheme,
    darkMode: isDark,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: enUS },
    logLevel: LogLevel.ERROR,
  });
  const isNarrow = matchMedia("(max-width: 50rem)").matches;
  const { plugins } = UniverSheetsCorePreset({
    container,
    ribbonType: "simple",
    toolbar: !isNarrow,
    formula: {
      function: gridFunctions(functions, called),
      description: gridDescriptions(describedFunctions),
      initialFormulaComputing: CALCULATE_ALL,
    },
  } as Parameters<typeof UniverSheetsCorePreset>[0]);
  univer.registerPlugin(UniverSheetsTablePlugin);
  for (const plugin of plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  const api = FUniver.newAPI(univer);
  let shown: FWorkbook | null = null;
  let count = 0;
  return {
    async calculated() {
      await new Promise((begun) => setTimeout(begun, BEGINS));
      await api.getFormula().whenComputingCompleteAsync(WAITED);
    },
    async show(data) {
      const calculated = new Promise<void>((done) => {
        const ended = api.getFormula().calculationEnd(() => {
          ended.dispose();
          done();
        });
      });
      // The former goes once another stands there: the grid's parts look for one that is shown.
      const former = shown;
      shown = api.createWorkbook({ ...data, id: `workbook-${++count}` }) as FWorkbook;
      if (former !== null) api.disposeUnit(former.getId());
      // For the bench: the sheet stands there, with the values that its file held.
      performance.mark("first view");
      const hasFormulas = Object.values(data.sheets).some((sheet) =>
        Object.values((sheet.cellData ?? {}) as Record<string, Record<string, ICellData>>).some(
          (row) => Object.values(row).some((cell) => cell.f),
        ),
      );
      if (hasFormulas) await calculated;
      return shown;
    },
    focus: () => container.querySelector<HTMLElement>("[contenteditable]")?.focus(),
  };
}
