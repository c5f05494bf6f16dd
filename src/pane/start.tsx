import { useCallback, useState } from "preact/hooks";
import { TERMS } from "../../examples/yard.mjs";
import { Choice, wordsOf } from "./choice.js";
import { useWrite } from "./context.js";
import { NotRead } from "./not-read.js";
import type { Step, Workbook } from "./port.js";
import { blankYard } from "./start/blank-yard.js";
import { demo } from "./start/demo.js";
import { freeName, takenNames } from "./start/names.js";
import { termsOf, termsSheet, USABLE } from "./start/terms-sheet.js";
import { texts } from "./texts.js";
import { useWatched } from "./watched.js";
import { WriteButton } from "./write-button.js";

const t = texts.start;
/** The demo's contracts among the choices of what to begin from. */
const DEMO = "demo";

/** Sheets to begin with, each new, under a name that is free. */
export function Start() {
  const write = useWrite();
  const [tried, setTried] = useState<readonly string[]>([]);
  const [from, setFrom] = useState(USABLE[0]!.name);
  const read = useCallback((workbook: Workbook) => workbook.regions(), []);
  const watched = useWatched(read);
  if (watched.value === null) return <NotRead of={watched} />;
  const present = takenNames(watched.value);
  const taken = [...present, ...tried];
  const [yard, terms, lots] = [t.yardName, t.termsSheet, t.lotsName].map((name) =>
    freeName(name, taken),
  ) as [string, string, string];
  // A defined name takes no space, and not every spreadsheet lets it be a sheet's name too.
  const name = freeName(t.termsName, [...taken, terms], "_");
  const standard = USABLE.find((s) => s.name === from);
  const add = async (steps: readonly Step[], names: readonly string[], done: string) => {
    // A sheet that is hidden or empty is not read, and its name is taken all the same.
    if (!(await write(steps, done))) setTried((before) => [...before, ...names]);
  };
  return (
    <>
      <NotRead of={watched} />
      <h2>{t.yard}</h2>
      <p>{t.yardHow}</p>
      <WriteButton press={() => add(blankYard(yard, t.countLine), [yard], t.added(yard))}>
        {t.add(yard)}
      </WriteButton>

      <h2>{t.terms}</h2>
      <p>{t.termsHow(name)}</p>
      {present.some((other) => other.toLowerCase() === "terms") && <p>{t.hasTerms(name)}</p>}
      <Choice
        id="start-from"
        label={t.from}
        value={from}
        choose={setFrom}
        options={[
          { label: t.standards, options: wordsOf(USABLE.map((s) => s.name)) },
          { label: t.invented, options: [[DEMO, t.demoTerms]] },
        ]}
      />
      <p class="quiet">{standard ? t.source(standard.source, standard.remark) : t.inventedTerms}</p>
      <p class="quiet">{t.caution}</p>
      <WriteButton
        press={() => {
          const table = standard ? termsOf(standard, t.closing(standard.source)) : TERMS;
          return add(termsSheet(terms, name, table), [terms, name], t.added(terms));
        }}
      >
        {t.add(terms)}
      </WriteButton>

      <h2>{t.demo}</h2>
      <p>{t.demoHow}</p>
      <WriteButton
        press={() => {
          const names = { yard, terms, lots, name };
          return add(demo(names), Object.values(names), t.addedAll(yard, terms, lots));
        }}
      >
        {t.addAll(yard, terms, lots)}
      </WriteButton>
    </>
  );
}
