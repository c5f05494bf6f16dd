import { describe, expect, it } from "vitest";
import { readContract } from "../../../src/core/contract-reading.js";
import { standardContract } from "../../../src/core/standards.js";
import { blankYard } from "../../../src/pane/start/blank-yard.js";
import { demo } from "../../../src/pane/start/demo.js";
import { freeName } from "../../../src/pane/start/names.js";
import { termsOf, termsSheet, USABLE } from "../../../src/pane/start/terms-sheet.js";
import { readSheets } from "../../../src/pane/columns/yard.js";
import { MemoryWorkbook } from "../memory.js";

const empty = () => new MemoryWorkbook({ Sheet1: [[""]] });

it("a name that is taken gets a number, whatever its capitals", () => {
  expect(freeName("Yard", ["Lots"])).toBe("Yard");
  expect(freeName("Yard", ["YARD", "Yard 3"])).toBe("Yard 2");
  expect(freeName("Terms", ["terms", "Terms_2"], "_")).toBe("Terms_3");
});

describe("a blank yard sheet", () => {
  it("is found as one once a hive is written, its counts still text", async () => {
    const workbook = empty();
    const before = workbook.snapshot();
    const undo = await workbook.write(blankYard("Yard", "how to write"));
    const [row] = await workbook.read([{ sheet: "Yard", row: 3, column: 0, rows: 1, columns: 11 }]);
    expect(row!.formats[0]).toEqual([
      "@",
      "@",
      "@",
      "yyyy-mm-dd",
      ...Array(6).fill("@"),
      "General",
    ]);
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);

    await workbook.write(blankYard("Yard", "how to write"));
    ["A1", "Shed", "P1", 46108, "7-8", "5"].forEach((entry, c) =>
      workbook.type("Yard", 3, c, entry),
    );
    const { yard } = await readSheets(workbook, null);
    expect(yard!.place).toEqual({ sheet: "Yard", row: 2, column: 0, rows: 2, columns: 11 });
  });
});

describe("a Terms sheet", () => {
  it.each(USABLE.map((standard) => [standard.name, standard] as const))(
    "begun from %s says what the standard says",
    (name, standard) => {
      expect(readContract(termsOf(standard, "closing"), null)).toEqual(standardContract(name));
    },
  );

  it("has a name over its terms and its closing line, and is taken back", async () => {
    const workbook = empty();
    const before = workbook.snapshot();
    const table = termsOf(USABLE[0]!, "closing");
    const undo = await workbook.write(termsSheet("Terms 2", "Terms_2", table));
    const { terms } = await readSheets(workbook, null);
    expect(terms[0]!.region.name).toBe("Terms_2");
    expect(terms[0]!.contracts).toEqual(["Almond Board of California"]);
    expect(workbook.names.get("Terms_2")!.place.rows).toBe(table.length);
    expect(workbook.entry("Terms 2", table.length - 1, 2)).toBe("closing");
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });
});

describe("the demo", () => {
  it("stands under the names that are free, and is taken back", async () => {
    const workbook = empty();
    const before = workbook.snapshot();
    const names = { yard: "Yard 2", terms: "Terms 2", lots: "Lots", name: "Terms_2" };
    const undo = await workbook.write(demo(names));
    expect(workbook.entry("Yard 2", 0, 12)).toBe('=COMB.YARD_COLUMNS(A1:K61,Terms_2,"Cherry")');
    expect(workbook.entry("Lots", 0, 4)).toBe(
      `=COMB.LOT('Yard 2'!$A$1:$K$61,240,Terms_2,"Cherry","Foothill")`,
    );
    await workbook.write(undo);
    expect(workbook.snapshot()).toEqual(before);
  });

  it("keeps 5-6 a text, days as days, and the count that became one as it was", async () => {
    const workbook = empty();
    await workbook.write(demo({ yard: "Yard", terms: "Terms", lots: "Lots", name: "Terms" }));
    const cell = async (row: number, column: number) => {
      const [block] = await workbook.read([{ sheet: "Yard", row, column, rows: 1, columns: 1 }]);
      return [block!.entries[0]![0], block!.formats[0]![0]];
    };
    expect(await cell(1, 5)).toEqual(["5-6", "@"]);
    expect(await cell(1, 4)).toEqual([4, "General"]);
    expect(await cell(1, 3)).toEqual([46108, "d-mmm-yy"]);
    expect(await cell(34, 5)).toEqual([46211, "d-mmm"]);
  });
});
