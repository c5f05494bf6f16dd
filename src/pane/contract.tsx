import { useState } from "preact/hooks";
import { columnOf, type TermsTable } from "./contract/changes.js";
import { draftOf, type Draft } from "./contract/draft.js";
import { Editor } from "./contract/editor.js";
import { Fresh } from "./contract/fresh.js";
import { readTables } from "./contract/tables.js";
import { useWatched } from "./context.js";
import { texts } from "./texts.js";

const t = texts.contract;

/** What is being written, and the table as it stood when the writing began. */
interface Editing {
  readonly key: string;
  readonly draft: Draft;
  readonly table: TermsTable;
}

/** The contracts of the workbook: each term to read, change and save to the visible table. */
export function ContractView() {
  const [watched, again] = useWatched(readTables);
  const [chosen, setChosen] = useState<string | null>(null);
  const [editing, setEditing] = useState<Editing | null>(null);
  if (watched.state === "reading") return <p>{texts.waiting}</p>;
  if (watched.state === "refused") return <p class="error">{watched.why}</p>;
  const { tables, sign } = watched.value;
  const choices = tables.flatMap((table) =>
    table.contracts.map((name) => ({ key: `${table.region.name} / ${name}`, table, name })),
  );
  const first = choices[0];
  if (first === undefined) return <p>{t.none}</p>;
  const fresh = editing !== null && choices.every(({ key }) => key !== editing.key);
  const choice = choices.find(({ key }) => key === chosen) ?? first;
  const own = editing !== null && (fresh || editing.key === choice.key) ? editing : null;
  const table = own?.table ?? choice.table;
  const draft = own?.draft ?? draftOf(choice.name, table.block, columnOf(table, choice.name), sign);
  const settle = () => {
    setEditing(null);
    again();
  };
  const isBehind = own !== null && !sameTable(own.table, tables);
  return (
    <>
      <p class="field">
        <label for="contract">{t.which}</label>
        <select
          id="contract"
          value={fresh ? editing.key : choice.key}
          onChange={(event) => {
            setEditing(null);
            setChosen(event.currentTarget.value);
          }}
        >
          {choices.map(({ key, name, table: of }) => (
            <option key={key} value={key}>
              {tables.length > 1 ? t.of(name, of.region.name) : name}
            </option>
          ))}
          {fresh && <option value={editing.key}>{draft.name}</option>}
        </select>
      </p>
      {isBehind && (
        <p class="asked" role="alert">
          {t.behind}{" "}
          <button type="button" onClick={settle}>
            {t.again}
          </button>
        </p>
      )}
      <Editor
        key={own?.key ?? choice.key}
        table={table}
        draft={draft}
        sign={sign}
        change={(next) =>
          setEditing({
            key: own?.key ?? choice.key,
            draft: next,
            table: own?.table ?? choice.table,
          })
        }
        settle={() => {
          if (fresh) setChosen(editing.key);
          settle();
        }}
      />
      <Fresh
        table={choice.table}
        sign={sign}
        begin={(next) => {
          const key = `${choice.table.region.name} / ${next.name}`;
          setEditing({ key, draft: next, table: choice.table });
        }}
      />
    </>
  );
}

/** Whether a table stands as it was read when the editing began. */
function sameTable(before: TermsTable, now: readonly TermsTable[]): boolean {
  const after = now.find(({ region }) => region.name === before.region.name);
  return (
    after !== undefined &&
    JSON.stringify(after.block.entries) === JSON.stringify(before.block.entries)
  );
}
