import { describe, expect, it } from "vitest";
import { datesIn, repairSteps } from "../../../src/pane/columns/dates.js";
import { choicesOf, contractAt } from "../../../src/pane/columns/contracts.js";
import type { Entry } from "../../../src/pane/port.js";
import { sheetsOf, workbookOf, yardOf } from "./sheets.js";

// By the calendar, as a workbook of the 1900 system numbers its days.
const [JAN_2, JUL_8, JUL_8_2025, DEC_25] = [46024, 46211, 45846, 46381] as const;
const unknown = () => null;

const yard = (...counts: readonly Entry[]) =>
  yardOf([["Hive", "Date", "Bees"], ...counts.map((count, i) => [`A${i + 1}`, 46108, count])]);

describe("a count that became a date", () => {
  it("is put back where only one range can have been typed", async () => {
    const { repairs, left } = datesIn(await yard(8, JUL_8, "7-8", 6), unknown);
    expect(left).toEqual([]);
    expect(repairs).toEqual([
      { row: 2, column: 2, address: "C3", holds: "8 Jul 2026", range: "7-8" },
    ]);
  });

  it.each([
    [JAN_2, /was it 1-2 or the fraction 1\/2\?/],
    [JUL_8_2025, /of another year than the inspection/],
    [DEC_25, /type the count as text/],
  ])("%i is left, and it says why", async (serial, why) => {
    const { repairs, left } = datesIn(await yard(8, serial, 7, 6), unknown);
    expect(repairs).toEqual([]);
    expect(left).toEqual([
      {
        row: 2,
        column: 2,
        address: "C3",
        holds: expect.any(String),
        why: expect.stringMatching(why),
      },
    ]);
    expect(left[0]!.why).not.toMatch(/"Bees"|row 3/);
  });

  it("is read as the contract says that counts are written", async () => {
    const rows = [
      ["Hive", "Bees"],
      ["A1", JAN_2],
      ["A2", 8],
      ["A3", 8],
    ];
    const workbook = workbookOf(rows, "name");
    workbook.type("Terms", 3, 0, "whole frames");
    workbook.type("Terms", 3, 1, "yes");
    const { sheets, yard } = await sheetsOf(workbook);
    const [cherry, pear] = choicesOf(sheets.terms, false);
    expect(datesIn(yard, contractAt(cherry!, null)).repairs[0]!.range).toBe("1-2");
    expect(datesIn(yard, contractAt(pear!, null)).repairs).toEqual([]);
  });

  it("is left where a formula gives it", async () => {
    const workbook = workbookOf(
      [
        ["Hive", "Bees"],
        ["A1", JUL_8],
        ["A2", 8],
        ["A3", 8],
      ],
      "none",
    );
    const { yard } = await sheetsOf(workbook);
    const entries = yard.entries.map((row, i) => (i === 1 ? ["A1", "=DATE(2026,7,8)"] : row));
    const { left } = datesIn({ ...yard, entries }, unknown);
    expect(left[0]!.why).toMatch(/formula/);
  });
});

it("leaves the column of days alone, and one that is mostly dates", async () => {
  const { repairs, left } = datesIn(await yard(JUL_8, JUL_8, JUL_8, 6), unknown);
  expect(repairs).toEqual([]);
  expect(left).toHaveLength(3);
  expect(left[0]!.why).toMatch(/most of this column is dates/);
});

it("is put back as text, and taken back to the very day", async () => {
  const workbook = workbookOf(
    [
      ["Hive", "Bees"],
      ["A1", 8],
      ["A2", 6],
    ],
    "none",
  );
  workbook.type("Yard", 1, 1, JUL_8, "d-mmm");
  const before = workbook.snapshot();
  const { yard } = await sheetsOf(workbook);
  const undo = await workbook.write(repairSteps(yard, datesIn(yard, unknown).repairs));
  expect(workbook.entry("Yard", 1, 1)).toBe("7-8");
  expect((await workbook.read([yard.place]))[0]!.formats[1]![1]).toBe("@");
  await workbook.write(undo);
  expect(workbook.snapshot()).toEqual(before);
});
