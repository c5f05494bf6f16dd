import { describe, expect, it } from "vitest";
import { fromColumn } from "../../src/core/contract-reading.js";
import { between, exactly, type Estimate } from "../../src/core/estimate.js";
import {
  broodAsCounted,
  gradeOf,
  gradesOf,
  reasonOf,
  requirementsOf,
  shortOf,
  type Hive,
} from "../../src/core/grade.js";
import { Refusal } from "../../src/core/refusal.js";

const contract = (terms: Record<string, unknown>) =>
  fromColumn("Cherry", new Map(Object.entries(terms)));
const PLAIN = contract({ "average frames": 8, "minimum frames": 6 });
/** Ten frames with three of brood, or six. */
const GRADED = contract({
  "grade 1 name": "Prime",
  "grade 1 frames": 10,
  "grade 1 brood": 3,
  "grade 2 name": "Full",
  "grade 2 frames": 6,
});
const HIVE: Hive = { frames: exactly(8), brood: null, queen: null, stores: null };
const full = (fullFrames: Estimate) => ({ fullFrames, combs: null, cover: null });
const orMore = (value: number): Estimate => ({ ...exactly(value), high: null });
const DEAD: Estimate = { ...exactly(0), dead: true };

describe("the grades of a contract without grades of its own", () => {
  const told = (terms: Record<string, unknown>) =>
    gradesOf(contract({ "base fee": 150, ...terms })).map(({ name, frames, fee }) =>
      [name, frames, fee].join(" "),
    );

  it.each<[Record<string, unknown>, string[]]>([
    [{ "average frames": 8, "minimum frames": 6 }, ["at average 8 150", "at minimum 6 150"]],
    [{ "average frames": 8, "minimum frames": 8 }, ["at average 8 150"]],
    [{ "minimum frames": 6 }, ["at minimum 6 150"]],
    [{ brood: 2 }, ["met 0 150"]],
    [{ "laying queen": "yes" }, ["met 0 150"]],
    [{ stores: 2 }, ["met 0 150"]],
    [{ "average frames": 8, brood: 2 }, ["at average 8 150"]],
  ])("of %j are %j", (terms, grades) => expect(told(terms)).toEqual(grades));

  it("are refused where it asks nothing of a hive", () =>
    expect(() => gradesOf(contract({}))).toThrow(
      'contract "Cherry" asks nothing of a hive: give it average frames, minimum frames or grades',
    ));
});

describe("a hive's grade", () => {
  it.each([
    ["as it is", 7.9, "at minimum"],
    ["as it is", 8, "at average"],
    ["between", 7.9, "at minimum"],
    ["between", 8, "at average"],
    ["down", 7.9, "at minimum"],
    ["nearest", 7.4, "at minimum"],
    ["nearest", 7.5, "at average"],
  ])("where a part frame is read %s: %d frames are %s", (partFrame, frames, name) => {
    const by = contract({ "average frames": 8, "minimum frames": 6, "part frame": partFrame });
    expect(gradeOf(by, { ...HIVE, frames: exactly(frames) }).name).toBe(name);
  });

  it("is reached by a sum that the machine leaves a last digit short", () => {
    // Ten times 0.8 added up is 7.999999999999999 in the machine.
    const frames = Array<number>(10)
      .fill(0.8)
      .reduce((sum, part) => sum + part, 0);
    expect(frames).toBeLessThan(8);
    expect(gradeOf(PLAIN, { ...HIVE, frames: exactly(frames) }).name).toBe("at average");
    expect(shortOf(PLAIN, { ...HIVE, frames: exactly(frames) })).toBeNull();
  });

  const ASKING = contract({ "minimum frames": 6, brood: 3, stores: 4 });
  const COMBS = contract({
    "minimum frames": 6,
    brood: 3,
    "brood counted as": "combs",
    "brood comb covered": 50,
  });
  const combs = (count: Estimate, cover: Estimate): Partial<Hive> => ({
    brood: { fullFrames: null, combs: count, cover },
  });

  it.each<[string, typeof PLAIN, Partial<Hive>, [string, string, string]]>([
    ["frames", PLAIN, { frames: between(7, 10) }, ["at average", "at minimum", "at average"]],
    ["frames and more", PLAIN, { frames: orMore(7) }, ["at minimum", "at minimum", "at average"]],
    [
      "brood",
      ASKING,
      { brood: full(between(2, 5)), stores: exactly(4) },
      ["at minimum", "no grade", "at minimum"],
    ],
    [
      "stores",
      ASKING,
      { brood: full(exactly(3)), stores: between(2, 5) },
      ["no grade", "no grade", "at minimum"],
    ],
    [
      "combs of brood",
      COMBS,
      combs(between(2, 5), exactly(60)),
      ["at minimum", "no grade", "at minimum"],
    ],
    [
      "how much of its combs brood covers",
      COMBS,
      combs(exactly(3), between(40, 70)),
      ["at minimum", "no grade", "at minimum"],
    ],
  ])("is left open by the ends of its %s", (_, by, hive, [name, worst, best]) =>
    expect(gradeOf(by, { ...HIVE, ...hive })).toEqual({ name, worst, best }),
  );

  it("stays where a better end hangs on what nobody judged", () =>
    expect(gradeOf(GRADED, { ...HIVE, frames: between(8, 11) })).toEqual({
      name: "Full",
      worst: "Full",
      best: "Full",
    }));

  it("is that of a dead-out, whatever else was written", () =>
    expect(gradeOf(PLAIN, { ...HIVE, frames: DEAD, stores: between(2, 5) })).toEqual({
      name: "dead-out",
      worst: "dead-out",
      best: "dead-out",
    }));

  it("is none where one thing asked is missing, though another was not judged", () => {
    const by = contract({ "minimum frames": 6, "laying queen": "yes", stores: 4 });
    expect(gradeOf(by, { ...HIVE, stores: exactly(3) }).name).toBe("no grade");
  });

  it.each<[string, Record<string, unknown>]>([
    ["brood", { brood: 3 }],
    ["a laying queen", { "laying queen": "yes" }],
    ["stores", { stores: 4 }],
    ["brood", { "grade 1 name": "Prime", "grade 1 frames": 7, "grade 1 brood": 3 }],
  ])("is not known where %s is asked for by %j and nobody judged it", (what, terms) => {
    const by = contract({ "minimum frames": 6, ...terms });
    expect(() => gradeOf(by, HIVE)).toThrow(
      new Refusal(
        `contract "Cherry" asks for ${what}, and that is not judged for this hive`,
        "unknown",
      ),
    );
  });
});

