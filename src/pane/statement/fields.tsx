import { TextField } from "../text-field.js";
import { texts } from "../texts.js";
import type { Wish } from "./ask.js";

const t = texts.statement;

interface Props {
  readonly wish: Wish;
  readonly change: (part: Partial<Wish>) => void;
}

type TextField = Exclude<keyof Wish, "paper">;

/** What a statement is told besides the sheet and the contract; all of it may be left blank. */
export function Fields({ wish, change }: Props) {
  const field = (name: TextField, label: string, about?: string) => (
    <TextField
      id={`statement-${name}`}
      label={label}
      about={about}
      inputMode={name === "size" || name === "delivered" ? "numeric" : "text"}
      value={wish[name]}
      change={(text) => change({ [name]: text })}
    />
  );
  return (
    <>
      <div class="fields">
        {field("size", t.size, "statement-size-how")}
        {field("delivered", t.delivered, "statement-delivered-how")}
      </div>
      <p class="quiet">
        <span id="statement-size-how">{t.sizeHow}</span>{" "}
        <span id="statement-delivered-how">{t.deliveredHow}</span>
      </p>
      <fieldset>
        <legend>{t.parties}</legend>
        <div class="fields">
          {field("beekeeper", t.beekeeper, "statement-parties-how")}
          {field("grower", t.grower, "statement-parties-how")}
        </div>
        <p class="quiet" id="statement-parties-how">
          {t.partiesHow}
        </p>
      </fieldset>
      <fieldset>
        <legend>{t.pickedLegend}</legend>
        {field("picked", t.picked, "statement-picked-how")}
        <div class="fields">
          {field("one", t.one, "statement-picked-how")}
          {field("other", t.other, "statement-picked-how")}
        </div>
        <p class="quiet" id="statement-picked-how">
          {t.pickedHow}
        </p>
      </fieldset>
      <fieldset>
        <legend>{t.paper}</legend>
        {(["letter", "a4"] as const).map((paper) => (
          <label key={paper} class="choice">
            <input
              type="radio"
              name="statement-paper"
              checked={wish.paper === paper}
              onChange={() => change({ paper })}
            />
            {t.papers[paper]}
          </label>
        ))}
      </fieldset>
    </>
  );
}
