import { useCallback, useMemo, useState } from "preact/hooks";
import { lotStatement } from "../functions/statement.js";
import { Choice } from "./choice.js";
import { choicesOf, contractKey } from "./columns/contracts.js";
import { contractNamedIn, isNamed, lotsOf } from "./columns/lots.js";
import { NoYard, optionOf } from "./columns/no-yard.js";
import { rowsNamed } from "./columns/rows-named.js";
import { readSheets } from "./columns/yard.js";
import { usePane } from "./context.js";
import { NotRead } from "./not-read.js";
import { orWhy } from "./or-why.js";
import { regionKey, type Workbook } from "./port.js";
import { askOf, NOTHING_SAID, type Wish } from "./statement/ask.js";
import { Fields } from "./statement/fields.js";
import { Preview } from "./statement/preview.js";
import { texts } from "./texts.js";
import { useWatched } from "./watched.js";
import { WriteButton } from "./write-button.js";

const t = texts.statement;
/** All hives of the sheet, which no lot is called; no choice where the sheet names several lots. */
const ALL = "";

/** A statement on a lot for the grower: what it will say, then handed to the workbook's host. */
export function StatementView() {
  const { workbook, say, change } = usePane();
  const [sheet, setSheet] = useState<string | null>(null);
  const [contract, setContract] = useState<string | null>(null);
  const [chosenLot, setLot] = useState<string | null>(null);
  const [wish, setWish] = useState<Wish>(NOTHING_SAID);
  const read = useCallback((workbook: Workbook) => readSheets(workbook, sheet), [sheet]);
  const watched = useWatched(read);
  const sheets = watched.value;
  const yard = sheets?.yard ?? null;
  const lots = useMemo(() => (yard === null ? [] : lotsOf(yard)), [yard]);
  const names = lots.length > 1 ? lots : [...lots, ALL];
  const lot = names.find((name) => name === chosenLot) ?? names[0]!;
  const choices = useMemo(() => choicesOf(sheets?.terms ?? [], false), [sheets]);
  const lotName = lot === ALL ? null : lot;
  const named = useMemo(() => yard && contractNamedIn(yard, lotName), [yard, lotName]);
  const choice =
    choices.find((c) => contractKey(c) === contract) ??
    choices.find(({ name }) => isNamed(name, named)) ??
    choices[0]!;
  const build = () => lotStatement(askOf(wish, yard!, lotName, choice));
  // Names and words of the user's own change nothing of what comes of the lot.
  const { size, delivered, one, other } = wish;
  const preview = useMemo(
    () => (yard === null ? null : orWhy(build)),
    [yard, lot, choice, size, delivered, one, other],
  );
  if (sheets === null) return <NotRead of={watched} />;
  const { candidates, sign } = sheets;
  if (yard === null)
    return <NoYard id="statement-sheet" candidates={candidates} choose={setSheet} />;
  const make = async () => {
    const made = orWhy(build);
    if ("why" in made) return say(t.cannot(made.why));
    await change(() => workbook.statement(t.sheetName(lotName), made.value));
  };
  return (
    <>
      <NotRead of={watched} />
      <p>{t.how}</p>
      <div class="fields">
        {candidates.length > 1 && (
          <Choice
            id="statement-sheet"
            label={texts.columns.sheet}
            value={regionKey(yard.region)}
            choose={setSheet}
            options={candidates.map(optionOf)}
          />
        )}
        <Choice
          id="statement-lot"
          label={t.lot}
          value={lot}
          choose={(name) => {
            setLot(name);
            if (contractNamedIn(yard, name === ALL ? null : name) !== null) setContract(null);
          }}
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
      {contract !== null && contractKey(choice) !== contract && (
        <p class="error">{texts.contract.gone}</p>
      )}
      {choice.kind === "standard" && <p class="quiet">{texts.columns.standardCaution}</p>}
      <Fields wish={wish} change={(part) => setWish((before) => ({ ...before, ...part }))} />
      <h2>{t.preview}</h2>
      {preview !== null && "why" in preview && (
        <p class="error">{t.cannot(preview.why) + rowsNamed(yard, preview.why)}</p>
      )}
      {preview !== null && "value" in preview && <Preview statement={preview.value} sign={sign} />}
      <p class="quiet">{t.caution}</p>
      <WriteButton main disabled={preview === null || "why" in preview} press={make}>
        {t.make}
      </WriteButton>
    </>
  );
}
