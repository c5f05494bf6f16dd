import { describe, expect, it } from "vitest";
import { exactly } from "../../src/core/estimate.js";
import { droneShare, droneVerdict, solidness } from "../../src/core/pattern.js";

describe("the share of drone brood", () => {
  it.each([
    [3, 7.35 / (7.35 + 384.12)],
    [5, 12.25 / (12.25 + 376.2)],
    [10, 24.5 / (24.5 + 356.4)],
  ])("of %d percent by area is less by cells, since drone cells are wider", (area, cells) => {
    // 3.96 worker cells a cm2 (Ohio State / EPA 2015 notes, read), 2.3 to 2.6 drone cells (COLOSS
    // BEEBOOK 5.9, read), 2.45 in the middle: 3 x 2.45 = 7.35 beside 97 x 3.96 = 384.12, 1.88 %.
    const share = droneShare(area, 100 - area, "area");
    expect(share.byArea).toBeCloseTo(area, 9);
    expect(share.byCells).toBeCloseTo(100 * cells, 9);
  });

  it("counted in cells gives the same two shares back", () => {
    const share = droneShare(3 * 2.45, 97 * 3.96, "cells");
    expect(share.byArea).toBeCloseTo(3, 9);
    expect(share.byCells).toBeCloseTo(1.88, 2);
  });

  it("lies where a published count of both kinds of cell would put it", () => {
    // Liebefeld method (read): 400 worker or 230 drone cells an eighth. 5 % of the area by those
    // counts: 5 x 230 / (5 x 230 + 95 x 400) = 2.94 % of cells, ours 3.15 %.
    const theirs = (100 * (5 * 230)) / (5 * 230 + 95 * 400);
    expect(Math.abs(droneShare(5, 95, "area").byCells - theirs)).toBeLessThan(0.25);
  });
});

describe("what a drone share means", () => {
  it.each([
    // Ohio State / EPA 2015 (worked): 3 % in May, 5 % in June, in managed hives.
    [3, "build-up", "together", "normal"],
    [5, "summer", "together", "normal"],
    // Common practice, no source: none at the end of winter; up to about 10 %, kept together.
    [0, "end of winter", null, "normal"],
    [9, "build-up", "together", "normal"],
    [15, "build-up", "together", "look again"],
    [15, "summer", null, "look again"],
    [1, "build-up", "scattered", "look again"],
    [0.1, "autumn", "scattered", "look again"],
    [40, "summer", "scattered", "look again"],
    [3, "build-up", null, ""],
    [3, null, "together", ""],
    [0, "summer", null, ""],
  ] as const)("%d percent of area, %s, %s: %j", (share, season, place, verdict) => {
    expect(droneVerdict(share, season, place).verdict).toBe(verdict);
  });
});

describe("solidness", () => {
  it.each([
    // From memory: 5 to 20 % of empty cells is solid, 20 % and more is spotty.
    [95, "solid"],
    [81, "solid"],
    [80, "spotty"],
    [50, "spotty"],
  ])("%d percent filled is %s", (fill, verdict) => {
    expect(solidness(exactly(fill)).verdict).toBe(verdict);
  });
});
