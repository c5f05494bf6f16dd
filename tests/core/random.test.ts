import { expect, it } from "vitest";
import { randomFrom } from "../../src/core/random.js";

// Worked out in Python's whole numbers, each step kept to its last 32 bits.
it.each([
  [1, [0.6270739405881613, 0.002735721180215478, 0.5274470399599522, 0.9810509674716741]],
  [0, [0.26642920868471265, 0.0003297457005828619, 0.2232720274478197, 0.1462021479383111]],
  [-7, [0.43306733411736786, 0.32539576734416187, 0.5442695003002882, 0.48018999374471605]],
  [4294967297, [0.6270739405881613, 0.002735721180215478, 0.5274470399599522, 0.9810509674716741]],
])("the numbers from seed %d are mulberry32's, the same on any machine", (seed, numbers) => {
  const next = randomFrom(seed);
  expect(numbers.map(() => next())).toEqual(numbers);
});