describe("what a contract asks of every hive", () => {
  const asked = (terms: Record<string, unknown>, hive: Partial<Hive> = {}) =>
    requirementsOf(contract(terms), { ...HIVE, ...hive });

  it("is its minimum, or else its lowest grade's frames, and no average", () => {
    const frames = (terms: Record<string, unknown>) => asked(terms)[0];
    const grades = {
      "grade 1 name": "Prime",
      "grade 1 frames": 10,
      "grade 2 name": "Full",
      "grade 2 frames": 7,
    };
    expect(frames({ "minimum frames": 6 })).toMatchObject({ asked: 6, verdict: "met" });
    expect(frames(grades)).toMatchObject({ asked: 7, verdict: "met" });
    expect(frames({ ...grades, "minimum frames": 9 })).toMatchObject({ asked: 9, least: 9 });
    expect(frames({ "average frames": 9 })).toMatchObject({ asked: 0, verdict: "not asked" });
  });

  it("is met from the part frame on by which the contract reads a count", () => {
    const [frames] = asked(
      { "minimum frames": 8, "part frame": "nearest" },
      { frames: exactly(7.5) },
    );
    expect(frames).toMatchObject({ asked: 8, least: 7.5, verdict: "met" });
  });

  it("is met, not met, or not judged, each by itself", () => {
    const terms = { "minimum frames": 6, brood: 3, "laying queen": "yes", stores: 4 };
    const verdicts = (hive: Partial<Hive>): string =>
      asked(terms, hive)
        .map(({ verdict }) => verdict)
        .join();
    expect(verdicts({})).toBe("met,not judged,not judged,not judged");
    expect(verdicts({ queen: true, brood: full(exactly(3)), stores: exactly(4) })).toBe(
      "met,met,met,met",
    );
    expect(
      verdicts({
        frames: exactly(5),
        queen: false,
        brood: full(exactly(2)),
        stores: exactly(3),
      }),
    ).toBe("not met,not met,not met,not met");
  });
});

describe("what a hive is short of its next better grade", () => {
  const short = (hive: Partial<Hive>) => shortOf(GRADED, { ...HIVE, ...hive });

  it("is nothing for a hive of the best", () =>
    expect(short({ frames: exactly(10), brood: full(exactly(3)) })).toBeNull());

  it("is frames, brood or both", () => {
    expect(short({ frames: exactly(8), brood: full(exactly(1)) })).toEqual({
      grade: "Prime",
      frames: 2,
      brood: 2,
    });
    expect(short({ frames: exactly(12), brood: full(exactly(2)) })).toEqual({
      grade: "Prime",
      frames: 0,
      brood: 1,
    });
    expect(short({ frames: exactly(8), brood: full(exactly(4)) })).toMatchObject({ brood: 0 });
  });

  it("is brood that is not known where nobody judged what is asked", () => {
    expect(short({ frames: exactly(8) })).toMatchObject({ grade: "Prime", brood: null });
    expect(short({ frames: exactly(5) })).toEqual({ grade: "Full", frames: 1, brood: 0 });
  });

  it("is the brood that every hive must have, where that is more than the grade's own", () => {
    const by = contract({
      "grade 1 name": "Prime",
      "grade 1 frames": 8,
      "grade 1 brood": 1,
      brood: 3,
    });
    expect(shortOf(by, { ...HIVE, brood: full(exactly(2)) })).toMatchObject({ brood: 1 });
  });

  it("is told to the frames that the contract reads as enough", () => {
    const by = contract({ "average frames": 8, "part frame": "nearest" });
    expect(shortOf(by, { ...HIVE, frames: exactly(7) })).toMatchObject({ frames: 0.5 });
  });
});

