import { shownApart } from "../core/apart.js";
import type { Contract } from "../core/contract.js";
import { rounded } from "../core/estimate.js";
import { countLot, type Lot } from "../core/lot.js";
import { Refusal } from "../core/refusal.js";
import { lotAverage } from "../core/sampling.js";
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

/** Of a lot that nobody judged. */
export const NOTHING: Verdict = { average: "", met: "", caution: "" };

/**
 * What a lot of a sheet comes to; what keeps it from being judged is its caution, but for rows and
 * hives that have their own notes.
 *
 * @param lot - its name, null where the sheet has none
 * @param contract - the one that all of its hives go by
 */
export function verdictOn(
  values: unknown[][],
  lot: string | null,
  grading: Grading,
  contract: string,
): Verdict {
  try {
    return judged(values, lot, contractOf(grading, contract));
  } catch (error) {
    if (error instanceof Refusal && error.kind === "wrong") {
      return { ...NOTHING, caution: `${whose(lot)}${error.message}.` };
    }
    if (error instanceof Refusal || error instanceof CellError || error instanceof Problem) {
      return NOTHING;
    }
    throw error;
  }
}

/** Of a lot whose hives name several contracts. */
export function severalContracts(lot: string | null): Verdict {
  const caution = `${whose(lot)}the hives go by several contracts, and no average is told.`;
  return { ...NOTHING, caution };
}

const whose = (lot: string | null): string => (lot === null ? "" : `Lot ${lot}: `);

function judged(values: unknown[][], lot: string | null, contract: Contract): Verdict {
  const { lot: found } = lotOfSheet(values, contract, lot, null);
  const { average, opened, met } = countLot(contract, found);
  const { averageFrames, underMinimum } = contract;
  const asks = averageFrames > 0 || underMinimum === "rejects the load";
  return {
    average: average === null ? "" : shownApart(average, averageFrames),
    met: asks ? (met ? "met" : "not met") : "",
    caution: opened === found.size ? "" : cautionOn(found, lot, contract),
  };
}

function cautionOn(found: Lot, lot: string | null, contract: Contract): string {
  const { hives, size } = found;
  const share = (100 * hives.length) / size;
  const { low, high } = lotAverage(contract, found, CONFIDENCE);
  const said = together(
    `${whose(lot)}${hives.length} of ${size} hives are opened, ${rounded(share)} %`,
    atLeast(share, contract.openedShare)
      ? ""
      : `contract ${contract.name} asks for ${contract.openedShare} %`,
    low === null || high === null
      ? "too few to tell the whole lot's average"
      : `the whole lot's average lies between ${rounded(low)} and ${rounded(high)}, ${CONFIDENCE} times in 100`,
  );
  return `${said}.`;
}

const CONFIDENCE = 95;
