import { Fragment } from "preact";
import { OUTCOME } from "../../functions/statement.js";
import type { Statement, StatementCell, StatementRow } from "../../functions/statement-model.js";
import { localised, shownDay } from "../shown.js";
import { texts } from "../texts.js";

interface Props {
  readonly statement: Statement;
  readonly sign: "." | ",";
}

/** The lines of a statement that matter most, as they will be printed. */
export function Preview({ statement, sign }: Props) {
  const { settlement, hives, moneyDecimals } = statement;
  const shown = (row: StatementRow): string => lineOf(row, sign, moneyDecimals);
  return (
    <dl class="verdict" aria-live="polite">
      <dt>{texts.statement.hives}</dt>
      {/* Under their headings. */}
      <dd>{hives.rows.length - 1}</dd>
      {Object.values(OUTCOME).map((heading) => {
        const rows = settlement.find((section) => section.heading === heading)?.rows ?? [];
        const told = heading === OUTCOME.sure ? rows : rows.filter(isTold);
        return (
          <Fragment key={heading}>
            <dt>{heading}</dt>
            {told.map((row, i) => (
              <dd key={i}>{shown(row)}</dd>
            ))}
          </Fragment>
        );
      })}
    </dl>
  );
}

/** The verdict and the sums, or the sentence that stands for them. */
function isTold({ style }: StatementRow): boolean {
  return style === "strong" || style === "note";
}

function lineOf({ cells }: StatementRow, sign: "." | ",", moneyDecimals: number): string {
  const [label = "", ...rest] = cells.map(({ cell }) => textOf(cell, sign, moneyDecimals));
  return rest.length === 0 ? label : `${label}: ${rest.join("; ")}`;
}

function textOf(cell: StatementCell, sign: "." | ",", moneyDecimals: number): string {
  const figure = (value: number, least: number, most: number) =>
    localised(value, sign, { minimumFractionDigits: least, maximumFractionDigits: most });
  switch (cell.kind) {
    case "text":
      return cell.value;
    case "line":
      return "";
    case "date":
      return shownDay(cell.value);
    case "percent":
      return `${figure(100 * cell.value, 0, 1)} %`;
    case "money":
      return figure(cell.value, moneyDecimals, moneyDecimals);
    case "frames":
      return figure(cell.value, 0, cell.decimals ?? 2);
    case "count":
    case "quantity":
    case "rate":
      return figure(cell.value, 0, 4);
  }
}
