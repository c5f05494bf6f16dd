import fc from "fast-check";
import { expect, it } from "vitest";
import { toPlaces } from "../../src/core/places.js";

// By hand: a half goes up, whatever the machine makes of it.
it.each([
  [6.475, 2, 6.48],
  [1.005, 2, 1.01],
  [8.615, 2, 8.62],
  [8.625, 2, 8.63],
  [8.6249, 2, 8.62],
  [-6.475, 2, -6.48],
  [7.5, 0, 8],
  [0, 2, 0],
  [19.95, 1, 20],
  [123_456.785, 2, 123_456.79],
])("%d to %d decimals is %d", (value, places, wanted) =>
  expect(toPlaces(value, places)).toBe(wanted),
);

it("rounds every figure of three decimals by its last digit", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 99_999_999 }), (thousandths) => {
      const down = Math.floor(thousandths / 10);
      const wanted = (thousandths % 10 >= 5 ? down + 1 : down) / 100;
      expect(toPlaces(thousandths / 1000, 2)).toBe(wanted);
    }),
  );
});
