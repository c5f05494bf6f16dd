import { sources as constants } from "../core/sources.js";
import { STANDARDS as published } from "../core/standards.js";
import { answer, type SheetFunction } from "./declare.js";

/**
 * Published strength standards: starting points, since the signed contract and local law come first.
 *
 * @remarks A range such as 6 to 8 stands at its low end; the remark gives what the source says.
 * @example =COMB.STANDARDS() spills the table; a name of its first column may stand as a contract.
 * @customfunction STANDARDS
 * @helpurl https://localhost:3000/help.html#STANDARDS
 * @returns A heading row, then one row a standard: name, average and minimum frames, brood and how it counts, laying queen, stores, remark, source, how it is known.
 */
export function STANDARDS(): unknown[][] {
  const terms = [
    "average frames",
    "minimum frames",
    "brood",
    "brood counted as",
    "laying queen",
    "stores",
  ];
  return answer([], [], () => [
    [
      "Standard",
      ...terms.map((t) => t[0]!.toUpperCase() + t.slice(1)),
      "Remark",
      "Source",
      "Known",
    ],
    ...published.map((s) => [
      s.name,
      ...terms.map((label) => s.terms[label] ?? ""),
      s.remark,
      s.source,
      s.known,
    ]),
  ]);
}

/**
 * Every constant that Comb Tally uses, with its unit, where it comes from and how it is known.
 *
 * @remarks Known: read in the source; retold by another text; worked from values that were read;
 * practice of the trade without a source; memory; fitted to data.
 * @example =COMB.SOURCES() spills the table.
 * @customfunction SOURCES
 * @helpurl https://localhost:3000/help.html#SOURCES
 * @returns A heading row, then one row a constant: name, value, unit, source, how it is known.
 */
export function SOURCES(): unknown[][] {
  return answer([], [], () => [
    ["Constant", "Value", "Unit", "Source", "Known"],
    ...Object.values(constants).map((c) => [c.name, c.value, c.unit, c.source, c.known]),
  ]);
}

export const standards: SheetFunction = { id: "STANDARDS", parameters: [], evaluate: STANDARDS };
export const sources: SheetFunction = { id: "SOURCES", parameters: [], evaluate: SOURCES };
