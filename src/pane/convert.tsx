import { useMemo, useState } from "preact/hooks";
import { combWithBees, combWithBrood } from "../core/comb-picture.js";
import { frameOf } from "../core/comb.js";
import { serialOfDay } from "../core/serial.js";
import { Choice, wordsOf } from "./choice.js";
import { Comb } from "./comb.js";
import { AnswerLine } from "./convert/answer.js";
import {
  CONVERSIONS,
  resultOf,
  type Conversion,
  type Field,
  type Filled,
} from "./convert/conversions.js";
import { shownNumber } from "./shown.js";
import { TextField } from "./text-field.js";
import { texts } from "./texts.js";
import { useSign } from "./watched.js";

const t = texts.convert;
/** Which picture of many is shown; it means nothing. */
const SEED = 5;

/** A small calculator over the functions of the sheet. */
export function Convert() {
  const [id, choose] = useState(CONVERSIONS[0]!.id);
  const conversion = CONVERSIONS.find((c) => c.id === id)!;
  return (
    <>
      <Choice
        id="convert-what"
        label={t.what}
        value={id}
        choose={choose}
        options={CONVERSIONS.map((c) => [c.id, t.names[c.id]!])}
      />
      <Calculator key={id} conversion={conversion} />
    </>
  );
}

function Calculator({ conversion }: { conversion: Conversion }) {
  const { fields, answers, cover } = conversion;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(fields.map((field) => [field.id, startOf(field)])),
  );
  const sign = useSign();
  const written = sign === "," ? "decimal comma" : null;
  const filled: Filled = Object.fromEntries(
    fields.map((field) => [
      field.id,
      field.kind === "day" ? serialOf(typed[field.id]!) : typed[field.id]!,
    ]),
  );
  const share = cover ? resultOf(cover, filled, written) : null;
  return (
    <>
      {fields.some(({ kind }) => kind === "figure") && <p class="quiet">{t.how}</p>}
      <div class="fields">
        {fields.map((field) => (
          <FieldLine
            key={field.id}
            field={field}
            value={typed[field.id]!}
            change={(value) => setTyped((before) => ({ ...before, [field.id]: value }))}
          />
        ))}
      </div>
      {share !== null && "middle" in share && (
        <Covered
          percent={share.middle}
          sign={sign}
          frame={String(filled["frame"])}
          holds={conversion.id === "patch" ? "brood" : "bees"}
        />
      )}
      <dl class="answers">
        {answers.map((answer) => (
          <AnswerLine
            key={answer.id}
            answer={answer}
            filled={filled}
            written={written}
            sign={sign}
          />
        ))}
      </dl>
    </>
  );
}

interface CoveredProps {
  /** Of the side, 0 or more. */
  readonly percent: number;
  readonly sign: "." | ",";
  readonly frame: string;
  readonly holds: "bees" | "brood";
}

/** One side of a comb with as much of it covered as is said. */
function Covered({ percent, sign, frame, holds }: CoveredProps) {
  const picture = useMemo(() => {
    const [share, of] = [Math.min(100, percent), frameOf(frame)];
    return holds === "bees"
      ? combWithBees(share, SEED, "middle", of)
      : combWithBrood("solid", share, SEED, "middle", of);
  }, [percent, frame, holds]);
  return (
    <Comb picture={picture} id="convert" label={t.picture(shownNumber(percent, sign), frame)} />
  );
}

interface FieldProps {
  readonly field: Field;
  readonly value: string;
  readonly change: (value: string) => void;
}

function FieldLine({ field, value, change }: FieldProps) {
  const shared = { id: `convert-${field.id}`, label: t.fields[field.id]!, value };
  if (field.kind === "choice") {
    return <Choice {...shared} choose={change} options={wordsOf(field.choices)} />;
  }
  return <TextField {...shared} type={field.kind === "day" ? "date" : "text"} change={change} />;
}

function startOf(field: Field): string {
  if (field.kind === "choice") return field.choices[0]!;
  return field.kind === "figure" ? field.start : today();
}

/** Today as the machine's own calendar has it. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function serialOf(text: string): number | null {
  const match = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (match === null) return null;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  return serialOfDay({ year, month, day });
}
