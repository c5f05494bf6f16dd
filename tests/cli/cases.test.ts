import { Workbook, type Cell as SheetCell, type CellValue } from "@cj-tech-master/excelts";
import { describe, it } from "vitest";
import { calculate } from "../../src/workbook/calculate.js";
import { settle } from "../../src/workbook/outcome.js";
import { functions } from "../../src/functions/index.js";
import { cases } from "../cases/all.js";
import type { Case, Input } from "../cases/cases.js";
import { expectCase } from "../cases/compare.js";

/** Where arguments stand: far enough from the formula that nothing spills into them. */
const FIRST_ARGUMENT_COLUMN = 40;

/** Writes a case's blocks into a sheet of its own and its formula into A1, as somebody would type it. */
function addCase(workbook: Workbook, { id, args, gives }: Case, name: string): void {
  const sheet = workbook.addWorksheet(name);
  let column = FIRST_ARGUMENT_COLUMN;
  const texts = args.map((arg) => {
    if (arg === null) return "";
    if (typeof arg === "string") return `"${arg.replaceAll('"', '""')}"`;
    if (!Array.isArray(arg)) return String(arg).toUpperCase();
    const block = arg as readonly (readonly Input[])[];
    block.forEach((row, i) =>
      row.forEach((input, k) => {
        if (input !== null && input !== "") {
          sheet.getCell(i + 1, column + k).value = input as CellValue;
        }
      }),
    );
    const to = sheet.getCell(block.length, column + block[0]!.length - 1);
    const reference = `${sheet.getCell(1, column).address}:${to.address}`;
    column += block[0]!.length + 1;
    return reference;
  });
  const spills = gives.length > 1 || gives[0]!.length > 1;
  const formula = `COMB.${id}(${texts.join(",")})`;
  sheet.getCell("A1").value = spills
    ? ({ formula, ref: "A1", shareType: "array", isDynamicArray: true } as CellValue)
    : { formula };
}

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
