import { useCallback, useMemo, useState } from "preact/hooks";
import { Refusal } from "../core/refusal.js";
import { readingOf } from "../core/what-if.js";
import { hivesListed, looksOfSheet } from "../functions/lot-sheet.js";
import { CellError } from "../functions/cells.js";
import { Choice } from "./choice.js";
import { lotsOf } from "./columns/lots.js";
import { rowsNamed } from "./columns/rows-named.js";
import { keyOf, readSheets } from "./columns/yard.js";
import { columnOf } from "./contract/changes.js";
import { draftOf, faultsOf, type Draft } from "./contract/draft.js";
import { Review } from "./contract/review.js";
import { readTables } from "./contract/tables.js";
import { useWatched } from "./context.js";
import { rangeName } from "./address.js";
import type { Workbook } from "./port.js";
import { texts } from "./texts.js";
import { Ahead } from "./what-if/ahead.js";
import { Histogram } from "./what-if/histogram.js";
import { framesOf, judged } from "./what-if/judging.js";
import { thresholdsOf, withFrames } from "./what-if/thresholds.js";
import { Verdict } from "./what-if/verdict.js";

const t = texts.whatIf;
const NOT_MOVED: ReadonlyMap<string, string> = new Map();

/** The thresholds of a contract that are not where the sheet has them. */
interface Moved {
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
      const [sheets, terms] = [await readSheets(workbook, sheet), await readTables(workbook)];
      return { ...sheets, tables: terms.tables };
    },
    [sheet],
  );
  const [watched, again] = useWatched(read);
  const value = watched.state === "read" ? watched.value : null;
  const choices = useMemo(
    () => value?.tables.flatMap((table) => table.contracts.map((name) => ({ table, name }))) ?? [],
    [value],
  );
  const choice = choices.find(({ name }) => name === contract) ?? choices[0];
  const yard = value?.yard ?? null;
  const own = useMemo(
    () =>
      choice && value
        ? draftOf(choice.name, choice.table.block, columnOf(choice.table, choice.name), value.sign)
        : null,
    [choice, value],
  );
  const lots = useMemo(() => (yard === null ? [] : lotsOf(yard)), [yard]);
  const lotName = lots.includes(lot ?? "") ? lot : (lots[0] ?? null);
  const moves = moved !== null && moved.of === choice?.name ? moved.to : NOT_MOVED;
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
  const looks = useMemo(
    () =>
      yard === null || current === null
        ? null
        : orWhy(() =>
            looksOfSheet(
              yard.values.map((row) => [...row]),
              current,
              lotName,
            ),
          ),
    [yard, readAs, lotName],
  );
  if (watched.state === "reading") return <p>{texts.waiting}</p>;
  if (watched.state === "refused") return <p class="error">{watched.why}</p>;
  if (yard === null) return <p>{texts.columns.none}</p>;
  if (choice === undefined || own === null || draft === null) return <p>{texts.contract.none}</p>;
  const { candidates, sign } = watched.value;
  const change = (label: string, text: string) =>
    setMoved({ of: choice.name, to: new Map(moves).set(label, text) });
  const settle = () => {
    setMoved(null);
    again();
  };
  const opened =
    typeof looks === "string" || looks === null ? 0 : new Set(looks.map((l) => l.id)).size;
  const listed =
    opened === 0 || current === null
      ? 0
      : hivesListed(
          yard.values.map((row) => [...row]),
          current,
          lotName,
        );
  const all = size.trim() === "" ? listed : Number(size);
  const result =
    typeof looks === "string" || looks === null || current === null
      ? null
      : orWhy(() => judged(current, looks, all));
  return (
    <>
      <div class="fields">
        {candidates.length > 1 && (
          <Choice
            id="what-if-sheet"
            label={texts.columns.sheet}
            value={keyOf(yard)}
            choose={setSheet}
            options={candidates.map((c) => [
              keyOf(c),
              texts.columns.candidate(
                c.region.name,
                texts.columns.kinds[c.region.kind],
                rangeName(c.place),
              ),
            ])}
          />
        )}
        <Choice
          id="what-if-contract"
          label={texts.contract.which}
          value={choice.name}
          choose={setContract}
          options={choices.map(({ name }) => [name, name])}
        />
        {lots.length > 0 && (
          <Choice
            id="what-if-lot"
            label={t.lot}
            value={lotName ?? ""}
            choose={setLot}
            options={lots.map((name) => [name, name])}
          />
        )}
        <p class="field">
          <label for="what-if-size">{t.size}</label>
          <input
            id="what-if-size"
            type="text"
            inputMode="numeric"
            autocomplete="off"
            value={size}
            placeholder={String(listed)}
            aria-describedby="what-if-size-how"
            onInput={(event) => setSize(event.currentTarget.value)}
          />
        </p>
      </div>
      <p class="quiet" id="what-if-size-how">
        {t.sizeHow}
      </p>
      {typeof looks === "string" && <p class="error">{looks + rowsNamed(yard, looks)}</p>}
      {Array.isArray(looks) && (
        <Histogram
          frames={framesOf(looks)}
          thresholds={thresholdsOf(draft, sign)}
          move={(label, frames) => change(label, String(frames).replace(".", sign))}
        />
      )}
      <div class="fields">
        {thresholdsOf(own, sign).map(({ label, short }) => (
          <Figure
            key={label}
            id={`what-if-${label.replaceAll(" ", "-")}`}
            label={short}
            value={textOf(draft, label)}
            fault={faults?.at.get(label) ?? null}
            change={(text) => change(label, text)}
          />
        ))}
      </div>
      {typeof result === "string" && <p class="error">{result + rowsNamed(yard, result)}</p>}
      {result !== null && typeof result !== "string" && current !== null && (
        <>
          <Verdict judged={result} contract={current} size={all} opened={opened} sign={sign} />
          {Array.isArray(looks) && (
            <Ahead contract={current} looks={looks} size={all} sign={sign} />
          )}
        </>
      )}
      <Review table={choice.table} draft={draft} sign={sign} held={null} settle={settle} />
    </>
  );
}

interface FigureProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly fault: string | null;
  readonly change: (text: string) => void;
}

/** A threshold to type, with what is wrong with it. */
function Figure({ id, label, value, fault, change }: FigureProps) {
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={value}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : `${id}-fault`}
        onInput={(event) => change(event.currentTarget.value)}
      />
      {fault !== null && (
        <span class="error" id={`${id}-fault`}>
          {fault}
        </span>
      )}
    </p>
  );
}

function textOf(draft: Draft, label: string): string {
  const grade = /^grade (\d+) frames$/.exec(label);
  if (grade === null) return draft.terms.get(label) ?? "";
  return draft.grades[Number(grade[1]) - 1]?.frames ?? "";
}

function orWhy<T>(body: () => T): T | string {
  try {
    return body();
  } catch (error) {
    if (error instanceof Refusal || error instanceof CellError) return error.message;
    throw error;
  }
}
