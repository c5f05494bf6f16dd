import { describe, expect, it } from "vitest";
import { absenceOf } from "../../src/core/absence.js";

// The words are common practice, no source.
describe("what stands in place of a count", () => {
  it.each([
    "not opened",
    "Not opened yet",
    "not looked at",
    "not looked in",
    "not inspected",
    "not graded",
    "UNOPENED",
    "uninspected",
    " closed ",
    "left closed",
    "skip",
    "skipped",
    "n/o",
    "N/A",
  ])("%s says that nobody opened the hive", (text) => {
    expect(absenceOf(text)).toBe("not opened");
  });

  it.each([
    "gone",
    "removed",
    "taken out",
    "taken away 3 Apr",
    "sold",
    "Combined into 13",
    "merged with B4",
    "united",
    "joined to 7",
    "moved to yard 2",
  ])("%s says that the hive is no longer in the lot", (text) => {
    expect(absenceOf(text)).toBe("gone");
  });

  it.each([
    ...["", "0", "7-8", "about 5", "half", "none", "dead", "-", "?", "12+"],
    ...["opened", "not open brood", "reclosed", "closed up", "goner", "unsold", "was gone"],
  ])("%j says nothing of the kind", (text) => {
    expect(absenceOf(text)).toBeNull();
  });
});
