import { useMemo } from "preact/hooks";
import { CellError } from "../../functions/cells.js";
import { COLUMNS } from "../../functions/yard.js";
import { address } from "../address.js";
import { useWrite } from "../context.js";
import { whyOf } from "../or-why.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
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
  // A call a row and column, besides the one of the whole sheet.
  const worked = useMemo(() => {
    if (obstacle !== null || names.length === 0) return null;
    const whole = spillResult(spillArguments(yard, choice, names, own));
    const only = whole[0]![0];
    if (only instanceof CellError) return { fault: whyOf(only) };
    const chosen = names.map((name) => possible.get(name)!);
    return { chosen, differing: differingRows(yard, chosen, whole).map((i) => rowNumber(yard, i)) };
  }, [yard, choice, contract, columns.join()]);
  if (obstacle === "rows") return <p class="error">{t.obstacles.rows(MOST_ROWS)}</p>;
  if (obstacle !== null) return <p class="error">{t.obstacles[obstacle]}</p>;
  const left = others.map((name) => COLUMNS[name]!.heading).join("; ");
  if (worked === null) return <p class="error">{t.notInside(left)}</p>;
  if ("fault" in worked)
    return <p class="error">{t.cannot(worked.fault) + rowsNamed(yard, worked.fault)}</p>;
  const { chosen, differing } = worked;
  const found =
    there &&
    inTheWay(
      there,
      yard,
      sheets.regions.filter((r) => r !== yard.region),
    );
  const problem = found
    ? t.filledInside(address(there.place, own), found.address, found.holds)
    : why;
  return (
    <>
      <p class="quiet">{t.insideHow(MOST_ROWS)}</p>
      {left !== "" && <p>{t.notInside(left)}</p>}
      {differing.length > 0 && <p class="asked">{t.differ(list(differing))}</p>}
      <p class={problem ? "error" : "quiet"} aria-live="polite">
        {problem ?? (there && t.willGo(address(there.place, own)))}
      </p>
      <Preview
        yard={yard}
        sign={sheets.sign}
        headings={chosen.map(({ heading }) => heading)}
        rowAt={rowResults(yard, chosen)}
      />
      <WriteButton
        main
        disabled={problem !== null || there === null}
        press={() => {
          const steps = insideSteps(yard, there!, chosen);
          return write(steps, t.written(address(there!.place, own), names.length));
        }}
      >
        {t.write}
      </WriteButton>
    </>
  );
}

function list(rows: readonly number[]): string {
  const more = rows.length - NAMED;
  return rows.slice(0, NAMED).join(", ") + (more > 0 ? `, ${t.more(more)}` : "");
}
