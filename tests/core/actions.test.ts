import { describe, expect, it } from "vitest";
import { actionOf, type Signs } from "../../src/core/actions.js";
import { fromColumn } from "../../src/core/contract-reading.js";
import { between, exactly, type Estimate } from "../../src/core/estimate.js";
import type { Hive } from "../../src/core/grade.js";
import { matchSigns, storesUnitOf } from "../../src/core/headings.js";

const contract = (terms: Record<string, unknown> = {}) =>
  fromColumn(
    "Cherry",
    new Map(Object.entries({ "average frames": 8, "minimum frames": 6, ...terms })),
  );
const full = (frames: number) => ({ fullFrames: exactly(frames), combs: null, cover: null });
const HIVE: Hive = { frames: exactly(8), brood: full(3), queen: true, stores: exactly(4) };
const NOTHING: Signs = { eggs: null, pattern: null, drone: null, stores: null };
const act = (hive: Partial<Hive>, signs: Partial<Signs> = {}, terms = {}) =>
  actionOf(contract(terms), { ...HIVE, ...hive }, { ...NOTHING, ...signs });
const bees = (frames: Estimate): Partial<Hive> => ({ frames, brood: full(0) });

describe("where a hive goes", () => {
  it.each([
    ["has what is asked", bees(exactly(6)), "place"],
    ["is under the minimum", bees(exactly(5.5)), "hold back"],
    ["has as many frames as combine under", bees(exactly(4)), "hold back"],
    ["has fewer than that", bees(exactly(3.5)), "combine"],
    ["has no bees and is not said to be dead", bees(exactly(0)), "look again"],
    ["is dead", bees({ ...exactly(0), dead: true }), "take out"],
    ["has no laying queen", { queen: false }, "look again"],
    ["has less bees than brood", { brood: full(8.5) }, "look again"],
    ["has just as many", { brood: full(8) }, "place"],
  ])("that %s", (_, hive, action) => {
    expect(act(hive).action).toBe(action);
  });

  it("is told of the stores by a word where no figure was written", () => {
    const none = { stores: null };
    expect(act(none, { stores: "light" })).toMatchObject({ action: "place", feed: true });
    expect(act(none, { stores: "light" }).reason).toBe("stores light");
    expect(act(none, { stores: "enough" })).toMatchObject({ feed: false, reason: "" });
    expect(act(none)).toMatchObject({ feed: false, reason: "stores not judged" });
    expect(act({ stores: exactly(4) }, { stores: "light" }).feed).toBe(false);
  });

  it("is the terms' to say", () => {
    expect(act(bees(exactly(5)), {}, { "combine under": 5.5 }).action).toBe("combine");
    expect(act({ brood: full(3) }, {}, { "bees for brood": 3 }).action).toBe("look again");
    expect(act({ queen: null }, {}, { "laying queen": "yes" })).toMatchObject({
      action: "look again",
      reason: expect.stringContaining("queen is asked for and not judged"),
    });
  });

  it("is out, and not fed, where it is dead", () =>
    expect(act({ ...bees({ ...exactly(0), dead: true }), stores: exactly(1) })).toEqual({
      action: "take out",
      feed: false,
      reason:
        "dead: close it against robbing, and ask the apiary inspector before its combs are used again",
    }));

  it("says each thing once, the longer way", () =>
    expect(act({ queen: false }, {}, { "laying queen": "yes" }).reason).toBe(
      "no laying queen: requeen or combine once that is sure; no diagnosis: ask the apiary inspector",
    ));

  it("says of a hive with brood and no bees that it has none, and not that they are few", () =>
    expect(act({ frames: exactly(0) }).reason).toBe(
      "no bees, and not said to be dead; no diagnosis: ask the apiary inspector; " +
        "frames of bees 0, under 4; frames 0 of 6",
    ));

  it("says how many bees the brood needs", () =>
    expect(act({ brood: full(4.2) }, {}, { "bees for brood": 2 }).reason).toBe(
      "8 frames of bees for 4.2 of brood: fewer than it needs, 8.4; " +
        "no diagnosis: ask the apiary inspector",
    ));

  it("says where an end of the figure would go elsewhere", () => {
    expect(act(bees(between(4, 9))).reason).toBe("frames 4-9 of 6: not met at the low end");
    expect(act(bees(between(3, 5.5))).reason).toContain("at the low end of 3 under 4");
    expect(act(bees(between(3, 4))).reason).toContain("not at the high end of 4");
  });
});

