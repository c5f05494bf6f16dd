import type { ComponentChildren, ComponentProps } from "preact";

interface Props extends Omit<ComponentProps<"input">, "label"> {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** What is wrong with what was written, in a sentence. */
  readonly fault?: string | null;
  /** The id of what is said of it. */
  readonly about?: string | undefined;
  readonly change: (text: string) => void;
  /** What stands beside it. */
  readonly children?: ComponentChildren;
}

/** A label with a text to write, and what is wrong with that. */
export function TextField(props: Props) {
  const { id, label, fault = null, about, change, children, ...input } = props;
  const described = [about, fault === null ? undefined : `${id}-fault`];
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        aria-invalid={fault !== null}
        aria-describedby={described.filter(Boolean).join(" ") || undefined}
        onInput={(event) => change(event.currentTarget.value)}
        {...input}
      />
      {children}
      {fault !== null && (
        <span class="error" id={`${id}-fault`}>
          {fault}
        </span>
      )}
    </p>
  );
}
