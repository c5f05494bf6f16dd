import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Role } from "../../../src/core/headings.js";
import { yardColumns } from "../../../src/core/yard-columns.js";
import { questionsOf, renamesFor, renameSteps, ROLES } from "../../../src/pane/columns/rename.js";
import type { Yard } from "../../../src/pane/columns/yard.js";
import { sheetsOf, workbookOf, yardOf } from "./sheets.js";

const headed = (headings: readonly string[]): Yard => ({
  region: { kind: "sheet", name: "Yard", place: PLACE },
  place: PLACE,
  values: [headings],
  entries: [headings],
  formats: [headings.map(() => "General")],
  headings,
  isCalculated: headings.map(() => false),
});
const PLACE = { sheet: "Yard", row: 0, column: 0, rows: 1, columns: 1 };
const taken = (headings: readonly string[]) => {
  const { roles, doubts } = yardColumns([headings]);
  return { roles, doubts };
};

const renamed = (headings: readonly string[], ...choices: [number, Role | null][]) => {
  const after = [...headings];
  for (const { column, to } of renamesFor(headed(headings), new Map(choices))) after[column] = to;
  return after;
};

it("every role has a heading that is taken for it", () => {
  for (const role of ROLES) {
    expect(taken(renamed(["Bx 1"], [0, role])), role).toEqual({
      roles: [role],
      doubts: [],
    });
  }
});

describe("a column that is said to hold something", () => {
  it("gets a plain heading, with the frame that its own one named", () => {
    expect(renamed(["Hive", "Bx 1", "Mediums on"], [1, "bees"], [2, "bees"])).toEqual([
      "Hive",
      "Bees box 1",
      "Frames of bees, medium",
    ]);
  });

  it.each([
    ["Top box", "bees", "Bees top box"],
    ["Bottom", "bees", "Bees bottom box"],
    ["Deep 1", "bees", "Bees deep 1"],
    ["Lower super", "brood", "Brood lower super"],
    ["2", "bees", "Bees box 2"],
    ["Box 2", "seams above", "Seams above box 2"],
  ] as const)("keeps the name of its box: %s", (old, role, heading) => {
    expect(renamed(["Hive", old], [1, role])[1]).toBe(heading);
  });

  it("keeps the names of boxes chosen one after another, or together", () => {
    const both = ["Hive", "Bees top box", "Bees bottom box"];
    expect(renamed(["Hive", "Top box", "Bottom"], [1, "bees"], [2, "bees"])).toEqual(both);
    expect(renamed(["Hive", "Bees top box", "Bottom"], [2, "bees"])).toEqual(both);
    expect(taken(both)).toEqual({ roles: ["hive", "bees", "bees"], doubts: [] });
  });

  it("names no box where its heading named two", () => {
    expect(renamed(["Hive", "Top and bottom"], [1, "bees"])[1]).toBe("Frames of bees");
  });

  it("gets a number where the heading stands already, since a table takes none twice", () => {
    expect(renamed(["Hive", "Frames of bees", "Mine"], [2, "bees"])[2]).toBe("Frames of bees 2");
  });

  it("gets a box of its own, and so does the one beside it", () => {
    expect(renamed(["Hive", "Frames of bees", "Bx 1"], [2, "bees"])).toEqual([
      "Hive",
      "Frames of bees, box 2",
      "Bees box 1",
    ]);
    expect(renamed(["Hive", "Bees box 1", "Bx 1"], [2, "bees"])[2]).toBe("Frames of bees, box 2");
  });

  it("takes the place of the one that was taken for it", () => {
    const after = renamed(["Hive", "Code", "Bees"], [1, "hive"]);
    expect(taken(after)).toEqual({ roles: [null, "hive", "bees"], doubts: [] });
  });

  it("is passed over once it is the user's own", () => {
    expect(renamed(["Hive", "Bees top", "Bees guess"], [2, null])[2]).toBe("Bees guess, uncounted");
  });

  it("keeps its heading where that says so already", () => {
    expect(renamesFor(headed(["Hive", "Bees"]), new Map([[1, "bees"]]))).toEqual([]);
  });
});

