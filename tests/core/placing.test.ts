import { describe, expect, it } from "vitest";
import { placeOnDrops, type Drop } from "../../src/core/drops.js";
import { loadsOf } from "../../src/core/loads.js";
import { palletsOf, type ListedHive, type Pallet } from "../../src/core/pallets.js";

describe("the pallets of a lot", () => {
  const listed = (lot: string, pallet: string | null, ...frames: (number | null)[]) =>
    frames.map((count, i): ListedHive => ({
      id: `${pallet ?? "H"}${i}`,
      lot,
      pallet,
      frames: count,
    }));
  const first = listed("A", "P1", 8, null, 6);

  it("are filled up with hives that are not listed, and the rest stand on pallets of their own", () => {
    // (8 + 6) / 2 = 7 for each that was not opened: 8 + 7 + 6 + 7 = 28. Of 14 hives 10 are left.
    const rest = { lot: "A", name: null, opened: 0 };
    expect(palletsOf(first, [{ lot: "A", hives: 14 }], 4)).toEqual([
      { lot: "A", name: "P1", hives: 4, frames: 28, opened: 2 },
      { ...rest, hives: 4, frames: 28 },
      { ...rest, hives: 4, frames: 28 },
      { ...rest, hives: 2, frames: 14 },
    ]);
  });

  it("are those that are listed where all are", () => {
    const both = [...first, ...listed("B", "P2", 10)];
    const all = (lot: string) => palletsOf(both, [{ lot, hives: null }], 4);
    expect(all("A")).toEqual([{ lot: "A", name: "P1", hives: 3, frames: 21, opened: 2 }]);
    expect(all("B")).toEqual([{ lot: "B", name: "P2", hives: 1, frames: 10, opened: 1 }]);
    expect(palletsOf(first, [{ lot: "A", hives: 3 }], 4)).toEqual(all("A"));
  });

  it("are single hives where none is named, by their ids", () => {
    const single: ListedHive[] = [
      { id: "P1", lot: "A", pallet: null, frames: 8 },
      { id: "H1", lot: "A", pallet: "P1", frames: 6 },
    ];
    expect(palletsOf(single, [{ lot: "A", hives: null }], 1)).toMatchObject([
      { name: "P1", hives: 1, frames: 8 },
      { name: "P1", hives: 1, frames: 6 },
    ]);
  });

  it.each<[string, ListedHive[], number, string]>([
    ["A", first, 2, 'lot "A" has 3 hives listed, more than its size of 2'],
    ["", listed("", "P1", 8, 9), 1, "the sheet has 2 hives listed, more than its size of 1"],
    ["A", listed("A", "P1", null), 4, 'lot "A" has no opened hive, so its average is not known'],
    ["", listed("", "P1", null), 4, "the sheet has no opened hive, so its average is not known"],
    ["A", listed("A", "P1", 8, 8, 8, 8, 8), 9, 'pallet "P1" holds 5 hives, and not 4'],
  ])("of %j are refused where they cannot be: %#", (lot, hives, size, message) =>
    expect(() => palletsOf(hives, [{ lot, hives: size }], 4)).toThrow(message),
  );
});

