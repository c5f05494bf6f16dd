import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchHeadings, type Role } from "../../../src/core/headings.js";
import { questionsOf, renamesFor, renameSteps, ROLES } from "../../../src/pane/columns/rename.js";
import { sheetsOf, workbookOf, yardOf } from "./sheets.js";

const renamed = (headings: readonly string[], ...choices: [number, Role | null][]) => {
  const after = [...headings];
  for (const { column, to } of renamesFor(headings, new Map(choices))) after[column] = to;
  return after;
};

it("every role has a heading that is taken for it", () => {
  for (const role of ROLES) {
    expect(matchHeadings(renamed(["Bx 1"], [0, role])), role).toEqual({
      roles: [role],
      doubts: [],
    });
  }
});

describe("a column that is said to hold something", () => {
  it("gets a plain heading, with the frame that its own one named", () => {
    expect(renamed(["Hive", "Bx 1", "Mediums on"], [1, "bees"], [2, "bees"])).toEqual([
      "Hive",
      "Frames of bees",
      "Frames of bees, medium",
    ]);
  });

  it("gets a number where the heading stands already, since a table takes none twice", () => {
    expect(renamed(["Hive", "Frames of bees", "Bx 2"], [2, "bees"])[2]).toBe("Frames of bees 2");
  });

  it("takes the place of the one that was taken for it", () => {
    const after = renamed(["Hive", "Code", "Bees"], [1, "hive"]);
    expect(matchHeadings(after)).toEqual({ roles: [null, "hive", "bees"], doubts: [] });
  });

  it("is passed over once it is the user's own", () => {
    expect(renamed(["Hive", "Bees top", "Bees guess"], [2, null])[2]).toBe("Bees guess, uncounted");
  });

  it("keeps its heading where that says so already", () => {
    expect(renamesFor(["Hive", "Bees"], new Map([[1, "bees"]]))).toEqual([]);
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
      const { roles, doubts } = matchHeadings(renamed(headings, ...choices));
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

  it("is no sum where a text stands, whatever it looks like", async () => {
    const workbook = workbookOf([
      ["Hive", "Bees top", "Bees"],
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
  const steps = renameSteps(yard, renamesFor(yard.headings, new Map([[1, "bees"]])));
  const place = { sheet: "Yard", row: 0, column: 1, rows: 1, columns: 1 };
  expect(steps).toEqual([
    { kind: "put", place, expect: [["'Bx 1"]], put: [["Frames of bees"]], formats: [["General"]] },
  ]);
});
