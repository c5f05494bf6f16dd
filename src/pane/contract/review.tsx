import { useWrite } from "../context.js";
import type { Entry } from "../port.js";
import { texts } from "../texts.js";
import { changesOf, columnOf, formulasIn, standsAt, stepsOf, type TermsTable } from "./changes.js";
import { entriesOf, faultsOf, type Draft } from "./draft.js";

const t = texts.contract;

interface Props {
  readonly table: TermsTable;
  readonly draft: Draft;
  readonly sign: "." | ",";
  /** Why nothing may be saved yet, whatever the draft says. */
  readonly held: string | null;
  /** After a save, and where the user wants the sheet's own terms back. */
  readonly settle: () => void;
}

/** What would be saved, old to new, and the buttons that do it or leave it. */
export function Review({ table, draft, sign, held, settle }: Props) {
  const write = useWrite();
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
    if (await write(steps, t.saved(draft.name, changes.length))) settle();
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
        <button
          type="button"
          class="main"
          disabled={
            faults.contract === null || hindrance !== null || (changes.length === 0 && !isNew)
          }
          onClick={() => void save()}
        >
          {t.save}
        </button>
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
