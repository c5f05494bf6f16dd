import { call, type SheetFunction } from "../functions/declare.js";
import { NAMESPACE } from "../functions/namespace.js";

/** One argument: how a formula writes it, and what the function is given for it. */
export interface Argument {
  readonly text: string;
  readonly value: unknown;
}

/** A number, a text, or an argument that is left out. */
export function literal(value: string | number | null): Argument {
  if (value === null) return { text: "", value };
  const text = typeof value === "number" ? String(value) : `"${value.replaceAll('"', '""')}"`;
  return { text, value };
}

/** Cells under the name by which the formula refers to them. */
export function cells(reference: string, values: readonly (readonly unknown[])[]): Argument {
  return { text: reference, value: values };
}

/** A call of a function as a cell holds it, in the form of en-US; arguments left out last are dropped. */
export function formula({ id }: SheetFunction, args: readonly Argument[]): string {
  const last = args.reduce((end, { text }, i) => (text === "" ? end : i + 1), 0);
  const texts = args.slice(0, last).map(({ text }) => text);
  return `=${NAMESPACE}.${id}(${texts.join(",")})`;
}

/** What the same call gives. */
export function evaluate(fn: SheetFunction, args: readonly Argument[]): unknown[][] {
  return call(
    fn,
    args.map(({ value }) => value),
    Infinity,
  );
}
