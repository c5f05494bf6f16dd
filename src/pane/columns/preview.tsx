import { matchHeadings } from "../../core/headings.js";
import { CellError } from "../../functions/cells.js";
import { shownCell, shownName } from "../shown.js";
import { texts } from "../texts.js";
import { rowsNamed } from "./rows-named.js";
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
  const results = Array.from({ length: Math.min(ROWS, yard.place.rows - 1) }, (_, k) =>
    rowAt(k + 1),
  );
  const said = results.flat().map((cell) => (cell instanceof CellError ? cell.message : cell));
  const rows = rowsNamed(yard, ...said);
  return (
    <div class="scroll" role="region" aria-label={t.preview} tabIndex={0}>
      <table>
        <caption>{t.preview}</caption>
        <thead>
          <tr>
            <th scope="col">{yard.headings[hive]}</th>
            {headings.map((heading, k) => (
              <th key={heading} scope="col" class={numberClass(results[0]?.[k])}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {results.map((cells, k) => (
            <tr key={k}>
              <th scope="row">{shownName(yard.values[k + 1]![hive])}</th>
              {cells.map((cell, c) => (
                <td key={c} class={numberClass(cell)}>
                  <span title={cell instanceof CellError ? cell.message : undefined}>
                    {shownCell(cell, sign)}
                  </span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {rows !== "" && <p class="quiet">{rows}</p>}
    </div>
  );
}

function numberClass(cell: unknown): string | undefined {
  return typeof cell === "number" ? "number" : undefined;
}
