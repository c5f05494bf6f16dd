import { gradeOf, reasonOf, requirementsOf, shortOf } from "../core/grade.js";
import { DEAD_OUT } from "../core/contract-check.js";
import { Refusal } from "../core/refusal.js";
import { toCellError, type CellError } from "./cells.js";
import { answer, type SheetFunction } from "./declare.js";
import { choice } from "./parameters.js";
import { hiveParameters, underContract } from "./under-contract.js";

/**
 * The grade of each hive under its contract, by the middle of each figure.
 *
 * @remarks The best grade whose frames and brood the hive has. "no grade" where it reaches none or
 * lacks what the contract asks of every hive, "dead-out" where it is written dead. #N/A where the
 * contract asks for brood, a laying queen or stores and that is not judged.
 * @example =COMB.GRADE("7-8",,"Almond Board of California") gives "at minimum" (average 8, minimum 6).
 * @customfunction GRADE
 * @helpurl https://localhost:3000/help.html#GRADE
 * @param frames A row a hive: frames of bees, or the counts of its boxes, counted by the contract's rule.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name; one, or a row each.
 * @param brood A row a hive: combs that hold brood where the cover is given, else brood as the contract counts it.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100.
 * @param queen Laying queen: yes or no.
 * @param stores Stores in the contract's unit.
 * @param box_frames Frame in the boxes, one or a row of one for each column of frames; the contract's where left out.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns The grade's name, a row a hive; blank for a hive that was not opened.
 */
export function GRADE(
  frames: unknown[][],
  terms?: unknown[][],
  contract?: unknown[][],
  brood?: unknown[][],
  brood_cover?: unknown[][],
  queen?: unknown[][],
  stores?: unknown[][],
  box_frames?: unknown[][],
  inspected?: unknown[][],
): unknown[][] {
  const values = [
    frames,
    terms,
    contract,
    brood,
    brood_cover,
    queen,
    stores,
    box_frames,
    inspected,
  ];
  return answer(hiveParameters, values, (...args) =>
    underContract(args, 1, (contract, hive) => [gradeOf(contract, hive).name]),
  );
}

/**
 * What each hive is short of the next better grade: frames of bees, brood, or which grade that is.
 *
 * @remarks Blank for a hive of the best grade. 0 frames means that it is short of something else.
 * @example =COMB.SHORT_OF("7-8",,"Almond Board of California") gives 0.5, to the average of 8.
 * @customfunction SHORT_OF
 * @helpurl https://localhost:3000/help.html#SHORT_OF
 * @param frames A row a hive: frames of bees, or the counts of its boxes, counted by the contract's rule.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name; one, or a row each.
 * @param brood A row a hive: combs that hold brood where the cover is given, else brood as the contract counts it.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100.
 * @param queen Laying queen: yes or no.
 * @param stores Stores in the contract's unit.
 * @param box_frames Frame in the boxes, one or a row of one for each column of frames; the contract's where left out.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @param part "frames" (also where left out), "brood", "grade", or "all" three beside each other.
 * @returns The part asked for, a row a hive; blank for a hive that was not opened.
 */
export function SHORT_OF(
  frames: unknown[][],
  terms?: unknown[][],
  contract?: unknown[][],
  brood?: unknown[][],
  brood_cover?: unknown[][],
  queen?: unknown[][],
  stores?: unknown[][],
  box_frames?: unknown[][],
  inspected?: unknown[][],
  part?: unknown,
): unknown[][] {
  const values = [
    frames,
    terms,
    contract,
    brood,
    brood_cover,
    queen,
    stores,
    box_frames,
    inspected,
  ];
  return answer(shortParameters, [...values, part], (...args) => {
    const part = args[9];
    const parts = part === "all" ? (["frames", "brood", "grade"] as const) : [part];
    return underContract(args, parts.length, (contract, hive) => {
      const short = shortOf(contract, hive);
      return parts.map((p) => (short === null ? "" : (short[p] ?? broodNotJudged())));
    });
  });
}

function broodNotJudged(): CellError {
  const message = "the next grade asks for brood, and that is not judged for this hive";
  return toCellError(new Refusal(message, "unknown"), "");
}

const shortParameters = [
  ...hiveParameters,
  choice("part", ["frames", "brood", "grade", "all"]),
] as const;

/**
 * Each thing that the contract asks of a hive, met or not: frames, brood, laying queen, stores, and why.
 *
 * @remarks Five columns for each hive: "met", "not met", "not judged" or "not asked" four times, and
 * a sentence. Frames are held against the contract's minimum, or its lowest grade.
 * @example =COMB.HIVE_CHECK(5,,"Almond Board of California") gives "not met", "not asked", "not asked", "not asked", "frames 5 of 6".
 * @customfunction HIVE_CHECK
 * @helpurl https://localhost:3000/help.html#HIVE_CHECK
 * @param frames A row a hive: frames of bees, or the counts of its boxes, counted by the contract's rule.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name; one, or a row each.
 * @param brood A row a hive: combs that hold brood where the cover is given, else brood as the contract counts it.
 * @param brood_cover Percent of those combs that brood covers, 0 to 100.
 * @param queen Laying queen: yes or no.
 * @param stores Stores in the contract's unit.
 * @param box_frames Frame in the boxes, one or a row of one for each column of frames; the contract's where left out.
 * @param inspected Date or year of the inspection, one or a row each: a count that became a date has that year.
 * @returns Five columns, a row a hive; blank for a hive that was not opened.
 */
export function HIVE_CHECK(
  frames: unknown[][],
  terms?: unknown[][],
  contract?: unknown[][],
  brood?: unknown[][],
  brood_cover?: unknown[][],
  queen?: unknown[][],
  stores?: unknown[][],
  box_frames?: unknown[][],
  inspected?: unknown[][],
): unknown[][] {
  const values = [
    frames,
    terms,
    contract,
    brood,
    brood_cover,
    queen,
    stores,
    box_frames,
    inspected,
  ];
  return answer(hiveParameters, values, (...args) =>
    underContract(args, 5, (contract, hive) => [
      ...requirementsOf(contract, hive).map((requirement) => requirement.verdict),
      hive.frames.dead ? DEAD_OUT : reasonOf(contract, hive, null),
    ]),
  );
}

export const grade: SheetFunction = { id: "GRADE", parameters: hiveParameters, evaluate: GRADE };
export const shortOfFunction: SheetFunction = {
  id: "SHORT_OF",
  parameters: shortParameters,
  evaluate: SHORT_OF,
};
export const hiveCheck: SheetFunction = {
  id: "HIVE_CHECK",
  parameters: hiveParameters,
  evaluate: HIVE_CHECK,
};
