import { useCallback, useState } from "preact/hooks";
import { CellError } from "../../functions/cells.js";
import { observerErrorFunction } from "../../functions/second-look.js";
import { columnName, rangeName } from "../address.js";
import { readTables } from "../contract/tables.js";
import { useWatched } from "../context.js";
import { cells, evaluate, literal } from "../formula.js";
import type { Block, Workbook } from "../port.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { ObserverTerm } from "./observer-term.js";

const t = texts.eye;
const TYPED = "typed";
const PAIRS = 10;

/** The observers' error of two judges, from two columns of a sheet or from what is typed here. */
export function Judges() {
  const [from, setFrom] = useState<string | null>(null);
  const [columns, setColumns] = useState<readonly [number, number]>([-1, -1]);
  const [typed, setTyped] = useState<readonly (readonly [string, string])[]>(
    Array.from({ length: PAIRS }, () => ["", ""] as const),
  );
  const read = useCallback(
    async (workbook: Workbook) => {
      const regions = await workbook.regions();
      const chosen = regions.find((region) => region.name === from) ?? regions[0];
      const blocks = await workbook.read(chosen === undefined ? [] : [chosen.place]);
      return { regions, chosen, block: blocks[0], ...(await readTables(workbook)) };
    },
    [from],
  );
  const [watched] = useWatched(read);
  if (watched.state === "reading") return <p>{texts.waiting}</p>;
  if (watched.state === "refused") return <p class="error">{watched.why}</p>;
  const { regions, chosen, block, tables, sign } = watched.value;
  const isTyped = from === TYPED || block === undefined;
  const pairs = isTyped ? typed : pairsOf(block, columns);
  const result = pairs.some(([one, other]) => one !== "" && other !== "")
    ? errorOf(pairs, sign)
    : null;
  return (
    <>
      <p>{t.judgesHow}</p>
      <p class="field">
        <label for="eye-from">{t.from}</label>
        <select
          id="eye-from"
          value={isTyped ? TYPED : chosen!.name}
          onChange={(event) => {
            setFrom(event.currentTarget.value);
            setColumns([-1, -1]);
          }}
        >
          {regions.map(({ kind, name, place }) => (
            <option key={`${kind} ${name}`} value={name}>
              {texts.columns.candidate(name, texts.columns.kinds[kind], rangeName(place))}
            </option>
          ))}
          <option value={TYPED}>{t.typed}</option>
        </select>
      </p>
      {isTyped ? (
        <Pairs typed={typed} change={setTyped} />
      ) : (
        <div class="fields">
          {([0, 1] as const).map((judge) => (
            <Column
              key={judge}
              judge={judge}
              block={block}
              value={columns[judge]}
              choose={(column) =>
                setColumns(judge === 0 ? [column, columns[1]] : [columns[0], column])
              }
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

interface ColumnProps {
  readonly judge: 0 | 1;
  readonly block: Block;
  readonly value: number;
  readonly choose: (column: number) => void;
}

function Column({ judge, block, value, choose }: ColumnProps) {
  const id = `eye-judge-${judge}`;
  return (
    <p class="field">
      <label for={id}>{t.judge[judge]}</label>
      <select id={id} value={value} onChange={(event) => choose(Number(event.currentTarget.value))}>
        <option value={-1}>{t.choose}</option>
        {block.values[0]!.map((heading, column) => (
          <option key={column} value={column}>
            {`${columnName(block.place.column + column)}: ${String(heading ?? "")}`}
          </option>
        ))}
      </select>
    </p>
  );
}

interface PairsProps {
  readonly typed: readonly (readonly [string, string])[];
  readonly change: (typed: readonly (readonly [string, string])[]) => void;
}

function Pairs({ typed, change }: PairsProps) {
  return (
    <table class="pairs">
      <thead>
        <tr>
          <th scope="col">{t.hive}</th>
          <th scope="col">{t.judge[0]}</th>
          <th scope="col">{t.judge[1]}</th>
        </tr>
      </thead>
      <tbody>
        {typed.map((pair, hive) => (
          <tr key={hive}>
            <th scope="row">{hive + 1}</th>
            {([0, 1] as const).map((judge) => (
              <td key={judge}>
                <input
                  type="text"
                  size={6}
                  autocomplete="off"
                  aria-label={t.judged(hive + 1, t.judge[judge])}
                  value={pair[judge]}
                  onInput={({ currentTarget: { value } }) =>
                    change(
                      typed.map((old, i) => {
                        if (i !== hive) return old;
                        return judge === 0 ? [value, old[1]] : [old[0], value];
                      }),
                    )
                  }
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Two columns under their heading row; blanks where none is chosen. */
function pairsOf({ values }: Block, [first, second]: readonly [number, number]) {
  return values
    .slice(1)
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
