import { isDateSerial } from "../../core/date-count.js";
import { useMemo } from "preact/hooks";
import { countsCombsThatHold, type Role } from "../../core/headings.js";
import type { DateSystem } from "../../core/serial.js";
import { isBlank } from "../../functions/cells.js";
import { cellName, columnName } from "../address.js";
import { useWrite } from "../context.js";
import { shownCell, shownDay, shownName } from "../shown.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
import {
  questionsOf,
  renamesFor,
  renameSteps,
  ROLES,
  type Choices,
  type Question,
} from "./rename.js";
import { dateSystemOf, type Terms } from "./contracts.js";
import { columnsOf, type Yard } from "./yard.js";

const t = texts.columns;
const YOURS = "yours";
const ASK = "ask";
/** Roles whose cells are names, though they be numbers. */
const NAMES: ReadonlySet<Role> = new Set(["hive", "lot", "pallet", "contract"]);

interface Props {
  readonly yard: Yard;
  readonly terms: readonly Terms[];
  readonly sign: "." | ",";
  readonly choices: Choices;
  readonly choose: (choices: Choices) => void;
}

/** What each column was taken for, with an example, and the way to say otherwise. */
export function Holds({ yard, terms, sign, choices, choose }: Props) {
  const write = useWrite();
  const system = useMemo(() => dateSystemOf(terms), [terms]);
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
            const example = exampleOf(yard, column, sign, roles[column]!, system);
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
          <WriteButton press={() => write(renameSteps(yard, renames), t.renamed(renames.length))}>
            {t.rename}
          </WriteButton>
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
  system: DateSystem,
): string {
  const row = values.findIndex((cells, i) => i > 0 && !isBlank(cells[column]));
  if (row < 0) return "";
  const value = values[row]![column];
  if (role !== null && NAMES.has(role)) return shownName(value);
  const isDay = role === "date" && typeof value === "number" && isDateSerial(value);
  return isDay ? shownDay(value, system) : shownCell(value, sign, formats[row]![column], system);
}
