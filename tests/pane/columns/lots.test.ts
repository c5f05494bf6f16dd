import { expect, it } from "vitest";
import { CellError } from "../../../src/functions/cells.js";
import { lotsOf } from "../../../src/pane/columns/lots.js";

const HEADINGS = ["Hive", "Lot", "Bees"];

it("the lots of a sheet are those of its hives, once each as first written", () => {
  const values = [
    HEADINGS,
    ["A1", "Shed", 9],
    ["A2", " shed ", 8],
    ["A3", 12, 8],
    // Excel may give 0 for a blank cell.
    ["A4", 0, 8],
    ["A5", "", 8],
    ["", "Coast", ""],
    ["Total", "all", 41],
  ];
  expect(lotsOf({ values })).toEqual(["Shed", "12"]);
});

it("a lot whose cell holds an error is none", () => {
  const values = [HEADINGS, ["A1", new CellError("#N/A"), 9], ["A2", "Shed", 8]];
  expect(lotsOf({ values })).toEqual(["Shed"]);
});

it("a sheet without a column for them, or with headings that are asked about, names none", () => {
  expect(
    lotsOf({
      values: [
        ["Hive", "Bees"],
        ["A1", 9],
      ],
    }),
  ).toEqual([]);
  expect(
    lotsOf({
      values: [
        ["Hive", "Lot", "Bees wax"],
        ["A1", "Shed", 9],
      ],
    }),
  ).toEqual([]);
});