describe("a sign", () => {
  it.each([
    [{ eggs: false }, "no eggs seen"],
    [{ pattern: "spotty" }, "spotty brood"],
    [{ pattern: exactly(80) }, "spotty brood"],
    [{ drone: "scattered" }, "drone brood scattered in worker cells"],
    [{ drone: exactly(11) }, "much drone brood"],
  ] as const)("%j is looked at again, never diagnosed", (signs, why) => {
    const { action, reason } = act({}, signs as Partial<Signs>);
    expect(action).toBe("look again");
    expect(reason).toBe(`${why}; no diagnosis: ask the apiary inspector`);
  });

  it.each([
    [{ eggs: true, pattern: "solid", drone: "together" }],
    [{ pattern: exactly(81), drone: exactly(10) }],
    [{ drone: "normal" }],
  ] as const)("%j is as usual", (signs) => {
    expect(act({}, signs as Partial<Signs>)).toMatchObject({ action: "place", reason: "" });
  });

  it("goes before combining: a sick hive would take the other with it", () => {
    expect(act(bees(exactly(2)), { pattern: "spotty" }).action).toBe("look again");
  });
});

describe("feed", () => {
  it.each([
    // 20 lb by common practice: 20 / 7 = 2.857 deep frames; 20 x 0.45359237 = 9.07 kg.
    [{}, 2.8, true],
    [{}, 2.9, false],
    [{ "stores unit": "kg" }, 9, true],
    [{ "stores unit": "kg" }, 9.1, false],
    [{ "stores unit": "lb" }, 20, false],
    [{ "box frames": "medium" }, 5.3, true],
    [{ "feed under": 4 }, 3.5, true],
  ])("by %j of %d is %s", (terms, stores, feed) => {
    expect(act({ stores: exactly(stores) }, {}, terms).feed).toBe(feed);
  });

  it("is said with the stores, their unit and the line, and with the end that would do", () => {
    const why = (stores: Estimate): string => act({ stores }, {}, { "stores unit": "kg" }).reason;
    expect(why(exactly(5))).toBe("stores 5 kg, under 9.07");
    expect(why(between(5, 11))).toBe("stores 8 kg, under 9.07, not at the high end of 11");
    expect(why(between(9, 11))).toBe("stores 10 kg, at the low end of 9 under 9.07");
    expect(why({ ...exactly(5), high: null })).toBe("stores 5 kg, under 9.07, and 5+ may be more");
  });

  it("is not said of stores that nobody judged, and that is said", () => {
    expect(act({ stores: null })).toEqual({
      action: "place",
      feed: false,
      reason: "stores not judged",
    });
  });
});

describe("headings of signs", () => {
  it("are taken where every word is understood", () => {
    const { columns, doubts } = matchSigns([
      "Hive",
      "Eggs seen (Y/N)",
      "Brood pattern",
      "Drone brood",
    ]);
    expect([...columns]).toEqual([
      ["eggs", 1],
      ["pattern", 2],
      ["drone", 3],
    ]);
    expect(doubts).toEqual([]);
  });

  it("are asked about where a word is not, or two would hold one sign", () => {
    expect(matchSigns(["Brood pattern (1-5)", "Eggs", "Eggs?"]).doubts).toEqual([
      { sign: "pattern", heading: "Brood pattern (1-5)" },
      { sign: "eggs", heading: "Eggs?" },
    ]);
  });

  it("are passed over where they say a count, a day or a deed", () => {
    const { columns, doubts } = matchSigns(["Drone comb removed", "Egg date", "Drone cells"]);
    expect([columns.size, doubts.length]).toEqual([0, 0]);
  });

  it.each([
    ["Stores (lbs)", "lb"],
    ["honey kg", "kg"],
    ["Honey frames", "frames"],
    ["Stores", null],
    ["Food (pounds)", "lb"],
    ["Feed, combs", "frames"],
    ["Heft", "hive weight"],
    ["Honey wt, lbs", "lb"],
    ["Wt lbs", "hive weight"],
  ])("of stores: %s is in %s", (heading, unit) => {
    expect(storesUnitOf(heading)).toBe(unit);
  });
});
