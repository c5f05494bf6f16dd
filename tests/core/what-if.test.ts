import { describe, expect, it } from "vitest";
import { readContract } from "../../src/core/contract-reading.js";
import { standardContract } from "../../src/core/standards.js";
import { contractWith, leavesHives, leavesReading } from "../../src/core/what-if.js";

const TERMS = [
  ["Term", "Cherry", "Pear"],
  ["Average frames", 8, 7],
  ["minimum frames", 6, 5],
  ["grade 1 name", "Prime", "Full"],
  ["grade 1 frames", 10, 8],
];
const cherry = readContract(TERMS, "Cherry");
const ungraded = standardContract("Almond Board of California");

describe("whether a term leaves the hives judged as they are", () => {
  it.each(["base fee", "Bonus a frame", "pro rata", "deposit", "share under minimum forgiven"])(
    "%s does",
    (term) => {
      expect(leavesHives(cherry, term)).toBe(true);
      expect(leavesReading(term)).toBe(true);
    },
  );

  it.each(["grade 1 fee", "grade 12 fee"])("%s does: it only pays", (term) => {
    expect(leavesHives(cherry, term)).toBe(true);
  });

  it.each([
    "minimum frames",
    "grade 1 frames",
    "brood",
    "laying queen",
    "no such term",
    "grade 1 fees",
    "no grade 1 fee",
  ])("%s does not", (term) => expect(leavesHives(cherry, term)).toBe(false));

  it("the average does where grades tell the hives apart", () => {
    expect(leavesHives(cherry, "average frames")).toBe(true);
    expect(leavesHives(ungraded, "average frames")).toBe(false);
  });
});

describe("whether a term leaves the cells read as they are", () => {
  it.each(["minimum frames", "average frames", "grade 1 frames"])("%s does", (term) =>
    expect(leavesReading(term)).toBe(true),
  );

  it.each(["brood counted as", "stores unit", "Frame size"])("%s does not", (term) =>
    expect(leavesReading(term)).toBe(false),
  );
});

describe("a contract with something else in a term", () => {
  it("is as if the cell had been changed, and the others stand", () => {
    const changed = contractWith(TERMS, cherry, "average frames", 9);
    expect(changed).toEqual({ ...cherry, averageFrames: 9 });
    const pear = readContract(TERMS, "Pear");
    expect(contractWith(TERMS, pear, "minimum frames", 4)).toEqual({ ...pear, minimumFrames: 4 });
  });

  it("gains a term that its table has not", () => {
    expect(contractWith(TERMS, cherry, "base fee", 60)).toEqual({ ...cherry, baseFee: 60 });
  });

  it("may be a published standard", () => {
    expect(contractWith(null, ungraded, "average frames", 9)).toEqual({
      ...ungraded,
      averageFrames: 9,
    });
  });

  it("may be any of them", () => {
    const rutgers = standardContract("Rutgers New Jersey");
    expect(contractWith(null, rutgers, "base fee", 60)).toEqual({ ...rutgers, baseFee: 60 });
  });

  it("is refused as the sheet would be", () => {
    expect(() => contractWith(TERMS, cherry, "minimum frames", 9)).toThrow(
      "minimum frames 9 is over average frames 8",
    );
  });
});
