import { useCallback, useMemo, useState } from "preact/hooks";
import { Refusal } from "../core/refusal.js";
import { CellError } from "../functions/cells.js";
import { lotStatement } from "../functions/statement.js";
import type { Statement } from "../functions/statement-model.js";
import { rangeName } from "./address.js";
import { Choice } from "./choice.js";
import { choicesOf, contractKey } from "./columns/contracts.js";
import { lotsOf } from "./columns/lots.js";
import { rowsNamed } from "./columns/rows-named.js";
import { keyOf, readSheets } from "./columns/yard.js";
import { sentenceOf, usePane, useWatched } from "./context.js";
import type { Workbook } from "./port.js";
import { askOf, NOTHING_SAID, type Wish } from "./statement/ask.js";
import { Fields } from "./statement/fields.js";
import { Preview } from "./statement/preview.js";
import { texts } from "./texts.js";

const t = texts.statement;
/** All hives of the sheet, which no lot is called; no choice where the sheet names several lots. */
const ALL = "";

/** A statement on a lot for the grower: what it will say, then handed to the workbook's host. */
export function StatementView() {
  const { workbook, say } = usePane();
  const [sheet, setSheet] = useState<string | null>(null);
  const [contract, setContract] = useState<string | null>(null);
  const [chosenLot, setLot] = useState<string | null>(null);
  const [wish, setWish] = useState<Wish>(NOTHING_SAID);
  const [isMaking, setMaking] = useState(false);
  const read = useCallback((workbook: Workbook) => readSheets(workbook, sheet), [sheet]);
  const [watched] = useWatched(read);
  const sheets = watched.state === "read" ? watched.value : null;
  const yard = sheets?.yard ?? null;
  const lots = useMemo(() => (yard === null ? [] : lotsOf(yard)), [yard]);
  const names = lots.length > 1 ? lots : [...lots, ALL];
  const lot = names.find((name) => name === chosenLot) ?? names[0]!;
  const choices = useMemo(() => choicesOf(sheets?.terms ?? [], false), [sheets]);
  const choice = choices.find((c) => contractKey(c) === contract) ?? choices[0]!;
  const build = () => lotStatement(askOf(wish, yard!, lot === ALL ? null : lot, choice));
  // Names and words of the user's own change nothing of what comes of the lot.
  const { size, delivered, one, other } = wish;
  const preview = useMemo(
    () => (yard === null ? null : orWhy(build)),
    [yard, lot, choice, size, delivered, one, other],
  );
  if (watched.state === "reading") return <p>{texts.waiting}</p>;
  if (watched.state === "refused") return <p class="error">{watched.why}</p>;
  if (yard === null) return <p>{texts.columns.none}</p>;
  const { candidates, sign } = watched.value;
  const make = async () => {
    const made = orWhy(build);
    if (typeof made === "string") return say(t.cannot(made));
    setMaking(true);
    try {
      const name = t.sheetName(lot === ALL ? null : lot);
      const { sentence, undo } = await workbook.statement(name, made);
      say(sentence, undo);
    } catch (error) {
      say(sentenceOf(error));
    } finally {
      setMaking(false);
    }
  };
  return (
    <>
      <p>{t.how}</p>
      <div class="fields">
        {candidates.length > 1 && (
          <Choice
            id="statement-sheet"
            label={texts.columns.sheet}
            value={keyOf(yard)}
            choose={setSheet}
            options={candidates.map((c) => {
              const kind = texts.columns.kinds[c.region.kind];
              const shown = texts.columns.candidate(c.region.name, kind, rangeName(c.place));
              return [keyOf(c), shown];
            })}
          />
        )}
        <Choice
          id="statement-lot"
          label={t.lot}
          value={lot}
          choose={setLot}
          options={names.map((name) => [name, name === ALL ? t.wholeSheet : name])}
        />
        <Choice
          id="statement-contract"
          label={texts.columns.contract}
          value={contractKey(choice)}
          choose={setContract}
          options={choices.map((c) => [contractKey(c), c.label])}
        />
      </div>
      {choice.kind === "standard" && <p class="quiet">{texts.columns.standardCaution}</p>}
      <Fields wish={wish} change={(part) => setWish((before) => ({ ...before, ...part }))} />
      <h2>{t.preview}</h2>
      {typeof preview === "string" && (
        <p class="error">{t.cannot(preview) + rowsNamed(yard, preview)}</p>
      )}
      {preview !== null && typeof preview !== "string" && (
        <Preview statement={preview} sign={sign} />
      )}
      <p class="quiet">{t.caution}</p>
      <button
        type="button"
        class="main"
        disabled={typeof preview === "string" || isMaking}
        onClick={() => void make()}
      >
        {t.make}
      </button>
    </>
  );
}

function orWhy(build: () => Statement): Statement | string {
  try {
    return build();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    if (error instanceof CellError) return error.message || texts.statement.holdsError(error.code);
    throw error;
  }
}
