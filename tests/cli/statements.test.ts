import { Workbook } from "@cj-tech-master/excelts";
import { expect, it } from "vitest";
import { statements } from "../../src/cli/statements.js";

/** A workbook with the call in D1, which fills two cells. */
function spilling(formula: string): Workbook {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet("Yard");
  sheet.getCell("D1").value = {
    formula,
    shareType: "array",
    ref: "D1:E1",
    isDynamicArray: true,
    result: "Average",
  };
  sheet.getCell("E1").value = 8.25;
  return workbook;
}

// By the handbook these spill a table of their own, under a heading row or as label and figure.
it.each([
  "LOT",
  "LOT_PAY",
  "WHAT_IF",
  "COMPARE",
  "TO_OPEN",
  "LOT_CHANCE",
  "PICK_HIVES",
  "LOT_FORECAST",
  "DAYS_AHEAD",
  "DROPS",
  "LOADS",
  "QUICK_LOOK",
  "OBSERVER_ERROR",
  "FORECAST_DAYS",
  "EMERGENCE",
])("the table that %s spills is printed under its place", (id) => {
  const said = statements(spilling(`COMB.${id}(A1:B9)`), 80);
  expect(said[0]).toBe("Yard!D1:E1");
  expect(said.join("\n")).toMatch(/Average +8.25/);
});

it.each(["GRADE", "FORECAST", "HIVE_CHECK", "SOURCES"])("what %s spills is not", (id) => {
  expect(statements(spilling(`COMB.${id}(A1:B9)`), 80)).toEqual([]);
});
