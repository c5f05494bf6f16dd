import type { Statement } from "../functions/statement-model.js";
import type { Handed, Step } from "../pane/port.js";
import { download, fileName } from "./download.js";
import { LocalWorkbook } from "./local-workbook.js";
import type { Sheets } from "./sheets.js";
import { texts } from "./texts.js";

/** The grid's workbook as the pane knows it. */
export class GridWorkbook extends LocalWorkbook {
  /** @param calculated - settles when the grid has calculated what was last written */
  constructor(
    sheets: Sheets,
    private readonly calculated: () => Promise<unknown>,
  ) {
    super(sheets);
  }

  /** The grid calculates later, and would put a result into a cell that was emptied meanwhile. */
  override async write(steps: readonly Step[]): Promise<readonly Step[]> {
    try {
      return await super.write(steps);
    } finally {
      await this.calculated();
    }
  }

  /** As a file: the grid draws no charts. */
  override async statement(name: string, statement: Statement): Promise<Handed> {
    const [{ statementFile }, { saveWorkbook }] = await Promise.all([
      import("../workbook/statement-file.js"),
      import("../workbook/save.js"),
    ]);
    const file = `${fileName(name)}.xlsx`;
    download(await saveWorkbook(statementFile(statement)), file);
    return { sentence: texts.statement(file), undo: [] };
  }
}
