import { expect, it, vi } from "vitest";
import type { Step } from "../../src/pane/port.js";
import { MemoryWorkbook } from "./memory.js";

const START = { sheet: "Start", row: 0, column: 0, rows: 1, columns: 1 };
const STEPS: readonly Step[] = [
  { kind: "put", place: { ...START, sheet: "Yard" }, expect: [["Hive"]], put: [["Colony"]] },
  { kind: "add sheet", name: "Start" },
  { kind: "put", place: START, expect: [[""]], put: [["Term"]] },
  { kind: "cover", region: "name", name: "Start", place: START },
];

const refusal = (written: Promise<unknown>) =>
  written.then(
    () => "written",
    (error: Error) => `${error.name}: ${error.message}`,
  );

function refusing(): MemoryWorkbook {
  const workbook = new MemoryWorkbook({ Yard: [["Hive"]] });
  vi.spyOn(workbook.names, "set").mockImplementation(() => {
    throw new Error("The name conflicts with the sheet name");
  });
  return workbook;
}

it("takes back what was made where the spreadsheet refuses a later step, and says so", async () => {
  const workbook = refusing();
  const before = workbook.snapshot();
  expect(await refusal(workbook.write(STEPS))).toBe(
    "Refusal: the name Start would not be made (The name conflicts with the sheet name): " +
      "nothing was written",
  );
  expect(workbook.snapshot()).toEqual(before);
});

it("names what is left where that cannot be taken back either", async () => {
  const workbook = refusing();
  const { sheets } = workbook as unknown as { sheets: { dropSheet: (name: string) => void } };
  vi.spyOn(sheets, "dropSheet").mockImplementation(() => {
    throw new Error("A workbook keeps a sheet");
  });
  expect(await refusal(workbook.write(STEPS))).toBe(
    "Refusal: the name Start would not be made (The name conflicts with the sheet name); " +
      "the sheet Start is left of it",
  );
  expect(workbook.entry("Yard", 0, 0)).toBe("Hive");
});
