import { useCallback, useState } from "preact/hooks";
import { rangeName } from "./address.js";
import { Adding } from "./columns/adding.js";
import { Holds } from "./columns/holds.js";
import { questionsOf, renamesFor, type Choices } from "./columns/rename.js";
import { keyOf, readSheets, type Yard } from "./columns/yard.js";
import { useWatched } from "./context.js";
import { texts } from "./texts.js";

const NOTHING_SAID = { of: "", choices: new Map() as Choices };

/** From a yard sheet as it is kept to its computed columns. */
export function Columns() {
  const [chosen, choose] = useState<string | null>(null);
  const [said, setSaid] = useState<{ readonly of: string; readonly choices: Choices }>(
    NOTHING_SAID,
  );
  const read = useCallback(
    (workbook: Parameters<typeof readSheets>[0]) => readSheets(workbook, chosen),
    [chosen],
  );
  const [sheets] = useWatched(read);
  if (sheets.state === "reading") return <p>{texts.waiting}</p>;
  if (sheets.state === "refused") return <p class="error">{sheets.why}</p>;
  const { candidates, yard } = sheets.value;
  if (yard === null) return <p>{texts.columns.none}</p>;
  const hives = yard.place.rows - 1;
  // What was said of these headings, and of no others.
  const of = [keyOf(yard), ...yard.headings].join("\n");
  const choices = said.of === of ? said.choices : NOTHING_SAID.choices;
  return (
    <>
      <p class="field">
        <label for="columns-sheet">{texts.columns.sheet}</label>
        <select
          id="columns-sheet"
          value={keyOf(yard)}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {candidates.map((candidate) => {
            const { region, place } = candidate;
            const kind = texts.columns.kinds[region.kind];
            return (
              <option key={keyOf(candidate)} value={keyOf(candidate)}>
                {texts.columns.candidate(region.name, kind, rangeName(place))}
              </option>
            );
          })}
        </select>
      </p>
      <p class="quiet">{hives === 0 ? texts.columns.noHives : texts.columns.hives(hives)}</p>
      <Holds
        yard={yard}
        terms={sheets.value.terms}
        sign={sheets.value.sign}
        choices={choices}
        choose={(choices) => setSaid({ of, choices })}
      />
      {hives > 0 && (
        <Adding
          key={keyOf(yard)}
          sheets={sheets.value}
          yard={yard}
          open={openQuestion(yard, choices)}
        />
      )}
    </>
  );
}

/** What must be settled before anything is worked out, in a sentence; null where nothing is open. */
function openQuestion(yard: Yard, choices: Choices): string | null {
  if (renamesFor(yard, choices).length > 0) return texts.columns.renameFirst;
  const open = questionsOf(yard).find((q) => q.why !== "doubt" && !choices.has(q.column));
  return open ? texts.columns.sayFirst(yard.headings[open.column]!) : null;
}
