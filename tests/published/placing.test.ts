import { describe, expect, it } from "vitest";
import { acresIn, cropRate } from "../../src/core/hives-needed.js";
import { loadsOf } from "../../src/core/loads.js";
import { comb } from "../functions/sheet.js";

const TRUCK = { stacks: 17, sides: 2, high: 3, onPallet: 4 };

describe("hives an acre", () => {
  it.each([
    // Almond Board of California; Good Fruit Grower (read).
    ["almond", 2, 2],
    ["apples", 1, 2],
    ["sweet cherry", 2, 3],
    ["pear", 2, 4],
    ["Blueberries", 2, 3],
  ])("of %s are %d to %d", (crop, least, most) => {
    expect(cropRate(crop)).toMatchObject({ least, most });
  });

  it("of kiwifruit are 8 to 10 a hectare", () => {
    // New Zealand kiwifruit pollination standard (read).
    expect(cropRate("kiwifruit").least * acresIn("hectares")).toBeCloseTo(8, 12);
    expect(cropRate("kiwifruit").most * acresIn("hectares")).toBeCloseTo(10, 12);
  });

  it("for almonds of 8 frames come to the 16 frames an acre that growers reckon by", () => {
    // Almond Board of California, p. 7 (read): 2 hives an acre at an average of 8 frames.
    expect(comb("HIVES_NEEDED", 100, "almond")).toEqual(
      comb("HIVES_NEEDED", 100, null, null, null, 16, 8),
    );
  });
});

it("a hectare is 2.4710538 acres", () => {
  // International acre: 4,840 square yards of 0.9144 m = 4,046.8564224 m2.
  expect(acresIn("hectares")).toBeCloseTo(10000 / 4046.8564224, 12);
});

it("a truck of 17 stacks x 2 sides x 3 high x 4 hives takes 408 double deeps", () => {
  // Honey producer's account (worked).
  expect(loadsOf(408, TRUCK, null)).toMatchObject({ aLoad: 408, loads: 1, onLast: 408 });
  expect(loadsOf(409, TRUCK, null)).toMatchObject({ loads: 2, onLast: 1 });
});
