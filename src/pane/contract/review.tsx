import { usePane } from "../context.js";
import type { Entry } from "../port.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
import { changesOf, columnOf, formulasIn, standsAt, stepsOf, type TermsTable } from "./changes.js";
import { entriesOf, faultsOf, type Draft } from "./draft.js";

const t = texts.contract;

interface Props {
  readonly table: TermsTable;
  readonly draft: Draft;
  readonly sign: "." | ",";
  /** Why nothing may be saved yet, whatever the draft says. */
  readonly held: string | null;
  /** Once it stands in the sheet, before that is read again. */
  readonly saved?: () => void;
  /** Once what was saved is read again, and where the user wants the sheet's own terms back. */
  readonly settle: () => void;
}

/** What would be saved, old to new, and the buttons that do it or leave it. */
export function Review({ table, draft, sign, held, saved, settle }: Props) {
  const { workbook, change } = usePane();
  const faults = faultsOf(draft, sign);
  const column = columnOf(table, draft.name);
  const isNew = column >= table.region.place.columns;
  const locked = formulasIn(table, column);
  const changes = changesOf(table, column, entriesOf(draft, sign));
  const over = changes.find(({ label }) => locked.has(label));
  const hindrance =
    held ?? (over === undefined ? null : t.overFormula(locked.get(over.label)!, over.label));
  const save = async () => {
    const steps = stepsOf(table, draft.name, column, changes);
    const isMade = await change(async () => {
      const undo = await workbook.write(steps);
      saved?.();
      return { sentence: t.saved(draft.name, changes.length), undo };
    });
    if (isMade) settle();
  };
  return (
    <section aria-label={t.review} class="review">
      <h2>{t.review}</h2>
      {faults.contract === null && (
        <p class="error" role="alert">
          {faults.whole === null ? t.faults(faults.at.size) : `${t.contradiction} ${faults.whole}`}
        </p>
      )}
      {hindrance !== null && (
        <p class="error" role="alert">
          {hindrance}
        </p>
      )}
      {changes.length === 0 && !isNew && <p>{t.noChanges}</p>}
      <ul>
        {changes.map(({ label, row, now }) => {
          const was = standsAt(table, row, column);
          return <li key={label}>{t.change(label, shownWas(was, now, sign), shown(now, sign))}</li>;
        })}
      </ul>
      <p class="buttons">
        <WriteButton
          main
          disabled={
            faults.contract === null || hindrance !== null || (changes.length === 0 && !isNew)
          }
          press={save}
        >
          {t.save}
        </WriteButton>
        <button type="button" disabled={changes.length === 0 && !isNew} onClick={settle}>
          {t.drop}
        </button>
      </p>
    </section>
  );
}

function shown(entry: Entry, sign: "." | ","): string {
  if (entry === "") return t.leftOut;
  return typeof entry === "number" ? String(entry).replace(".", sign) : String(entry);
}

/** A text that becomes the figure it looks like is said to have been a text. */
function shownWas(was: Entry, now: Entry, sign: "." | ","): string {
  const text = shown(was, sign);
  return typeof was === "string" && typeof now === "number" && was !== "" ? t.asText(text) : text;
}
