import type { Nullable } from "@univerjs/core";
import type { IFunctionInfo } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { CellError, type Cell, type ErrorCode } from "../functions/cells.js";
import { callSafely, type SheetFunction } from "../functions/declare.js";
import { NAMESPACE } from "../functions/namespace.js";
import type { DescribedFunction } from "./described.js";

/** What a call may take: a page must answer before its user wonders. */
const MAX_CELLS = 1_000_000;

/** Where a call stands in the workbook, rows and columns from 0, and what it gave. */
export interface Called {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly rows: readonly (readonly Cell[])[];
}

type Listed = [new () => BaseFunction, string];

/**
 * The functions as the grid takes them. The grid's plain way of registering would turn blank cells
 * into 0 and errors into texts.
 */
export function gridFunctions(
  functions: readonly SheetFunction[],
  called: (call: Called) => void,
): Listed[] {
  return functions.map((fn) => [gridFunction(fn, called), `${NAMESPACE}.${fn.id}`]);
}

function gridFunction(fn: SheetFunction, called: (call: Called) => void): new () => BaseFunction {
  return class extends BaseFunction {
    override minParams = fn.parameters.filter((parameter) => !parameter.optional).length;
    override maxParams = fn.parameters.length;

    constructor() {
      super(`${NAMESPACE}.${fn.id}`);
    }

    /** Else the grid makes a number of the text "60%". */
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...values: BaseValueObject[]): BaseValueObject {
      const rows = answer(fn, values);
      const { subUnitId, row, column } = this;
      called({ sheetId: subUnitId ?? "", row, column, rows });
      return toGrid(rows);
    }
  };
}

function answer(fn: SheetFunction, values: readonly BaseValueObject[]): Cell[][] {
  const args = fn.parameters.map((parameter, i) => fromGrid(values[i], parameter));
  return callSafely(fn, args, MAX_CELLS);
}

function fromGrid(
  value: BaseValueObject | undefined,
  { matrix }: SheetFunction["parameters"][number],
): unknown {
  if (value === undefined) return null;
  if (!value.isArray()) return matrix && !value.isNull() ? [[scalar(value)]] : scalar(value);
  const block = value as ArrayValueObject;
  const [height, width] = [block.getRowCount(), block.getColumnCount()];
  const rows = Array.from({ length: height }, (_, r) =>
    Array.from({ length: width }, (_, c) => scalar(block.get(r, c))),
  );
  return !matrix && height === 1 && width === 1 ? rows[0]![0] : rows;
}

function scalar(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return null;
  if (value.isError())
    return new CellError((value as ErrorValueObject).getErrorType() as ErrorCode);
  return value.getValue();
}

function toGrid(rows: readonly (readonly Cell[])[]): BaseValueObject {
  if (rows.length === 1 && rows[0]!.length === 1) return toValue(rows[0]![0]!);
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => row.map(toValue)),
    rowCount: rows.length,
    columnCount: rows[0]!.length,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function toValue(cell: Cell): BaseValueObject {
  if (cell instanceof CellError) return ErrorValueObject.create(cell.code as never);
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  return StringValueObject.create(cell);
}

/** What the grid shows of a function while it is typed. */
export function gridDescriptions(described: readonly DescribedFunction[]): IFunctionInfo[] {
  return described.map(({ name, description, helpUrl, parameters }) => ({
    functionName: `${NAMESPACE}.${name}`,
    functionType: FunctionType.User,
    description,
    abstract: description.split(/(?<=\.)\s/)[0]!,
    helpUrl,
    functionParameter: parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description,
      example: parameter.dimensionality === "matrix" ? "B2:B60" : "8",
      require: parameter.optional ? 0 : 1,
      repeat: 0,
    })),
  }));
}
