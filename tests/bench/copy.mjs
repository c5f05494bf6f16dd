/** Reads a yard sheet, fills seven columns beside it with what never changes, and writes it: the floor. */
import { readFileSync, writeFileSync } from "node:fs";
import { Workbook } from "@cj-tech-master/excelts";

const [from = "", to = ""] = process.argv.slice(2);
const workbook = new Workbook();
await workbook.xlsx.load(readFileSync(from));
const sheet = workbook.getWorksheet(1);
if (!sheet) throw new Error(`${from} has no sheet`);
for (let r = 1; r <= sheet.rowCount; r++) {
  const row = sheet.getRow(r);
  [7.5, 18000, "", "", "Standard", 0.5, "counted"].forEach(
    (v, i) => (row.getCell(5 + i).value = v),
  );
}
writeFileSync(to, await workbook.xlsx.writeBuffer({ validate: false }));
