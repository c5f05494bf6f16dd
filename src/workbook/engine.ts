import type { Workbook } from "@cj-tech-master/excelts";
import { plural } from "../core/plural.js";
import { CellError, type Cell, type ErrorCode } from "../functions/cells.js";
import { callSafely, type SheetFunction } from "../functions/declare.js";
import { NAMESPACE } from "../functions/namespace.js";
import { BLOCK, FIRST, SPREAD, TRACED } from "./rewrite.js";

/** A file on a disk is not bound to what a web page takes; the cap only stops whole columns. */
export const MAX_CELLS = 20_000_000;

/** The engine's values; its package exports no names for their kinds. */
type Scalar =
  | { readonly kind: 0 }
  | { readonly kind: 1; readonly value: number }
  | { readonly kind: 2; readonly value: string }
  | { readonly kind: 3; readonly value: boolean }
  | { readonly kind: 4; readonly code: ErrorCode };
interface Block {
  readonly kind: 5;
  readonly rows: readonly (readonly Scalar[])[];
  readonly height: number;
  readonly width: number;
}
type Value = Scalar | Block;

/** Told of what happens in which formula while the engine calculates. */
export interface Listener {
  called(formula: number, answer: Cell[][]): void;
  spread(formula: number, rows: readonly (readonly unknown[])[]): void;
  /** The values of a block that stays as it is. */
  block(number: number): unknown[][];
}

/** Makes the functions known to a workbook, as typed and as saved, and what the program itself needs. */
export function register(
  workbook: Workbook,
  functions: readonly SheetFunction[],
  listener: Listener,
): void {
  for (const fn of functions) {
    const plain = (args: unknown[]): Value => toValue(answer(fn, args as Value[]));
    workbook.registerFunction(`${NAMESPACE}.${fn.id}`, plain);
    workbook.registerFunction(`_xldudf_${NAMESPACE}_${fn.id}`, plain);
    workbook.registerFunction(TRACED + fn.id, ([formula, ...args]) => {
      const rows = answer(fn, args as Value[]);
      listener.called(fromScalar(formula as Scalar) as number, rows);
      return toValue(rows);
    });
  }
  workbook.registerFunction(SPREAD, ([formula, value]) => {
    const rows = toRows(value as Value);
    listener.spread(fromScalar(formula as Scalar) as number, rows);
    return value;
  });
  const blocks = new Map<number, Block>();
  workbook.registerFunction(BLOCK, ([number]) => {
    const n = fromScalar(number as Scalar) as number;
    if (!blocks.has(n)) blocks.set(n, toBlock(listener.block(n)));
    return blocks.get(n);
  });
  workbook.registerFunction(FIRST, ([value]) => first(value as Value));
}

function answer(fn: SheetFunction, args: readonly Value[]): Cell[][] {
  if (args.length > fn.parameters.length) {
    return [
      [
        new CellError(
          "#VALUE!",
          `${fn.id} takes at most ${plural(fn.parameters.length, "argument")}`,
        ),
      ],
    ];
  }
  const values = fn.parameters.map((parameter, i) =>
    fromArgument(args[i] ?? { kind: 0 }, parameter),
  );
  return ask(fn, values);
}

/** What a function answers in a workbook file. */
export function ask(fn: SheetFunction, values: readonly unknown[]): Cell[][] {
  return callSafely(fn, values, MAX_CELLS);
}

/** The engine tells an argument that is left out from an empty cell no better than this. */
function fromArgument(
  value: Value,
  { matrix, optional }: SheetFunction["parameters"][number],
): unknown {
  if (value.kind === 0 && optional) return null;
  if (matrix) return toRows(value);
  const [[only]] = toRows(value) as [[unknown]];
  return value.kind === 5 && value.height * value.width > 1 ? toRows(value) : only;
}

function toRows(value: Value): unknown[][] {
  return value.kind === 5 ? value.rows.map((row) => row.map(fromScalar)) : [[fromScalar(value)]];
}

function fromScalar(scalar: Scalar): unknown {
  if (scalar.kind === 0) return null;
  return scalar.kind === 4 ? new CellError(scalar.code) : scalar.value;
}

function toValue(rows: readonly (readonly Cell[])[]): Value {
  const only = rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : undefined;
  if (only !== undefined) return toScalar(only);
  return toBlock(rows);
}

function toBlock(rows: readonly (readonly unknown[])[]): Block {
  const width = rows[0]?.length ?? 0;
  return { kind: 5, rows: rows.map((row) => row.map(toScalar)), height: rows.length, width };
}

function toScalar(cell: unknown): Scalar {
  if (cell === null) return { kind: 0 };
  if (cell instanceof CellError) return { kind: 4, code: cell.code };
  if (typeof cell === "number") return { kind: 1, value: cell };
  if (typeof cell === "boolean") return { kind: 3, value: cell };
  return { kind: 2, value: String(cell) };
}

function first(value: Value): Value {
  return value.kind === 5 ? (value.rows[0]?.[0] ?? { kind: 0 }) : value;
}
