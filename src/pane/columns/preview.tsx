import { matchHeadings } from "../../core/headings.js";
import { CellError } from "../../functions/cells.js";
import { shownCell } from "../shown.js";
import { texts } from "../texts.js";
import type { Yard } from "./yard.js";

const t = texts.columns;
const ROWS = 5;

interface Props {
  readonly yard: Yard;
  readonly sign: "." | ",";
  readonly headings: readonly string[];
  /** What the columns give in a row; rows count from 1, under the headings. */
  readonly rowAt: (i: number) => readonly unknown[];
}

/** The results of the first hives, before anything is written. */
export function Preview({ yard, sign, headings, rowAt }: Props) {
  const hive = Math.max(0, matchHeadings(yard.headings).roles.indexOf("hive"));
  const rows = Array.from({ length: Math.min(ROWS, yard.place.rows - 1) }, (_, k) => k + 1);
  return (
    <div class="scroll" role="region" aria-label={t.preview} tabIndex={0}>
      <table>
        <caption>{t.preview}</caption>
        <thead>
          <tr>
            <th scope="col">{yard.headings[hive]}</th>
            {headings.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => (
            <tr key={i}>
              <th scope="row">{shownCell(yard.values[i]![hive], sign)}</th>
              {rowAt(i).map((cell, k) => (
                <td key={k} class={typeof cell === "number" ? "number" : undefined}>
                  <span title={cell instanceof CellError ? cell.message : undefined}>
                    {shownCell(cell, sign)}
                  </span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