describe("pallets on drops", () => {
  const pallet = (lot: string, average: number, hives = 4): Pallet => ({
    lot,
    name: `${lot}${average}`,
    hives,
    frames: hives * average,
    opened: hives,
  });
  const drop = (name: string, hives: number, least = 0): Drop => ({ name, hives, least });
  const placed = (pallets: Pallet[], drops: Drop[], apart = true) =>
    placeOnDrops(pallets, drops, 4, apart);
  const names = (pallets: Pallet[], drops: Drop[]) =>
    placed(pallets, drops).drops.map((filled) => filled.pallets.map(({ name }) => name).join(" "));

  it("leave a drop empty where there are no more", () => {
    const { drops, isBest, over } = placed([pallet("A", 8)], [drop("1", 4), drop("2", 4)], false);
    expect(drops.map(({ placed, average }) => [placed, average])).toEqual([
      [4, 8],
      [0, null],
    ]);
    expect([isBest, over]).toEqual([true, 0]);
  });

  it("keep lots apart so that the least of every drop is kept, in whatever order the lots stand", () => {
    const [strong, weak] = [pallet("A", 10), pallet("B", 6)];
    const drops = [drop("Rear", 4), drop("Gate", 4, 9)];
    expect(names([strong, weak], drops)).toEqual(["B6", "A10"]);
    expect(names([weak, strong], drops)).toEqual(["B6", "A10"]);
    expect(placed([weak, strong], drops)).toMatchObject({ leastCannotBe: false });
    // Two drops at 9 and one lot that has it.
    const both = [drop("Rear", 4, 9), drop("Gate", 4, 9)];
    expect(placed([weak, strong], both)).toMatchObject({ leastCannotBe: true });
  });

  it("give the strong lot to the drop that misses its least by the most frames", () => {
    // The weak lot, 6 frames, is 3 short on each of 8 hives, or 5 short on each of 4: 24 over 20.
    const pallets = [pallet("A", 11), pallet("B", 6)];
    expect(names(pallets, [drop("Gate", 8, 9), drop("Rear", 8, 11)])).toEqual(["B6", "A11"]);
    expect(names(pallets, [drop("Gate", 8, 9), drop("Rear", 4, 11)])).toEqual(["A11", "B6"]);
  });

  it("leave the last drops short where there are more than the lots fill", () => {
    expect(names([pallet("A", 8)], [drop("1", 4), drop("2", 8)])).toEqual(["A8", ""]);
    const three = ["1", "2", "3"].map((name) => drop(name, 4));
    const filled = names([pallet("A", 8), pallet("B", 6)], three);
    expect(filled.filter((list) => list !== "").sort()).toEqual(["A8", "B6"]);
  });

  it("tell that a least cannot be kept where the average would do and no pallets make it", () => {
    // 10, 10, 10 and 0 are 7.5 on average, and one of two drops has the 0: 5 at most.
    const pallets = [10, 10, 10, 0].map((average) => pallet("A", average));
    expect(placed(pallets, [drop("1", 8, 7), drop("2", 8, 7)])).toMatchObject({
      isBest: true,
      leastCannotBe: true,
    });
    expect(placed(pallets, [drop("1", 8, 7), drop("2", 8, 5)]).leastCannotBe).toBe(false);
  });

  it("tell how far they may be from the best, where one lot of two has too many ways", () => {
    const many = Array.from({ length: 60 }, (_, i) => pallet("B", 4 + Math.sqrt(i + 2)));
    // No drop can have 20 where the strongest pallet has under 12.
    const drops = [
      drop("A", 4),
      drop("Gate", 40, 20),
      ...["1", "2", "3", "4", "5"].map((name) => drop(name, 40)),
    ];
    const found = placed([pallet("A", 8), ...many], drops);
    expect([found.isBest, found.leastCannotBe]).toEqual([false, true]);
    expect(found.over).toBeGreaterThan(0);
    expect(found.over).toBeLessThanOrEqual(found.range);
  });

  it("take as the range of lots that are apart the most of theirs", () => {
    const pallets = [pallet("A", 8), pallet("A", 8), pallet("B", 4), pallet("B", 7)];
    const four = ["1", "2", "3", "4"].map((name) => drop(name, 4));
    expect(placed(pallets, four).range).toBe(3);
    expect(placed(pallets, four, false).range).toBe(4);
  });

  const two = [pallet("A", 8), pallet("A", 8), pallet("B", 7), pallet("B", 7)];
  it.each<[string, Pallet[], Drop[], string]>([
    [
      "the drops are no whole pallets",
      two,
      [drop("Gate", 16), drop("Rear", 6)],
      'drop "Rear" takes 6 hives, which whole pallets of 4 do not make',
    ],
    ["they hold too few hives", two, [drop("1", 12)], "the drops hold 12 hives, and there are 16"],
    [
      "they hold too few pallets",
      [pallet("A", 8, 2), pallet("A", 8, 2), pallet("A", 8, 3)],
      [drop("1", 8)],
      "the drops hold 2 pallets, and there are 3, not all of them full",
    ],
    [
      "no drop is left for a lot",
      two,
      [drop("1", 12), drop("2", 4)],
      'no way of giving these drops to single lots has room for lot "A" of 2 pallets, lot "B" of 2 pallets',
    ],
    [
      "one drop is for two lots",
      [pallet("A", 8), pallet("B", 7)],
      [drop("1", 8)],
      'no way of giving these drops to single lots has room for lot "A" of 1 pallet, lot "B" of 1 pallet',
    ],
  ])("are refused where %s", (_, pallets, drops, message) =>
    expect(() => placed(pallets, drops)).toThrow(message),
  );

  it("are refused where the ways to keep three lots apart are too many, and answered in part", () => {
    // Drops of 1 to 11 pallets, and three lots that fill them but for two pallets at most.
    const asked = (count: number) => {
      const drops = Array.from({ length: count }, (_, i) => drop(`${i}`, 4 * (1 + ((7 * i) % 11))));
      const room = drops.reduce((sum, { hives }) => sum + hives / 4, 0);
      const ofLot = (lot: string) =>
        Array.from({ length: Math.floor(room / 3) }, () => pallet(lot, 8));
      return placed(["A", "B", "C"].flatMap(ofLot), drops);
    };
    expect(() => asked(90)).toThrow(
      "too many ways to keep the lots apart: give fewer drops at a time",
    );
    expect(asked(9).range).toBe(0);
  });

  it("fill drops and pallets to the last hive", () => {
    expect(names(two, [drop("1", 8), drop("2", 8)])).toEqual(["A8 A8", "B7 B7"]);
    const part = [pallet("A", 8, 2), pallet("A", 8, 2)];
    expect(placed(part, [drop("1", 8)]).drops[0]).toMatchObject({ placed: 4, average: 8 });
  });
});

describe("truckloads", () => {
  const stacking = { stacks: 17, sides: 2, high: 3, onPallet: 4 };

  it("are what space lets, or weight where that is less", () => {
    // 17 x 2 x 3 x 4 = 408 hives; 960 are two loads and 144.
    expect(loadsOf(960, stacking, null)).toEqual({
      bySpace: 408,
      byWeight: null,
      aLoad: 408,
      loads: 3,
      onLast: 144,
    });
    expect(loadsOf(816, stacking, null)).toMatchObject({ loads: 2, onLast: 408 });
    // 48,000 / 440 = 109.09 pallets, more than the 102 for which there is space; 40,000 / 440 = 90.9.
    expect(loadsOf(960, stacking, { hive: 110, payload: 48_000 })).toMatchObject({
      byWeight: 436,
      aLoad: 408,
    });
    expect(loadsOf(960, stacking, { hive: 110, payload: 40_000 })).toMatchObject({
      byWeight: 360,
      aLoad: 360,
      loads: 3,
      onLast: 240,
    });
  });

  it("take a payload that is just so many pallets for so many", () => {
    // 7 pallets of 4 x 80.2 are 2245.6, which is 6.999999999999999 of them in the machine.
    expect(loadsOf(28, stacking, { hive: 80.2, payload: 2245.6 }).byWeight).toBe(28);
  });

  it("are refused where not one pallet may be carried", () =>
    expect(() => loadsOf(12, stacking, { hive: 110, payload: 439 })).toThrow(
      "a pallet of 4 weighs 440, and the payload is 439",
    ));
});
