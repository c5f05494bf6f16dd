import { describe, it } from "vitest";
import { CellError, type ErrorCode } from "../../src/functions/cells.js";
import { call } from "../../src/functions/declare.js";
import { functions } from "../../src/functions/index.js";
import { cases } from "../cases/all.js";
import { expectCase } from "../cases/compare.js";

function toCell(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(toCell);
  if (typeof value !== "object" || value === null) return value;
  return new CellError((value as { error: ErrorCode }).error);
}

describe("the cases, called directly", () => {
  it.each(cases.map((c) => [`${c.id}(${JSON.stringify(c.args).slice(0, 60)})`, c] as const))(
    "%s",
    (_, c) => {
      const fn = functions.find(({ id }) => id === c.id)!;
      expectCase(c, call(fn, c.args.map(toCell), 1e6));
    },
  );
});
