import fc from "fast-check";
import { expect, it } from "vitest";
import { laying, survival } from "../../src/core/laying.js";

const cells = fc.integer({ min: 1, max: 50_000 });

it("lets fewer live the longer they live, and all where no time passes", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 21, noNaN: true }), { minLength: 3 }), (ages) => {
      const [a, b, c] = ages.sort((x, y) => x - y) as [number, number, number];
      expect(survival(a, a)).toBe(1);
      expect(survival(a, c)).toBeLessThanOrEqual(survival(a, b));
      expect(survival(a, b) * survival(b, c)).toBeCloseTo(survival(a, c), 12);
    }),
  );
});

it("takes each stage for itself, and leaves out what was not judged", () => {
  expect(laying(3000, null, null).byEggs).toBe(laying(3000, 1, 1).byEggs);
  expect(laying(null, null, 1000)).toEqual({
    byEggs: null,
    byOpen: null,
    byCapped: laying(0, 0, 1000).byCapped,
    verdict: "",
    note: "one stage alone does not show whether rearing grows",
  });
  expect(laying(null, null, null).verdict).toBe("");
});

it("never calls more young brood a lesser rearing", () => {
  const order = ["shrinking", "steady", "growing"];
  fc.assert(
    fc.property(cells, cells, cells, cells, (eggs, open, capped, more) => {
      const before = order.indexOf(laying(eggs, open, capped).verdict);
      expect(order.indexOf(laying(eggs + more, open, capped).verdict)).toBeGreaterThanOrEqual(
        before,
      );
      expect(order.indexOf(laying(eggs, open, capped + more).verdict)).toBeLessThanOrEqual(before);
    }),
  );
});

it("judges by shares: the same brood in a larger hive has the same verdict", () => {
  fc.assert(
    fc.property(cells, cells, cells, (eggs, open, capped) => {
      expect(laying(4 * eggs, 4 * open, 4 * capped).verdict).toBe(
        laying(eggs, open, capped).verdict,
      );
    }),
  );
});

it("knows a hive that begins from one that ends, and from one without brood", () => {
  expect(laying(500, 300, 0).verdict).toBe("growing");
  expect(laying(0, 0, 4000).verdict).toBe("shrinking");
  expect(laying(0, 0, 0)).toMatchObject({ verdict: "", note: "no brood" });
});

it("says what the young brood was held against", () => {
  // ACT Beekeepers 2022 and Schmolke et al. 2020, as in the published tests.
  const than = "than in a steady colony (1:2:4) or in the field (1:1.5:3.2)";
  expect(laying(1000, 2000, 2000).note).toBe(
    `clearly more young brood ${than}: rearing is growing`,
  );
  expect(laying(1000, 2000, 8000).note).toBe(
    `clearly less young brood ${than}: rearing is shrinking`,
  );
  expect(laying(1000, 2000, 4000).note).toBe("as much young brood as where laying is steady");
});
