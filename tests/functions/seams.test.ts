import { describe, expect, it } from "vitest";
import { comb, one } from "./sheet.js";

/** A contract that counts the cluster, box tipped: the mean of the looks from above and below. */
const TERMS = [
  ["Term", "Cherry"],
  ["comb rule", "cluster count"],
  ["minimum frames", 5],
  ["grade 1 name", "Gold"],
  ["grade 1 frames", 8],
  ["grade 1 fee", 215],
  ["grade 2 name", "Silver"],
  ["grade 2 frames", 5],
  ["grade 2 fee", 160],
];

const yard = (headings: [string, string], ...hives: unknown[][]) =>
  comb(
    "YARD_COLUMNS",
    [["Hive", ...headings], ...hives.map((looks, i) => [`H${i + 1}`, ...looks])],
    TERMS,
    null,
    "frames, bees, grade, note",
  ).slice(1);

describe("a cluster count", () => {
  it.each([
    ["Seams top", "Seams bottom"],
    ["Cluster top", "Cluster bottom"],
    ["Cluster from above", "Cluster from below"],
  ])("averages %j and %j", (above, below) => {
    // (8 + 6) / 2, (10 + 8) / 2, (6 + 3) / 2
    expect(yard([above, below], [8, 6], [10, 8], [6, 3]).map((row) => row.slice(0, 3))).toEqual([
      [7, "", "Silver"],
      [9, "", "Gold"],
      [4.5, "", "no grade"],
    ]);
  });

  it("is not made of two columns that nothing says are looks and not boxes", () => {
    const looks = [
      [8, 6],
      [10, 8],
    ];
    for (const id of ["GRADE", "SHORT_OF", "HIVE_PAY", "HIVE_CHECK"]) {
      expect(comb(id, looks, TERMS)[0]![0]).toBe(
        '#VALUE! row 1: frames has 2 columns, and contract "Cherry" counts seams: give one column with each ' +
          "hive's cluster count, as SEAMS makes it of the looks from above and below",
      );
    }
    expect(comb("GRADE", [[7], [9]], TERMS)).toEqual([["Silver"], ["Gold"]]);
  });

  it.each([
    ["below", [7, ""]],
    ["below, where a blank comes as 0", [7, 0]],
    ["above", ["", 6]],
  ])("is refused where nobody looked from %s", (side, looks) => {
    const heading = side === "above" ? "Seams top" : "Seams bottom";
    const [row] = yard(["Seams top", "Seams bottom"], looks);
    expect(row![3]).toBe(
      `"${heading}", row 2: blank or 0, and the look from the other side is not: write none where no ` +
        "bees were seen, or, where nobody looked, the count of the one look in both",
    );
    if (side !== "above") expect(one("SEAMS", looks[0], [[looks[1]]])).toMatch(/^#VALUE! /);
    expect(one("FRAMES_OF_BEES", [looks], "seams")).toMatch(/^#VALUE! /);
  });

  it("takes none for none, and a dead-out for dead", () => {
    expect(yard(["Seams top", "Seams bottom"], [7, "none"])[0]!.slice(0, 3)).toEqual([
      3.5,
      "",
      "no grade",
    ]);
    expect(yard(["Seams top", "Seams bottom"], ["dead", ""])[0]![2]).toBe("dead-out");
    expect(one("SEAMS", 7, "none")).toBe(3.5);
  });
});
