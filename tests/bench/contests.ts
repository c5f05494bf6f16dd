import { COVER_TO_BEES } from "../../src/functions/bees.js";
import { FORECAST } from "../../src/functions/forecast.js";
import { GRADE } from "../../src/functions/grade.js";
import { LOT } from "../../src/functions/lot.js";
import { READING } from "../../src/functions/reading.js";
import { YARD_COLUMNS } from "../../src/functions/yard.js";
import {
  coverBlock,
  FRAMES_ONLY,
  LOT_TERMS,
  NONE,
  numberColumn,
  oneLotBlock,
  TERMS,
  writtenColumn,
  yardBlock,
} from "./sheets.js";

/** A function over sheets of any length, beside a bare loop over the same cells. */
export interface Contest {
  readonly name: string;
  readonly sheet: (hives: number) => unknown[][];
  /** Columns that it fills. */
  readonly width: number;
  readonly run: (cells: unknown[][]) => unknown[][];
}

export const contests: readonly Contest[] = [
  { name: "READING, as written", sheet: writtenColumn, width: 1, run: (cells) => READING(cells) },
  {
    name: "GRADE, numbers",
    sheet: numberColumn,
    width: 1,
    run: (cells) => GRADE(cells, FRAMES_ONLY, [["Cherry"]]),
  },
  {
    name: "GRADE, as written",
    sheet: writtenColumn,
    width: 1,
    run: (cells) => GRADE(cells, FRAMES_ONLY, [["Cherry"]]),
  },
  {
    name: "COVER_TO_BEES, 10",
    sheet: coverBlock,
    width: 10,
    run: (cells) => COVER_TO_BEES(cells),
  },
  {
    name: "YARD_COLUMNS",
    sheet: yardBlock,
    width: 7,
    run: (cells) => YARD_COLUMNS(cells, TERMS, NONE),
  },
  {
    name: "LOT",
    sheet: oneLotBlock,
    width: 1,
    run: (cells) => LOT(cells, cells.length - 1, LOT_TERMS, "Cherry"),
  },
  {
    name: "FORECAST",
    sheet: numberColumn,
    width: 1,
    run: (cells) => FORECAST(cells, [[46109]], [[46123]], cells, [[60]]),
  },
];
