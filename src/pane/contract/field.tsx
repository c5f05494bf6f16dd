import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { TermKind } from "../../core/terms.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";

const t = texts.contract;

interface Props {
  readonly label: string;
  readonly kind: TermKind;
  readonly value: string;
  readonly missing: string;
  readonly meaning: string;
  readonly unit: string;
  readonly sign: "." | ",";
  readonly fault: string | null;
  readonly locked: boolean;
  readonly change: (text: string) => void;
}

/** One term: its label, what it means, its limits, and what is wrong with what is written. */
export function Field({
  label,
  kind,
  value,
  missing,
  meaning,
  unit,
  sign,
  fault,
  locked,
  change,
}: Props) {
  const id = useId();
  const about = [meaning, locked ? t.formula : "", hintOf(kind, unit, sign)].filter(
    (text) => text !== "",
  );
  const described = [about.length > 0 ? `${id}-about` : "", fault === null ? "" : `${id}-fault`];
  const shared = {
    id,
    disabled: locked,
    "aria-invalid": fault !== null,
    "aria-describedby": described.filter((name) => name !== "").join(" ") || undefined,
  };
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {kind.kind === "choice" || kind.kind === "yes or no" ? (
        <select {...shared} value={value} onChange={(e) => change(e.currentTarget.value)}>
          {optionsOf(kind, value, missing)}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          inputMode={kind.kind === "number" ? "decimal" : "text"}
          autocomplete="off"
          spellcheck={false}
          value={value}
          placeholder={missing}
          onInput={(e) => change(e.currentTarget.value)}
        />
      )}
      {about.length > 0 && (
        <p class="quiet" id={`${id}-about`}>
          {about.join(" ")}
        </p>
      )}
      {fault !== null && (
        <p class="error" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}

/** What may stand there; a word in the sheet that is none of them is kept, and told to be wrong. */
function optionsOf(
  kind: TermKind & { kind: "choice" | "yes or no" },
  value: string,
  missing: string,
): ComponentChildren {
  const choices = kind.kind === "choice" ? kind.choices : ["yes", "no"];
  const known = choices.find((choice) => choice.toLowerCase() === value.trim().toLowerCase());
  return [
    <option key="" value="">
      {missing === "" ? t.leftOut : `${t.leftOut} (${missing})`}
    </option>,
    ...choices.map((choice) => (
      <option key={choice} value={choice === known ? value : choice}>
        {choice}
      </option>
    )),
    ...(value !== "" && known === undefined
      ? [
          <option key={value} value={value}>
            {value}
          </option>,
        ]
      : []),
  ];
}

/** The limits of a figure, in its unit. */
export function hintOf(kind: TermKind, unit: string, sign: "." | ","): string {
  if (kind.kind !== "number") return "";
  return t.limits(shownNumber(kind.least, sign), shownNumber(kind.most, sign), unit);
}
