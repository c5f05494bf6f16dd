import { useState } from "preact/hooks";
import { readTerm, type Written } from "../../core/contract-reading.js";
import { Choice } from "../choice.js";
import {
  columnOf,
  formulasIn,
  rowsOf,
  standsAt,
  stepsOf,
  writtenOf,
  type Change,
  type TermsTable,
} from "../contract/changes.js";
import { useWrite } from "../context.js";
import { contractsOf } from "../contract/editing.js";
import { orWhy } from "../or-why.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";

const t = texts.eye;
const LABEL = "observer error";

interface Props {
  /** Percent, as the terms say it. */
  readonly error: number;
  readonly tables: readonly TermsTable[];
  readonly sign: "." | ",";
}

/** Writes an observers' error into a contract of the workbook, in one step that can be taken back. */
export function ObserverTerm({ error, tables, sign }: Props) {
  const write = useWrite();
  const [chosen, setChosen] = useState<string | null>(null);
  const choices = contractsOf(tables);
  const choice = choices.find(({ key }) => key === chosen) ?? choices[0];
  if (choice === undefined) return <p>{texts.contract.none}</p>;
  const { table, name } = choice;
  const column = columnOf(table, name);
  const written = writtenOf(table, column);
  const now = Math.round(error * 10) / (written.fractions ? 1000 : 10);
  const change = changeOf(table, column, now);
  const why = whyNot(table, column, now, written);
  const save = () => write(stepsOf(table, name, column, [change]), texts.contract.saved(name, 1));
  return (
    <>
      {chosen !== null && choice.key !== chosen && <p class="error">{texts.contract.gone}</p>}
      <Choice
        id="eye-contract"
        label={t.contract}
        value={choice.key}
        choose={setChosen}
        options={choices.map(({ key, label }) => [key, label])}
      />
      <p>
        {texts.contract.change(
          LABEL,
          String(standsAt(table, change.row, column)) || texts.contract.leftOut,
          shownNumber(now, sign, 3),
        )}
      </p>
      {why !== null && <p class="error">{why}</p>}
      <WriteButton main disabled={why !== null || change.was === now} press={save}>
        {texts.contract.save}
      </WriteButton>
      <p class="quiet">{t.agree}</p>
    </>
  );
}

function changeOf(table: TermsTable, column: number, now: number): Change {
  const row = rowsOf(table).get(LABEL) ?? null;
  const was = row === null ? "" : (table.block.entries[row]![column] ?? "");
  return { label: LABEL, was, now, row };
}

function whyNot(table: TermsTable, column: number, now: number, written: Written): string | null {
  if (formulasIn(table, column).has(LABEL)) return texts.contract.formula;
  const read = orWhy(() => readTerm(LABEL, now, written));
  return "why" in read ? read.why : null;
}
