import { Workbook, type Worksheet } from "@cj-tech-master/excelts";

export const TERMS: (string | number)[][] = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 6],
  ["minimum frames", 6, 4],
  ["grade 1 name", "strong", "good"],
  ["grade 1 frames", 8, 7],
  ["grade 2 name", "fair", "light"],
  ["grade 2 frames", 6, 4],
];

/** One contract that pays for each hive. */
export const FEE_TERMS: (string | number)[][] = [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ["base fee", 60],
];

export const YARD: (string | number)[][] = [
  ["Hive", "Lot", "Frames of bees", "Brood frames", "Notes"],
  ["A1", "Shed", "7-8", 4, ""],
  ["A2", "Shed", 9, 5, "fed"],
  ["B1", "Coast", "about 5", 2, ""],
  ["B2", "Coast", 3, 1, ""],
];

/** Puts rows into a sheet, from a cell on; a text "" leaves its cell empty. */
export function fill(
  sheet: Worksheet,
  rows: readonly (readonly unknown[])[],
  row = 1,
  column = 1,
): void {
  rows.forEach((cells, r) =>
    cells.forEach((cell, c) => {
      if (cell !== "") sheet.getCell(row + r, column + c).value = cell as string | number;
    }),
  );
}

/** A workbook with a sheet Yard and a sheet Terms, before it is written. */
export function yardBook(yard = YARD, terms: (string | number)[][] | null = TERMS): Workbook {
  const workbook = new Workbook();
  workbook.created = workbook.modified = new Date(Date.UTC(2026, 2, 28));
  fill(workbook.addWorksheet("Yard"), yard);
  if (terms) fill(workbook.addWorksheet("Contracts"), terms);
  return workbook;
}

export async function bytesOf(workbook: Workbook): Promise<Uint8Array> {
  return workbook.xlsx.writeBuffer({ validate: false });
}
