import { describe, expect, it } from "vitest";
import { column, comb, errorCell, one, serial, terms } from "./sheet.js";

const contract = terms(["average frames", 8], ["minimum frames", 6]);
const yard = (heading: readonly string[], ...rows: readonly unknown[][]) => [[...heading], ...rows];
const columns = (sheet: unknown[][], asked: string, of: unknown[][] = contract) =>
  comb("YARD_COLUMNS", sheet, of, null, asked).slice(1);

describe("a row with a hive's id", () => {
  it("was opened where its bees are 0 or said to be none", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", 0], ["A2", "none"], [3, "-"]);
    const none = [0, 0, "no grade", 6];
    const rows = columns(sheet, "frames, bees, grade, short");
    expect(rows).toEqual([none, none, none]);
  });

  it("was not opened where its bees are blank or say so: its note says that alone", () => {
    const said = ["", null, undefined, " ", "not opened", "Unopened", "skipped", "n/o", "n/a"];
    const sheet = yard(["Hive", "Bees"], ...said.map((bees, i) => [i + 1, bees]));
    const rows = columns(sheet, "hive, frames, bees, grade, short, note, action, reason");
    expect(rows).toEqual(said.map((_, i) => [i + 1, "", "", "", "", "not opened", "", ""]));
  });

  it("was not opened where no box has a count, and was where one has", () => {
    const sheet = yard(["Hive", "Bees top", "Bees bottom"], ["A1", "", ""], ["A2", "", 7]);
    expect(columns(sheet, "frames, note")).toEqual([
      ["", "not opened"],
      [7, ""],
    ]);
  });

  it("is no longer in the lot where it was combined, sold or taken away", () => {
    const sheet = yard(
      ["Hive", "Bees"],
      ["A1", "combined into 13"],
      ["A2", "gone"],
      ["A3", "Sold"],
    );
    const gone = ["", "", "no longer in the lot"];
    expect(columns(sheet, "frames, grade, note")).toEqual([gone, gone, gone]);
  });

  it("is asked about where brood or a queen was seen and the bees are blank", () => {
    const sheet = yard(["Hive", "Bees", "Brood", "Queen"], ["A1", "", 3, ""], ["A2", "", "", "no"]);
    const [first, second] = columns(sheet, "frames, note");
    expect(first![0]).toMatch(/^#VALUE! "Bees", row 2: blank, and "Brood" is not: write none/);
    expect(second![1]).toMatch(/^"Bees", row 3: blank, and "Queen" is not: write none/);
  });

  it("is asked about where a yes or no of its being opened goes against its bees", () => {
    const sheet = yard(
      ["Hive", "Opened", "Bees"],
      ["A1", "Y", 8],
      ["A2", "N", ""],
      ["A3", "n", 0],
      ["A4", "", 6],
      ["A5", "No", 7],
      ["A6", true, ""],
    );
    const rows = columns(sheet, "frames, note");
    expect(rows.slice(0, 4)).toEqual([
      [8, ""],
      ["", "not opened"],
      ["", "not opened"],
      [6, ""],
    ]);
    expect(rows[4]![1]).toBe(
      '"Opened", row 6: no, and "Bees" is not blank: write yes where the hive was opened, and no bees where nobody looked',
    );
    expect(rows[5]![1]).toMatch(/^"Bees", row 7: blank, and "Opened" is not: write none/);
    const lot = (rows: unknown[][]) => comb("LOT", rows, null, contract);
    expect(lot(sheet)[0]![0]).toMatch(/"Opened", row 6: no, .*"Bees", row 7: blank/);
    // By hand: (8 + 6) / 2.
    const average = lot(sheet.slice(0, 5)).find(([label]) => label === "Average frames");
    expect(average?.[1]).toBe(7);
  });

  it("is asked about where its day is no, beside days of other hives or a date of its own", () => {
    const days = yard(["Hive", "Opened", "Bees"], ["A1", "27.03.2026", 8], ["A2", "N", 6]);
    const both = yard(
      ["Hive", "Opened", "Day", "Bees"],
      ["A1", "Y", serial(2026, 3, 20), serial(2026, 7, 8)],
      ["A2", "N", serial(2026, 3, 20), 6],
      ["A3", "Y", serial(2025, 3, 20), serial(2026, 7, 8)],
    );
    const note = (sheet: unknown[][], i: number) => columns(sheet, "note")[i]![0];
    expect(note(days, 1)).toMatch(/^"Opened", row 3: no, and "Bees" is not blank/);
    expect(note(both, 0)).toMatch(/read back as 7-8/);
    expect(note(both, 1)).toMatch(/^"Opened", row 3: no, and "Bees" is not blank/);
    expect(note(both, 2)).toMatch(/of another year than the inspection/);
  });

  it("may be hefted without being opened", () => {
    const sheet = yard(["Hive", "Bees", "Stores"], ["A1", "", 4]);
    expect(columns(sheet, "frames, note")).toEqual([["", "not opened"]]);
  });

  it("says that a 0 stands for its bees, and nothing of the kind of `none`", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", 0], ["A2", "none"]);
    const [zero, none] = columns(sheet, "note");
    expect(zero![0]).toMatch(/^0 bees: counted as none/);
    expect(none![0]).not.toMatch(/0 bees/);
  });

  it("has no brood and no stores where those are blank", () => {
    const sheet = yard(["Hive", "Bees", "Brood", "Stores"], ["A1", 8, "", ""], ["A2", 8, 0, 0]);
    const strict = terms(["average frames", 8], ["brood", 1]);
    const stocked = terms(["average frames", 8], ["stores", 1]);
    const rows = [...columns(sheet, "grade", strict), ...columns(sheet, "grade", stocked)];
    expect(rows).toEqual([["no grade"], ["no grade"], ["no grade"], ["no grade"]]);
  });

  it("has its grade where what nobody asks for cannot be read, and has none where it is asked for", () => {
    const sheet = yard(["Hive", "Bees", "Queen", "Stores"], ["A1", 8, "tired", "so so"]);
    expect(columns(sheet, "grade, note")).toEqual([["at average", ""]]);
    const asking = (...more: readonly (readonly [string, unknown])[]) =>
      columns(sheet, "grade", terms(["average frames", 8], ...more))[0]![0];
    expect(asking(["laying queen", "yes"])).toMatch(/^#VALUE! "Queen", row 2: "tired" stands/);
    expect(asking(["stores", 1])).toMatch(/^#VALUE! "Stores", row 2: "so so" is not understood/);
  });

  it("leaves its queen unjudged where that is blank", () => {
    const sheet = yard(["Hive", "Bees", "Queen"], ["A1", 8, ""], ["A2", 8, "yes"]);
    const queen = terms(["average frames", 8], ["laying queen", "yes"]);
    const [open, judged] = columns(sheet, "frames, grade, note", queen);
    expect(open).toEqual([
      8,
      expect.stringMatching(/^#N\/A contract "Cherry" asks for a laying queen/),
      expect.stringMatching(/asks for a laying queen, and that is not judged/),
    ]);
    expect(judged).toEqual([8, "at average", ""]);
  });

  it("is a dead-out where it is written dead, and has nothing more to say", () => {
    const sheet = yard(["Hive", "Bees", "Brood"], ["A1", "dead", ""]);
    expect(columns(sheet, "frames, grade, note")).toEqual([[0, "dead-out", ""]]);
  });
});

describe("blank bees beside a note or a date", () => {
  const day = serial(2026, 2, 8);
  const HEADINGS = ["Hive", "Lot", "Date", "Bees", "Notes"];
  const said = (...rows: unknown[][]) => columns(yard(HEADINGS, ...rows), "frames, grade, note");

  it("are a dead-out where the note says so and no more, whatever the date", () => {
    expect(said(["A1", "A", day, "", "dead"])).toEqual([[0, "dead-out", 'dead by "Notes"']]);
    expect(said(["A1", "A", "", "", "Dead-out."])).toEqual([[0, "dead-out", 'dead by "Notes"']]);
    expect(said(["A1", "A", "", 0, "DO"])).toEqual([[0, "dead-out", 'dead by "Notes"']]);
    expect(said(["A1", "A", day, 8, "dead"])[0]!.slice(0, 2)).toEqual([8, "at average"]);
  });

  it("are asked about where the note speaks of a death or a look in other words", () => {
    for (const note of ["dead, mice", "empty", "inspected, wet"]) {
      expect(said(["A1", "A", day, "", note])[0]![2]).toMatch(
        /^"Bees", row 2: blank, and "Notes" is not: write none/,
      );
    }
    expect(said(["A1", "A", day, "", "lid cracked"])[0]![2]).toBe("not opened");
    expect(said(["A1", "A", day, "not opened", "empty"])[0]![2]).toBe("not opened");
  });

  it("are asked about beside the hive's own date, which others of its lot lack", () => {
    const notes = said(
      ["A1", "A", day, 8, ""],
      ["A2", "A", day, 7, ""],
      ["A3", "A", day, "", ""],
      ["A4", "A", "", "", ""],
      ["B1", "B", day, "", ""],
      ["B2", "B", day, 8, ""],
    ).map((row) => row[2]);
    expect(notes[2]).toMatch(/^"Bees", row 4: blank, and "Date" is not/);
    expect(notes[3]).toBe("not opened");
    expect(notes[4]).toBe("not opened");
  });

  it("are not where the date is filled down for hives that nobody opened", () => {
    const notes = said(
      ["A1", "A", day, 8, ""],
      ["A2", "A", day, "", ""],
      ["A3", "A", day, "", ""],
      ["A4", "A", "", "", ""],
    ).map((row) => row[2]);
    expect(notes.slice(1)).toEqual(["not opened", "not opened", "not opened"]);
  });
});

describe("a super", () => {
  const said = (heading: string, over: unknown, ...more: (readonly [string, unknown])[]) =>
    columns(
      yard(["Hive", "Bees brood box", heading], ["A1", 8, over]),
      "frames, note",
      terms(["average frames", 8], ...more),
    )[0]!;

  it("without a frame is counted as the contract's, and the note says so", () => {
    const note = '"Bees super" counted as deep: its heading names no frame';
    expect(said("Bees super", 6)).toEqual([14, note]);
    expect(said("Bees super", 0)).toEqual([8, ""]);
  });

  it("is counted as its heading or the terms say, 6 x 5.5 / 8.625 of a deep", () => {
    const frames = expect.closeTo(8 + (6 * 5.5) / 8.625, 9);
    expect(said("Bees medium super", 6)).toEqual([frames, ""]);
    const all = expect.closeTo((14 * 5.5) / 8.625, 9);
    expect(said("Bees super", 6, ["box frames", "medium"])[0]).toEqual(all);
    expect(said("Bees super", 6, ["box frames", "medium"])[1]).not.toMatch(/names no frame/);
  });
});

describe("brood by stage", () => {
  const strict = terms(["average frames", 8], ["brood", 3]);
  const said = (sheet: unknown[][], of = strict) => columns(sheet, "frames, grade, note", of)[0]!;

  it.each([
    ["Open brood", "Capped brood"],
    ["Brood open", "Brood capped"],
    ["Open brood frames", "Sealed brood frames"],
  ])("%s and %s are asked about where the contract asks for brood", (open, capped) => {
    const sheet = yard(["Hive", "Bees", open, capped], ["V1", 8, 1.5, 2]);
    expect(said(sheet)[2]).toBe(
      `row 2: contract "Cherry" asks for brood, and the sheet has it by stage, "${open}" and "${capped}": add a ` +
        'column "Brood" of all stages together; a comb that holds two of them is one comb',
    );
    expect(said(sheet, terms(["average frames", 8]))).toEqual([8, "at average", ""]);
  });

  it("is let be beside the brood itself", () => {
    const sheet = yard(["Hive", "Bees", "Brood", "Capped brood"], ["V1", 8, 3.5, 2]);
    expect(said(sheet)).toEqual([8, "at average", ""]);
  });
});

const UNDER = "the row under it has counts and no hive id: not counted";

describe("a sheet with a row a box", () => {
  const refused = (row: number) =>
    `#VALUE! "Box" makes several rows of a hive, as row ${row} is: write each hive in one row, with a ` +
    'column a box such as "Bees top box" and "Bees bottom box"';
  const said = (...rows: unknown[][]) =>
    one("YARD_COLUMNS", yard(["Hive", "Date", "Box", "Bees"], ...rows), contract);

  it("is refused with the way out, the hive's name repeated or left out", () => {
    expect(said(["H1", "", "Bottom", 6], ["H1", "", "Top", 5])).toBe(refused(3));
    expect(said(["H1", "", 1, 6], ["H2", "", 1, 5], ["H1", "", 2, 4])).toBe(refused(4));
    expect(said(["H1", "", "Bottom", 6], ["", "", "Top", 5])).toBe(refused(3));
  });

  it("is not one where each hive has one row a day", () => {
    const sheet = yard(
      ["Hive", "Date", "Box no.", "Bees"],
      ["H1", serial(2026, 2, 8), 1, 6],
      ["H1", serial(2026, 3, 8), 2, 9],
      ["H2", serial(2026, 3, 8), 2, 7],
    );
    expect(columns(sheet, "frames")).toEqual([[6], [9], [7]]);
  });
});

describe("a row without an id", () => {
  it.each([["", 0, null, undefined, " "]])("stays blank throughout", (...blanks) => {
    const sheet = yard(["Hive", "Bees"], ["A1", 8], ...blanks.map((id) => [id, ""]), ["A2", 7]);
    const rows = columns(sheet, "hive, frames, grade, short, note");
    expect(rows.slice(1, -1)).toEqual(blanks.map(() => ["", "", "", "", ""]));
    expect(rows.at(-1)).toEqual(["A2", 7, "at minimum", 1, ""]);
  });

  it("is noted, and not counted, where figures stand in it", () => {
    const sheet = yard(
      ["Hive", "Bees", "Brood"],
      ["A1", 8, 3],
      ["", 7, ""],
      ["", "", 3],
      ["", "x", ""],
    );
    const [, ...stray] = columns(sheet, "frames, grade, note");
    for (const row of stray) expect(row).toEqual(["", "", "no hive id: not counted"]);
  });

  it("reads a column of covers that a spreadsheet keeps as fractions, and asks where they are mixed", () => {
    const covers = (...cells: unknown[]) => {
      const hives = cells.map((cell, i) => [`A${i}`, 8, 4, cell]);
      const sheet = yard(["Hive", "Bees", "Brood", "Brood %"], ...hives);
      return columns(sheet, "brood full").flat();
    };
    // 4 combs, of which 60, 50 and 100 % are covered.
    expect(covers(0.6, 0.5, 1, "75%")).toEqual([2.4, 2, 4, 3]);
    expect(covers(0.6, 50)).toEqual([expect.stringMatching(/^#VALUE! /), 2]);
    expect(covers(1, 50)).toEqual([0.04, 2]);
  });

  it("is noted where only seams from below stand in it", () => {
    const sheet = yard(["Hive", "Seams above", "Seams below"], ["A1", 8, 6], ["", "", 6]);
    const cluster = terms(["average frames", 7], ["comb rule", "cluster count"]);
    const [first, stray] = columns(sheet, "frames, note", cluster);
    expect([first, stray]).toEqual([
      [7, UNDER],
      ["", "no hive id: not counted"],
    ]);
  });

  it("is spoken of in the row above it, whose second box it may be", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", 8], ["", 7], ["A2", 8], ["", ""], ["A3", 8]);
    expect(columns(sheet, "note").flat()).toEqual([
      UNDER,
      "no hive id: not counted",
      "",
      "",
      expect.any(String),
    ]);
  });
});

describe("a row that cannot be read", () => {
  const sheet = yard(
    ["Hive", "Lot", "Bees"],
    ["A1", "North", 8],
    ["A2", "North", "rubbish"],
    ["A3", "South", errorCell("#REF!")],
    ["A4", errorCell("#N/A"), 6],
  );

  it("has its error in its own cells and the reason in its note, by heading and row", () => {
    const [sound, text, error, lot] = columns(sheet, "hive, lot, frames, grade, note");
    expect(sound).toEqual(["A1", "North", 8, "at average", ""]);
    const reason = expect.stringMatching(
      /^#VALUE! "Bees", row 3: "rubbish" is not understood: a count/,
    );
    const note = expect.stringMatching(/^"Bees", row 3: "rubbish" is not understood: a count/);
    expect(text).toEqual(["A2", "North", reason, reason, note]);
    expect(error).toEqual(["A3", "South", "#REF!", "#REF!", "an error stands in row 4, #REF!"]);
    expect(lot).toEqual(["A4", "#N/A", 6, "at minimum", ""]);
  });

  it("may be the fault of its contract alone", () => {
    const two = [
      ["Term", "Cherry", "Pear"],
      ["average frames", 8, 5],
    ];
    const rows = yard(
      ["Hive", "Bees", "Contract"],
      ["A1", 6, "Pear"],
      ["A2", 6, "Plum"],
      ["A3", 6, ""],
    );
    expect(columns(rows, "contract, grade", two)).toEqual([
      ["Pear", "at average"],
      Array(2).fill('#VALUE! row 3: no contract is named "Plum"; here are "Cherry", "Pear"'),
      Array(2).fill('#VALUE! row 4: several contracts stand here, say which: "Cherry", "Pear"'),
    ]);
  });

  it("may be the only hive of the sheet", () => {
    const rows = yard(["Hive", "Bees", "Contract"], ["A1", 6, "Plum"]);
    expect(columns(rows, "hive, grade, note")[0]).toEqual([
      "A1",
      expect.stringMatching(/^#VALUE! row 2: no contract is named "Plum"/),
      expect.stringMatching(/^row 2: no contract is named "Plum"/),
    ]);
  });

  it("is none where the only row has no hive in it", () => {
    const two = [
      ["Term", "Cherry", "Pear"],
      ["average frames", 8, 5],
    ];
    const rows = yard(["Hive", "Bees", "Contract"], ["", "", ""]);
    expect(columns(rows, "frames, note", two)).toEqual([["", ""]]);
  });
});

describe("the sheet as a whole", () => {
  it("may hold no hive yet", () => {
    const heading = comb("YARD_COLUMNS", yard(["Hive", "Bees"]), contract);
    expect(heading).toEqual([
      [
        "Frames of bees",
        "Bees",
        "Brood, full frames",
        "Brood, combs",
        "Grade",
        "Frames short",
        "Note",
      ],
    ]);
  });

  it("needs a hive column and one of bees", () => {
    expect(one("YARD_COLUMNS", yard(["Bees"], [8]), contract)).toMatch(/heading such as "Hive"/);
    expect(one("YARD_COLUMNS", yard(["Hive"], ["A1"]), contract)).toMatch(/"Frames of bees"/);
  });

  it("adds a column a box, each in the frame that its heading names", () => {
    // 8 + 4 x 5.5 / 8.625 = 10.5507.
    const sheet = yard(["Hive", "Deep bees", "Medium bees"], ["A1", 8, 4]);
    expect(columns(sheet, "frames")[0]![0]).toBeCloseTo(10.5507, 4);
  });

  it("reads a count that became a date, with a note, by the year of the row's date", () => {
    const sheet = yard(
      ["Hive", "Bees", "Date"],
      ["A1", serial(2026, 7, 8), serial(2026, 3, 20)],
      ["A2", serial(2022, 7, 9), serial(2026, 3, 20)],
    );
    const [read, refused] = columns(sheet, "frames, note");
    expect(read).toEqual([7.5, expect.stringMatching(/8 Jul 2026: read back as 7-8/)]);
    expect(refused![1]).toMatch(
      /^"Bees", row 3: .*9 Jul 2022, of another year than the inspection/,
    );
  });

  it("asks for the year of the date only where a count became a date", () => {
    const july = serial(2026, 7, 8);
    const sheet = yard(
      ["Hive", "Date", "Bees"],
      ["A1", "3/22", 8],
      ["A2", "end of March", "7-8"],
      ["A3", "3/22", july],
      ["A4", "3/22/26", july],
      ["A5", "22 Mar 26", "8-Jul"],
      ["A6", "4/13", "8-Jul-26"],
      ["A7", "4/13", "8-Jul"],
    );
    const [plain, words, unsaid, said, text, textUnsaid, noYear] = columns(sheet, "frames, note");
    expect([plain, words]).toEqual([
      [8, ""],
      [7.5, "at minimum at the low end, at average at the high end"],
    ]);
    expect(unsaid![1]).toBe('"Date", row 4: "3/22" stands where a date or a year was expected');
    expect([said![0], text![0], noYear![0]]).toEqual([7.5, 7.5, 7.5]);
    expect(textUnsaid![1]).toBe('"Date", row 7: "4/13" stands where a date or a year was expected');
  });

  it("gives the columns asked for in their order, as one text or as cells, blanks passed over", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", "6-8"]);
    const expected = [
      ["Grade", "Frames of bees, low", "Hive"],
      ["at minimum", 6, "A1"],
    ];
    for (const asked of [
      "grade, frames low, hive",
      " Grade ;FRAMES LOW; hive;",
      [["grade", "", "frames low", 0, "hive", null]],
      column("grade", "frames low", "hive"),
    ]) {
      expect(comb("YARD_COLUMNS", sheet, contract, null, asked)).toEqual(expected);
    }
  });

  it("gives its default columns where none are asked for, blank or left out", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", 8]);
    const expected = comb("YARD_COLUMNS", sheet, contract);
    for (const nothing of [null, undefined, "", 0, [["", 0, null]]]) {
      expect(comb("YARD_COLUMNS", sheet, contract, null, nothing)).toEqual(expected);
    }
  });

  it("names a column that is not to be had", () => {
    const sheet = yard(["Hive", "Bees"], ["A1", 8]);
    expect(one("YARD_COLUMNS", sheet, contract, null, "grade, honey")).toMatch(
      /^#VALUE! "honey" is no column that can be asked for: hive, lot/,
    );
  });

  it("takes one contract, or one for each of its rows", () => {
    const two = [
      ["Term", "Cherry", "Pear"],
      ["average frames", 8, 5],
    ];
    const sheet = yard(["Hive", "Bees"], ["A1", 6], ["A2", 6]);
    // With its heading given too, every hive would go out on its neighbour's contract.
    const shifted = column("Contract", "Cherry", "Pear");
    expect(one("YARD_COLUMNS", sheet, two, shifted)).toMatch(/^#VALUE! contract has 3 rows/);
  });
});

describe("the grade at the low and at the high end", () => {
  const asked = "grade low, grade, grade high";
  it("follows the doubt in the frames", () => {
    expect(columns(yard(["Hive", "Bees"], ["A1", "5-9"]), asked)).toEqual([
      ["no grade", "at minimum", "at average"],
    ]);
  });

  it("follows the doubt in the stores", () => {
    const stocked = terms(["average frames", 8], ["stores", 3]);
    const sheet = yard(["Hive", "Bees", "Stores"], ["A1", 8, "2-4"]);
    expect(columns(sheet, asked, stocked)).toEqual([["no grade", "at average", "at average"]]);
  });

  it("follows the doubt in the cover of combs that must be half covered", () => {
    const half = terms(
      ["average frames", 8],
      ["brood", 5],
      ["brood counted as", "combs"],
      ["brood comb covered", 50],
    );
    const sheet = yard(["Hive", "Bees", "Brood", "Brood %"], ["A1", 8, 5, "40-60"]);
    expect(columns(sheet, asked, half)).toEqual([["no grade", "at average", "at average"]]);
  });

  it("takes the doubt in how many combs hold brood for none in how they are covered", () => {
    // CAPA (retold): 5 combs half covered. 5 to 8 combs are 5 at the least, each at 60 %.
    const sheet = yard(
      ["Hive", "Bees", "Top brood", "Bottom brood", "Brood %"],
      ["A1", 8, "5-8", "", 60],
    );
    expect(comb("YARD_COLUMNS", sheet, null, "CAPA Canada", asked)[1]).toEqual(
      Array(3).fill("at minimum"),
    );
  });
});

// A total beside its boxes, two looks, and a box's bound are common practice, no source.
describe("columns of one kind beside each other", () => {
  it("are boxes and their total, which is not added again", () => {
    for (const total of ["Bees", "Frames of bees"]) {
      const sheet = yard(["Hive", "Bees top", "Bees bot", total], [1, 4, 5, 9], [2, 3, 4, 7]);
      expect(columns(sheet, "frames")).toEqual([[9], [7]]);
      // (9 + 7) / 2
      expect(comb("LOT", sheet, null, contract)).toContainEqual([
        "Average frames",
        8,
        expect.anything(),
      ]);
    }
  });

  it.each([
    [
      ["Bees on arrival", "Bees now"],
      [[4, 5]],
      '"Bees on arrival" stands beside "Bees now" and names no box: head a box by its place, such as ' +
        '"Bees top box", a total "Total bees", and what is not to be added "Bees on arrival, uncounted"',
    ],
    [
      ["Bees", "Seams below", "Seams from below"],
      [[4, 5, 5]],
      '"Seams below" stands beside "Seams from below" and names no box: head a box by its place, such as ' +
        '"Seams below box 1", a total "Total seams below", and what is not to be added "Seams below, uncounted"',
    ],
    [
      ["Bees top now", "Bees top on arrival"],
      [[4, 5]],
      '"Bees top now" beside "Bees top on arrival" is another look at the same hives, and looks are ' +
        'not added up: leave out one, or head it "Bees top now, uncounted"',
    ],
    [
      ["Bees top", "Bees bot", "Bees"],
      [
        [4, 5, 9],
        [3, 4, 7],
        [5, 5, 11],
      ],
      '"Bees" is the sum of "Bees top" and "Bees bot" in the rows above row 4, and not in it: ' +
        'correct the row, or head the column "Total bees"',
    ],
    [
      ["Bees 1", "Bees 2", "Bees 3"],
      [
        [4, 5, 9],
        [3, 4, 7],
        [5, 5, 10],
      ],
      '"Bees 3" is the sum of "Bees 1" and "Bees 2" in every row: if it is their total, head it "Total bees"',
    ],
  ])("%j are refused where they may be none to add: %j", (headings, rows, why) => {
    const sheet = yard(["Hive", ...headings], ...rows.map((row, i) => [i + 1, ...row]));
    expect(one("YARD_COLUMNS", sheet, contract)).toBe(`#VALUE! ${why}`);
    expect(one("LOT", sheet, null, contract)).toContain(why);
  });

  it("are taken as the refusal's headings say", () => {
    const headings = ["Hive", "Bees top box", "Bees bot", "Total bees", "Bees now, uncounted"];
    expect(columns(yard(headings, [1, 4, 5, 9, 7]), "frames")).toEqual([[9]]);
  });
});

// How many combs a box and a hive hold, and that a seam is no comb, is common practice, no source.
describe("more combs than there can be", () => {
  const noteOf = (heading: string, count: unknown) =>
    columns(yard(["Hive", heading], [1, count]), "note")[0]![0];

  it.each([
    ["Bees", 45, '"Bees", row 2: 45 combs in one hive: is it 4-5?'],
    ["Bees", "34", '"Bees", row 2: 34 combs in one hive: is it 3-4?'],
    ["Bees top box", 23, '"Bees top box", row 2: 23 combs in one box: is it 2-3?'],
    ["Bees 1", 12.5, '"Bees 1", row 2: 12.5 combs in one box: more than 12 are taken for a slip'],
    ["Bees", 44, '"Bees", row 2: 44 combs in one hive: more than 30 are taken for a slip'],
    ["Bees", 31, '"Bees", row 2: 31 combs in one hive: more than 30 are taken for a slip'],
    [
      "Bees, 2 boxes",
      31,
      '"Bees, 2 boxes", row 2: 31 combs in one hive: more than 30 are taken for a slip',
    ],
  ])("are refused under %s: %s", (heading, count, why) => {
    expect(noteOf(heading, count)).toBe(why);
  });

  it.each([
    ["Bees", 30],
    ["Bees", "20-24"],
    ["Bees in deeps", 20],
    ["Bees (2 deeps)", 20],
    ["Bees top box", 12],
    ["Bees top box", "12+"],
  ])("are not what stands under %s: %s", (heading, count) => {
    expect(noteOf(heading, count)).not.toMatch(/combs in one/);
  });

  it("are refused of brood too, whatever the contract asks", () => {
    const sheet = yard(["Hive", "Bees", "Brood"], [1, 8, 45]);
    expect(columns(sheet, "note")).toEqual([['"Brood", row 2: 45 combs in one hive: is it 4-5?']]);
  });
});

describe("seams", () => {
  it("are refused where combs are counted", () => {
    const why =
      '"9 seams" counts seams, and a seam is no comb: write the combs, or give seams their own columns';
    const sheet = yard(["Hive", "Bees", "Brood"], [1, "9 seams", ""], [2, 8, "9 seams"]);
    expect(columns(sheet, "note")).toEqual([[`"Bees", row 2: ${why}`], [`"Brood", row 3: ${why}`]]);
    for (const [id, ...more] of [["GRADE", contract], ["FRAMES_OF_BEES"], ["BEES"]] as const)
      expect(one(id, "9 seams", ...more)).toContain(why);
    expect(one("SEAMS", "9 seams")).toBe(9);
  });

  it("are what a contract that counts clusters asks for, and boxes of combs are refused", () => {
    const cluster = terms(["average frames", 7], ["comb rule", "cluster count"]);
    const sheet = yard(["Hive", "Bees top", "Bees bottom"], [1, 4, 5]);
    const why =
      'contract "Cherry" counts seams, and the sheet counts combs, "Bees top and Bees bottom": ' +
      'a cluster count is made of "Seams above" and "Seams below"';
    expect(columns(sheet, "frames, note", cluster)).toEqual([
      [`#VALUE! row 2: ${why}`, `row 2: ${why}`],
    ]);
    expect(one("LOT", sheet, null, cluster)).toBe(`#VALUE! ${why}`);
    const seams = yard(["Hive", "Seams above", "Seams below"], [1, "9 seams", 7]);
    expect(columns(seams, "frames", cluster)).toEqual([[8]]); // (9 + 7) / 2
  });
});

// That a queen who is not seen is there as a rule, and what combs of brood are: common practice, no source.
describe("a heading says what its column asks", () => {
  it("whether the queen was seen: no says nothing of whether one lays", () => {
    const queen = terms(["average frames", 8], ["laying queen", "yes"]);
    const grades = (heading: string) =>
      columns(
        yard(
          ["Hive", "Bees", heading],
          ...["Y", "N", "no", "queenless"].map((q, i) => [i + 1, 9, q]),
        ),
        "grade",
        queen,
      ).flat();
    const unknown = expect.stringMatching(/^#N\/A contract "Cherry" asks for a laying queen/);
    for (const heading of ["Queen seen", "QR seen?", "Seen queen (Y/N)"])
      expect(grades(heading), heading).toEqual(["at average", unknown, unknown, "no grade"]);
    expect(grades("Queen")).toEqual(["at average", "no grade", "no grade", "no grade"]);
  });

  it("how many combs hold brood: without their cover they are no full frames", () => {
    const asks = terms(["average frames", 8], ["brood", 2]);
    const of = (heading: string, block = asks) =>
      columns(
        yard(["Hive", "Bees", heading], [1, 9, 3]),
        "brood full, brood combs, grade",
        block,
      )[0]!;
    const unknown = expect.stringMatching(/^#N\/A contract "Cherry" asks for brood/);
    for (const heading of ["Brood combs", "Combs of brood", "Frames w/ brood", "Fr. with brood"])
      expect(of(heading), heading).toEqual(["", 3, unknown]);
    for (const heading of [
      "Brood",
      "Frames of brood",
      "FOBr",
      "Brood combs, full",
      "Brood combs (equiv.)",
    ])
      expect(of(heading), heading).toEqual([3, "", "at average"]);
    const counts = terms(["average frames", 8], ["brood", 2], ["brood counted as", "combs"]);
    for (const heading of ["Brood combs", "Brood"])
      expect(of(heading, counts), heading).toEqual(["", 3, "at average"]);
    // 3 combs at 90 % are 2.7
    const covered = yard(["Hive", "Bees", "Brood combs", "Brood %"], [1, 9, 3, 90]);
    expect(columns(covered, "brood full, grade", asks)).toEqual([[2.7, "at average"]]);
  });

  it("which truck the hive came on, which is its lot", () => {
    for (const heading of ["Truck", "Truck load", "Truckload", "Truck #"]) {
      const sheet = yard([heading, "Hive", "Bees"], ["T1", 1, 9], ["T2", 2, 8]);
      expect(columns(sheet, "lot, frames")).toEqual([
        ["T1", 9],
        ["T2", 8],
      ]);
    }
    const both = yard(["Truck", "Lot", "Hive", "Bees"], ["T1", "N", 1, 9]);
    expect(columns(both, "lot")).toEqual([["N"]]);
  });
});

describe("headings that name no bees", () => {
  it("are named, with what to write", () => {
    const refused = (...headings: string[]) =>
      one("YARD_COLUMNS", yard(["Hive", ...headings]), contract);
    const needs = '#VALUE! the first row needs a heading such as "Frames of bees"; is it ';
    expect(refused("Top", "Bottom")).toBe(
      `${needs}"Top" or "Bottom"? Then name it plainly, a box such as "Bees top box"`,
    );
    expect(refused("Strength")).toBe(`${needs}"Strength"? Then name it plainly`);
  });

  it("are refused where they go on in a second row", () => {
    const why = (over: string, box: string) =>
      `#VALUE! the headings stand in two rows, "${over}" over "${box}": write them in one row, "${over} ${box}"`;
    const two = (over: string, box: string) =>
      one("YARD_COLUMNS", yard(["Hive", over, ""], ["", box, "Bottom"], [1, 4, 5]), contract);
    expect(two("Bees", "Top")).toBe(why("Bees", "Top"));
    expect(two("FOB", "Deep")).toBe(why("FOB", "Deep"));
    const merged = yard(["Hive", "Bees", "Bees"], ["", "Top", "Bottom"], [1, 4, 5]);
    expect(one("YARD_COLUMNS", merged, contract)).toBe(why("Bees", "Top"));
    expect(columns(yard(["Hive", "Bees"], [1, "Top"], [2, 4]), "frames")).toEqual([
      [expect.stringMatching(/"Top" is not understood/)],
      [4],
    ]);
    const count = yard(["Hive", "Bees"], ["", "two"], [1, 4]);
    expect(columns(count, "frames")).toEqual([[""], [4]]);
  });
});
