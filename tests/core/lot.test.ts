import { describe, expect, it } from "vitest";
import { fromColumn } from "../../src/core/contract-reading.js";
import { exactly } from "../../src/core/estimate.js";
import type { Hive } from "../../src/core/grade.js";
import { countLot, latestLooks, lotOf, type Look } from "../../src/core/lot.js";
import { Refusal } from "../../src/core/refusal.js";

const contract = (terms: Record<string, unknown> = {}) =>
  fromColumn(
    "Cherry",
    new Map(Object.entries({ "average frames": 8, "minimum frames": 6, ...terms })),
  );
const look = (id: string, frames: number, more: Partial<Hive> = {}): Look => ({
  id,
  pallet: null,
  day: null,
  hive: { frames: exactly(frames), brood: null, queen: null, stores: null, ...more },
});
const looks = (...frames: number[]): Look[] => frames.map((count, i) => look(`H${i}`, count));
const dead = (id: string): Look => look(id, 0, { frames: { ...exactly(0), dead: true } });
const count = (frames: number[], terms = {}, size: number | null = null) => {
  const by = contract(terms);
  return countLot(by, lotOf(by, looks(...frames), size));
};

describe("a hive that was looked at twice", () => {
  const days = (...list: (number | null)[]) =>
    latestLooks(list.map((day, i) => ({ id: "H1", day, look: i }))).map((seen) => seen.look);

  it("counts once, by the later look, whichever stands first", () => {
    expect(days(46108, 46110)).toEqual([1]);
    expect(days(46110, 46108)).toEqual([0]);
    expect(days(46108, 46110, 46109)).toEqual([1]);
  });

  it.each([
    ["neither look", null, null],
    ["the first look", null, 46110],
    ["the second look", 46108, null],
  ])("is refused where %s has a date", (_, first, second) =>
    expect(() => days(first, second)).toThrow(
      "hive H1 stands twice: give each of its looks its own date, so that the later one counts",
    ),
  );

  it("is refused where both are of one day", () =>
    expect(() => days(46108, 46108)).toThrow("hive H1 stands twice"));
});

describe("the opened hives of a lot", () => {
  it("are as many as the lot has, or fewer", () => {
    const size = (inLot: number | null) => lotOf(contract(), looks(8, 9), inLot).size;
    expect([size(null), size(2), size(48)]).toEqual([2, 2, 48]);
    expect(() => size(1)).toThrow("a lot of 1 hive cannot have 2 opened");
    expect(() => size(48.5)).toThrow("a lot of 48.5 hives: give a whole number");
    expect(() => lotOf(contract(), [], null)).toThrow(
      "no hive is opened: give the yard sheet's rows",
    );
  });

  it("are accepted with bees and all that is asked of every hive", () => {
    const by = contract({ "laying queen": "yes" });
    const accepted = (seen: Look) => lotOf(by, [seen], null).hives[0]!.accepted;
    expect(accepted(look("H1", 6, { queen: true }))).toBe(true);
    expect(accepted(look("H1", 6, { queen: false }))).toBe(false);
    // The frames settle it, whatever nobody judged.
    expect(accepted(look("H1", 5))).toBe(false);
    expect(accepted(dead("H1"))).toBe(false);
    expect(() => accepted(look("H1", 6))).toThrow(
      new Refusal("hive H1: queen is asked for and is not judged", "unknown"),
    );
    const average = contract({ "minimum frames": null });
    expect(lotOf(average, looks(0, 1), null).hives.map((hive) => hive.accepted)).toEqual([
      false,
      true,
    ]);
  });

  it("count for no more than the cap", () => {
    const [hive] = lotOf(contract({ "most frames a hive": 10 }), looks(12), null).hives;
    expect(hive).toMatchObject({ frames: 12, counted: 10 });
  });
});

describe("what the opened hives come to", () => {
  it("is counted by grade, best first, then those without, then dead-outs", () => {
    const by = contract();
    const lot = lotOf(by, [...looks(8, 9, 7, 5), dead("H9")], null);
    const { grades, ...rest } = countLot(by, lot);
    expect([...grades]).toEqual([
      ["at average", 2],
      ["at minimum", 1],
      ["no grade", 1],
      ["dead-out", 1],
    ]);
    // 8, 9 and 7 are 24 over 3.
    expect(rest).toEqual({
      opened: 5,
      deadOuts: 1,
      under: 2,
      counted: 3,
      average: 8,
      averageMet: true,
      underMet: true,
      met: true,
    });
  });

  it("has no average where no hive counts, and meets none that is asked", () => {
    expect(count([4, 5])).toMatchObject({ average: null, averageMet: false, met: false });
    expect(count([4, 5], { "average frames": null })).toMatchObject({
      average: null,
      averageMet: true,
      met: true,
    });
  });

  it("meets an average that the machine's sum misses by a last digit", () => {
    // Ten times 8.1 added up is 80.99999999999999 in the machine.
    const frames = Array<number>(10).fill(8.1);
    expect(count(frames, { "average frames": 8.1 })).toMatchObject({ averageMet: true });
  });

  it.each<[string, number[], number | null, boolean]>([
    // A tenth: of 10 opened 1, of 9 none, of 20 in the lot 2.
    ["hives opened", [5, ...Array<number>(9).fill(9)], null, true],
    ["hives opened", [5, ...Array<number>(8).fill(9)], null, false],
    ["hives opened", [5, ...Array<number>(9).fill(6)], null, true],
    ["hives in the lot", [5, 5, ...Array<number>(8).fill(9)], 20, true],
    ["hives in the lot", [5, 5, ...Array<number>(8).fill(9)], 19, false],
    // As many must be over the minimum as are under it, and a tenth of 10 is 1.
    ["hives above the minimum", [5, ...Array<number>(8).fill(6), 9], null, true],
    ["hives above the minimum", [5, ...Array<number>(9).fill(6)], null, false],
    ["hives above the minimum", [5, 5, ...Array<number>(8).fill(9)], null, false],
  ])("forgives a tenth against %s: %j of %s, %s", (against, frames, size, met) => {
    const terms = {
      "average frames": null,
      "under minimum": "rejects the load",
      "share under minimum forgiven": 10,
      "forgiven against": against,
    };
    expect(count(frames, terms, size)).toMatchObject({ underMet: met, met });
  });

  it("forgives a share that the machine makes a last digit less", () => {
    // 29 % of 100 is 28.999999999999996 in the machine.
    const frames = Array.from({ length: 100 }, (_, i) => (i < 29 ? 5 : 9));
    const terms = { "under minimum": "rejects the load", "share under minimum forgiven": 29 };
    expect(count(frames, terms)).toMatchObject({ under: 29, underMet: true });
  });
});
