import { describe, expect, it } from "vitest";
import type { Course } from "../../src/core/colony.js";
import { DEEP } from "../../src/core/comb.js";
import { broodOfBoxes, cellsOfBrood } from "../../src/core/brood.js";
import { exactly } from "../../src/core/estimate.js";
import type { Look } from "../../src/core/lot.js";
import { lotForecast } from "../../src/core/lot-forecast.js";
import { standardContract } from "../../src/core/standards.js";
import { comb, serial } from "../functions/sheet.js";

const contract = standardContract("Almond Board of California");
const [MARCH_27, MARCH_28] = [serial(2026, 3, 27), serial(2026, 3, 28)];
const course: Course = { season: null, laying: 0, space: null };
const look = (id: string, day: number | null, frames: number, combs: number): Look => ({
  id,
  pallet: null,
  day,
  hive: {
    frames: exactly(frames),
    brood: broodOfBoxes([exactly(combs)], [DEEP], [exactly(60)], DEEP),
    queen: true,
    stores: null,
  },
});
const looks = [
  look("H1", MARCH_27, 9, 5),
  look("H2", MARCH_28, 8, 4),
  look("H3", MARCH_28, 7, 4),
  look("H4", MARCH_28, 10, 6),
];

describe("a lot's forecast", () => {
  it("lies in a band that widens in proportion from day to day over three weeks", () => {
    const widths = Array.from({ length: 21 }, (_, k) => {
      const { low, high } = lotForecast(contract, looks, 40, MARCH_28 + k, course);
      return Math.log(high / low);
    });
    for (let k = 1; k < widths.length; k++) expect(widths[k]).toBeGreaterThan(widths[k - 1]!);
  });

  it("refuses a day before a look, and a look without a day", () => {
    expect(() => lotForecast(contract, looks, 40, MARCH_27, course)).toThrow(
      "the date lies 1 day before hive H2 was looked at",
    );
    const undated = [...looks, look("H5", null, 8, 4)];
    expect(() => lotForecast(contract, undated, 40, MARCH_28, course)).toThrow("H5 has no date");
  });

  it("names the hive that has more brood than its boxes hold", () => {
    // 12 combs at 60 % are 7.2 full frames.
    const full = [...looks, look("H9", MARCH_28, 5, 12)];
    const at = (space: number) =>
      lotForecast(contract, full, 40, MARCH_28 + 7, { ...course, space });
    expect(() => at(7)).toThrow(
      "hive H9: brood of 7.2 full frames is more than fits in 7 frames of comb",
    );
    expect(at(10).counted).toBeGreaterThan(0);
  });

  it("has the more chance the more bees every hive has", () => {
    const chances = [6, 7, 8, 9, 10].map((frames) => {
      const lot = ["a", "b", "c", "d"].map((id, i) => look(id, MARCH_28, frames + i / 2, 4));
      return lotForecast(contract, lot, 40, MARCH_28 + 14, course).chance!;
    });
    for (let k = 1; k < chances.length; k++) expect(chances[k]).toBeGreaterThan(chances[k - 1]!);
  });
});

describe("a lot's forecast of no days", () => {
  const on = (looked: readonly Look[], size: number | null, terms = contract) =>
    lotForecast(terms, looked, size, MARCH_28, course);
  const today = [look("H1", MARCH_28, 9, 4), look("H2", MARCH_28, 7, 4)];

  it("is the lot as it was looked at, between its oldest and its newest look", () => {
    expect(on(today, null)).toMatchObject({ middle: 8, days: [0, 0], counted: 2, met: true });
    expect(on(looks, null).days).toEqual([1, 0]);
    expect(on(today, 2).sampled).toBe(false);
    expect(on(today, 3).sampled).toBe(true);
    expect(on(today, 3).high).toBeGreaterThan(on(today, 2).high);
  });

  it("needs no brood", () => {
    const bare = { ...look("H1", MARCH_28, 8, 4).hive, brood: null };
    expect(on([{ ...look("H1", MARCH_28, 8, 4), hive: bare }], null).middle).toBe(8);
  });

  it("is no more than the contract counts of a hive, and met or not by what it asks", () => {
    // 10 and 8, counted 9 and 8: 8.5.
    const strong = [look("H1", MARCH_28, 10, 4), look("H2", MARCH_28, 8, 4)];
    const capped = on(strong, 40, { ...contract, mostFrames: 9 });
    expect(capped.middle).toBe(8.5);
    expect(capped.high).toBe(9);
    expect(on(today, null, { ...contract, averageFrames: 8.5 }).met).toBe(false);
    const asksNone = on(today, null, { ...contract, averageFrames: 0 });
    expect([asksNone.met, asksNone.chance]).toEqual([null, null]);
  });

  it("leaves out who is under the minimum, and refuses a lot of none", () => {
    const weak = look("H3", MARCH_28, 3, 2);
    // The contract asks 6 at least, and leaves out who has less.
    const leftOut = { ...contract, underMinimum: "left out" } as const;
    expect(on([...today, weak], null, leftOut)).toMatchObject({ middle: 8, counted: 2 });
    expect(() => on([weak], null, leftOut)).toThrow("no hive is forecast to reach the minimum");
  });

  it("keeps a dead hive dead, and refuses brood that is in no full frames", () => {
    const dead: Look = {
      ...look("H4", MARCH_27, 0, 0),
      hive: {
        ...look("H4", MARCH_27, 0, 0).hive,
        frames: { ...exactly(0), dead: true },
        brood: null,
      },
    };
    const counted = { ...contract, minimumFrames: 0, underMinimum: "counted" } as const;
    // (9 + 7 + 0) / 3
    expect(on([...today, dead], null, counted).middle).toBeCloseTo(16 / 3, 10);
    const unknown = { ...look("H5", MARCH_27, 8, 4), hive: { ...dead.hive, frames: exactly(8) } };
    expect(() => on([...today, unknown], null)).toThrow(
      'hive H5: no brood is judged: add a column "Brood" of all stages together',
    );
    const combs = { combs: exactly(4), fullFrames: null, cover: null };
    const unfilled = { ...unknown, hive: { ...unknown.hive, brood: combs } };
    expect(() => on([...today, unfilled], null)).toThrow(
      "hive H5: brood is not known in full frames: combs need their cover",
    );
  });
});

