interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** What is chosen, and how it is shown. */
  readonly options: readonly (readonly [string, string])[];
  readonly choose: (value: string) => void;
}

/** A label with one of several to choose. */
export function Choice({ id, label, value, options, choose }: Props) {
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {options.map(([key, text]) => (
          <option key={key} value={key}>
            {text}
          </option>
        ))}
      </select>
    </p>
  );
}
