import { describe, expect, it } from "vitest";
import type { Contract } from "../../src/core/contract.js";
import type { OpenedHive } from "../../src/core/lot.js";
import { standardContract } from "../../src/core/standards.js";
import { drawnOf, typicalSpread } from "../../src/core/units.js";

const contract = (terms: Partial<Contract>): Contract => ({
  ...standardContract("Almond Board of California"),
  minimumFrames: 6,
  underMinimum: "left out",
  ...terms,
});
/** 6 frames are the least that counts. */
const hive = (frames: number, pallet: string | null): OpenedHive => ({
  id: `H${frames}`,
  pallet,
  frames,
  counted: frames,
  grade: "",
  accepted: frames >= 6,
  dead: false,
});
const HIVES = [hive(8, "A"), hive(4, "A"), hive(10, "B"), hive(7, "A"), hive(9, "B")];

describe("a lot as it was drawn", () => {
  it("is its hives, those under the minimum counting nothing where they are left out", () => {
    // 5 of 20 hives are a quarter.
    expect(drawnOf(contract({ openedBy: "hives" }), { hives: HIVES, size: 20 })).toEqual({
      kind: "hives",
      units: [8, 0, 10, 7, 9].map((total) => ({ total, count: total === 0 ? 0 : 1 })),
      inLot: 20,
      share: 0.25,
    });
  });

  it("is its pallets where they are opened whole, as many in the lot as the share opened makes", () => {
    // On A 8 + 7, the 4 left out; on B 10 + 9. A quarter of the lot on 2 pallets: 8 pallets.
    expect(drawnOf(contract({ openedBy: "pallets" }), { hives: HIVES, size: 20 })).toEqual({
      kind: "pallets",
      units: [
        { total: 15, count: 2 },
        { total: 19, count: 2 },
      ],
      inLot: 8,
      share: 0.25,
    });
  });

  it("is its hives where no pallet is named, whatever the contract opens", () => {
    const unnamed = HIVES.map(({ frames }) => hive(frames, null));
    const drawn = drawnOf(contract({ openedBy: "pallets" }), { hives: unnamed, size: 20 });
    expect([drawn.kind, drawn.units.length, drawn.inLot]).toEqual(["hives", 5, 20]);
  });

  it("is refused where one hive's pallet alone is not named", () => {
    const partly = [hive(8, "A"), hive(7, null)];
    expect(() => drawnOf(contract({ openedBy: "pallets" }), { hives: partly, size: 20 })).toThrow(
      "hive H7 has no pallet, and the contract opens whole pallets",
    );
  });
});

describe("the typical spread of hives", () => {
  it("is 30 % of their average, or of what is asked where the average is nothing", () => {
    const open = contract({ mostFrames: 0 });
    expect(typicalSpread(open, 10)).toBeCloseTo(3, 12);
    expect(typicalSpread(open, 0)).toBeCloseTo(2.4, 12);
  });

  it("is no more than that of figures spread evenly over what the contract counts", () => {
    // An even spread over 4 frames has the deviation 4 / sqrt(12) = 1.1547; over 10 frames 2.8868.
    expect(typicalSpread(contract({ mostFrames: 10 }), 8)).toBeCloseTo(1.1547, 4);
    const counted = contract({ mostFrames: 10, underMinimum: "counted" });
    expect(typicalSpread(counted, 10)).toBeCloseTo(2.8868, 4);
    expect(typicalSpread(counted, 8)).toBeCloseTo(2.4, 12);
  });
});
