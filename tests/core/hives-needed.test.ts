import { describe, expect, it } from "vitest";
import { cropRate } from "../../src/core/hives-needed.js";

describe("a crop", () => {
  it.each([
    ["Apples", "apple"],
    ["sweet cherries", "cherry"],
    ["Blueberries", "blueberry"],
  ])("called %j is %s", (text, crop) => expect(cropRate(text)).toEqual(cropRate(crop)));

  it.each(["plum", "apsple", "cherriess", "kiwisweet fruit", "", "constructor"])(
    "called %j is not guessed",
    (text) => {
      expect(() => cropRate(text)).toThrow(
        `no rate is published here for "${text}": give almond, apple, cherry, pear, blueberry, kiwifruit, or a rate of your own`,
      );
    },
  );
});
