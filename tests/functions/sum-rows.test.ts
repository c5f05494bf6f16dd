import { describe, expect, it } from "vitest";
import { comb, one, terms } from "./sheet.js";

const TERMS = terms(["average frames", 8], ["minimum frames", 6], ["base fee", 60]);
const ALL = terms(["average frames", 8], ["under minimum", "counted"]);
const LEFT_OUT = [null, null, null, null, null];
const HEADINGS = ["Hive", "Lot", "Pallet", "Bees"];
const HIVES = [
  ["1", "N", "P1", 5],
  ["2", "N", "P1", 5],
  ["3", "N", "P2", 9],
];
const SUMS = [
  ["Total", "N", "P2", 19],
  ["Avg truck 2", "", "", 19 / 3],
  ["", "N Total", "", 19],
];
const with_ = (...rows: unknown[][]): unknown[][] => [HEADINGS, ...HIVES, ...rows];

const dated = ([headings = [], ...rows]: unknown[][]): unknown[][] => [
  [...headings, "Date", "Brood"],
  ...rows.map((row) => [...row, 46110, 0]),
];

/** What a function says, by its first column. */
const lines = (id: string, ...args: unknown[]): Record<string, unknown[]> =>
  Object.fromEntries(comb(id, ...args).map(([label, ...rest]) => [label, rest]));

describe("rows of sums and averages under the hives", () => {
  // By hand: 5 and 5 are under the minimum of 6, so the average is 9 of one hive.
  it("are no hives of the lot, and LOT says so", () => {
    const said = lines("LOT", with_(...SUMS), 100, TERMS, "Cherry", "N");
    expect(said).toMatchObject({
      "Hives opened": [
        3,
        '3 % of the lot, on 2 pallets; no hive: row 5, "Total"; row 6, "Avg truck 2"; row 7, "N Total"',
      ],
      "Average frames": [9, expect.stringMatching(/^of 1 hive/)],
    });
  });

  const SAID = 'no hive: row 5, "Total"; row 6, "Avg truck 2"; row 7, "N Total"';

  it.each([
    ["LOT_CHANCE", (yard: unknown[][]) => [yard, 100, ALL, "Cherry", "N", "all"], [0]],
    [
      "WHAT_IF",
      (yard: unknown[][]) => [yard, "average frames", [[7, 8]], 100, TERMS, "Cherry"],
      [1, 2],
    ],
    ["TO_OPEN", (yard: unknown[][]) => [1, 100, null, yard, TERMS, "Cherry", "N"], [1]],
    ["LOT_FORECAST", (yard: unknown[][]) => [dated(yard), [[46130]], 100, ALL, "Cherry", "N"], [1]],
    ["DROPS", (yard: unknown[][]) => [yard, [[2], [1]], TERMS, "Cherry", ...LEFT_OUT, 1], [6]],
  ])("change no figure of %s, whose note tells of them", (id, args, rows) => {
    const without = comb(id, ...args(with_()));
    expect(String(without[0]![0])).not.toMatch(/^#/);
    const told = without.map((row, i) => {
      const [note, ...rest] = [...row].reverse();
      return rows.includes(i) ? [...rest.reverse(), note === "" ? SAID : `${note}; ${SAID}`] : row;
    });
    expect(comb(id, ...args(with_(...SUMS)))).toEqual(told);
  });

  it("stand in LOT_PAY as a line without an amount", () => {
    const pay = (yard: unknown[][]) => comb("LOT_PAY", yard, 100, TERMS, "Cherry", "N");
    const without = pay(with_());
    // Headings, hives agreed, hives opened; then what is left out.
    expect(pay(with_(...SUMS))).toEqual([
      ...without.slice(0, 3),
      [SAID, "", "", ""],
      ...without.slice(3),
    ]);
  });

  it("have no computed cells, and their note says why", () => {
    const columns = [["hive,lot,pallet,frames,grade,action,note"]];
    const rows = comb("YARD_COLUMNS", with_(...SUMS), TERMS, "Cherry", columns).slice(4);
    expect(rows).toEqual(
      ["Total", "Avg truck 2", "N Total"].map((label) => [
        ...Array<string>(6).fill(""),
        `not a hive: ${label}`,
      ]),
    );
  });

  it("are not drawn", () => {
    const ids = [["H1"], ["H2"], ["Total"]];
    expect(comb("PICK_HIVES", ids, 2, "apple", "bloom")[0]![1]).toMatch(/2 of 2 hives$/);
    expect(one("PICK_HIVES", ids, 3, "apple", "bloom")).toMatch(/the list has 2/);
  });

  it("may hold errors, which are nobody's counts", () => {
    const yard = with_(["Average", "N", "", "#DIV/0!"]);
    expect(lines("LOT", yard, 100, TERMS, "Cherry", "N")).toMatchObject({
      "Hives opened": [3, expect.anything()],
    });
  });

  it("are told from a footer, which is a row of a hive that nobody opened", () => {
    const yard = with_(["Opened by JB, 62 F", "", "", ""]);
    expect(lines("LOT", yard, 100, TERMS, "Cherry", "N")).toMatchObject({
      "Hives opened": [3, "3 % of the lot, on 2 pallets"],
    });
    const note = comb("YARD_COLUMNS", yard, TERMS, "Cherry", [["note"]]).at(-1);
    expect(note).toEqual(["not opened"]);
  });
});
