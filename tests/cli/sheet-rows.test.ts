import { expect, it } from "vitest";
import { inSheetRows } from "../../src/cli/sheet-rows.js";

// Headings in row 3: what is the second row under and with them is row 4 of the sheet.
it.each([
  ['"Bees", row 2: blank', '"Bees", row 4: blank'],
  ["rows 2, 3 and 10 have no lot", "rows 4, 5 and 12 have no lot"],
  ['"row 2" is not understood; row 9', '"row 2" is not understood; row 11'],
  ["2 rows of 3 hives", "2 rows of 3 hives"],
])("%s is, counted in the sheet, %s", (text, said) => expect(inSheetRows(text, 3)).toBe(said));
