import { useCallback, useState } from "preact/hooks";
import { Choice } from "./choice.js";
import { Adding } from "./columns/adding.js";
import { Holds } from "./columns/holds.js";
import { NoYard, optionOf } from "./columns/no-yard.js";
import { questionsOf, renamesFor, type Choices } from "./columns/rename.js";
import { hivesIn, readSheets, type Yard } from "./columns/yard.js";
import { NotRead } from "./not-read.js";
import { regionKey } from "./port.js";
import { texts } from "./texts.js";
import { useWatched } from "./watched.js";

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
  const watched = useWatched(read);
  if (watched.value === null) return <NotRead of={watched} />;
  const sheets = watched.value;
  const { candidates, yard } = sheets;
  if (yard === null) return <NoYard id="columns-sheet" candidates={candidates} choose={choose} />;
  const hives = hivesIn(yard);
  // What was said of these headings, and of no others.
  const key = regionKey(yard.region);
  const of = [key, ...yard.headings].join("\n");
  const choices = said.of === of ? said.choices : NOTHING_SAID.choices;
  return (
    <>
      <NotRead of={watched} />
      <Choice
        id="columns-sheet"
        label={texts.columns.sheet}
        value={key}
        choose={choose}
        options={candidates.map(optionOf)}
      />
      <p class="quiet">{hives === 0 ? texts.columns.noHives : texts.columns.hives(hives)}</p>
      <Holds
        yard={yard}
        terms={sheets.terms}
        sign={sheets.sign}
        choices={choices}
        choose={(choices) => setSaid({ of, choices })}
      />
      {yard.place.rows > 1 && (
        <Adding key={key} sheets={sheets} yard={yard} open={openQuestion(yard, choices)} />
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
