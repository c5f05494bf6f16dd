import { Refusal } from "../../core/refusal.js";
import { isBlank } from "../../functions/cells.js";
import { cellName } from "../address.js";
import { usePane } from "../context.js";
import { shownCell, shownDay, shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
import { formulaFor, resultOf, type Answer, type Ends, type Filled } from "./conversions.js";

const t = texts.convert;

interface Props {
  readonly answer: Answer;
  readonly filled: Filled;
  /** How figures are written, where not plainly. */
  readonly written: string | null;
  readonly sign: "." | ",";
}

/** One answer with its ends, the formula that gives it, and the way to put that into a cell. */
export function AnswerLine({ answer, filled, written, sign }: Props) {
  const { workbook, change } = usePane();
  const label = t.answers[answer.id]!;
  const shown = resultOf(answer, filled, written);
  const formula = formulaFor(answer, filled, written);
  const one = (value: number): string =>
    answer.unit === "day" ? shownDay(value) : shownNumber(value, sign);
  const put = () =>
    change(async () => {
      const { sheet, row, column } = await workbook.active();
      const place = { sheet, row, column, rows: 1, columns: 1 };
      const [block] = await workbook.read([place]);
      const [entry, value] = [block!.entries[0]![0]!, block!.values[0]![0]];
      const cell = cellName(row, column);
      if (entry !== "" || !isBlank(value)) {
        throw new Refusal(t.filled(cell, entry === "" ? shownCell(value, sign) : String(entry)));
      }
      const formats = answer.unit === "day" ? "yyyy-mm-dd" : "General";
      const undo = await workbook.write([
        { kind: "put", place, expect: [[""]], put: [[formula]], formats },
      ]);
      return { sentence: t.written(cell), undo };
    });
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        {"why" in shown ? (
          <output class="error">{shown.why}</output>
        ) : (
          <>
            <output class="result">{one(shown.middle)}</output>
            <span class="quiet">{rangeOf(shown, one)}</span>
            <code>{formula}</code>
            <WriteButton aria-label={t.putAbout(label)} press={put}>
              {t.put}
            </WriteButton>
          </>
        )}
      </dd>
    </div>
  );
}

function rangeOf({ low, high, middle }: Ends, one: (value: number) => string): string {
  if (low === null) return high === null ? "" : t.until(one(high));
  if (high === null) return t.from(one(low));
  return low === middle && high === middle ? "" : t.range(one(low), one(high));
}
