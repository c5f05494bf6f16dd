/**
 * What the core throws when it will not answer. The message says what was seen and what was
 * expected; whoever called adds the argument and the row.
 *
 * `wrong`: the caller can mend it (a text that is no count). `unknown`: not a mistake, but not
 * judged yet (the contract asks for a laying queen and nobody has looked).
 */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly kind: "wrong" | "unknown" = "wrong",
  ) {
    super(message);
    this.name = "Refusal";
  }
}

/** Quotes a text of the user's in a message, cut so that a page pasted into a cell stays readable. */
export function quote(text: string): string {
  return text.length > 40 ? `"${text.slice(0, 40)}…"` : `"${text}"`;
}
