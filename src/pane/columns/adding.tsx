import { useMemo, useState } from "preact/hooks";
import type { Contract } from "../../core/contract.js";
import { matchHeadings } from "../../core/headings.js";
import { HiveCells } from "../../functions/hive-cells.js";
import { COLUMNS, DEFAULT } from "../../functions/yard.js";
import { isBlankOrZero } from "../../functions/cells.js";
import { orWhy } from "../or-why.js";
import { Choice, type Option } from "../choice.js";
import { texts } from "../texts.js";
import { Beside } from "./beside.js";
import {
  choicesOf,
  contractAt,
  contractKey,
  contractOfChoice,
  type ContractChoice,
} from "./contracts.js";
import { DateList } from "./date-list.js";
import { datesIn } from "./dates.js";
import { Inside } from "./inside.js";
import type { Sheets, Yard } from "./yard.js";

const t = texts.columns;

/** What is asked for: the columns of a sheet under a contract. */
export interface Asked {
  readonly sheets: Sheets;
  readonly yard: Yard;
  readonly choice: ContractChoice;
  /** Null where the sheet says it row by row. */
  readonly contract: Contract | null;
  readonly columns: readonly string[];
}

interface Props {
  readonly sheets: Sheets;
  readonly yard: Yard;
  /** What must be settled first, in a sentence. */
  readonly open: string | null;
}

/** Chooses the contract, the columns and where they go; dates are read back by the contract too. */
export function Adding({ sheets, yard, open }: Props) {
  const [chosen, choose] = useState<string | null>(null);
  const [names, setNames] = useState<ReadonlySet<string>>(new Set(DEFAULT.split(", ")));
  const [where, setWhere] = useState<"beside" | "inside">("beside");
  const byRow = useMemo(() => contractColumn(yard), [yard]);
  const choices = useMemo(() => choicesOf(sheets.terms, byRow !== null), [sheets.terms, byRow]);
  const choice = choices.find((c) => contractKey(c) === chosen) ?? choices[0]!;
  const contract = useMemo(() => orWhy(() => contractOfChoice(choice)), [choice]);
  const dates = useMemo(() => datesIn(yard, contractAt(choice, byRow)), [yard, choice]);
  const columns = Object.keys(COLUMNS).filter((name) => names.has(name));
  const toggle = (name: string) =>
    setNames((before) => {
      const after = new Set(before);
      if (!after.delete(name)) after.add(name);
      return after;
    });
  const Writer = where === "beside" ? Beside : Inside;
  return (
    <>
      <DateList yard={yard} dates={dates} />
      <h2>{t.add}</h2>
      <Choice
        id="columns-contract"
        label={t.contract}
        about="columns-contract-about"
        value={contractKey(choice)}
        choose={choose}
        options={(["by row", "terms", "standard"] as const).flatMap((kind) => {
          const own = choices.filter((c) => c.kind === kind);
          const options = own.map((c): Option => [contractKey(c), c.label]);
          return own.length === 0 ? [] : [{ label: t.contracts[kind], options }];
        })}
      />
      <p id="columns-contract-about" class="quiet">
        {choice.kind === "standard" && t.standardCaution}
      </p>
      <fieldset>
        <legend>{t.which}</legend>
        <div class="choices">
          {Object.entries(COLUMNS).map(([name, { heading }]) => (
            <label key={name}>
              <input type="checkbox" checked={names.has(name)} onChange={() => toggle(name)} />
              {heading}
            </label>
          ))}
        </div>
      </fieldset>
      <fieldset>
        <legend>{t.where}</legend>
        {(["beside", "inside"] as const).map((place) => (
          <label key={place} class="choice">
            <input
              type="radio"
              name="columns-where"
              checked={where === place}
              onChange={() => setWhere(place)}
            />
            {place === "inside" && yard.region.kind === "table" ? t.insideTable : t[place]}
          </label>
        ))}
      </fieldset>
      {open !== null ? (
        <p class="error">{open}</p>
      ) : "why" in contract ? (
        <p class="error">{t.cannot(contract.why)}</p>
      ) : columns.length === 0 ? (
        <p class="error">{t.noneChosen}</p>
      ) : (
        <Writer
          sheets={sheets}
          yard={yard}
          choice={choice}
          contract={contract.value}
          columns={columns}
        />
      )}
    </>
  );
}

function contractColumn({ headings, values, place }: Yard): HiveCells | null {
  const k = matchHeadings(headings).roles.indexOf("contract");
  if (k < 0 || values.slice(1).every((row) => isBlankOrZero(row[k]))) return null;
  const of = { columns: [k], headings: [headings[k]!], firstRow: place.row + 2 };
  return new HiveCells(headings[k]!, values, of);
}
