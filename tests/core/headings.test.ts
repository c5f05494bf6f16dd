import { describe, expect, it } from "vitest";
import { matchHeadings } from "../../src/core/headings.js";
import { headerRows } from "../functions/header-rows.js";

describe("20 heading rows written before the matching", () => {
  const judged = headerRows.map((row) => {
    const { roles, doubts } = matchHeadings(row.headings);
    const unsure = new Set(doubts.map((doubt) => doubt.heading));
    const wrong = row.headings.flatMap((heading, i) =>
      roles[i] === row.roles[i]
        ? []
        : [{ heading, is: row.roles[i], taken: roles[i], asked: unsure.has(heading) }],
    );
    return { who: row.who, wrong };
  });
  it("maps at least 18 rightly", () => {
    const amiss = judged.filter((row) => row.wrong.length > 0);
    expect(amiss.length, JSON.stringify(amiss, null, 1)).toBeLessThanOrEqual(2);
  });
  it("takes none wrongly in silence", () => {
    expect(judged.flatMap((row) => row.wrong.filter((w) => !w.asked))).toEqual([]);
  });
});

describe("a total", () => {
  it("is no box beside the boxes that it adds", () => {
    const { roles } = matchHeadings(["Hive", "Bees top", "Bees bottom", "Total bees"]);
    expect(roles).toEqual(["hive", "bees", "bees", null]);
  });
  it("is the count where it stands alone", () => {
    expect(matchHeadings(["Hive", "Total bees"]).roles).toEqual(["hive", "bees"]);
  });
});
