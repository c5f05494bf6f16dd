import { useCallback, useMemo, useState } from "preact/hooks";
import { readingOf } from "../core/what-if.js";
import { lotInSheet } from "../functions/lot-sheet.js";
import { Choice, wordsOf } from "./choice.js";
import { contractNamedIn, isNamed, lotsOf } from "./columns/lots.js";
import { NoYard, optionOf } from "./columns/no-yard.js";
import { rowsNamed } from "./columns/rows-named.js";
import { readSheets } from "./columns/yard.js";
import { faultsOf } from "./contract/draft.js";
import { contractsOf, draftIn } from "./contract/editing.js";
import { Review } from "./contract/review.js";
import { readTables } from "./contract/tables.js";
import { NotRead } from "./not-read.js";
import { orWhy } from "./or-why.js";
import { regionKey, type Workbook } from "./port.js";
import { hivesOf } from "./statement/ask.js";
import { TextField } from "./text-field.js";
import { texts } from "./texts.js";
import { useWatched } from "./watched.js";
import { Ahead } from "./what-if/ahead.js";
import { Histogram } from "./what-if/histogram.js";
import { framesOf, judged } from "./what-if/judging.js";
import { textOf, thresholdsOf, withFrames } from "./what-if/thresholds.js";
import { Verdict } from "./what-if/verdict.js";

const t = texts.whatIf;
const NOTHING_FOUND = { looks: null, sizeOf: (said: number | null) => said ?? 0, remark: "" };
const NOT_MOVED: ReadonlyMap<string, string> = new Map();

/** The thresholds of a contract that are not where the sheet has them. */
interface Moved {
  /** The key of the contract. */
  readonly of: string;
  readonly to: ReadonlyMap<string, string>;
}

/** A lot under its contract, with thresholds to move: nothing is written until it is saved. */
export function WhatIf() {
  const [sheet, setSheet] = useState<string | null>(null);
  const [contract, setContract] = useState<string | null>(null);
  const [lot, setLot] = useState<string | null>(null);
  const [size, setSize] = useState("");
  const [moved, setMoved] = useState<Moved | null>(null);
  const read = useCallback(
    async (workbook: Workbook) => {
      const sheets = await readSheets(workbook, sheet);
      const { tables } = await readTables(workbook, sheets.regions);
      return { ...sheets, tables };
    },
    [sheet],
  );
  const watched = useWatched(read);
  const { value } = watched;
  const choices = useMemo(() => contractsOf(value?.tables ?? []), [value]);
  const yard = value?.yard ?? null;
  const lots = useMemo(() => (yard === null ? [] : lotsOf(yard)), [yard]);
  const lotName = lots.includes(lot ?? "") ? lot : (lots[0] ?? null);
  const named = useMemo(() => yard && contractNamedIn(yard, lotName), [yard, lotName]);
  const choice =
    choices.find(({ key }) => key === contract) ??
    choices.find(({ name }) => isNamed(name, named)) ??
    choices[0];
  const own = useMemo(
    () => (choice && value ? draftIn(choice.table, choice.name, value.sign) : null),
    [choice, value],
  );
  const moves = moved !== null && moved.of === choice?.key ? moved.to : NOT_MOVED;
  // What is moved is moved on the sheet's own terms, whatever another hand has made of them since.
  const draft = useMemo(
    () => own && [...moves].reduce((terms, [label, text]) => withFrames(terms, label, text), own),
    [own, moves],
  );
  const faults = useMemo(
    () => (draft === null || value === null ? null : faultsOf(draft, value.sign)),
    [draft, value],
  );
  const current = faults?.contract ?? null;
  // Read once for a contract's way of counting; moving a threshold only judges again.
  const readAs = current && readingOf(current);
  const found = useMemo(() => {
    if (yard === null || current === null) return null;
    return orWhy(() => {
      const { looks, size: sizeOf, remark } = lotInSheet(yard.values, current, lotName);
      return { looks, sizeOf: looks.length === 0 ? NOTHING_FOUND.sizeOf : sizeOf, remark };
    });
  }, [yard, readAs, lotName]);
  if (value === null) return <NotRead of={watched} />;
  const { candidates, sign } = value;
  if (yard === null) return <NoYard id="what-if-sheet" candidates={candidates} choose={setSheet} />;
  if (choice === undefined || own === null || draft === null) return <p>{texts.contract.none}</p>;
  const change = (label: string, text: string) =>
    setMoved({ of: choice.key, to: new Map(moves).set(label, text) });
  // What was moved since it was saved is not let go.
  const settle = () => setMoved((now) => (now === moved ? null : now));
  const { looks, sizeOf, remark } =
    found !== null && "value" in found ? found.value : NOTHING_FOUND;
  const listed = sizeOf(null);
  const asked = orWhy(() => sizeOf(hivesOf(t.size, size)));
  const all = "value" in asked ? asked.value : listed;
  const result =
    current === null || looks === null
      ? null
      : "why" in asked
        ? asked
        : orWhy(() => judged(current, looks, all));
  return (
    <>
      <NotRead of={watched} />
      {contract !== null && choice.key !== contract && <p class="error">{texts.contract.gone}</p>}
      <div class="fields">
        {candidates.length > 1 && (
          <Choice
            id="what-if-sheet"
            label={texts.columns.sheet}
            value={regionKey(yard.region)}
            choose={setSheet}
            options={candidates.map(optionOf)}
          />
        )}
        <Choice
          id="what-if-contract"
          label={texts.contract.which}
          value={choice.key}
          choose={setContract}
          options={choices.map(({ key, label }) => [key, label])}
        />
        {lots.length > 0 && (
          <Choice
            id="what-if-lot"
            label={t.lot}
            value={lotName ?? ""}
            choose={(name) => {
              setLot(name);
              if (contractNamedIn(yard, name) !== null) setContract(null);
            }}
            options={wordsOf(lots)}
          />
        )}
        <TextField
          id="what-if-size"
          label={t.size}
          about="what-if-size-how"
          inputMode="numeric"
          placeholder={String(listed)}
          value={size}
          change={setSize}
        />
      </div>
      <p class="quiet" id="what-if-size-how">
        {t.sizeHow}
      </p>
      {found !== null && "why" in found && (
        <p class="error">{found.why + rowsNamed(yard, found.why)}</p>
      )}
      {looks !== null && (
        <Histogram
          frames={framesOf(looks)}
          thresholds={thresholdsOf(draft, sign)}
          sign={sign}
          move={(label, frames) => change(label, String(frames).replace(".", sign))}
        />
      )}
      <div class="fields">
        {thresholdsOf(own, sign).map(({ label, short }) => (
          <TextField
            key={label}
            id={`what-if-${label.replaceAll(" ", "-")}`}
            label={short}
            inputMode="decimal"
            value={textOf(draft, label)}
            fault={faults?.at.get(label) ?? null}
            change={(text) => change(label, text)}
          />
        ))}
      </div>
      {result !== null && "why" in result && (
        <p class="error">{result.why + rowsNamed(yard, result.why)}</p>
      )}
      {result !== null && "value" in result && current !== null && looks !== null && (
        <>
          <Verdict
            judged={result.value}
            contract={current}
            size={all}
            opened={new Set(looks.map(({ id }) => id)).size}
            sign={sign}
          />
          {remark !== "" && <p class="quiet">{t.remark(remark)}</p>}
          <Ahead contract={current} looks={looks} size={all} sign={sign} />
        </>
      )}
      <Review table={choice.table} draft={draft} sign={sign} held={null} settle={settle} />
    </>
  );
}
