/** What is chosen, and how it is shown. */
export type Option = readonly [value: string, text: string];

interface Group {
  readonly label: string;
  readonly options: readonly Option[];
}

interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly (Option | Group)[];
  /** The id of what is said of it. */
  readonly about?: string;
  readonly choose: (value: string) => void;
}

/** A label with one of several to choose. */
export function Choice({ id, label, value, options, about, choose }: Props) {
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={about}
        onChange={(event) => choose(event.currentTarget.value)}
      >
        {options.map((one) =>
          "label" in one ? (
            <optgroup key={one.label} label={one.label}>
              {one.options.map(optionOf)}
            </optgroup>
          ) : (
            optionOf(one)
          ),
        )}
      </select>
    </p>
  );
}

function optionOf([value, text]: Option) {
  return (
    <option key={value} value={value}>
      {text}
    </option>
  );
}

/** Words that are shown as they are. */
export function wordsOf(words: readonly string[]): Option[] {
  return words.map((word) => [word, word]);
}
