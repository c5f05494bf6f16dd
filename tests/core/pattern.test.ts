import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { between, exactly } from "../../src/core/estimate.js";
import {
  droneShare,
  droneVerdict,
  PLACES,
  BROOD_SEASONS,
  solidness,
} from "../../src/core/pattern.js";

const amount = fc.integer({ min: 1, max: 50_000 });

describe("a drone share", () => {
  it("is less by cells than by area, and both lie between none and all", () => {
    fc.assert(
      fc.property(amount, amount, fc.constantFrom("cells", "area"), (drone, worker, countedIn) => {
        const { byCells, byArea } = droneShare(drone, worker, countedIn as "cells");
        expect(byCells).toBeLessThan(byArea);
        expect(byCells).toBeGreaterThan(0);
        expect(byArea).toBeLessThan(100);
      }),
    );
  });

  it("does not hang on the unit of area", () => {
    fc.assert(
      fc.property(amount, amount, (drone, worker) => {
        const inches = droneShare(drone / 6.4516, worker / 6.4516, "area");
        expect(inches.byCells).toBeCloseTo(droneShare(drone, worker, "area").byCells, 9);
      }),
    );
  });

  it("is none or all where there is but one kind, and unknown where there is no brood", () => {
    expect(droneShare(0, 5, "cells")).toEqual({ byCells: 0, byArea: 0 });
    expect(droneShare(5, 0, "cells")).toEqual({ byCells: 100, byArea: 100 });
    expect(() => droneShare(0, 0, "cells")).toThrow(
      expect.objectContaining({ kind: "unknown", message: "no brood, so it has no drone share" }),
    );
  });

  it("is half by area where either covers as much", () => {
    expect(droneShare(5, 5, "area").byArea).toBe(50);
  });
});

describe("a warning", () => {
  const all = [null, ...BROOD_SEASONS].flatMap((season) =>
    [null, ...PLACES].flatMap((place) =>
      [0, 0.5, 5, 10, 10.5, 100].map((share) => ({ share, season, place })),
    ),
  );

  it("is given for scattered drone brood at any share and season, and for more than a tenth", () => {
    for (const { share, season, place } of all) {
      const warns = share > 0 && (place === "scattered" || share > 10);
      expect(droneVerdict(share, season, place).verdict === "look again").toBe(warns);
    }
  });

  it("sends to someone who knows, and diagnoses nothing", () => {
    const notes = all.map(({ share, season, place }) => droneVerdict(share, season, place));
    const spotty = solidness(exactly(50));
    for (const { verdict, note } of [...notes, spotty]) {
      expect(note).not.toBe("");
      expect(note).not.toMatch(
        /laying worker|drone.layer|queenless|failing|foulbrood|mite|disease/i,
      );
      if (verdict === "look again" || verdict === "spotty") {
        expect(note).toMatch(/look again.*apiary inspector/);
      }
    }
  });
});

it("says of drone brood together what is not known: the season, or a figure for it", () => {
  expect(droneVerdict(5, null, "together").note).toBe("say the season");
  expect(droneVerdict(5, "autumn", "together").note).toBe(
    "drone brood that stands together: no figure is known for the autumn",
  );
});

it("says where a fill is judged too widely to be sure", () => {
  expect(solidness(between(75, 85))).toMatchObject({ verdict: "spotty", empty: 20 });
  expect(solidness(between(75, 85)).note).toMatch(/too widely/);
  // 100 less 80.5 is under 20 %.
  expect(solidness(between(75, 86))).toMatchObject({ verdict: "solid", empty: 19.5 });
  expect(solidness(between(85, 95)).note).not.toMatch(/too widely/);
});
