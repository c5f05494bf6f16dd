import { expect, it } from "vitest";
import { folder } from "./folder.js";

const STANDARD = ["--contract", "Almond Board of California"];
const graded = async (csv: string): Promise<string> =>
  (await (await folder({ "yard.csv": csv })).run("grade", "yard.csv", ...STANDARD)).out;

it("counts a hive that stands twice once, by its latest look", async () => {
  const out = await graded("Hive,Date,Bees\n1,20 Mar 2026,3\n1,27 Mar 2026,9\n2,27 Mar 2026,8\n");
  expect(out).toContain("an earlier look");
  expect(out).toMatch(/\(no lot\) +Almond\S* .* 2  2 /);
});

it("says of a hive that stands twice, and no day says which look counts, that it does", async () => {
  const out = await graded("Hive,Bees\n1,5\n1,9\n2,8\n");
  expect(out).toMatch(/\(no lot\) +Almond\S* .* 2  1 .*1 standing twice/s);
});
