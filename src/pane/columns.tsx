import { useCallback, useState } from "preact/hooks";
import { rangeName } from "./address.js";
import { Adding } from "./columns/adding.js";
import { Holds } from "./columns/holds.js";
import { keyOf, readSheets } from "./columns/yard.js";
import { useWatched } from "./context.js";
import { texts } from "./texts.js";

/** From a yard sheet as it is kept to its computed columns. */
export function Columns() {
  const [chosen, choose] = useState<string | null>(null);
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
        key={`${keyOf(yard)} ${yard.headings.join("\n")}`}
        yard={yard}
        sign={sheets.value.sign}
      />
      {hives > 0 && <Adding key={keyOf(yard)} sheets={sheets.value} yard={yard} />}
    </>
  );
}
