import { shownApart } from "../core/apart.js";
import type { Contract } from "../core/contract.js";
import { rounded } from "../core/estimate.js";
import { matchHeadings } from "../core/headings.js";
import { countLot, type Lot } from "../core/lot.js";
import { Refusal } from "../core/refusal.js";
import { lotAverage } from "../core/sampling.js";
import { normalise } from "../core/text.js";
import { together } from "../core/together.js";
import { atLeast } from "../core/tolerance.js";
import { CellError } from "../functions/cells.js";
import { lotOfSheet } from "../functions/lot-sheet.js";
import { Problem } from "../workbook/problem.js";
import type { Grading } from "./columns.js";
import { contractOf } from "./grading.js";

/** What the opened hives of a lot come to, as it is printed; blank where that cannot be told. */
export interface Verdict {
  readonly average: string;
  readonly met: string;
  /** How sure that is of a lot of which hives stand in the sheet and were not opened; else empty. */
  readonly caution: string;
}

const NOTHING: Verdict = { average: "", met: "", caution: "" };

/** Judges the lots of a sheet one by one, each by its own rows. */
export function lotJudge(
  values: readonly (readonly unknown[])[],
): (lot: string, grading: Grading) => Verdict {
  const [headings = [], ...rows] = values;
  const column = matchHeadings(headings.map(String)).roles.indexOf("lot");
  const byLot = new Map<string, unknown[][]>();
  for (const row of rows) {
    const key = normalise(String(row[column] ?? ""));
    const own = byLot.get(key) ?? [[...headings]];
    own.push([...row]);
    byLot.set(key, own);
  }
  return (lot, grading) => {
    // Rows that name their own contracts make no lot under one.
    if (grading.contract === null) return NOTHING;
    const own = byLot.get(normalise(lot));
    if (own === undefined) return NOTHING;
    try {
      return verdictOn(own, lot, grading.contract, contractOf(grading, grading.contract));
    } catch (error) {
      if (error instanceof Refusal || error instanceof CellError || error instanceof Problem) {
        return NOTHING;
      }
      throw error;
    }
  };
}

function verdictOn(rows: unknown[][], lot: string, name: string, contract: Contract): Verdict {
  const found = lotOfSheet(rows, contract, null, null);
  const { average, opened, met } = countLot(contract, found);
  const { averageFrames, underMinimum } = contract;
  const asks = averageFrames > 0 || underMinimum === "rejects the load";
  return {
    average: average === null ? "" : shownApart(average, averageFrames),
    met: asks ? (met ? "met" : "not met") : "",
    caution: opened === found.size ? "" : cautionOn(found, lot, name, contract),
  };
}

function cautionOn(found: Lot, lot: string, name: string, contract: Contract): string {
  const { hives, size } = found;
  const share = (100 * hives.length) / size;
  const { low, high } = lotAverage(contract, found, CONFIDENCE);
  const said = together(
    `${lot === "" ? "" : `Lot ${lot} under ${name}: `}${hives.length} of ${size} hives are opened, ${rounded(share)} %`,
    atLeast(share, contract.openedShare) ? "" : `${contract.openedShare} % are asked for`,
    low === null || high === null
      ? "too few to tell the whole lot's average"
      : `the whole lot's average lies between ${rounded(low)} and ${rounded(high)}, ${CONFIDENCE} times in 100`,
  );
  return `${said}.`;
}

const CONFIDENCE = 95;
