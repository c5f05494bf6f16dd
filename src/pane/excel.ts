import { readActive, readBlocks, readDecimalSign, readRegions } from "./excel-read.js";
import { writeStatement } from "./excel-statement.js";
import { ExcelWatch } from "./excel-watch.js";
import { writeSteps } from "./excel-write.js";
import type { Workbook } from "./port.js";

/** The workbook that Excel has open. */
export function excelWorkbook(): Workbook {
  const watch = new ExcelWatch();
  let isFirstWrite = true;
  return {
    regions: readRegions,
    read: readBlocks,
    active: readActive,
    decimalSign: readDecimalSign,
    watch: (changed) => watch.add(changed),
    statement: writeStatement,
    async write(steps) {
      const undo = await writeSteps(steps);
      if (isFirstWrite) void loadWithWorkbook();
      isFirstWrite = false;
      return undo;
    },
  };
}

/** From now on the add-in starts with this workbook, so that its functions calculate on opening. */
async function loadWithWorkbook(): Promise<void> {
  try {
    await Office.addin.setStartupBehavior(Office.StartupBehavior.load);
  } catch {
    // Where it is not supported, the functions start with the pane.
  }
}
