import { useState } from "preact/hooks";
import { normalise } from "../../core/text.js";
import { USABLE } from "../start/terms-sheet.js";
import { Choice, type Option } from "../choice.js";
import { TextField } from "../text-field.js";
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
  const groups = [
    { label: t.copies, options: table.contracts.map((name): Option => [COPY + name, name]) },
    { label: t.standards, options: USABLE.map(({ name }): Option => [STANDARD + name, name]) },
  ];
  const keys = groups.flatMap(({ options }) => options.map(([key]) => key));
  // A contract that was chosen may be renamed meanwhile, or be of another table.
  const from = keys.find((key) => key === chosen) ?? keys[0]!;
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
      <Choice
        id="contract-from"
        label={t.freshFrom}
        value={from}
        choose={setChosen}
        options={groups}
      />
      {standard && <p class="quiet">{t.source(standard.source, standard.remark)}</p>}
      {standard && <p class="quiet">{t.caution}</p>}
      <TextField
        id="contract-name"
        label={t.freshName}
        value={name}
        fault={asked && !isFree ? t.nameNeeded : null}
        change={setName}
      />
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
