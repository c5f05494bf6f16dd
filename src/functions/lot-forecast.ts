import type { Contract } from "../core/contract.js";
import { lotForecast, type LotForecast } from "../core/lot-forecast.js";
import { plural } from "../core/plural.js";
import { Refusal } from "../core/refusal.js";
import { together } from "../core/together.js";
import { CellError, isBlankOrZero, toCellError, type Cell } from "./cells.js";
import { contractOfLot } from "./lot-contract.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { dateOf } from "./dates.js";
import { layingParameter, seasonParameter, trustIn } from "./forecast-cells.js";
import { HiveCells } from "./hive-cells.js";
import { lotInSheet } from "./lot-sheet.js";
import { block, number, text } from "./parameters.js";

const parameters = [
  block("yard"),
  block("on"),
  number("lot_size", 1e6),
  optional(block("terms")),
  text("contract"),
  text("lot"),
  seasonParameter,
  layingParameter,
  number("space", 100),
] as const;

const HEADINGS = [
  "Date",
  "Days ahead",
  "Average frames",
  "Low",
  "High",
  "Asked",
  "By the forecast",
  "Chance to meet it, %",
  "Note",
];

/**
 * A lot's average on later days such as the inspection and full bloom, with its band and the chance that it meets the contract then, spilled.
 *
 * @remarks Each opened hive is forecast as FORECAST does, from its date, bees, brood combs and their
 * cover; the contract counts the forecasts as it counts hives. The band holds nine lots in ten, with
 * the error that all hives of one yard share (no number of hives lessens it) and that of the hives
 * not opened. The chance is a forecast, not a promise: docs/forecast.md says how good it is.
 * @example =COMB.LOT_FORECAST(A1:K61,DATE(2026,4,10),160,Terms,"Cherry","Shed") gives one row under a heading.
 * @customfunction LOT_FORECAST
 * @helpurl https://localhost:3000/help.html#LOT_FORECAST
 * @param yard The yard sheet with its heading row and a date column, one hive a row; with the lot given, also with other lots in it.
 * @param on Dates to forecast, a row or a column of them.
 * @param lot_size Hives in the lot, opened or not; left out where all of them stand in the sheet.
 * @param terms The Terms table with its heading row; left out for a published standard.
 * @param contract The contract's heading in the Terms table, or a published standard's name.
 * @param lot The lot's name in the sheet's lot column; left out where the sheet holds one lot.
 * @param season "build-up", "summer", "autumn", "winter", or adult bees that die a day in percent, such as 5; by the date where left out.
 * @param laying Eggs a day that go on being laid in a hive, or "today" for what today's brood shows; or "none"; a date beyond 21 days is #N/A where it is left out.
 * @param space Most frames of bees that a hive's boxes hold; no limit where left out.
 * @returns A heading row, then a row a date: date, days ahead, average frames, low, high, frames asked, met or not, chance in percent, note.
 */
export function LOT_FORECAST(
  yard: unknown[][],
  on: unknown[][],
  lot_size?: unknown,
  terms?: unknown[][],
  contract?: unknown,
  lot?: unknown,
  season?: unknown,
  laying?: unknown,
  space?: unknown,
): unknown[][] {
  const values = [yard, on, lot_size, terms, contract, lot, season, laying, space];
  return answer(
    parameters,
    values,
    (yard, on, size, terms, name, lotName, season, laying, space) => {
      const contract = contractOfLot(terms, name, yard, lotName);
      const { looks, size: sizeOf, remark } = lotInSheet(yard, contract, lotName);
      const inLot = sizeOf(size);
      const asked = contract.averageFrames;
      const rows = datesOf(on, contract).map((date): Cell[] => {
        const told = known(() =>
          lotForecast(contract, looks, inLot, date, { season, laying, space }),
        );
        if (told instanceof CellError) {
          const open = HEADINGS.slice(1, -1).map(() => told);
          return [date, ...open, told.message];
        }
        return [
          date,
          told.days[0],
          told.middle,
          told.low,
          told.high,
          asked === 0 ? "none" : asked,
          told.met === null ? "not asked" : told.met ? "met" : "not met",
          told.chance === null ? "" : 100 * told.chance,
          together(noteOn(told, laying, space), remark),
        ];
      });
      return [HEADINGS, ...rows];
    },
  );
}

/** What is told, or why that is not known of this date alone. */
function known<T>(body: () => T): T | CellError {
  try {
    return body();
  } catch (error) {
    if (error instanceof Refusal && error.kind === "unknown") return toCellError(error, "");
    throw error;
  }
}

function datesOf(cells: readonly (readonly unknown[])[], contract: Contract): number[] {
  const column = new HiveCells("on", cells);
  const dates = cells.flatMap((row, i) =>
    row.flatMap((cell, k) => {
      if (isBlankOrZero(cell)) return [];
      return [column.named(i, k, () => dateOf(column.cell(i, k), contract))];
    }),
  );
  if (dates.length === 0) throw new Refusal("on is blank: give a date to forecast");
  return dates;
}

function noteOn(
  { days: [first], sampled, counted }: LotForecast,
  laying: number | "today" | null,
  space: number | null,
): string {
  return together(
    trustIn(first, laying, space, "lots"),
    `in the average: ${plural(counted, "hive")}`,
    sampled ? "" : "every hive was opened: no sampling error is in the band",
    "brood taken as of all stages",
  );
}

export const lotForecastFunction: SheetFunction = {
  id: "LOT_FORECAST",
  parameters,
  evaluate: LOT_FORECAST,
  table: true,
  dates: ["Date"],
};
