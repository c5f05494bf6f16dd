import type { ComponentType } from "preact";
import { useCallback, useRef, useState } from "preact/hooks";
import { About } from "./about.js";
import { Columns } from "./columns.js";
import { ContractView } from "./contract.js";
import { Convert } from "./convert.js";
import { PaneProvider, sentenceOf, usePane, type Host, type Say } from "./context.js";
import { Eye } from "./eye.js";
import type { Step } from "./port.js";
import { StatementView } from "./statement.js";
import { Start } from "./start.js";
import { texts } from "./texts.js";
import { IsOpen } from "./watched.js";
import { WhatIf } from "./what-if.js";
import { WriteButton } from "./write-button.js";

type ViewId = keyof typeof texts.views;

/** The views in the order of their tabs; the first is shown. */
const VIEWS: readonly (readonly [ViewId, ComponentType])[] = [
  ["contract", ContractView],
  ["whatIf", WhatIf],
  ["columns", Columns],
  ["statement", StatementView],
  ["convert", Convert],
  ["eye", Eye],
  ["start", Start],
  ["about", About],
];

interface Said {
  readonly sentence: string;
  readonly undo: readonly Step[];
}

/** The whole pane: tabs, the view that is open, and the line that says what was done. */
export function CombTally(host: Host) {
  const [open, setOpen] = useState<ViewId>(VIEWS[0]![0]);
  const [said, setSaid] = useState<Said>({ sentence: "", undo: [] });
  const say = useCallback<Say>((sentence, undo = []) => setSaid({ sentence, undo }), []);
  return (
    <PaneProvider host={host} say={say}>
      <header>
        <h1>{texts.title}</h1>
        <Tabs open={open} choose={setOpen} />
      </header>
      <main>
        {VIEWS.map(([id, View]) => (
          // A view that is left keeps what was typed into it.
          <section
            key={id}
            id={`view-${id}`}
            role="tabpanel"
            aria-labelledby={`tab-${id}`}
            hidden={id !== open}
          >
            <IsOpen.Provider value={id === open}>
              <View />
            </IsOpen.Provider>
          </section>
        ))}
      </main>
      <Footer {...said} />
    </PaneProvider>
  );
}

/** What was done last, and the way to take it back. */
function Footer({ sentence, undo }: Said) {
  const { workbook, change } = usePane();
  const takeBack = () =>
    change(async () => {
      try {
        await workbook.write(undo);
        return { sentence: texts.tookBack, undo: [] };
      } catch (error) {
        return { sentence: sentenceOf(error), undo };
      }
    });
  return (
    <footer>
      <p role="status">{sentence}</p>
      {undo.length > 0 && <WriteButton press={takeBack}>{texts.takeBack}</WriteButton>}
    </footer>
  );
}

function Tabs({ open, choose }: { open: ViewId; choose: (id: ViewId) => void }) {
  const list = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent, at: number) => {
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: VIEWS.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = (to + VIEWS.length) % VIEWS.length;
    choose(VIEWS[next]![0]);
    list.current?.querySelectorAll("button")[next]?.focus();
  };
  return (
    <div role="tablist" aria-label={texts.title} ref={list}>
      {VIEWS.map(([id], at) => (
        <button
          key={id}
          type="button"
          role="tab"
          id={`tab-${id}`}
          aria-controls={`view-${id}`}
          aria-selected={id === open}
          tabIndex={id === open ? 0 : -1}
          onClick={() => choose(id)}
          onKeyDown={(event) => move(event, at)}
        >
          {texts.views[id]}
        </button>
      ))}
    </div>
  );
}
