import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { outsideTexts, pieces, slide } from "../../src/workbook/formula-text.js";
import { asSaved, callsOurs, traced, withoutSingles } from "../../src/workbook/rewrite.js";

describe("a formula cut into pieces", () => {
  it("is the same formula when joined", () => {
    const signs = fc.constantFrom(
      ..."\"'[]()!:,#@$A1 é".split(""),
      "Yard[",
      "[[#This Row],[x]]",
      "'a b'!",
    );
    fc.assert(
      fc.property(fc.array(signs), (parts) => {
        const formula = parts.join("");
        expect(pieces(formula).join("")).toBe(formula);
      }),
    );
  });

  it("is left alone where it quotes a text", () => {
    expect(outsideTexts('A1&"say ""A1"""&A1', (part) => part.replaceAll("A1", "B2"))).toBe(
      'B2&"say ""A1"""&B2',
    );
  });
});

describe("slide", () => {
  it.each([
    ["A1+$A1+A$1+$A$1", "B3+$A3+B$1+$A$1"],
    ["SUM(A:A)+SUM($B:C)+SUM(1:2)", "SUM(B:B)+SUM($B:D)+SUM(3:4)"],
    ["\"A1\"&'Lot A1'!A1&Lot1!A1", "\"A1\"&'Lot A1'!B3&Lot1!B3"],
    ["Lot1[Bees 1]+LOG10(A1)", "Lot1[Bees 1]+LOG10(B3)"],
    ["SUM(Q1:Q4!A1)", "SUM(Q1:Q4!B3)"],
    ["Terms+Rate2026+1.5+A1:B2", "Terms+Rate2026+1.5+B3:C4"],
    ["Z1", "AA3"],
  ])("%s, two rows down and one column right, is %s", (formula, slid) => {
    expect(slide(formula, 2, 1)).toBe(slid);
  });
});

describe("our functions", () => {
  it("are known as typed, as saved, and behind the damage of other add-ins", () => {
    expect(
      ["COMB.GRADE(A1)", "1+_xldudf_COMB_GRADE(A1)", "[2]!_xldudf_COMB_GRADE(A1)"].every(callsOurs),
    ).toBe(true);
    expect(["MYCOMB.GRADE(A1)", "COMB_GRADE(A1)", "Honeycomb.x"].some(callsOurs)).toBe(false);
  });

  it("are spelled as Excel saves them", () => {
    expect(asSaved('Comb.Grade(A1,"COMB.GRADE(")+[2]!_xldudf_COMB_BEES(A1)')).toBe(
      '_xldudf_COMB_GRADE(A1,"COMB.GRADE(")+_xldudf_COMB_BEES(A1)',
    );
  });

  it("are given the number of their formula, also without arguments", () => {
    const ids = new Set(["GRADE", "SOURCES"]);
    expect(traced('COMB.GRADE("x")+COMB.SOURCES( )+COMB.OTHER(1)', 7, ids)).toBe(
      '_TRACED_GRADE(7,"x")+_TRACED_SOURCES(7)+COMB.OTHER(1)',
    );
  });
});

describe("a range marked @", () => {
  it.each([
    ["_xlfn.SINGLE(A1:A9)", "A5"],
    ["_xlfn.SINGLE('Lot A'!$B$1:$B$9)", "'Lot A'!B5"],
    ["_xlfn.SINGLE(A1:AZ1)", "C1"],
    ["_xlfn.SINGLE(A6:A9)", "#VALUE!"],
    ["_xlfn.SINGLE(B2)", "B2"],
    ["_xlfn.SINGLE(COMB.BEES(A1:A9))", "_FIRST(COMB.BEES(A1:A9))"],
  ])("%s in C5 is %s", (formula, cell) => {
    expect(withoutSingles(formula, 5, "C")).toBe(cell);
  });
});
