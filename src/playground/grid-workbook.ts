import type { Statement } from "../functions/statement-model.js";
import type { Handed } from "../pane/port.js";
import { download, fileName } from "./download.js";
import { LocalWorkbook } from "./local-workbook.js";
import { texts } from "./texts.js";

/** The grid's workbook as the pane knows it. */
export class GridWorkbook extends LocalWorkbook {
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
