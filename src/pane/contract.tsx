import { useState } from "preact/hooks";
import { Choice } from "./choice.js";
import { columnOf } from "./contract/changes.js";
import {
  contractsOf,
  draftIn,
  isBehind,
  keyOf,
  leftOf,
  nowOf,
  rebased,
  type Edited,
  type Editing,
} from "./contract/editing.js";
import { Editor } from "./contract/editor.js";
import { Fresh } from "./contract/fresh.js";
import { problemsIn } from "./contract/problems.js";
import { Review } from "./contract/review.js";
import { readTables } from "./contract/tables.js";
import { NotRead } from "./not-read.js";
import { texts } from "./texts.js";
import { useWatched } from "./watched.js";

const t = texts.contract;

/** The contracts of the workbook: each term to read, change and save to the visible table. */
export function ContractView() {
  const watched = useWatched(readTables);
  const [chosen, setChosen] = useState<string | null>(null);
  /** What is not saved yet, by contract: one may be left for another and come back to. */
  const [kept, setKept] = useState<Edited>(new Map());
  if (watched.value === null) return <NotRead of={watched} />;
  const { tables, unread, sign } = watched.value;
  const edited = leftOf(kept, tables, sign);
  const standing = contractsOf(tables);
  const others = [...edited].flatMap(([key, { draft, base }]) =>
    standing.some((choice) => choice.key === key)
      ? []
      : [{ key, table: base, name: draft.name, label: draft.name }],
  );
  const choices = [...standing, ...others];
  const choice = choices.find(({ key }) => key === chosen) ?? choices[0];
  if (choice === undefined) {
    return (
      <>
        <NotRead of={watched} />
        {unread.length > 0 ? <Problems list={unread} /> : <p>{t.none}</p>}
      </>
    );
  }
  const { key } = choice;
  const editing = edited.get(key) ?? null;
  const now = editing === null ? choice.table : nowOf(editing, tables);
  const isHeld = editing !== null && isBehind(editing, now);
  const table = isHeld || now === undefined ? editing!.base : now;
  const draft = editing?.draft ?? draftIn(table, choice.name, sign);
  const put = (of: string, next: Editing) => setKept((before) => new Map(before).set(of, next));
  const saved = () =>
    setKept((before) => {
      const now = before.get(key);
      return now === undefined ? before : new Map(before).set(key, { ...now, saved: draft });
    });
  // What was typed since this was drawn is not let go, nor what was chosen.
  const settle = () => {
    const was = kept.get(key)?.draft;
    setKept((before) =>
      before.get(key)?.draft === was ? new Map([...before].filter(([of]) => of !== key)) : before,
    );
    setChosen((now) => (now === chosen ? key : now));
  };
  return (
    <>
      <NotRead of={watched} />
      <Problems list={[...unread, ...problemsIn(table, columnOf(table, draft.name))]} />
      <Choice
        id="contract"
        label={t.which}
        value={key}
        choose={setChosen}
        options={choices.map(({ key: of, label }) => [of, t.choice(label, edited.has(of))])}
      />
      {isHeld && (
        <div class="asked" role="alert">
          <p>{t.behind}</p>
          <p class="buttons">
            {now !== undefined && (
              <button type="button" onClick={() => put(key, rebased(editing, now, sign))}>
                {t.againWith}
              </button>
            )}
            <button type="button" onClick={settle}>
              {t.again}
            </button>
          </p>
        </div>
      )}
      <Editor
        key={key}
        table={table}
        draft={draft}
        sign={sign}
        change={(next) => put(key, { draft: next, base: table })}
      />
      <Review
        table={table}
        draft={draft}
        sign={sign}
        held={isHeld ? t.held : null}
        saved={saved}
        settle={settle}
      />
      <Fresh
        table={nowOf({ draft, base: choice.table }, tables) ?? table}
        taken={choices.map(({ name }) => name)}
        sign={sign}
        begin={(next, base) => {
          put(keyOf(base, next.name), { draft: next, base });
          setChosen(keyOf(base, next.name));
        }}
      />
    </>
  );
}

/** What keeps the functions from reading a table, above all that can be edited. */
function Problems({ list }: { readonly list: readonly string[] }) {
  if (list.length === 0) return null;
  return (
    <div class="asked problems" role="alert">
      <p>{t.problems}</p>
      <ul>
        {list.map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
    </div>
  );
}
