import { describe, expect, it } from "vitest";
import { frameOfHeading, matchHeadings } from "../../src/core/headings.js";
import { headerRows } from "../functions/header-rows.js";

describe("20 heading rows written before the matching", () => {
  const judged = () =>
    headerRows.map((row) => {
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
    const amiss = judged().filter((row) => row.wrong.length > 0);
    expect(amiss.length, JSON.stringify(amiss, null, 1)).toBeLessThanOrEqual(2);
  });
  it("takes none wrongly in silence", () => {
    expect(judged().flatMap((row) => row.wrong.filter((w) => !w.asked))).toEqual([]);
  });
});

describe("a total", () => {
  it("is no box beside the boxes that it adds", () => {
    const { roles } = matchHeadings(["Hive", "Bees top", "Bees bottom", "Total bees"]);
    expect(roles).toEqual(["hive", "bees", "bees", null]);
  });
  it("is the count where it stands alone", () => {
    expect(matchHeadings(["Hive", "Total bees"]).roles).toEqual(["hive", "bees"]);
    expect(matchHeadings(["Bees top", "Total brood"]).roles).toEqual(["bees", "brood"]);
  });
});

describe("two headings for what a sheet has once", () => {
  it("leave it to the one that names it better, or in fewer words", () => {
    expect(matchHeadings(["Yard", "Lot"]).roles).toEqual([null, "lot"]);
    expect(matchHeadings(["Date inspected", "Date"])).toEqual({
      roles: [null, "date"],
      doubts: [],
    });
  });

  it("leave it to neither where they are as good, and both are asked about", () => {
    expect(matchHeadings(["Hive", "Notes", "Hive"])).toEqual({
      roles: [null, "notes", null],
      doubts: [
        { role: "hive", heading: "Hive" },
        { role: "hive", heading: "Hive" },
      ],
    });
    expect(matchHeadings(["Yard", "Lot A", "Lot no", "Lot 1"]).doubts).toEqual([
      { role: "lot", heading: "Lot A" },
      { role: "lot", heading: "Lot no" },
      { role: "lot", heading: "Lot 1" },
    ]);
  });
});

describe("a heading that is not understood", () => {
  it.each([
    ["Seams", "seams above"],
    ["Seams counted", "seams above"],
    ["Seams from above, twice weekly", "seams above"],
    ["Frames", "bees"],
    ["Frames counted", "bees"],
    ["Bees' temper", "bees"],
    ["Queen source", "queen"],
  ] as const)("%s is asked about, and not taken", (heading, role) => {
    expect(matchHeadings([heading])).toEqual({ roles: [null], doubts: [{ role, heading }] });
  });

  it.each(["", "  ", "Count", "Frames drawn", "Bees added", "Frames fed", "GPS"])(
    "%j is the owner's own",
    (heading) => {
      expect(matchHeadings([heading])).toEqual({ roles: [null], doubts: [] });
    },
  );
});

describe("a heading that names two frames", () => {
  it.each(["Bees, 2 deeps 1 medium", "Brood (deep + shallow)"])("%s is asked about", (heading) => {
    const role = heading.startsWith("Bees") ? "bees" : "brood";
    expect(matchHeadings([heading])).toEqual({ roles: [null], doubts: [{ role, heading }] });
  });

  it("is no matter where it is the total of boxes, or its column holds no frames", () => {
    const headings = [
      "Hive (deep, medium)",
      "Bees deep",
      "Bees medium",
      "Total bees deep + medium",
    ];
    const { roles, doubts } = matchHeadings(headings);
    expect([roles, doubts]).toEqual([["hive", "bees", "bees", null], []]);
  });
});

it("says a brood box, a brood chamber or a brood nest of bees as a box, not as brood", () => {
  const headings = [
    "Bees, brood box 1",
    "Bees in brood boxes",
    "Brood chamber bees",
    "Brood nest bees",
  ];
  for (const heading of headings) expect(matchHeadings([heading]).roles).toEqual(["bees"]);
});

describe("headings beside a hive's, in a sheet that names bees nowhere", () => {
  // How beekeepers head the boxes' counts: common practice, no source.
  it.each([
    [["Top", "Bottom"]],
    [["T", "B"]],
    [["Deep 1", "Deep 2"]],
    [["Bees T", "Bees B"]],
    [["Frames"]],
    [["Strength"]],
  ])("%j may hold them, and are asked about", (headings) => {
    expect(matchHeadings(["Hive", ...headings])).toEqual({
      roles: ["hive", ...headings.map(() => null)],
      doubts: headings.map((heading) => ({ role: "bees", heading })),
    });
  });

  it("are the owner's own where bees are named", () => {
    const named = matchHeadings(["Hive", "Bees", "Top", "Strength"]);
    expect(named).toEqual({ roles: ["hive", "bees", null, null], doubts: [] });
  });
});

describe("the frame that a heading names", () => {
  it.each([
    ["Medium bees", "medium"],
    ["Med. bees", "medium"],
    ["Bees (meds)", "medium"],
    ["bees, deep 1", "deep"],
    ["Bees in deeps", "deep"],
    ["National deep bees", "national deep"],
    ["National shallows", "national shallow"],
    ["Deep", "deep"],
    ["Bees", null],
    ["Comedy bees", null],
    ["Deepest bees", null],
  ])("%s: %s", (heading, frame) => {
    expect(frameOfHeading(heading)?.name ?? null).toBe(frame);
  });
});
