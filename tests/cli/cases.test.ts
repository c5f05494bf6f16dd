import { Workbook, type Cell as SheetCell } from "@cj-tech-master/excelts";
import { describe, it } from "vitest";
import { calculate } from "../../src/workbook/calculate.js";
import { settle } from "../../src/workbook/outcome.js";
import { functions } from "../../src/functions/index.js";
import { cases } from "../cases/all.js";
import { expectCase } from "../cases/compare.js";
import { addCase } from "../cases/sheets.js";

function shown(cell: SheetCell): unknown {
  const value = cell.formula ? cell.result : cell.value;
  return value ?? "";
}

describe("the cases, in the command line's engine", () => {
  const workbook = new Workbook();
  cases.forEach((c, i) => addCase(workbook, c, `case ${i}`));
  settle(calculate(workbook, functions, () => {}));

  it.each(cases.map((c, i) => [`${c.id}(${JSON.stringify(c.args).slice(0, 60)})`, c, i] as const))(
    "%s",
    (_, c, i) => {
      const sheet = workbook.getWorksheet(`case ${i}`)!;
      expectCase(
        c,
        c.gives.map((row, r) => row.map((_, k) => shown(sheet.getCell(r + 1, k + 1)))),
      );
    },
  );
});
