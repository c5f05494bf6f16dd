import { useMemo, useState } from "preact/hooks";
import { CellError } from "../../functions/cells.js";
import { COLUMNS } from "../../functions/yard.js";
import { cellAt, cellName, address, sheetName } from "../address.js";
import { sentenceOf, usePane, useWrite } from "../context.js";
import { orWhy, whyOf } from "../or-why.js";
import { TextField } from "../text-field.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
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
  const first = orWhy(() => (typed === null ? besideOf(yard) : cellAt(typed, own)));
  const place =
    "why" in first ? null : { ...first.value, rows: yard.place.rows, columns: columns.length };
  const free = usePlace(place);
  // Of the whole sheet, and the same wherever it goes.
  const result = useMemo(
    () => spillResult(spillArguments(yard, choice, columns, own)),
    [yard, choice, columns.join()],
  );
  const only = result[0]![0];
  const fault = only instanceof CellError ? whyOf(only) : null;
  const there = free.block;
  const formula = there && spillFormula(spillArguments(yard, choice, columns, there.place.sheet));
  const stands = there !== null && there.entries[0]![0] === formula;
  const obstacle = there && !stands && inTheWay(there, yard, sheets.regions);
  const problem =
    "why" in first ? first.why : obstacle ? sentence(obstacle, address(place!, own)) : free.why;
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
      <TextField
        id="columns-at"
        label={t.at}
        about="columns-at-about"
        size={12}
        spellcheck={false}
        value={typed ?? address(besideOf(yard), own)}
        aria-invalid={Boolean(problem)}
        change={setTyped}
      >
        <button type="button" onClick={() => void useChosen()}>
          {t.useChosen}
        </button>
        {typed !== null && (
          <button type="button" onClick={() => setTyped(null)}>
            {t.back}
          </button>
        )}
      </TextField>
      <p id="columns-at-about" class={problem ? "error" : "quiet"} aria-live="polite">
        {problem || (there && (stands ? t.stand : t.willGo)(address(there.place, own)))}
        {!problem && !stands && !isInLine && ` ${t.notInLine}`}
      </p>
      <Preview
        yard={yard}
        sign={sheets.sign}
        headings={columns.map((name) => COLUMNS[name]!.heading)}
        rowAt={(i) => result[i]!}
      />
      <WriteButton
        main
        disabled={Boolean(problem) || there === null || stands}
        press={() => {
          const steps = spillSteps(there!, formula!);
          return write(steps, t.written(address(there!.place, own), columns.length));
        }}
      >
        {t.write}
      </WriteButton>
    </>
  );
}

function sentence({ kind, address: at, holds }: InTheWay, place: string): string {
  if (kind === "filled") return t.filled(place, at, holds);
  return kind === "yard" ? t.onYard(place, at) : t.inTable(place, holds, at);
}