describe("a lot's forecast in January", () => {
  const day = serial(2026, 1, 1);
  const after = (combs: number, laying: number): number =>
    lotForecast({ ...contract, minimumFrames: 0 }, [look("H1", day, 8, combs)], null, day + 10, {
      ...course,
      laying,
    }).middle;

  it("loses winter's bees where nothing is reared, and those of build-up where brood or eggs are", () => {
    // 0.5 and 3.5 % a day, half of the way as a power (docs/forecast.md): 8 x 0.995 ** 5 = 7.802 and
    // 8 x 0.965 ** 5 = 6.695; no egg that is laid emerges in ten days.
    expect(after(0, 0)).toBeCloseTo(7.802, 3);
    expect(after(0, 500)).toBeCloseTo(6.695, 3);
    // A tenth of a comb of brood makes up for little of it.
    expect(after(0.1, 0)).toBeGreaterThan(6.695);
    expect(after(0.1, 0)).toBeLessThan(7);
  });
});

describe("one hive is forecast alike by itself and as a lot", () => {
  const day = serial(2026, 1, 5);
  const terms = [
    ["Term", "Any"],
    ["minimum frames", 0.1],
  ];
  const brood = (combs: number) => (combs === 0 ? "none" : combs);
  const alone = (combs: number, days: number, laying: unknown) =>
    comb("FORECAST", 8, day, day + days, brood(combs), 60, null, null, null, null, laying)[0]![0];
  const asLot = (combs: number, days: number, laying: unknown) => {
    const yard = [
      ["Hive", "Date", "Bees", "Brood combs", "Brood %"],
      ["H1", day, 8, brood(combs), 60],
    ];
    const rows = comb("LOT_FORECAST", yard, day + days, null, terms, null, null, null, laying);
    return rows[1]![2];
  };

  it("by build-up's loss where eggs go on being laid in January", () => {
    // 3.5 % a day for 15 days, half of the way as a power: 8 x 0.965 ** 7.5 = 6.124.
    expect(alone(0, 15, 500)).toBeCloseTo(6.124, 3);
    expect(asLot(0, 15, 500)).toBeCloseTo(6.124, 3);
  });

  it.each([
    [0, 15, null],
    [0, 30, 500],
    [4, 15, null],
    [4, 30, 500],
  ])("of %d combs with brood, %d days later, laying %j", (combs, days, laying) => {
    expect(asLot(combs, days, laying)).toBeCloseTo(alone(combs, days, laying) as number, 9);
  });
});

describe("a lot's forecast of a month", () => {
  const alike = Array.from({ length: 6 }, (_, i) => look(`H${i}`, MARCH_28, 8, 5));
  const after = (days: number, laying: Course["laying"], terms = contract) =>
    lotForecast(terms, alike, 40, MARCH_28 + days, { ...course, laying });

  it("takes today's laying from the eggs: 1 of 5.7 parts of the brood, of three days", () => {
    // In the field eggs, open and capped brood stand 1 : 1.5 : 3.2, and 3 % of eggs die a day (both
    // from SOURCES): of eggs a day and a half old on average 0.97 ** 1.5 are left.
    const [first] = alike;
    const cells = cellsOfBrood(first!.hive.brood!.fullFrames!, DEEP).middle;
    const today = after(30, "today").middle;
    expect(today).toBeCloseTo(after(30, cells / 5.7 / 3 / 0.97 ** 1.5).middle, 6);
    expect(today).toBeGreaterThan(1.02 * after(30, 0).middle);
  });

  it("loses bees faster where nothing is reared", () => {
    const broodless = alike.map((hive) => ({ ...hive, hive: look("H", null, 8, 0).hive }));
    const of = (lot: readonly Look[], laying: number) =>
      lotForecast({ ...contract, minimumFrames: 0 }, lot, 40, MARCH_28 + 10, { ...course, laying });
    expect(of(broodless, 0).middle).toBeLessThan(of(alike, 0).middle);
  });

  it("is 95 % sure of what lies at the low end of its 90 % band, and half of its middle", () => {
    const asking = (frames: number) =>
      after(14, 0, { ...contract, minimumFrames: 0, averageFrames: frames });
    const { low, middle } = asking(8);
    expect(asking(low).chance).toBeCloseTo(0.95, 3);
    expect(asking(middle).chance).toBeCloseTo(0.5, 3);
  });
});

describe("FORECAST_DAYS", () => {
  it("averages the hives that were opened: brood noted beside no bees makes no empty hive", () => {
    // (8 + 6) / 2 on the day itself
    const [, today] = comb("FORECAST_DAYS", [[8], [""], [6]], MARCH_28, 1, [[4], [4], [3]]);
    expect(today?.slice(0, 2)).toEqual([MARCH_28, 7]);
  });

  it("says that no hive outgrows its boxes where they are said", () => {
    const rows = comb("FORECAST_DAYS", 8, MARCH_28, 2, 4, ...Array<null>(6).fill(null), 10);
    expect(rows.at(-1)?.[4]).toContain("no hive is taken to outgrow 10 frames");
  });
});
