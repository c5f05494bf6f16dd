import type { CellValue, Workbook } from "@cj-tech-master/excelts";
import type { Case, Input } from "./cases.js";

/** Where arguments stand: far enough from the formula that nothing spills into them. */
const FIRST_ARGUMENT_COLUMN = 40;

/** Writes a case's blocks into a sheet of its own and its formula into A1, as somebody would type it. */
export function addCase(workbook: Workbook, { id, args, gives }: Case, name: string): void {
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