describe("why a hive has its grade", () => {
  const ALL = contract({ "minimum frames": 6, brood: 3, "laying queen": "yes", stores: 9.5 });
  const GOOD: Hive = {
    frames: exactly(8),
    brood: full(exactly(3)),
    queen: true,
    stores: exactly(9.5),
  };
  const why = (hive: Partial<Hive>): string => reasonOf(ALL, { ...GOOD, ...hive }, null);

  it.each<[Partial<Hive>, string]>([
    [{}, ""],
    [{ frames: DEAD, queen: false }, ""],
    [{ queen: null, stores: null }, ""],
    [{ frames: exactly(5), queen: false }, "frames 5 of 6; no laying queen"],
    [{ brood: full(exactly(2)) }, "brood 2 of 3"],
    [{ stores: exactly(9.4999) }, "stores 9.4999 of 9.5"],
    [{ stores: { ...exactly(2), high: null } }, "stores 2+ of 9.5"],
    [{ frames: between(5, 8) }, "frames 5-8 of 6: not met at the low end"],
    [{ frames: between(6, 8) }, ""],
  ])("%j: %s", (hive, reason) => expect(why(hive)).toBe(reason));

  it("is written in the sheet's decimal sign", () => {
    const by = contract({ stores: "9,5", "decimal sign": "," });
    expect(reasonOf(by, { ...GOOD, stores: exactly(9.25) }, null)).toBe("stores 9,25 of 9,5");
  });

  it("tells between which grades its figures leave it", () => {
    const hive = { ...GOOD, frames: between(7, 9) };
    expect(reasonOf(PLAIN, hive, gradeOf(PLAIN, hive))).toBe(
      "at minimum at the low end, at average at the high end",
    );
    expect(reasonOf(PLAIN, GOOD, gradeOf(PLAIN, GOOD))).toBe("");
  });
});

describe("brood in the measure that a contract counts", () => {
  const COUNTED = contract({
    "minimum frames": 6,
    "brood counted as": "combs",
    "brood comb covered": 60,
  });
  const ends = (brood: Hive["brood"], by = COUNTED): (number | null)[] | null => {
    const counted = broodAsCounted(by, brood);
    return counted && [counted.low, counted.middle, counted.high];
  };

  it("is its combs where they are covered enough, end by end", () => {
    const combs = between(5, 7);
    const told = (cover: Estimate) => ends({ fullFrames: null, combs, cover });
    expect(told(exactly(60))).toEqual([5, 6, 7]);
    expect(told(exactly(59))).toEqual([0, 0, 0]);
    expect(told(between(50, 70))).toEqual([0, 6, 7]);
    expect(told(between(50, 66))).toEqual([0, 0, 7]);
    expect(told(orMore(50))).toEqual([0, 0, 7]);
    // 60 % but for a last digit of the machine's.
    expect(told(exactly(60 - 1e-14))).toEqual([5, 6, 7]);
  });

  it("has no upper end where the combs have none, and are covered enough to count", () => {
    const told = (cover: Estimate) => ends({ fullFrames: null, combs: orMore(5), cover });
    expect(told(exactly(70))).toEqual([5, 5, null]);
    expect(told(orMore(50))).toEqual([0, 0, null]);
    expect(told(exactly(50))).toEqual([0, 0, 0]);
  });

  it("is not known where the combs' cover is asked for and not judged", () => {
    expect(ends({ fullFrames: null, combs: exactly(5), cover: null })).toBeNull();
    expect(ends({ fullFrames: null, combs: null, cover: exactly(70) })).toBeNull();
    const any = contract({ "minimum frames": 6, "brood counted as": "combs" });
    expect(ends({ fullFrames: null, combs: exactly(5), cover: null }, any)).toEqual([5, 5, 5]);
  });

  it("is its full frames where these are counted", () =>
    expect(ends({ fullFrames: exactly(3), combs: exactly(5), cover: null }, PLAIN)).toEqual([
      3, 3, 3,
    ]));
});
