import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalise } from "../../src/core/text.js";

/** The signs of a keyboard, with the spaces that people put between and around them. */
const typed = fc.string({ unit: fc.constantFrom(..."abXYZ079 \t\n-/.,+~%½'\"") });

describe("one spelling for what means the same", () => {
  // A law: a word that needs respelling changes nothing of what stands beside it.
  it("is the same for plain text by itself and beside other scripts", () => {
    fc.assert(
      fc.property(typed, (text) => {
        expect(normalise(`é ${text}`)).toBe(`é ${normalise(text)}`.trim());
      }),
    );
  });

  it("is its own spelling", () => {
    fc.assert(fc.property(typed, (text) => normalise(normalise(text)) === normalise(text)));
  });

  // By the rule in words: lower case, one space between, none around.
  it.each([
    ["Hive  7", "hive 7"],
    [" Hive 7", "hive 7"],
    ["Hive 7 ", "hive 7"],
    ["HIVE 7", "hive 7"],
    ["A B C-3", "a b c-3"],
    ["7½", "7 <1/2>"],
    // A fraction slash, and a tick with the sign behind it that asks for a coloured picture.
    ["1\u20442", "1/2"],
    ["\u2714\uFE0F seen", "\u2714 seen"],
  ])("%j is %j", (text, spelling) => {
    expect(normalise(text)).toBe(spelling);
  });
});
