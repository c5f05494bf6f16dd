import { describe, expect, it } from "vitest";
import { firstOf, rowsHave } from "../../src/core/listing.js";

describe("a listing", () => {
  it("of texts is all of them, or the first dozen and how many more", () => {
    expect(firstOf(["a", "b"])).toBe("a; b");
    expect(firstOf(["a", "b", "c"], 2)).toBe("a; b; and 1 more");
  });

  it("of rows says it as it is said", () => {
    expect(rowsHave([3])).toBe("row 3 has");
    expect(rowsHave([3, 4])).toBe("rows 3 and 4 have");
    expect(rowsHave([3, 4, 7], 3)).toBe("rows 3, 4 and 7 have");
    expect(rowsHave([3, 4, 7, 9], 2)).toBe("rows 3, 4 and 2 more have");
  });
});
