import { useState } from "preact/hooks";
import { normalise } from "../../core/text.js";
import { USABLE } from "../start/terms-sheet.js";
import { texts } from "../texts.js";
import type { TermsTable } from "./changes.js";
import type { Draft } from "./draft.js";
import { draftIn } from "./editing.js";

const t = texts.contract;
/** Before what is begun from: a contract may have a standard's name. */
const [COPY, STANDARD] = ["copy: ", "standard: "];
/** Headings of a Terms table that are no contracts. */
const HEADINGS = ["meaning", "unit", "notes", "term", "terms"];

interface Props {
  readonly table: TermsTable;
  /** Names that contracts have already, saved or not. */
  readonly taken: readonly string[];
  readonly sign: "." | ",";
  readonly begin: (draft: Draft, table: TermsTable) => void;
}

/** A new contract, as a copy of one of the table or from a published standard. */
export function Fresh({ table, taken, sign, begin }: Props) {
  const [name, setName] = useState("");
  const [chosen, setChosen] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);
  const isFree =
    name.trim() !== "" &&
    [...taken, ...HEADINGS].every((other) => normalise(other) !== normalise(name));
  const options = [
    ...table.contracts.map((name) => COPY + name),
    ...USABLE.map(({ name }) => STANDARD + name),
  ];
  // A contract that was chosen may be renamed meanwhile, or be of another table.
  const from = options.find((option) => option === chosen) ?? options[0]!;
  const standard = USABLE.find((s) => STANDARD + s.name === from);
  const start = () => {
    setAsked(!isFree);
    if (!isFree) return;
    begin(
      standard
        ? ofStandard(name.trim(), standard.terms, sign)
        : { ...draftIn(table, from.slice(COPY.length), sign), name: name.trim() },
      table,
    );
    setName("");
  };
  return (
    <details>
      <summary>{t.fresh}</summary>
      <p class="field">
        <label for="contract-from">{t.freshFrom}</label>
        <select id="contract-from" value={from} onChange={(e) => setChosen(e.currentTarget.value)}>
          <optgroup label={t.copies}>
            {table.contracts.map((other) => (
              <option key={other} value={COPY + other}>
                {other}
              </option>
            ))}
          </optgroup>
          <optgroup label={t.standards}>
            {USABLE.map((s) => (
              <option key={s.name} value={STANDARD + s.name}>
                {s.name}
              </option>
            ))}
          </optgroup>
        </select>
      </p>
      {standard && <p class="quiet">{t.source(standard.source, standard.remark)}</p>}
      {standard && <p class="quiet">{t.caution}</p>}
      <p class="field">
        <label for="contract-name">{t.freshName}</label>
        <input
          id="contract-name"
          type="text"
          autocomplete="off"
          value={name}
          aria-invalid={asked && !isFree}
          aria-describedby={asked && !isFree ? "contract-name-fault" : undefined}
          onInput={(e) => setName(e.currentTarget.value)}
        />
      </p>
      {asked && !isFree && (
        <p class="error" id="contract-name-fault">
          {t.nameNeeded}
        </p>
      )}
      <button type="button" onClick={start}>
        {t.begin}
      </button>
    </details>
  );
}

function ofStandard(
  name: string,
  terms: Readonly<Record<string, number | string>>,
  sign: "." | ",",
): Draft {
  const shown = Object.entries(terms).map(([label, value]): [string, string] => [
    label,
    typeof value === "number" ? String(value).replace(".", sign) : value,
  ]);
  return { name, terms: new Map(shown), grades: [] };
}
