import { useCallback, useState } from "preact/hooks";
import { CellError } from "../../functions/cells.js";
import { observerErrorFunction } from "../../functions/second-look.js";
import { columnName } from "../address.js";
import { Choice, type Option } from "../choice.js";
import { optionOf } from "../columns/no-yard.js";
import { readTables } from "../contract/tables.js";
import { cells, evaluate, literal } from "../formula.js";
import { NotRead } from "../not-read.js";
import { regionKey, type Block, type Workbook } from "../port.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { useWatched } from "../watched.js";
import { ObserverTerm } from "./observer-term.js";
import { NO_PAIRS, Pairs } from "./pairs.js";

const t = texts.eye;
const TYPED = "typed";
const NONE = [-1, -1] as const;

/** Columns of a region, -1 where none is chosen yet. */
interface Chosen {
  readonly of: string;
  readonly columns: readonly [number, number];
}

/** The observers' error of two judges, from two columns of a sheet or from what is typed here. */
export function Judges() {
  const [from, setFrom] = useState<string | null>(null);
  const [chosen, setChosen] = useState<Chosen>({ of: "", columns: NONE });
  const [typed, setTyped] = useState(NO_PAIRS);
  const read = useCallback(
    async (workbook: Workbook) => {
      const regions = await workbook.regions();
      const region = regions.find((one) => regionKey(one) === from) ?? regions[0];
      const blocks = await workbook.read(region === undefined ? [] : [region.place]);
      return { regions, region, block: blocks[0], ...(await readTables(workbook, regions)) };
    },
    [from],
  );
  const watched = useWatched(read);
  if (watched.value === null) return <NotRead of={watched} />;
  const { regions, region, block, tables, sign } = watched.value;
  const isTyped = from === TYPED || region === undefined || block === undefined;
  const key = isTyped ? TYPED : regionKey(region);
  const columns = chosen.of === key ? chosen.columns : NONE;
  const pairs = isTyped ? typed : pairsOf(block, columns);
  const isReady = pairs.some(([one, other]) => one !== "" && other !== "");
  const same = !isTyped && columns[0] === columns[1] && columns[0] >= 0;
  const result = same ? t.same : isReady ? errorOf(pairs, sign) : null;
  return (
    <>
      <NotRead of={watched} />
      <p>{t.judgesHow}</p>
      <Choice
        id="eye-from"
        label={t.from}
        value={key}
        choose={setFrom}
        options={[
          ...regions.map((one) => optionOf({ region: one, place: one.place })),
          [TYPED, t.typed],
        ]}
      />
      {isTyped ? (
        <Pairs typed={typed} change={setTyped} />
      ) : (
        <div class="fields">
          {([0, 1] as const).map((judge) => (
            <Choice
              key={judge}
              id={`eye-judge-${judge}`}
              label={t.judge[judge]}
              value={String(columns[judge])}
              choose={(column) => {
                const one = Number(column);
                setChosen({
                  of: key,
                  columns: judge === 0 ? [one, columns[1]] : [columns[0], one],
                });
              }}
              options={[[String(NONE[judge]), t.choose], ...headingsOf(block)]}
            />
          ))}
        </div>
      )}
      {typeof result === "string" && <p class="error">{result}</p>}
      {Array.isArray(result) && (
        <>
          <table>
            <tbody>
              {result.map(([label, figure, remark]) => (
                <tr key={label}>
                  <th scope="row">{label}</th>
                  <td>{shownNumber(figure, sign)}</td>
                  <td class="quiet">{remark}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p>{t.sure(result[1]![1])}</p>
          <ObserverTerm error={result[0]![1]} tables={tables} sign={sign} />
        </>
      )}
    </>
  );
}

/** The columns of a region, each by its letter and its heading. */
function headingsOf({ values, place }: Block): Option[] {
  return values[0]!.map((heading, column) => [
    String(column),
    `${columnName(place.column + column)}: ${String(heading ?? "")}`,
  ]);
}

/** Two columns under their heading row, rows of totals left out; blanks where none is chosen. */
function pairsOf({ values }: Block, [first, second]: readonly [number, number]) {
  return values
    .slice(1)
    .filter((row) => !row.some((cell) => /^(?:totals?|sum|averages?|mean)\b/i.test(String(cell))))
    .map((row): readonly [unknown, unknown] => [row[first] ?? "", row[second] ?? ""]);
}

/** What the function of the sheet says of the pairs, or why it says nothing. */
function errorOf(
  pairs: readonly (readonly [unknown, unknown])[],
  sign: "." | ",",
): readonly (readonly [string, number, string])[] | string {
  const rows = evaluate(observerErrorFunction, [
    cells(
      "",
      pairs.map(([first]) => [first]),
    ),
    cells(
      "",
      pairs.map(([, second]) => [second]),
    ),
    literal(sign === "," ? "decimal comma" : null),
  ]);
  const [[cell]] = rows as [[unknown]];
  return cell instanceof CellError
    ? cell.message
    : (rows as unknown as readonly (readonly [string, number, string])[]);
}
