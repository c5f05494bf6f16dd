import { Fragment } from "preact";
import {
  outcomeOf,
  type Statement,
  type StatementCell,
  type StatementRow,
} from "../../functions/statement-model.js";
import { localised, shownDay } from "../shown.js";

interface Props {
  readonly statement: Statement;
  readonly sign: "." | ",";
}

/** The lines of a statement that matter most, as they will be printed. */
export function Preview({ statement, sign }: Props) {
  const shown = (row: StatementRow): string => lineOf(row, sign, statement.moneyDecimals);
  return (
    <dl class="verdict" aria-live="polite">
      {outcomeOf(statement).map(({ heading, rows }) => (
        <Fragment key={heading}>
          <dt>{heading}</dt>
          {rows.map((row, i) => (
            <dd key={i}>{shown(row)}</dd>
          ))}
        </Fragment>
      ))}
    </dl>
  );
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
