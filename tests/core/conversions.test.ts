import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { one } from "../functions/sheet.js";

const FRAMES = ["deep", "medium", "shallow", "national deep", "dadant", "zander", "42 x 27 cm"];
const frame = fc.constantFrom(...FRAMES);
const percent = fc.integer({ min: 1, max: 100 });
const near = (got: unknown, value: number) => expect(got).toBeCloseTo(value, 6);

describe("every conversion has its way back", () => {
  it("percent to cells and cells to percent", () => {
    fc.assert(
      fc.property(
        percent,
        frame,
        fc.constantFrom("worker", "drone"),
        percent,
        (p, size, caste, fill) => {
          const cells = one("CELLS", p, caste, null, size, fill);
          near(one("COVER", cells, caste, null, size, fill), p);
        },
      ),
    );
  });
  it("frames to bees and bees to frames", () => {
    const figure = fc.constantFrom("well covered", "fully covered", "average", "liebefeld", 2430);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), figure, frame, (frames, each, size) => {
        near(one("BEES", one("BEES", frames, each, "bees", size), each, "frames", size), frames);
      }),
    );
  });
  it("bees, pounds and kilograms, all the way round", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e5 }), (bees) => {
        const pounds = one("BEE_WEIGHT", bees, "bees", "lb");
        const kilograms = one("BEE_WEIGHT", pounds, "lb", "kg");
        near(one("BEE_WEIGHT", kilograms, "kg", "bees"), bees);
      }),
    );
  });
  it("one frame to another and back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), frame, frame, (combs, from, to) => {
        const there = one("DEEP_EQUIVALENT", combs, from, to) as number;
        fc.pre(there <= 60);
        near(one("DEEP_EQUIVALENT", there, to, from), combs);
      }),
    );
  });
  it("inches and centimetres", () => {
    const side = fc.integer({ min: 1, max: 8 });
    fc.assert(
      fc.property(side, side, (length, width) => {
        const inches = one("PATCH", length, width, "in", "cm2") as number;
        near(one("PATCH", length * 2.54, width * 2.54, "cm", "cm2"), inches);
        near(one("PATCH", (inches / 25.4 / 25.4) * 100, null, "sq in", "cm2"), inches);
      }),
    );
  });
});

describe("brood by any measure is the same brood", () => {
  it("combs and cover, each comb, area, cells, a patch", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), percent, (combs, cover) => {
        const full = one("BROOD_FRAMES", combs, cover);
        near(full, (combs * cover) / 100);
        near(one("BROOD_FRAMES", [Array(combs).fill(cover)], null, null, "combs"), full as number);
        const cells = one("BROOD_FRAMES", combs, cover, "cells");
        near(one("BROOD_FRAMES", cells, null, null, "cells"), full as number);
        const half = one("BROOD_FRAMES", combs, cover, "cells", null, null, null, 50);
        near(half, (cells as number) / 2);
      }),
    );
  });
  it("a patch of 10 x 6 in on each of two sides", () => {
    // 2 x pi/4 x 60 in2 over both sides of 134 in2
    const patches = one("BROOD_FRAMES", [[10, 6, 10, 6]], null, null, "patches in");
    near(patches, (Math.PI * 30) / 268);
    near(
      one("BROOD_FRAMES", [[25.4, 15.24, 25.4, 15.24]], null, null, "patches cm"),
      patches as number,
    );
    expect(one("BROOD_FRAMES", [[10, 6, 10]], null, null, "patches in")).toMatch(/two and two/);
  });
});
