import { describe, expect, it } from "vitest";
import { absenceOf, saidInNote } from "../../src/core/absence.js";

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

// The words are common practice, no source.
describe("what a note says beside blank bees", () => {
  it.each(["dead", "Dead.", "dead-out", "DEADOUT", "DO", "d/o", " dead out "])(
    "%s says that the hive is dead, and no more",
    (note) => expect(saidInNote(note)).toBe("dead"),
  );

  it.each([
    ...[
      "dead, mice",
      "died of hunger",
      "queen dead",
      "starved",
      "dead truck battery",
      "D/O, moths",
    ],
    ...[
      "opened, no bees",
      "Inspected late",
      "empty",
      "robbed out",
      "queenless",
      "looked at 3 combs",
    ],
  ])("%s speaks of a death or a look", (note) => expect(saidInNote(note)).toBe("looked at"));

  it.each([
    ...["", "not opened", "not yet inspected", "never looked at", "no time, not checked"],
    ...["strong at the gate", "lid cracked", "deadline Friday", "new queen", "do not move"],
  ])("%j says neither", (note) => expect(saidInNote(note)).toBeNull());
});
