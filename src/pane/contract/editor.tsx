import { useEffect, useRef } from "preact/hooks";
import { TERMS, type Term } from "../../core/terms.js";
import { useWrite } from "../context.js";
import type { Entry } from "../port.js";
import { texts } from "../texts.js";
import { bare, changesOf, columnOf, formulasIn, stepsOf, type TermsTable } from "./changes.js";
import { entriesOf, faultsOf, type Draft } from "./draft.js";
import { Field } from "./field.js";
import { Grades } from "./grades.js";
import { GROUPS, type Group } from "./groups.js";

const t = texts.contract;
const BY_LABEL: ReadonlyMap<string, Term> = new Map(TERMS.map((term) => [term.label, term]));

interface Props {
  readonly table: TermsTable;
  readonly draft: Draft;
  readonly sign: "." | ",";
  readonly change: (draft: Draft) => void;
  /** After a save, and where the user wants the sheet's own terms back. */
  readonly settle: () => void;
}

/** Every term of a contract to read and change, then the list of what would be saved. */
export function Editor({ table, draft, sign, change, settle }: Props) {
  const faults = faultsOf(draft, sign);
  const column = columnOf(table, draft.name);
  const locked = formulasIn(table, column);
  const setTerm = (label: string, text: string) =>
    change({ ...draft, terms: new Map(draft.terms).set(label, text) });
  const isFaulty = (labels: readonly string[]) => labels.some((label) => faults.at.has(label));
  const gradeFaults = [...faults.at.keys()].some((label) => label.startsWith("grade "));
  return (
    <>
      {(Object.keys(GROUPS) as Group[]).map((group) => (
        <Fold
          key={group}
          title={t.groups[group]}
          faulty={isFaulty(GROUPS[group])}
          isFirst={group === "strength"}
        >
          {GROUPS[group].map((label) => {
            const term = BY_LABEL.get(label)!;
            return (
              <Field
                key={label}
                label={label}
                kind={term.value}
                value={draft.terms.get(label) ?? ""}
                missing={missingOf(term)}
                meaning={term.meaning}
                fault={faults.at.get(label) ?? null}
                locked={locked.has(label)}
                change={(text) => setTerm(label, text)}
              />
            );
          })}
        </Fold>
      ))}
      <Fold title={t.grades} faulty={gradeFaults} isFirst={false}>
        <Grades
          grades={draft.grades}
          faults={faults.at}
          change={(grades) => change({ ...draft, grades })}
        />
      </Fold>
      <Review table={table} draft={draft} sign={sign} settle={settle} />
    </>
  );
}

interface FoldProps {
  readonly title: string;
  readonly faulty: boolean;
  readonly isFirst: boolean;
  readonly children: preact.ComponentChildren;
}

/** Opens by itself where something in it is wrong, so that no error hides. */
function Fold({ title, faulty, isFirst, children }: FoldProps) {
  const fold = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (faulty) fold.current!.open = true;
  }, [faulty]);
  return (
    <details ref={fold} open={isFirst}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}

function missingOf({ value, missing }: Term): string {
  if (value.kind === "yes or no") return missing === true ? "yes" : "no";
  return missing === 0 || missing === "" ? "" : String(missing);
}

/** What would be saved, old to new, and the buttons that do it or leave it. */
export function Review({ table, draft, sign, settle }: Omit<Props, "change">) {
  const write = useWrite();
  const faults = faultsOf(draft, sign);
  const column = columnOf(table, draft.name);
  const isNew = column >= table.region.place.columns;
  const locked = formulasIn(table, column);
  const changes = changesOf(table, column, entriesOf(draft, sign)).filter(
    ({ label }) => !locked.has(label),
  );
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
      {changes.length === 0 && !isNew && <p>{t.noChanges}</p>}
      <ul>
        {changes.map(({ label, was, now }) => (
          <li key={label}>{t.change(label, shown(was, sign), shown(now, sign))}</li>
        ))}
      </ul>
      <p class="buttons">
        <button
          type="button"
          class="main"
          disabled={faults.contract === null || (changes.length === 0 && !isNew)}
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
  return typeof entry === "number" ? String(entry).replace(".", sign) : bare(entry);
}
