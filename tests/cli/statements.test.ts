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

/** A workbook with a forecast in D1, whose second row holds a day. */
function forecasting(heading: string, day: number, date1904: boolean, id = "LOT_FORECAST"): string {
  const workbook = new Workbook();
  workbook.properties.date1904 = date1904;
  const sheet = workbook.addWorksheet("Yard");
  sheet.getCell("D1").value = {
    formula: `COMB.${id}(A1:B9)`,
    shareType: "array",
    ref: "D1:D2",
    isDynamicArray: true,
    result: heading,
  };
  sheet.getCell("D2").value = day;
  return statements(workbook, 80).join("\n");
}

// 46110 is 29 March 2026 where days are numbered from 1900, and 1,462 less where from 1904.
it("prints the days of a table as the workbook numbers them", () => {
  expect(forecasting("Date", 46110, false)).toContain("29 Mar 2026");
  expect(forecasting("Date", 46110 - 1462, true)).toContain("29 Mar 2026");
  expect(forecasting("Date", 46110 - 1462, true, "EMERGENCE")).toContain("29 Mar 2026");
  for (const heading of ["Began at the latest", "Began at the earliest"]) {
    expect(forecasting(heading, 46110, false, "DAYS_AHEAD")).toContain("29 Mar 2026");
  }
});

it("takes for days what the function declares as such, and no grade of that name", () => {
  expect(forecasting("Date", 46110, false, "WHAT_IF")).toContain("46,110");
  expect(forecasting("Frames", 46110, false)).toContain("46,110");
});
