import { useState } from "preact/hooks";
import { Refusal } from "../../core/refusal.js";
import { CellError } from "../../functions/cells.js";
import { COLUMNS } from "../../functions/yard.js";
import { cellAt, cellName, reference, sheetName } from "../address.js";
import { sentenceOf, usePane, useWrite } from "../context.js";
import type { Place } from "../port.js";
import { texts } from "../texts.js";
import type { Asked } from "./adding.js";
import { usePlace } from "./place.js";
import { Preview } from "./preview.js";
import { rowsNamed } from "./rows-named.js";
import {
  besideOf,
  inTheWay,
  spillArguments,
  spillFormula,
  spillResult,
  spillSteps,
  type InTheWay,
} from "./spill.js";

const t = texts.columns;

/** Writes the columns as one spill beside the sheet, or where the user says. */
export function Beside({ sheets, yard, choice, columns }: Asked) {
  const { workbook, say } = usePane();
  const write = useWrite();
  const [typed, setTyped] = useState<string | null>(null);
  const own = yard.place.sheet;
  const first = typed === null ? besideOf(yard) : attempt(() => cellAt(typed, own));
  const place: Place | null =
    typeof first === "string" ? null : { ...first, rows: yard.place.rows, columns: columns.length };
  const free = usePlace(place);
  const args = spillArguments(yard, choice, columns, place?.sheet ?? own);
  const result = spillResult(args);
  const only = result[0]![0];
  const fault = only instanceof CellError ? only.message || only.code : null;
  const there = free.block;
  const obstacle = there && inTheWay(there, yard, sheets.regions);
  const problem =
    typeof first === "string"
      ? first
      : obstacle
        ? sentence(obstacle, reference(place!, own))
        : free.why;
  const useChosen = async () => {
    try {
      const { sheet, row, column } = await workbook.active();
      setTyped(`${sheet === own ? "" : `${sheetName(sheet)}!`}${cellName(row, column)}`);
    } catch (error) {
      say(sentenceOf(error));
    }
  };
  if (fault !== null) return <p class="error">{t.cannot(fault) + rowsNamed(yard, fault)}</p>;
  const isInLine = place === null || (place.sheet === own && place.row === yard.place.row);
  return (
    <>
      <p class="quiet">{t.besideHow}</p>
      <p class="field">
        <label for="columns-at">{t.at}</label>
        <input
          id="columns-at"
          type="text"
          size={12}
          autocomplete="off"
          spellcheck={false}
          value={typed ?? reference(besideOf(yard), own)}
          aria-invalid={problem ? true : undefined}
          aria-describedby="columns-at-about"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
        <button type="button" onClick={() => void useChosen()}>
          {t.useChosen}
        </button>
        {typed !== null && (
          <button type="button" onClick={() => setTyped(null)}>
            {t.back}
          </button>
        )}
      </p>
      <p id="columns-at-about" class={problem ? "error" : "quiet"} aria-live="polite">
        {problem || (there && t.willGo(reference(there.place, own)))}
        {!problem && !isInLine && ` ${t.notInLine}`}
      </p>
      <Preview
        yard={yard}
        sign={sheets.sign}
        headings={columns.map((name) => COLUMNS[name]!.heading)}
        rowAt={(i) => result[i]!}
      />
      <button
        type="button"
        class="main"
        disabled={Boolean(problem) || there === null}
        onClick={() => {
          const steps = spillSteps(there!, spillFormula(args));
          void write(steps, t.written(reference(there!.place, own), columns.length));
        }}
      >
        {t.write}
      </button>
    </>
  );
}

function sentence({ kind, address, holds }: InTheWay, place: string): string {
  if (kind === "filled") return t.filled(place, address, holds);
  return kind === "yard" ? t.onYard(place, address) : t.inTable(place, holds, address);
}

function attempt(read: () => Place): Place | string {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
}
