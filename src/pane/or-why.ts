import { Refusal } from "../core/refusal.js";
import { CellError } from "../functions/cells.js";
import { texts } from "./texts.js";

/** What a body gives, or why it gives nothing, in a sentence. */
export type OrWhy<T> = { readonly value: T } | { readonly why: string };

export function orWhy<T>(body: () => T): OrWhy<T> {
  try {
    return { value: body() };
  } catch (error) {
    if (error instanceof Refusal) return { why: error.message };
    if (error instanceof CellError) return { why: whyOf(error) };
    throw error;
  }
}

/** An error that a sheet holds has a code alone. */
export function whyOf({ message, code }: CellError): string {
  return message || texts.holdsError(code);
}
