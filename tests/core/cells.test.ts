import { describe, expect, it } from "vitest";
import { coverOfCells, patchArea, patchOf } from "../../src/core/cells.js";
import { frameOf } from "../../src/core/comb.js";
import { between, exactly } from "../../src/core/estimate.js";

describe("a patch", () => {
  it("is length x width as a rectangle, and pi / 4 of that as an ellipse", () => {
    expect(patchArea(10, 6, "rectangle")).toBe(60);
    expect(patchArea(10, 6, "ellipse")).toBeCloseTo(47.12, 2);
  });

  it("is judged end by end", () => {
    // 8 x 5, 9 x 6, 10 x 7.
    const patch = patchOf(between(8, 10), between(5, 7), "rectangle");
    expect(patch).toMatchObject({ low: 40, middle: 54, high: 70 });
  });

  it("is open where its length or its width is", () => {
    const open = { ...exactly(6), high: null };
    expect(patchOf(open, exactly(5), "rectangle")).toMatchObject({ low: 30, high: null });
    expect(patchOf(exactly(5), open, "rectangle")).toMatchObject({ low: 30, high: null });
  });

  it("keeps what is to be known of its length and of its width", () => {
    const noted = (note: string) => ({ ...exactly(5), note });
    const noteOf = (length: string, width: string) =>
      patchOf(noted(length), noted(width), "rectangle").note;
    expect(noteOf("", "wide")).toBe("wide");
    expect(noteOf("long", "")).toBe("long");
    expect(noteOf("long", "wide")).toBe("long; wide");
  });
});

describe("the share of a side that cells take", () => {
  // A Zander side is 800 cm2: at 4 cells a cm2 it holds 3,200.
  const zander = frameOf("zander");

  it("is the whole side where they fill it, and a quarter where they fill a quarter", () => {
    expect(coverOfCells(zander, 3200, 4)).toBe(100);
    expect(coverOfCells(zander, 800, 4)).toBe(25);
  });

  it("is refused where they are more than the side holds", () => {
    expect(() => coverOfCells(zander, 3201, 4)).toThrow(
      "3201 cells are more than one side of the frame (zander) holds: 3200",
    );
  });
});
