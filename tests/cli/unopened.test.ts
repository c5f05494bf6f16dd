import { expect, it } from "vitest";
import { unopenedIn } from "../../src/cli/unopened.js";

const line = (hive: string, lot = "", note = "not opened") => ({
  ...{ hive, lot, note, contract: "Cherry", figures: [], grade: "" },
});

it("lists hives that were not opened by lot, three and more that follow each other as a range", () => {
  const names = ["S01", "S02", "S03", "S05", "S06", "S09", "S10", "S11", "Red"];
  expect(unopenedIn(names.map((name) => line(name)))).toEqual([
    "Not opened: S01-S03, S05, S06, S09-S11, Red",
  ]);
  expect(unopenedIn([line("1", "N"), line("2", "S"), line("3", "N", "")])).toEqual([
    "Not opened in N: 1",
    "Not opened in S: 2",
  ]);
});
