import { describe, expect, it } from "vitest";
import { saysSum } from "../../src/core/sums.js";

// Common practice, no source: how people label the rows under their hives. "North Total" and "Grand
// Total" are what Excel's own Subtotal command writes.
describe("a row's label that says a sum or an average", () => {
  it.each([
    ..."total|Totals|TOTAL:|subtotal|Sub-total|sub total|Sum|average|Avg|avg.|Mean".split("|"),
    ...[
      "Total lot N",
      "Sub-total lot N",
      "Sub total truck 2",
      "Avg truck 2",
      "Total/avg",
      "North Total",
      "Grand Total",
      "Lot N avg.",
      "** Total **",
    ],
    "  Total  ",
  ])("is told: %s", (label) => {
    expect(saysSum(label)).toBe(true);
  });

  it.each([
    "1",
    "A12",
    "Sumter 4",
    "Meany",
    "T1",
    "Avgust",
    "Totally",
    "Yard 2",
    "=",
    "",
    "Sum1",
    "@SUM(A1)",
    "=SUM(A1:A9)",
  ])("is not taken for one: %s", (label) => {
    expect(saysSum(label)).toBe(false);
  });
});
