import { CellError } from "../../functions/cells.js";
import { COLUMNS } from "../../functions/yard.js";
import { reference } from "../address.js";
import { useWrite } from "../context.js";
import { texts } from "../texts.js";
import type { Asked } from "./adding.js";
import { usePlace } from "./place.js";
import { Preview } from "./preview.js";
import {
  differingRows,
  insidePlace,
  insideSteps,
  MOST_ROWS,
  obstacleTo,
  rowColumns,
  rowResults,
} from "./row-formulas.js";
import { rowsNamed } from "./rows-named.js";
import { inTheWay, spillArguments, spillResult } from "./spill.js";
import { rowNumber } from "./yard.js";

const t = texts.columns;
/** Row numbers that are named one by one. */
const NAMED = 8;

/** Writes the columns right beside those of the sheet, one formula a row. */
export function Inside({ sheets, yard, choice, contract, columns }: Asked) {
  const write = useWrite();
  const own = yard.place.sheet;
  const obstacle = obstacleTo(yard, contract);
  const possible = rowColumns(yard, choice, contract);
  const names = columns.filter((name) => possible.has(name));
  const others = columns.filter((name) => !possible.has(name));
  const { block: there, why } = usePlace(insidePlace(yard, Math.max(1, names.length)));
  if (obstacle === "rows") return <p class="error">{t.obstacles.rows(MOST_ROWS)}</p>;
  if (obstacle !== null) return <p class="error">{t.obstacles[obstacle]}</p>;
  const left = others.map((name) => COLUMNS[name]!.heading).join("; ");
  if (names.length === 0) return <p class="error">{t.notInside(left)}</p>;

  const whole = spillResult(spillArguments(yard, choice, names, own));
  const fault = whole[0]![0];
  if (fault instanceof CellError)
    return <p class="error">{t.cannot(fault.message) + rowsNamed(yard, fault.message)}</p>;
  const chosen = names.map((name) => possible.get(name)!);
  const differing = differingRows(yard, chosen, whole).map((i) => rowNumber(yard, i));
  const found =
    there &&
    inTheWay(
      there,
      yard,
      sheets.regions.filter((r) => r !== yard.region),
    );
  const problem = found
    ? t.filledInside(reference(there.place, own), found.address, found.holds)
    : why;
  return (
    <>
      <p class="quiet">{t.insideHow(MOST_ROWS)}</p>
      {left !== "" && <p>{t.notInside(left)}</p>}
      {differing.length > 0 && <p class="asked">{t.differ(list(differing))}</p>}
      <p class={problem ? "error" : "quiet"} aria-live="polite">
        {problem ?? (there && t.willGo(reference(there.place, own)))}
      </p>
      <Preview
        yard={yard}
        sign={sheets.sign}
        headings={chosen.map(({ heading }) => heading)}
        rowAt={rowResults(yard, chosen)}
      />
      <button
        type="button"
        class="main"
        disabled={problem !== null || there === null}
        onClick={() => {
          const steps = insideSteps(yard, there!, chosen);
          void write(steps, t.written(reference(there!.place, own), names.length));
        }}
      >
        {t.write}
      </button>
    </>
  );
}

function list(rows: readonly number[]): string {
  const more = rows.length - NAMED;
  return rows.slice(0, NAMED).join(", ") + (more > 0 ? `, ${t.more(more)}` : "");
}
