import { expect, it } from "vitest";
import { plural } from "../../src/core/plural.js";

// English: one alone has no s; nought, a part and any text of another number have.
it.each([
  [1, "hive", "1 hive"],
  ["1", "frame", "1 frame"],
  [20, "hive", "20 hives"],
  [0, "hive", "0 hives"],
  [0.5, "frame", "0.5 frames"],
  [1.5, "full frame", "1.5 full frames"],
  ["1,000", "row", "1,000 rows"],
])("%s of a %s is said %s", (count, one, said) => expect(plural(count, one)).toBe(said));