it("takes columns as it was told, whatever the headings are", () => {
  const heading = fc.constantFrom(
    ...[
      "Hive",
      "Colony",
      "No",
      "Bees",
      "Bees top",
      "Total bees",
      "Cluster nov",
      "Frames",
      "Medium 2",
    ],
    ...[
      "Brood",
      "Brood %",
      "Capped brood",
      "Seams",
      "Queen",
      "QR",
      "Honey lbs",
      "Lot",
      "Yard",
      "",
      "x",
    ],
  );
  const choice = fc.option(fc.constantFrom<Role>(...ROLES), { nil: null });
  fc.assert(
    fc.property(fc.array(fc.tuple(heading, choice), { minLength: 1, maxLength: 5 }), (columns) => {
      const headings = columns.map(([h]) => h);
      const single = new Set<Role>();
      // Two columns of hives, or of pallets, cannot be said.
      const choices = columns.flatMap(([, role], k): [number, Role | null][] => {
        if (role !== null && single.has(role)) return [];
        if (role !== null) single.add(role);
        return [[k, role]];
      });
      const { roles, doubts } = taken(renamed(headings, ...choices));
      for (const [k, role] of choices) expect(roles[k]).toBe(role);
      const asked = renamed(headings, ...choices).filter((_, k) => choices.some(([c]) => c === k));
      expect(doubts.filter((doubt) => asked.includes(doubt.heading))).toEqual([]);
    }),
  );
});

describe("what is asked about", () => {
  it("is a heading that may hold a count, and one of two that claim the same", async () => {
    const yard = await yardOf([
      ["Hive", "Hive", "Bees", "Cluster nov"],
      ["A1", "x", 8, 7],
    ]);
    expect(questionsOf(yard)).toEqual([
      { column: 3, role: "bees", why: "doubt" },
      { column: 0, role: "hive", why: "doubt" },
      { column: 1, role: "hive", why: "doubt" },
    ]);
  });

  it("is a sum beside the boxes that it adds up, which would count the bees twice", async () => {
    const yard = await yardOf([
      ["Hive", "Bees top", "Bees bottom", "Bees"],
      ["A1", 4, 5, "=B2+C2"],
    ]);
    expect(questionsOf(yard)).toEqual([{ column: 3, role: "bees", why: "calculated" }]);
  });

  it("is none where a total is the sum of its boxes, typed or calculated", async () => {
    const boxes = ["Hive", "Bees top", "Bees bottom", "Bees"];
    const typed = await yardOf([boxes, ["A1", 4, 5, 9], ["A2", 3, 4, 7]]);
    for (const isCalculated of [typed.isCalculated, [false, false, false, true]]) {
      const yard = { ...typed, isCalculated };
      expect(questionsOf(yard)).toEqual([]);
      expect(renamesFor(yard, new Map())).toEqual([]);
    }
  });

  it("is which of two looks counts, and a heading says so", async () => {
    const yard = await yardOf([
      ["Hive", "Bees on arrival", "Bees now"],
      ["A1", 4, 5],
    ]);
    expect(questionsOf(yard)).toEqual([
      { column: 1, role: "bees", why: "names no box" },
      { column: 2, role: "bees", why: "names no box" },
    ]);
    expect(renamed(yard.headings, [1, null], [2, "bees"])).toEqual([
      "Hive",
      "Bees on arrival, uncounted",
      "Bees now",
    ]);
  });

  it("is no sum where a text stands, whatever it looks like", async () => {
    const workbook = workbookOf([
      ["Hive", "Bees top", "Bees bottom"],
      ["A1", 4, ""],
    ]);
    workbook.type("Yard", 1, 2, "=B2", "@");
    expect(questionsOf((await sheetsOf(workbook)).yard)).toEqual([]);
  });
});

it("changes the heading cells alone, and expects what stands there", async () => {
  const yard = await yardOf([
    ["Hive", "Bx 1"],
    ["A1", 8],
  ]);
  const steps = renameSteps(yard, renamesFor(yard, new Map([[1, "bees"]])));
  const place = { sheet: "Yard", row: 0, column: 1, rows: 1, columns: 1 };
  expect(steps).toEqual([
    { kind: "put", place, expect: [["'Bx 1"]], put: [["Bees box 1"]], formats: [["General"]] },
  ]);
});
