import { useEffect, useRef } from "preact/hooks";
import { GRADE_PARTS, TERMS, type Term, type TermKind } from "../../core/terms.js";
import { texts } from "../texts.js";
import { columnOf, formulasIn, type TermsTable } from "./changes.js";
import { faultsOf, type Draft } from "./draft.js";
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
}

/** Every term of a contract, to read and to change. */
export function Editor({ table, draft, sign, change }: Props) {
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
                sign={sign}
                unit={unitOf(term.value, draft.terms)}
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
          locked={locked}
          sign={sign}
          money={unitOf(GRADE_PARTS.fee, draft.terms)}
          change={(grades) => change({ ...draft, grades })}
        />
      </Fold>
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

/** The unit of a figure as this contract says it: the handbook's `money` is its currency. */
function unitOf(kind: TermKind, terms: Draft["terms"]): string {
  if (kind.kind !== "number") return "";
  const says = (label: string) => terms.get(label)?.trim() || missingOf(BY_LABEL.get(label)!);
  switch (kind.unit) {
    case "money":
      return says("currency") || t.money;
    case "as said":
    case "as stores":
      return says("stores unit");
    case "degrees":
      return t.degrees(says("temperature unit"));
    default:
      return kind.unit;
  }
}
