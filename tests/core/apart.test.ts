import fc from "fast-check";
import { expect, it } from "vitest";
import { decimalsApart, shownApart } from "../../src/core/apart.js";

// Rounded by hand: 7.9996 is 8.00 and 8.000, and only 7.9996 with four decimals.
it.each([
  [7.9996, 8, "7.9996"],
  [7.996, 8, "7.996"],
  [7.97, 8, "7.97"],
  [8.004, 8, "8.004"],
  [8.97058, 8, "8.97"],
  [8, 8, "8"],
  // Under what is asked, and two decimals would carry it over.
  [7.996, 7.998, "7.996"],
])("%f beside %f asked is shown as %s", (value, asked, shown) => {
  expect(shownApart(value, asked)).toBe(shown);
});

it("takes a sum that arithmetic left a hair under as what was asked", () => {
  expect(shownApart(0.1 + 0.2, 0.3)).toBe("0.3");
  expect(decimalsApart(0.1 + 0.2, 0.3)).toBe(2);
  expect(decimalsApart(0.3, 0.1 + 0.2, 1)).toBe(1);
});

it("takes no more than nine decimals", () => {
  // 39.9999999987: 39.999999999, which arithmetic may take for 40.
  expect(decimalsApart(40 - 1.3e-9, 40)).toBe(9);
});

it("is never shown on another side of what is asked than it is", () => {
  const figure = fc.double({ min: 0, max: 50, noNaN: true });
  fc.assert(
    fc.property(figure, fc.integer({ min: 1, max: 80 }), (value, quarters) => {
      const asked = quarters / 4;
      fc.pre(Math.abs(value - asked) > 1e-8);
      const shown = Number(value.toFixed(decimalsApart(value, asked)));
      expect(Math.sign(shown - asked)).toBe(Math.sign(value - asked));
    }),
  );
});
