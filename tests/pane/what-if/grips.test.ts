import fc from "fast-check";
import { expect, it } from "vitest";
import { gripsOf, type Grip } from "../../../src/pane/what-if/grips.js";

const LINES = { line: 10, floor: 150, reach: 12, near: 8 };

it("handles on one place share its line from the top in their order", () => {
  // Three names take 30 of the height; of the 120 below each of the two at 100 has 60.
  expect(gripsOf([40, 100, 100], LINES)).toEqual([
    {
      left: 28,
      right: 52,
      stretches: [
        [0, 30],
        [30, 150],
      ],
      knob: 90,
    },
    {
      left: 88,
      right: 112,
      stretches: [
        [10, 20],
        [30, 90],
      ],
      knob: 60,
    },
    {
      left: 88,
      right: 112,
      stretches: [
        [20, 30],
        [90, 150],
      ],
      knob: 120,
    },
  ]);
});

it("neighbours are parted half-way, the nearest share one place", () => {
  const ends = (xs: number[]) => gripsOf(xs, LINES).map(({ left, right }) => [left, right]);
  expect(ends([120, 100])).toEqual([
    [110, 132],
    [88, 110],
  ]);
  expect(ends([104, 100])).toEqual([
    [88, 116],
    [88, 116],
  ]);
});

it("no grip lies over another, and each has its line within it", () => {
  const areas = ({ left, right, stretches }: Grip) =>
    stretches.map(([top, bottom]) => ({ left, right, top, bottom }));
  const apart = fc.array(fc.integer({ min: 0, max: 320 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(apart, (xs) => {
      const grips = gripsOf(xs, { ...LINES, floor: 250 });
      grips.forEach((grip, i) => {
        expect(xs[i]).toBeGreaterThanOrEqual(grip.left);
        expect(xs[i]).toBeLessThanOrEqual(grip.right);
        for (const other of grips.slice(i + 1)) {
          for (const a of areas(grip)) {
            for (const b of areas(other)) {
              const isOver =
                a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
              expect(isOver).toBe(false);
            }
          }
        }
      });
    }),
  );
});
