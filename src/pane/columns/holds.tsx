import { isDateSerial } from "../../core/date-count.js";
import { countsCombsThatHold, type Role } from "../../core/headings.js";
import { isBlank } from "../../functions/cells.js";
import { cellName, columnName } from "../address.js";
import { useWrite } from "../context.js";
import { shownCell, shownDay } from "../shown.js";
import { texts } from "../texts.js";
import {
  questionsOf,
  renamesFor,
  renameSteps,
  ROLES,
  type Choices,
  type Question,
} from "./rename.js";
import { columnsOf, type Yard } from "./yard.js";

const t = texts.columns;
const YOURS = "yours";
const ASK = "ask";

interface Props {
  readonly yard: Yard;
  readonly sign: "." | ",";
  readonly choices: Choices;
  readonly choose: (choices: Choices) => void;
}

/** What each column was taken for, with an example, and the way to say otherwise. */
export function Holds({ yard, sign, choices, choose }: Props) {
  const write = useWrite();
  const { roles } = columnsOf(yard);
  const questions = questionsOf(yard);
  const renames = renamesFor(yard, choices);
  const set = (column: number, value: string) => {
    const after = new Map(choices);
    if (value === ASK) after.delete(column);
    else after.set(column, value === YOURS ? null : (value as Role));
    choose(after);
  };
  const valueOf = (column: number, asked: Question | undefined): string => {
    if (choices.has(column)) return choices.get(column) ?? YOURS;
    return asked ? ASK : (roles[column] ?? YOURS);
  };
  const held = yard.headings.map((_, k) =>
    valueOf(
      k,
      questions.find((q) => q.column === k),
    ),
  );
  const broodAs = broodIn(yard.headings, held);
  const addressOf = (column: number) => cellName(yard.place.row, yard.place.column + column);
  return (
    <>
      <h2>{t.holds}</h2>
      <p class="quiet">{t.holdsHow}</p>
      <table class="holds">
        <thead>
          <tr>
            <th scope="col">{t.column}</th>
            <th scope="col">{t.takenFor}</th>
          </tr>
        </thead>
        <tbody>
          {yard.headings.map((heading, column) => {
            const letter = columnName(yard.place.column + column);
            const example = exampleOf(yard, column, sign, roles[column]!);
            if (heading === "" && example === "") return null;
            const asked = questions.find((q) => q.column === column);
            const isAsked = asked !== undefined && !choices.has(column);
            const isBrood = held[column] === "brood";
            const about = `columns-about-${column}`;
            return (
              <tr key={column}>
                <th scope="row">
                  {heading === "" ? t.noHeading(letter) : heading}
                  <span class="quiet">{example === "" ? t.empty : t.example(example)}</span>
                </th>
                <td>
                  <select
                    aria-label={t.takenForOf(heading || t.noHeading(letter))}
                    aria-describedby={isAsked || isBrood ? about : undefined}
                    value={held[column]}
                    onChange={(event) => set(column, event.currentTarget.value)}
                  >
                    {asked && <option value={ASK}>{t.say}</option>}
                    {ROLES.map((role) => (
                      <option key={role} value={role}>
                        {roleText(role)}
                      </option>
                    ))}
                    <option value={YOURS}>{t.yours}</option>
                  </select>
                  {isAsked && (
                    <span id={about} class="asked">
                      {t.asked[asked.why](heading, roleText(asked.role))}
                    </span>
                  )}
                  {isBrood && (
                    <span id={about} class="quiet">
                      {t.broodAs[broodAs]}
                    </span>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {renames.length > 0 && (
        <div class="step">
          <p>{t.renames}</p>
          <ul>
            {renames.map(({ column, from, to }) => (
              <li key={column}>{t.becomes(addressOf(column), from, to)}</li>
            ))}
          </ul>
          <button
            type="button"
            onClick={() => void write(renameSteps(yard, renames), t.renamed(renames.length))}
          >
            {t.rename}
          </button>
        </div>
      )}
    </>
  );
}

/** What the functions take the brood of a sheet for, as they read it row by row. */
function broodIn(headings: readonly string[], held: readonly string[]): keyof typeof t.broodAs {
  if (held.includes("brood cover")) return "covered";
  const isOfCombs = headings.some((h, k) => held[k] === "brood" && countsCombsThatHold(h));
  return isOfCombs ? "combs" : "contract";
}

export function roleText(role: Role): string {
  return t.roles[role] ?? role;
}

function exampleOf(
  { values, formats }: Yard,
  column: number,
  sign: "." | ",",
  role: Role | null,
): string {
  const row = values.findIndex((cells, i) => i > 0 && !isBlank(cells[column]));
  if (row < 0) return "";
  const value = values[row]![column];
  const isDay = role === "date" && typeof value === "number" && isDateSerial(value);
  return isDay ? shownDay(value) : shownCell(value, sign, formats[row]![column]);
}
